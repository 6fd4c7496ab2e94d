"""How much two measures may differ by before anybody calls it a difference.

Layouts are whole nanometres, but slopes cut them at fractions of one, lengths typed by hand are rounded on
their way into a file, and the geometry library works in floating point. On a surface of ten metres (1e10 nm)
a double still holds a few millionths of a nanometre, so its error is far below anything here. A micrometre is
hundreds of times finer than the finest mark of a tape and far coarser than anything that arithmetic could add
up to: below it nothing is found, above it everything is.
"""

from plankwright.measure import Nm

SLACK: Nm = 1_000
"""Differences up to this are rounding. [nm]"""


def exceeds(one: float, other: float) -> bool:
    """Whether one measure is more than another, beyond rounding. [nm]"""
    return one - other > SLACK


def differs(one: float, other: float) -> bool:
    """Whether two measures are unequal, beyond rounding. [nm]"""
    return abs(one - other) > SLACK

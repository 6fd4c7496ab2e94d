"""Choose heights, joints and boards for a stretch of courses together, with CP-SAT.

The model is written out in docs/how-it-works.md; the numbers in the docstrings here are those of its rules.
Lengths are counted in whole steps of a grid: what wood gives is rounded down and what the surface asks is
rounded up, so that whatever the solver finds can be cut.
"""

from plankwright.layout.choose.chooser import Choice, Chooser
from plankwright.layout.choose.reading import RowCuts
from plankwright.layout.choose.task import Prices, Terms

__all__ = ["Choice", "Chooser", "Prices", "RowCuts", "Terms"]

"""Lengths as whole nanometres, and the two tapes they are read from and written to.

Whole nanometres hold 1/64 in (396 875 nm) and the millimetre exactly, so neither a tape in inches nor one in
millimetres loses anything, and sums never drift. By the international agreement of 1959 a yard is 0.9144 m
exactly, and so a foot 0.3048 m and an inch 25.4 mm.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import TypeAlias

Nm: TypeAlias = int
"""A length in whole nanometres."""

MILLIMETRE: Nm = 1_000_000
CENTIMETRE: Nm = 10 * MILLIMETRE
METRE: Nm = 1_000 * MILLIMETRE
INCH: Nm = 25_400_000
FOOT: Nm = 12 * INCH
SIXTY_FOURTH: Nm = INCH // 64

FINEST_DENOMINATOR = 64
"""The finest fraction of an inch: a 64th is the last one that is a whole number of nanometres."""


class Unit(StrEnum):
    """A unit that a length can be written in."""

    INCH = "in"
    FOOT = "ft"
    MILLIMETRE = "mm"
    CENTIMETRE = "cm"
    METRE = "m"

    @property
    def size_nm(self) -> Nm:
        """Length of one unit. [nm]"""
        return _UNIT_SIZES[self]

    @property
    def is_metric(self) -> bool:
        """Whether the unit is a decimal part or multiple of the metre."""
        return self not in {Unit.INCH, Unit.FOOT}


_UNIT_SIZES = {
    Unit.INCH: INCH,
    Unit.FOOT: FOOT,
    Unit.MILLIMETRE: MILLIMETRE,
    Unit.CENTIMETRE: CENTIMETRE,
    Unit.METRE: METRE,
}


class System(StrEnum):
    """The system of units that a user measures and reads in."""

    IMPERIAL = "imperial"
    METRIC = "metric"


@dataclass(frozen=True, slots=True, kw_only=True)
class TapeStyle:
    """How lengths are written: for which tape, and how finely.

    Parameters
    ----------
    system
        Feet and inches, or millimetres.
    denominator
        Finest fraction of an inch that is written: a power of two up to 64. An imperial tape only.
    millimetre_step
        Step of a metric tape: a whole or half a millimetre. A metric tape only. [nm]

    Raises
    ------
    ValueError
        If the denominator or the step is not one of a tape.
    """

    system: System
    denominator: int = 16
    millimetre_step: Nm = MILLIMETRE

    def __post_init__(self) -> None:
        """Refuse what is on no tape."""
        if self.denominator not in {1, 2, 4, 8, 16, 32, FINEST_DENOMINATOR}:
            msg = f"a tape is read to halves, quarters and so on up to 64ths, not to 1/{self.denominator} in"
            raise ValueError(msg)
        if self.millimetre_step not in {MILLIMETRE, MILLIMETRE // 2}:
            msg = f"a metric tape is read to 1 mm or 0.5 mm, not to {self.millimetre_step} nm"
            raise ValueError(msg)

    @property
    def step_nm(self) -> Nm:
        """Smallest step that is written. [nm]"""
        return self.millimetre_step if self.system is System.METRIC else INCH // self.denominator


def round_down(nm: Nm, step: Nm) -> Nm:
    """Round a length down to a whole number of steps, as stock is rounded.

    Parameters
    ----------
    nm
        The length; a negative one goes away from zero. [nm]
    step
        The step, over zero. [nm]

    Returns
    -------
    The rounded length. [nm]

    Raises
    ------
    ValueError
        If the step is not over zero.
    """
    return nm // _checked(step) * step


def round_up(nm: Nm, step: Nm) -> Nm:
    """Round a length up to a whole number of steps, as need is rounded.

    Parameters
    ----------
    nm
        The length; a negative one goes towards zero. [nm]
    step
        The step, over zero. [nm]

    Returns
    -------
    The rounded length. [nm]

    Raises
    ------
    ValueError
        If the step is not over zero.
    """
    return -(-nm // _checked(step)) * step


def round_nearest(nm: Nm, step: Nm) -> Nm:
    """Round a length to the nearest whole number of steps, and from half-way up.

    Parameters
    ----------
    nm
        The length. [nm]
    step
        The step, over zero. [nm]

    Returns
    -------
    The rounded length. [nm]

    Raises
    ------
    ValueError
        If the step is not over zero.
    """
    return (2 * nm + _checked(step)) // (2 * step) * step


def _checked(step: Nm) -> Nm:
    if step <= 0:
        msg = f"a length is rounded to steps over zero, not of {step} nm"
        raise ValueError(msg)
    return step

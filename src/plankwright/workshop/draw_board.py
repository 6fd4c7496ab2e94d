"""Draw a board of the pile, to look at and to tap on."""

from dataclasses import dataclass

from plankwright.draw.plain_board import plain_board
from plankwright.draw.svg import write_svg
from plankwright.measure import INCH, MILLIMETRE, Nm, System, TapeStyle
from plankwright.model import Board

_THUMB = {System.IMPERIAL: ("in", INCH, "0.5"), System.METRIC: ("mm", MILLIMETRE, "10")}
"""Unit of a place that is tapped, its size [nm], and how finely a thumb finds it on a phone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TapScale:
    """What a tap on a drawing means.

    Parameters
    ----------
    length
        How long what is drawn is, in the unit.
    unit, step
        The unit, and to how much of it places are rounded.
    """

    length: str
    unit: str
    step: str


def tap_scale(length_nm: Nm, tape: TapeStyle) -> TapScale:
    """Say what a tap on the drawing of a board means.

    Parameters
    ----------
    length_nm
        Length of the board. [nm]
    tape
        How lengths are written.
    """
    unit, size, step = _THUMB[tape.system]
    return TapScale(length=f"{length_nm / size:.4f}", unit=unit, step=step)


def draw_board(board: Board, tape: TapeStyle) -> str:
    """Draw a board with its flaws, its marked end at the left.

    Parameters
    ----------
    board
        The board.
    tape
        How lengths are written.

    Returns
    -------
    str
        An SVG file.
    """
    return write_svg(plain_board(board, tape))

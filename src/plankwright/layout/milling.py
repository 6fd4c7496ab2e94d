"""What the milling of a board is once a piece is cut from it, and what interlocks."""

from dataclasses import dataclass
from enum import Enum

from plankwright.layout.ground import HAIR
from plankwright.measure import Nm
from plankwright.model import Board, EdgeKind


class Shape(Enum):
    """What a neighbour meets; an over-lap is a tongue here, an under-lap a groove."""

    SQUARE = 0
    TONGUE = 1
    GROOVE = 2


@dataclass(frozen=True, slots=True)
class LongEdge:
    """How the board is milled at a long edge once the piece is cut.

    Parameters
    ----------
    kind, reach
        Of the board. [nm]
    shape
        What is left of it at this edge.
    """

    kind: EdgeKind
    reach: Nm
    shape: Shape


def edge_as_cut(board: Board, across_from: Nm, across_to: Nm, *, far: bool, turned: bool) -> LongEdge:
    """Tell what is left of the milling: the reference edge is grooved, and lies near on an unturned piece.

    Parameters
    ----------
    board
        The board.
    across_from, across_to
        Where the piece lies across it, from the reference edge. [nm]
    far
        Whether the edge is the one farther from the start side.
    turned
        Whether the piece hangs turned.
    """
    if far is not turned:
        shape = Shape.TONGUE
        whole = not board.tapered and abs(board.width_start_nm - across_to) <= HAIR
    else:
        shape, whole = Shape.GROOVE, across_from <= HAIR
    profile = board.profile
    return LongEdge(profile.kind, profile.reach_nm, shape if profile.milled and whole else Shape.SQUARE)


def interlocks(tongue: LongEdge, other: LongEdge) -> bool:
    """Say whether an edge is a tongue that fits into another.

    A groove may be deeper than the tongue, a rabbet must be as wide as the lap.
    """
    if tongue.shape is not Shape.TONGUE or other.shape is not Shape.GROOVE or other.kind is not tongue.kind:
        return False
    if tongue.kind is EdgeKind.SHIPLAP:
        return abs(other.reach - tongue.reach) <= HAIR
    return tongue.reach <= other.reach + HAIR

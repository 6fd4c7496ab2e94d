"""The cut list as values: what is done to each board, in order, and what is left of it.

These follow from a job and a layout; the room `layout` derives them.
"""

from dataclasses import dataclass
from enum import StrEnum

from plankwright.measure import Nm
from plankwright.model.standing import Part
from plankwright.model.surface import Point, Rectangle


class CutKind(StrEnum):
    """How the saw goes through the board."""

    CROSSCUT = "crosscut"
    RIP = "rip"
    ANGLED = "angled crosscut"
    TAPER_RIP = "taper rip"
    NOTCH = "notch"


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """One pass of a saw, or one notch.

    A crosscut and a rip stand at one mark, and the blade goes on the far side of it, so the kerf comes out of
    what lies beyond. An angled crosscut, a taper rip and a notch follow the finished line of a piece, and the
    blade goes on the side of the waste.

    Parameters
    ----------
    kind
        How the saw goes through the board.
    at_nm
        Where to mark: for crosscuts from the marked end of the board along it, for rips across it from the
        reference edge. [nm]
    other_at_nm
        The mark where the cut ends, if it is another one: on the long edge farther from the reference edge
        for an angled crosscut, farther from the marked end for a taper rip, the end of a notch along the
        board; equal to `at_nm` when the cut is square. [nm]
    from_nm, to_nm
        How far the blade goes: from where to where across the board for a crosscut or a notch, along it for
        a rip. [nm]
    angle_mdeg
        How far an angled crosscut leans from square. [thousandths of a degree]
    yields
        Labels of the pieces that this cut frees.
    notch
        For a notch: its rectangle, measured from the left end and the lower edge of the piece as hung.
    label
        The piece whose line a cut follows; empty for the square cuts that part a board.
    what
        What a cut that frees nothing is for, or what a notch goes around.
    """

    kind: CutKind
    at_nm: Nm
    other_at_nm: Nm
    from_nm: Nm
    to_nm: Nm
    angle_mdeg: int = 0
    yields: tuple[str, ...] = ()
    notch: Rectangle | None = None
    label: str = ""
    what: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Offcut:
    """What is left of a board and still of use.

    Parameters
    ----------
    board_id
        The board that it is left of.
    along_from_nm, along_to_nm, across_from_nm, across_to_nm
        Where it lay on the board. [nm]
    """

    board_id: str
    along_from_nm: Nm
    along_to_nm: Nm
    across_from_nm: Nm
    across_to_nm: Nm

    @property
    def length_nm(self) -> Nm:
        """[nm]."""
        return self.along_to_nm - self.along_from_nm

    @property
    def width_nm(self) -> Nm:
        """[nm]."""
        return self.across_to_nm - self.across_from_nm


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardCuts:
    """Everything that is done to one board at the saw, or to a part of one that was sawn before.

    Parameters
    ----------
    board_id
        The board.
    cuts
        In the order of work.
    piece_labels
        The pieces that come out of it, with the surface when the job has several.
    offcuts
        What is left and worth keeping.
    part
        The part of a board that was sawn before; nothing for a board as it lies in the pile.
    written
        What is written on that part, if it was cut as a piece.
    """

    board_id: str
    cuts: tuple[Cut, ...]
    piece_labels: tuple[str, ...]
    offcuts: tuple[Offcut, ...]
    part: Part | None = None
    written: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class HungPiece:
    """A piece as it looks on the surface, once every cut is made.

    Parameters
    ----------
    label, board_id
        As in the layout.
    shape
        Corners anticlockwise, in the frame of the surface, notches cut out. A hole that reaches no
        edge of the piece stands among the notches only. A piece that an opening or a
        slope parts in two has the corners of its largest part here.
    long_point_nm, short_point_nm
        Length along the course at its longest and at its shortest edge. [nm]
    width_left_nm, width_right_nm
        Width across the course at the two ends, unequal on a tapered piece. [nm]
    notches
        In the frame of the surface, each with what it goes around.
    """

    label: str
    board_id: str
    shape: tuple[Point, ...]
    long_point_nm: Nm
    short_point_nm: Nm
    width_left_nm: Nm
    width_right_nm: Nm
    notches: tuple[tuple[Rectangle, str], ...] = ()

"""A piece as a person holds it up: its left and right ends, its lower and upper edges.

On courses that run up the wall the piece is told the same way, its sides being its left and right ones.
"""

from dataclasses import dataclass

from plankwright.draw.boards import Finished
from plankwright.layout.shaping import Workpiece
from plankwright.measure import Nm, TapeStyle, write_inches
from plankwright.model import (
    Board,
    Direction,
    Edge,
    EdgeKind,
    EdgeTreatment,
    Face,
    HungPiece,
    Piece,
    Point,
    Surface,
)

EDGES = {
    Edge.BOTTOM: ("lower", "upper"),
    Edge.TOP: ("upper", "lower"),
    Edge.LEFT: ("left", "right"),
    Edge.RIGHT: ("right", "left"),
}
"""For each start side, what its near and its far edge are called."""

FIRM = "\N{NO-BREAK SPACE}"
"""A space that no line breaks at."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AsHung:
    """A piece in its place on a surface.

    Parameters
    ----------
    surface, piece
        The place and the piece.
    board
        What it is cut from.
    hung
        Its shape there.
    tape
        How lengths are written.
    """

    surface: Surface
    piece: Piece
    board: Board
    hung: HungPiece
    tape: TapeStyle

    @property
    def level(self) -> bool:
        """Whether the piece lies level."""
        return self.surface.courses_run is Direction.HORIZONTAL

    @property
    def ends(self) -> tuple[str, str]:
        """Names of its first and its last end along the course."""
        return ("left", "right") if self.level else ("lower", "upper")

    @property
    def edges(self) -> tuple[str, str]:
        """Names of its near and its far edge, the near one being nearest to the start side."""
        return EDGES[self.surface.start]

    @property
    def length_nm(self) -> Nm:
        """Of its blank. [nm]"""
        return self.piece.along_to_nm - self.piece.along_from_nm

    @property
    def width_nm(self) -> Nm:
        """Of its blank. [nm]"""
        return self.piece.across_to_nm - self.piece.across_from_nm

    @property
    def size(self) -> str:
        """Its length and width; to the long and the short point, LP and SP, where an end is angled."""
        length, width = self.firm(self.length_nm), self.firm(self.width_nm)
        long_point, short_point = self.firm(self.hung.long_point_nm), self.firm(self.hung.short_point_nm)
        if self.hung.short_point_nm == 0:
            length = f"{long_point}{FIRM}LP, to{FIRM}a{FIRM}point"
        elif short_point != long_point:
            length = f"{long_point}{FIRM}LP, {short_point}{FIRM}SP"
        return f"{length} ×{FIRM}{width}"

    @property
    def how(self) -> str:
        """Which way the board hangs: where its marked end is, and which face shows."""
        end = self.ends[1 if self.piece.marked_end_last(self.surface.start) else 0]
        back = ", back face showing" if self.piece.face is Face.BACK else ""
        return f"marked end {'to the ' if self.level else ''}{end if self.level else _UP_OR_DOWN[end]}{back}"

    @property
    def board_edges(self) -> tuple[str, str]:
        """How its edges hang: the one nearer to the reference edge of its board, and the other."""
        near, far = self.edges
        return (far, near) if self.piece.turned else (near, far)

    def inches(self, nm: Nm) -> str:
        """Write a length all in inches, or in millimetres."""
        return write_inches(nm, self.tape)

    def firm(self, nm: Nm) -> str:
        """Write it so that no line breaks within it."""
        return self.inches(nm).replace(" ", FIRM)

    def both_widths(self) -> str:
        """Say how wide it is at either end."""
        first, last = self.ends
        left, right = self.inches(self.hung.width_left_nm), self.inches(self.hung.width_right_nm)
        return f"{left} wide at the {first} end, {right} at the {last} end"

    def from_corner(self, along: Nm, across: Nm) -> Point:
        """Give where a point of the board is on the piece as hung: from its left, and from below. [nm]"""
        piece = self.piece
        last = piece.marked_end_last(self.surface.start)
        u = piece.along_to_nm - along if last else along - piece.along_from_nm
        v = piece.across_to_nm - across if piece.turned else across - piece.across_from_nm
        if self.surface.start in {Edge.TOP, Edge.RIGHT}:
            v = self.width_nm - v
        return (u, v) if self.level else (v, u)

    @property
    def work(self) -> Workpiece:
        """The same as it lies at the bench."""
        return Workpiece(
            label=self.piece.label,
            piece=self.piece,
            hung=self.hung,
            surface=self.surface,
            profile=self.board.profile,
        )

    def finished(self) -> Finished:
        """Give what it looks like on its board once every cut is made."""
        return Finished(
            corners=tuple(self.work.on_board(corner) for corner in self.hung.shape),
            notches=tuple(
                (
                    self.work.on_board((place.left, place.bottom)),
                    self.work.on_board((place.right, place.top)),
                )
                for place, _ in self.hung.notches
            ),
        )

    def treatments(self, *which: EdgeTreatment) -> tuple[str, ...]:
        """Say what is done with its long edges, where it is one of the treatments asked for."""
        lapped = self.board.profile.kind is EdgeKind.SHIPLAP
        of_edge = zip(self.edges, (self.piece.near, self.piece.far), strict=True)
        return tuple(
            f"{name} edge {treatment.replace('tongue', 'lap') if lapped else treatment}"
            for name, treatment in of_edge
            if treatment in which
        )


_UP_OR_DOWN = {"lower": "down", "upper": "up"}

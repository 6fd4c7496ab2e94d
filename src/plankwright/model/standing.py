"""How far a job has come: what hangs, what is cut, what is left of the boards that were sawn, what is lost.

These are facts, not plans. Whatever is laid out from here on takes them as they are.
"""

from dataclasses import dataclass

from plankwright.measure import Nm
from plankwright.model.layout import Course, Piece
from plankwright.model.validity import demand


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A rectangle of a board that is a piece of wood of its own by now.

    Parameters
    ----------
    board_id
        The board that it is of.
    along_from_nm, along_to_nm
        Where it lay along the board, from the marked end. [nm]
    across_from_nm, across_to_nm
        Where it lay across the board, from the reference edge. [nm]
    """

    board_id: str
    along_from_nm: Nm
    along_to_nm: Nm
    across_from_nm: Nm
    across_to_nm: Nm

    def __post_init__(self) -> None:
        demand(self.along_from_nm < self.along_to_nm, "what is left has no length", field="length")
        demand(self.across_from_nm < self.across_to_nm, "what is left has no width", field="width")

    @property
    def length_nm(self) -> Nm:
        """[nm]."""
        return self.along_to_nm - self.along_from_nm

    @property
    def width_nm(self) -> Nm:
        """[nm]."""
        return self.across_to_nm - self.across_from_nm

    def holds(self, other: "Part") -> bool:
        """Whether another part of the same board lies inside this one."""
        return (
            self.board_id == other.board_id
            and self.along_from_nm <= other.along_from_nm
            and other.along_to_nm <= self.along_to_nm
            and self.across_from_nm <= other.across_from_nm
            and other.across_to_nm <= self.across_to_nm
        )

    def meets(self, other: "Part") -> bool:
        """Whether another part has any wood in common with this one."""
        return (
            self.board_id == other.board_id
            and self.along_from_nm < other.along_to_nm
            and other.along_from_nm < self.along_to_nm
            and self.across_from_nm < other.across_to_nm
            and other.across_from_nm < self.across_to_nm
        )


def part_of(piece: Piece) -> Part:
    """Give the rectangle of its board that a piece is cut to."""
    return Part(
        board_id=piece.board_id,
        along_from_nm=piece.along_from_nm,
        along_to_nm=piece.along_to_nm,
        across_from_nm=piece.across_from_nm,
        across_to_nm=piece.across_to_nm,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class CutPiece:
    """A piece that is cut and does not hang.

    Parameters
    ----------
    surface_id
        The surface that it was cut for.
    piece
        As it was laid out, with the label that is written on it; what of its board it is, as it was cut.
    plain
        Whether it is just a rectangle. Otherwise it has the slopes and notches that its place asked for.
    """

    surface_id: str
    piece: Piece
    plain: bool = False

    @property
    def key(self) -> tuple[str, str]:
        """Its surface and its label."""
        return self.surface_id, self.piece.label

    @property
    def part(self) -> Part:
        """What of its board it is."""
        return part_of(self.piece)


@dataclass(frozen=True, slots=True, kw_only=True)
class HungCourse:
    """A course of which some pieces hang, or all.

    Parameters
    ----------
    surface_id
        The surface.
    course
        The pieces that hang, in the places where they do, between the edges that were measured.
    """

    surface_id: str
    course: Course

    def __post_init__(self) -> None:
        demand(bool(self.course.pieces), "nothing of the course hangs", field="pieces")
        demand(self.course.from_nm < self.course.to_nm, "the course has no height", field="to")


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """How far a job has come.

    Parameters
    ----------
    hung
        What hangs.
    cut
        What is cut and does not hang.
    left
        What is left, besides pieces, of the boards that were sawn or broke.
    sawn
        Those boards: nothing else is left of them.
    lost
        Those among them of which everything is lost that was not cut by then.
    """

    hung: tuple[HungCourse, ...] = ()
    cut: tuple[CutPiece, ...] = ()
    left: tuple[Part, ...] = ()
    sawn: tuple[str, ...] = ()
    lost: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        keys = [(row.surface_id, piece.label) for row in self.hung for piece in row.course.pieces]
        keys += [cut.key for cut in self.cut]
        demand(len(set(keys)) == len(keys), "two pieces of a surface bear one label", field="label")
        known = set(self.sawn)
        parts = [*self.left, *(cut.part for cut in self.cut)]
        demand(
            {part.board_id for part in parts} | set(self.lost) <= known,
            "something is left of a board that was never sawn",
            field="sawn",
        )
        by_board: dict[str, list[Part]] = {}
        for part in parts:
            before = by_board.setdefault(part.board_id, [])
            demand(
                not any(part.meets(other) for other in before),
                f"two parts that are left of board {part.board_id} have wood in common",
                field="left",
            )
            before.append(part)

    @property
    def begun(self) -> bool:
        """Whether anything was done yet."""
        return bool(self.hung or self.sawn)

    def hung_on(self, surface_id: str) -> tuple[Course, ...]:
        """Give the courses of a surface of which something hangs, from the start side on."""
        courses = (row.course for row in self.hung if row.surface_id == surface_id)
        return tuple(sorted(courses, key=lambda course: course.from_nm))

    def hung_labels(self, surface_id: str) -> frozenset[str]:
        """Give the labels of the pieces of a surface that hang."""
        return frozenset(self.hung_pieces(surface_id))

    def hung_pieces(self, surface_id: str) -> dict[str, Piece]:
        """Give the pieces of a surface that hang, as they do, by their labels."""
        return {piece.label: piece for course in self.hung_on(surface_id) for piece in course.pieces}

    def parts_of(self, board_id: str) -> tuple[Part, ...]:
        """Give what is left of a board that was sawn: pieces that are cut and do not hang among it."""
        every = (*self.left, *(cut.part for cut in self.cut))
        return tuple(part for part in every if part.board_id == board_id)


NOTHING_DONE = Standing()
"""A job that nobody has begun."""

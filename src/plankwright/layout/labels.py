"""What is written on each piece: its course and a letter, and nothing else once it is written."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import count
from string import ascii_lowercase

from plankwright.layout.ground import HAIR
from plankwright.measure import Nm
from plankwright.model import Course, Part, Piece, Rectangle, part_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Naming:
    """What labels are in use already.

    Parameters
    ----------
    in_hand
        The labels on pieces that are cut and do not hang, by what of its board each is.
    before
        The courses of the layout that the job was worked by.
    upright
        Whether courses are vertical.
    """

    in_hand: Mapping[Part, str] = field(default_factory=dict)
    before: Sequence[Course] = ()
    upright: bool = False


NOTHING_NAMED = Naming()


def letters(index: int) -> str:
    """Give the letters of the piece at a place along its course: a to z, then aa, ab and so on.

    Parameters
    ----------
    index
        Place along the course, from 0.
    """
    ahead, last = divmod(index, len(ascii_lowercase))
    return (letters(ahead - 1) if ahead else "") + ascii_lowercase[last]


def name_pieces(courses: Sequence[Course], naming: Naming = NOTHING_NAMED) -> tuple[Course, ...]:
    """Give each piece without a label one that no other piece of the surface bears.

    A piece that is in hand keeps what is written on it, whatever course it hangs in now. One that takes the
    place of another, or is the same wood in the same course, takes its label. Any other gets letters that no
    piece of that course had before, so that nobody takes it for one that is on an older sheet.

    Parameters
    ----------
    courses
        Numbered, with labels on what hangs already and empty ones else.
    naming
        What is in use already.

    Returns
    -------
    tuple of Course
        The same with labels.
    """
    used = {piece.label for course in courses for piece in course.pieces if piece.label}
    reserved = used | set(naming.in_hand.values())
    kept = {
        part_of(piece): label
        for course in courses
        for piece in course.pieces
        if not piece.label and (label := naming.in_hand.get(part_of(piece))) and label not in used
    }
    old = {course.number: course.pieces for course in naming.before}
    named = []
    for course in courses:
        before = old.get(course.number, ())
        pieces = []
        for piece in course.pieces:
            label = piece.label or kept.get(part_of(piece))
            if label is None:
                in_place = (other for other in before if _same_place(naming, other.place, piece.place))
                alike = (*in_place, *_same_wood(piece, before), *_same_board(naming, piece, before))
                label = next(_choices(course.number, alike, before, reserved))
                reserved.add(label)
            pieces.append(replace(piece, label=label))
        named.append(replace(course, pieces=tuple(pieces)))
    return tuple(named)


def _choices(
    number: int, alike: Sequence[Piece], before: Sequence[Piece], reserved: set[str]
) -> Iterator[str]:
    yield from (other.label for other in alike if other.label not in reserved)
    taken = reserved | {other.label for other in before}
    yield from (label for index in count() if (label := f"{number}{letters(index)}") not in taken)


def _same_wood(piece: Piece, before: Sequence[Piece]) -> Iterator[Piece]:
    return (other for other in before if part_of(other) == part_of(piece))


def _same_board(naming: Naming, piece: Piece, before: Sequence[Piece]) -> Iterator[Piece]:
    """Give the pieces of the same board that hang in nearly the same place."""
    start, end = _ends(naming, piece.place)
    for other in before:
        first, last = _ends(naming, other.place)
        if other.board_id == piece.board_id and 2 * (min(end, last) - max(start, first)) > end - start:
            yield other


def _ends(naming: Naming, place: Rectangle) -> tuple[Nm, Nm]:
    return (place.bottom, place.top) if naming.upright else (place.left, place.right)


def _same_place(naming: Naming, one: Rectangle, other: Rectangle) -> bool:
    """Whether two pieces of a course reach from and to the same places along it, rounding aside."""
    return all(abs(a - b) <= HAIR for a, b in zip(_ends(naming, one), _ends(naming, other), strict=True))

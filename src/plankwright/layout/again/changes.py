"""What is different between the layout that a job was worked by and the one that it goes on by."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import TypeAlias

from plankwright.layout.ground import HAIR
from plankwright.layout.regions import extent_in_course
from plankwright.measure import Nm
from plankwright.model import Job, Layout, Part, Piece, Standing, part_of


class ChangeKind(StrEnum):
    """What becomes of a piece that does not hang yet."""

    SAME = "same"
    OTHER_SIZE = "other size"
    MOVED = "moved"
    OTHER_BOARD = "other board"
    NEW = "new"
    NOT_NEEDED = "no longer needed"
    GONE = "gone"


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """What becomes of one piece.

    Parameters
    ----------
    kind
        What becomes of it.
    surface_id
        Its surface now, or before when it is no longer needed.
    before, after
        The piece in both layouts; nothing in the one that does not have it.
    cut
        Whether it is cut already.
    shifted_nm
        How much farther from the start side it hangs now. [nm]
    """

    kind: ChangeKind
    surface_id: str
    before: Piece | None
    after: Piece | None
    cut: bool = False
    shifted_nm: Nm = 0

    @property
    def moves_something(self) -> bool:
        """Whether anything but its height is different."""
        return self.kind is not ChangeKind.SAME


@dataclass(frozen=True, slots=True)
class _Placed:
    """A piece where it hangs in the frame of its courses.

    Besides: whether a layout has it, whether its wood is there, and whether it is cut.
    """

    surface_id: str
    piece: Piece
    along: tuple[Nm, Nm]
    across: tuple[Nm, Nm]
    in_layout: bool = True
    there: bool = True
    cut: bool = False


def changes_between(
    job: Job, before: Layout, after: Layout, standing: Standing, *, by_place: bool = False
) -> tuple[Change, ...]:
    """Compare two layouts piece by piece, those aside that hang.

    Parameters
    ----------
    job
        The job of both.
    before, after
        The layout that it was worked by, and the one that it goes on by.
    standing
        How far it has come.
    by_place
        Whether a piece that is not cut yet is known by where it hangs before it is known by its wood. Where
        boards are exchanged, pieces are of other boards then; else they hang elsewhere now.

    Returns
    -------
    tuple of Change
        In the order of the new layout; then what is gone or no longer needed, in the order of the old one.
    """
    in_hand = {cut.key: cut for cut in standing.cut}
    old = [
        replace(one, piece=in_hand[key].piece, cut=True)
        if (key := (one.surface_id, one.piece.label)) in in_hand
        else one
        for one in _placed(job, before, standing)
    ]
    known = {(one.surface_id, one.piece.label) for one in old}
    old += [
        replace(_place(job, cut.surface_id, cut.piece), in_layout=False, cut=True)
        for cut in standing.cut
        if cut.key not in known
    ]
    boards = {board.id for board in job.boards}
    old = [replace(one, there=one.piece.board_id in boards and _there(standing, one.piece)) for one in old]
    new = list(_placed(job, after, standing))
    pairs: dict[int, tuple[ChangeKind, _Placed]] = {}
    for kind, alike in _WAYS_BY_PLACE if by_place else _WAYS:
        for number, one in enumerate(new):
            if number in pairs:
                continue
            match = next((other for other in old if alike(other, one)), None)
            if match is not None:
                old.remove(match)
                pairs[number] = kind, match
    cut_parts = {cut.part for cut in standing.cut}
    changes = [_change(one, pairs.get(number), cut_parts) for number, one in enumerate(new)]
    changes += [
        Change(
            kind=ChangeKind.NOT_NEEDED if one.there else ChangeKind.GONE,
            surface_id=one.surface_id,
            before=one.piece,
            after=None,
            cut=part_of(one.piece) in cut_parts,
        )
        for one in old
        if one.in_layout
    ]
    return tuple(changes)


def _change(one: _Placed, found: tuple[ChangeKind, _Placed] | None, cut_parts: set[Part]) -> Change:
    if found is None:
        return Change(kind=ChangeKind.NEW, surface_id=one.surface_id, before=None, after=one.piece)
    kind, other = found
    return Change(
        kind=kind,
        surface_id=one.surface_id,
        before=other.piece,
        after=one.piece,
        cut=part_of(other.piece) in cut_parts,
        shifted_nm=one.across[0] - other.across[0] if kind is not ChangeKind.MOVED else 0,
    )


def _placed(job: Job, layout: Layout, standing: Standing) -> Iterator[_Placed]:
    for laid in layout.surfaces:
        hanging = standing.hung_labels(laid.surface_id)
        for piece in laid.pieces:
            if piece.label not in hanging:
                yield _place(job, laid.surface_id, piece)


def _place(job: Job, surface_id: str, piece: Piece) -> _Placed:
    start, end, low, high = extent_in_course(job.surface(surface_id), piece.place)
    return _Placed(surface_id, piece, (start, end), (low, high))


def _there(standing: Standing, piece: Piece) -> bool:
    """Whether the wood of a piece is still there."""
    if piece.board_id not in standing.sawn:
        return True
    return any(part.holds(part_of(piece)) for part in standing.parts_of(piece.board_id))


def _same_place(one: _Placed, other: _Placed) -> bool:
    """Whether two pieces reach from and to the same places along courses that are one for the most part."""
    common = min(one.across[1], other.across[1]) - max(one.across[0], other.across[0])
    least = min(one.across[1] - one.across[0], other.across[1] - other.across[0])
    return (
        one.in_layout
        and one.surface_id == other.surface_id
        and abs(one.along[0] - other.along[0]) <= HAIR
        and abs(one.along[1] - other.along[1]) <= HAIR
        and 2 * common > least
    )


def _same_course_and_board(one: _Placed, other: _Placed) -> bool:
    """Whether two pieces of a board, of unequal size, hang at one place for the most part."""
    along = min(one.along[1], other.along[1]) - max(one.along[0], other.along[0])
    across = min(one.across[1], other.across[1]) - max(one.across[0], other.across[0])
    return (
        one.in_layout
        and one.there
        and one.surface_id == other.surface_id
        and one.piece.board_id == other.piece.board_id
        and part_of(one.piece) != part_of(other.piece)
        and 2 * along > other.along[1] - other.along[0]
        and 2 * across > other.across[1] - other.across[0]
    )


def _same(one: _Placed, other: _Placed) -> bool:
    return (
        _same_place(one, other)
        and one.there
        and one.piece.board_id == other.piece.board_id
        and abs(part_of(one.piece).width_nm - part_of(other.piece).width_nm) <= HAIR
    )


def _same_wood(one: _Placed, other: _Placed) -> bool:
    return part_of(one.piece).meets(part_of(other.piece))


def _cut_to_it(one: _Placed, other: _Placed) -> bool:
    return one.cut and _same_wood(one, other)


_Ways: TypeAlias = Sequence[tuple[ChangeKind, Callable[[_Placed, _Placed], bool]]]

_WAYS: _Ways = (
    (ChangeKind.SAME, _same),
    (ChangeKind.OTHER_SIZE, _same_course_and_board),
    (ChangeKind.MOVED, _same_wood),
    (ChangeKind.OTHER_BOARD, _same_place),
)
"""In which way a piece of the old layout can be one of the new, the nearest first."""

_WAYS_BY_PLACE: _Ways = (
    (ChangeKind.SAME, _same),
    (ChangeKind.OTHER_SIZE, _same_course_and_board),
    (ChangeKind.MOVED, _cut_to_it),
    (ChangeKind.OTHER_BOARD, _same_place),
    (ChangeKind.MOVED, _same_wood),
)

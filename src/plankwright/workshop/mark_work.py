"""Mark what happened while a job is worked on: cut, hung, broke, cut wrong, taken down, lost."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import ClassVar

from plankwright.errors import ExitCode, PlankwrightError
from plankwright.layout.parting import PieceKey, part_boards
from plankwright.layout.sawing import sawn_from
from plankwright.measure import Nm
from plankwright.model import (
    CutPiece,
    InvalidValueError,
    Job,
    Layout,
    Mark,
    MarkKind,
    Part,
    Piece,
    SawnBoard,
    Work,
    part_of,
)
from plankwright.workshop.find_pieces import Found, find_pieces
from plankwright.workshop.hang_courses import Measured, hang_courses
from plankwright.workshop.wording import listed

__all__ = ["MarkError", "Measured", "begin_work", "mark_work"]


class MarkError(PlankwrightError, ValueError):
    """A mark that cannot be made; the message says why, and what to do."""

    exit_code: ClassVar[int] = ExitCode.BAD_INPUT


class WoodGoneError(MarkError):
    """A piece is marked that the layout takes from wood that is no longer there.

    Parameters
    ----------
    label, board_id
        The piece, and the board that it was to come from.
    """

    def __init__(self, label: str, board_id: str) -> None:
        self.label, self.board_id = label, board_id
        super().__init__(
            f"{label} is laid out from wood of board {board_id} that is no longer there: "
            "lay out anew first, with “plankwright now”."
        )

    def __reduce__(self) -> tuple[type["WoodGoneError"], tuple[str, str]]:
        """Rebuild from the names, not from the message, when the error comes from another process."""
        return type(self), (self.label, self.board_id)


@dataclass(frozen=True, slots=True, kw_only=True)
class Happened:
    """What somebody says has happened.

    Parameters
    ----------
    kind
        What happened.
    names
        Labels of pieces, numbers of courses for all pieces of one, or ids of boards that are lost.
    surface_id
        The surface of those pieces, where a name alone could be of several.
    measured
        Where a hung course ends, when that was measured.
    length_nm, width_nm
        Of a piece that was cut wrong, as far as they are not those of the layout. [nm]
    """

    kind: MarkKind
    names: tuple[str, ...]
    surface_id: str | None = None
    measured: Measured | None = None
    length_nm: Nm | None = None
    width_nm: Nm | None = None


class WorkBegunError(PlankwrightError, ValueError):
    """A search from scratch would not heed what is done."""

    exit_code: ClassVar[int] = ExitCode.BAD_INPUT
    default_message: ClassVar[str] = (
        "Work on this job has begun, and a search from scratch would not heed it: “plankwright now” lays out "
        "what is left and says whether it is enough. To lay it all out anew all the same, use “plankwright "
        "lay” with another folder as --out."
    )


def demand_not_begun(work: Work | None) -> None:
    """Refuse to search a job from scratch where that would be taken for what is to be done now.

    Raises
    ------
    WorkBegunError
        If anything was cut, hung or lost.
    """
    if work is not None and work.standing.begun:
        raise WorkBegunError


def begin_work(job: Job) -> Work:
    """Give the work on a job that nobody has begun."""
    return Work(job_name=job.name, boards=tuple(board.id for board in job.boards))


def mark_work(job: Job, layout: Layout, work: Work, happened: Happened) -> Work:
    """Mark what happened.

    Parameters
    ----------
    job
        The job.
    layout
        The layout that it is worked by.
    work
        What was marked before.
    happened
        What happened since.

    Returns
    -------
    Work
        The same with one mark more.

    Raises
    ------
    MarkError
        If it cannot have happened, or is marked already.
    """
    if not happened.names:
        raise MarkError("Say which: labels such as 4b, numbers of courses, or ids of boards that are lost.")
    marking = _Marking(job, layout, work, happened)
    try:
        marked = work.marked(_MARKERS[happened.kind](marking))
        _ = marked.standing
    except InvalidValueError as trouble:
        raise MarkError(f"That does not go with what is marked already: {trouble}.") from trouble
    return marked


class _Marking:
    """One mark in the making."""

    def __init__(self, job: Job, layout: Layout, work: Work, happened: Happened) -> None:
        self.job, self.layout, self.happened = job, layout, happened
        self.standing = work.standing
        self.in_hand = {cut.key: cut for cut in self.standing.cut}
        self.hanging: dict[PieceKey, Piece] = {
            (row.surface_id, piece.label): piece for row in self.standing.hung for piece in row.course.pieces
        }

    def cut(self) -> Mark:
        """Take pieces for free that came out as the layout has them."""
        found = self._found()
        done = [one for one in found if one.key in self.hanging or self._as_cut(one)]
        again = [one for one in done if one.by_label]
        if again or len(done) == len(found):
            told = again or found
            raise MarkError(f"{_names(told)} {_are(told)} marked as cut already.")
        chosen = [one for one in found if one not in done]
        cut = (CutPiece(surface_id=one.surface_id, piece=one.piece) for one in chosen)
        return replace(self._freed(chosen), cut=tuple(cut))

    def hung(self) -> Mark:
        """Take pieces for hung, cut just before if they were not yet; or measure a course that hangs."""
        measured = self.happened.measured
        found = self._found()
        courses = {(one.surface_id, one.course.number) for one in found}
        if measured is not None and len(courses) > 1:
            raise MarkError("One edge was measured, but several courses are named: mark one at a time.")
        chosen = [one for one in found if one.key not in self.hanging]
        if not chosen and measured is None:
            raise MarkError(f"{_names(found)} {_are(found)} marked as hung already.")
        sawn = self._freed([one for one in chosen if not self._as_cut(one)])
        hung = hang_courses(self.job, self.layout, self.standing, found, measured)
        return replace(sawn, hung=hung)

    def broke(self) -> Mark:
        """Leave out pieces that are no more, whether they hung, were in hand or were just being cut."""
        at_hand = self._keys_at_hand()
        found = self._found(besides=at_hand)
        known = {*self.hanging, *self.in_hand}
        sawn = self._freed([one for one in found if one.key not in known])
        gone = (*sawn.gone, *at_hand, *(one.key for one in found if one.key in known))
        return replace(sawn, gone=tuple(dict.fromkeys(gone)))

    def miscut(self) -> Mark:
        """Take a piece that came out in another size than laid out for the plain rectangle that it is."""
        length, width = self.happened.length_nm, self.happened.width_nm
        if length is None and width is None:
            raise MarkError("Say what size the piece has now: --length, --width or both.")
        if len(self.happened.names) > 1:
            raise MarkError("Pieces that were cut wrong are marked one at a time, each with its own size.")
        keys = self._keys_at_hand()
        if keys and keys[0] in self.hanging:
            raise MarkError(f"{keys[0][1]} hangs: mark it as taken down first, with the word down.")
        before = self.in_hand[keys[0]] if keys else None
        if before is None:
            (one,) = self._single()
            before = CutPiece(surface_id=one.surface_id, piece=one.piece)
        piece = _resized(before.piece, length, width)
        whole = self._source(before)
        if whole is not None and not whole.holds(part_of(piece)):
            raise MarkError(f"{piece.label} cannot be larger than what it was cut from: measure it again.")
        after = CutPiece(surface_id=before.surface_id, piece=piece, plain=True)
        if before.key in self.in_hand:
            return self._mark(cut=(after,))
        return replace(self._freed_as({before.key: part_of(piece)}), cut=(after,))

    def down(self) -> Mark:
        """Take down pieces that hung, whole."""
        found = [key for key in self._keys_at_hand() if key in self.hanging]
        if not found:
            raise MarkError(f"{listed(self.happened.names)} is not marked as hung.")
        # Its slopes and notches are those of the place that it was cut for, wherever it came to hang.
        laid = {
            (laid.surface_id, piece.label): piece for laid in self.layout.surfaces for piece in laid.pieces
        }
        cut = []
        for key in found:
            fact, planned = self.hanging[key], laid.get(key)
            same = planned is not None and part_of(planned) == part_of(fact)
            cut.append(CutPiece(surface_id=key[0], piece=planned if planned and same else fact))
        return self._mark(cut=tuple(cut))

    def lost(self) -> Mark:
        """Leave out boards that are no more, as far as they were not cut by then."""
        known = {board.id.lower(): board.id for board in self.job.boards}
        boards = []
        for name in self.happened.names:
            board_id = known.get(name.lower())
            if board_id is None:
                raise MarkError(f"There is no board {name} in the tally.")
            if board_id in self.standing.lost:
                raise MarkError(f"Board {board_id} is marked as lost already.")
            boards.append(board_id)
        return self._mark(boards=tuple(SawnBoard(board_id=name) for name in boards), lost=tuple(boards))

    def _mark(
        self,
        *,
        cut: tuple[CutPiece, ...] = (),
        gone: tuple[PieceKey, ...] = (),
        boards: tuple[SawnBoard, ...] = (),
        lost: tuple[str, ...] = (),
    ) -> Mark:
        return Mark(
            kind=self.happened.kind,
            what=" ".join(self.happened.names),
            cut=cut,
            gone=gone,
            boards=boards,
            lost=lost,
        )

    def _found(self, besides: Iterable[PieceKey] = ()) -> list[Found]:
        """Give the pieces of the layout that are named, besides those that were found by their labels."""
        labels = {label.lower() for _, label in besides}
        names = [name for name in self.happened.names if name.lower() not in labels]
        try:
            return find_pieces(self.layout, names, self.happened.surface_id)
        except LookupError as trouble:
            raise MarkError(str(trouble)) from None

    def _keys_at_hand(self) -> list[PieceKey]:
        """Give the pieces that hang or are in hand and are named by their labels, in the layout or not."""
        wanted = {name.lower() for name in self.happened.names}
        keys = [
            key
            for key in (*self.hanging, *self.in_hand)
            if key[1].lower() in wanted and self.happened.surface_id in {None, key[0]}
        ]
        labels = [label for _, label in keys]
        twice = next((label for label in labels if labels.count(label) > 1), None)
        if twice is not None:
            raise MarkError(f"Several surfaces have a piece {twice}: say which one with --surface.")
        return keys

    def _single(self) -> list[Found]:
        found = self._found()
        if len(found) != 1:
            raise MarkError("Pieces that were cut wrong are marked one at a time, each by its label.")
        return found

    def _as_cut(self, one: Found) -> bool:
        """Whether a piece is in hand just as the layout has it."""
        cut = self.in_hand.get(one.key)
        return cut is not None and cut.part == part_of(one.piece)

    def _freed(self, chosen: Iterable[Found]) -> Mark:
        """Cut pieces free as the layout has them."""
        pieces = {one.key: part_of(one.piece) for one in chosen}
        for key, part in pieces.items():
            cut = self.in_hand.get(key)
            if cut is not None and not cut.part.holds(part):
                raise MarkError(
                    f"A piece {key[1]} is in hand that is not the one of the layout: give that one another "
                    "label first, or mark it with the word broke."
                )
        return self._freed_as(pieces)

    def _freed_as(self, pieces: Mapping[PieceKey, Part]) -> Mark:
        for (_, label), part in pieces.items():
            if part.board_id in self.standing.sawn and sawn_from(self.standing, part) is None:
                raise WoodGoneError(label, part.board_id)
        parted = part_boards(self.job, self.layout, self.standing, pieces)
        return self._mark(gone=parted.used_up, boards=parted.boards)

    def _source(self, cut: CutPiece) -> Part | None:
        """Give the piece of wood that a piece is cut from: in hand, or part of its board."""
        if cut.key in self.in_hand:
            return cut.part
        return sawn_from(self.standing, cut.part)


_MARKERS: Mapping[MarkKind, Callable[[_Marking], Mark]] = MappingProxyType(
    {
        MarkKind.CUT: _Marking.cut,
        MarkKind.HUNG: _Marking.hung,
        MarkKind.BROKE: _Marking.broke,
        MarkKind.MISCUT: _Marking.miscut,
        MarkKind.DOWN: _Marking.down,
        MarkKind.LOST: _Marking.lost,
    }
)


def _resized(piece: Piece, length_nm: Nm | None, width_nm: Nm | None) -> Piece:
    length = piece.along_to_nm - piece.along_from_nm if length_nm is None else length_nm
    width = piece.across_to_nm - piece.across_from_nm if width_nm is None else width_nm
    if min(length, width) <= 0:
        raise MarkError("A piece of no size is no piece: mark it with the word broke.")
    return replace(piece, along_to_nm=piece.along_from_nm + length, across_to_nm=piece.across_from_nm + width)


def _names(found: Iterable[Found]) -> str:
    return listed([one.piece.label for one in found])


def _are(found: list[Found]) -> str:
    return "is" if len(found) == 1 else "are"

"""Say in plain words what is different in the layout that a job goes on by."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby

from plankwright.layout.again import Change, ChangeKind
from plankwright.layout.regions import extent_in_course
from plankwright.measure import Nm, write_inches, write_length
from plankwright.model import Job, Piece, part_of
from plankwright.workshop.wording import capital, counted, listed, number


def tell_changes(job: Job, changes: Sequence[Change]) -> tuple[str, ...]:
    """Say what becomes of the pieces that do not hang yet.

    Parameters
    ----------
    job
        The job.
    changes
        Piece by piece.

    Returns
    -------
    tuple of str
        First how much stays as it was; then a line for each piece that does not, beginning with a dash; last
        which courses hang higher or lower than they were to.
    """
    teller = _Teller(job, changes)
    return (
        teller.summary(changes),
        *(teller.line(change) for change in changes if change.kind is not ChangeKind.SAME),
        *teller.shifts(changes),
    )


_FEW = 2
"""So many labels in a row are told one by one."""


class _Teller:
    def __init__(self, job: Job, changes: Sequence[Change]) -> None:
        self.job, self.tape = job, job.tape
        self.labels = {
            (change.surface_id, change.after.label) for change in changes if change.after is not None
        }

    def summary(self, changes: Sequence[Change]) -> str:
        """Say how many pieces stay, and how many of each sort of change there are."""
        now = [change for change in changes if change.after is not None]
        others = self._told(changes)
        if not now:
            return f"Nothing is left to be hung{others}."
        same = sum(change.kind is ChangeKind.SAME for change in now)
        stay = f"{capital(number(same)) if same else 'None'} of {counted(len(now), 'piece')} still to be hung"
        verb = "stays" if same == 1 else "stay"
        if same == len(now):
            return f"{stay} {verb} as {'it was' if same == 1 else 'they were'}{others}."
        return f"{stay} {verb} as laid out before{others}."

    def _told(self, changes: Sequence[Change]) -> str:
        words = {
            ChangeKind.OTHER_BOARD: "cut from other wood",
            ChangeKind.OTHER_SIZE: "cut to another size",
            ChangeKind.MOVED: "hung in another place",
            ChangeKind.NEW: "new",
            ChangeKind.NOT_NEEDED: "no longer needed",
            ChangeKind.GONE: "gone",
        }
        parts = []
        for kind, word in words.items():
            count = sum(change.kind is kind for change in changes)
            if count:
                parts.append(f"{number(count)} {'is' if count == 1 else 'are'} {word}")
        return f"; {listed(parts)}" if parts else ""

    def line(self, change: Change) -> str:
        """Say what becomes of one piece."""
        piece = change.after or change.before
        name = "" if piece is None else self._name(change, piece)
        already = ", cut already," if change.cut else ""
        return f"- {name}{self._was(change)}{already} {self._becomes(change)}."

    def _becomes(self, change: Change) -> str:
        before, after = change.before, change.after
        if after is None:
            return "is gone" if change.kind is ChangeKind.GONE else "is no longer needed"
        size, board = self._size(after), after.board_id
        if before is None:
            return f"is new: {size}, board {board}"
        match change.kind:
            case ChangeKind.OTHER_BOARD if before.board_id == board:
                return f"is cut anew from what is left of board {board}: {size}"
            case ChangeKind.OTHER_BOARD:
                return f"is cut from board {board} instead of {before.board_id}: {size}"
            case ChangeKind.OTHER_SIZE:
                cut, instead = ("cut down", "from") if change.cut else ("cut", "instead of")
                return f"is {cut} to {size} {instead} {self._size(before)}, board {board}"
            case _:
                down = f", cut down from {self._size(before)}" if self._cut_down(change) else ""
                return f"hangs elsewhere now, {self._where(change, after)}: {size}{down}, board {board}"

    def shifts(self, changes: Sequence[Change]) -> Iterator[str]:
        """Say which courses hang farther from the start side than they were to, or nearer."""
        shifted = [
            (change.surface_id, change.shifted_nm, change.after.label)
            for change in changes
            if change.after is not None and change.shifted_nm
        ]
        for (surface_id, by), group in groupby(shifted, key=lambda one: one[:2]):
            labels = [label for *_, label in group]
            which = listed(labels) if len(labels) <= _FEW else f"{labels[0]} to {labels[-1]}"
            way = "farther from" if by > 0 else "nearer to"
            verb = "hangs" if len(labels) == 1 else "hang"
            much = self._mark(abs(by))
            yield f"{surface_id}: {which} {verb} {much} {way} the start side than before."

    def _name(self, change: Change, piece: Piece) -> str:
        return piece.label if len(self.job.surfaces) == 1 else f"{change.surface_id} {piece.label}"

    def _was(self, change: Change) -> str:
        before, after = change.before, change.after
        if before is None:
            return ""
        if after is None:
            # Another piece may bear its label now.
            return " of before" if (change.surface_id, before.label) in self.labels else ""
        return "" if before.label == after.label else f" (was {before.label})"

    def _where(self, change: Change, piece: Piece) -> str:
        surface = self.job.surface(change.surface_id)
        start, end, low, _ = extent_in_course(surface, piece.place)
        return f"{self._mark(start)} to {self._mark(end)} along and {self._mark(low)} from the start side"

    def _cut_down(self, change: Change) -> bool:
        before, after = change.before, change.after
        if before is None or after is None or not change.cut:
            return False
        return part_of(before) != part_of(after)

    def _size(self, piece: Piece) -> str:
        part = part_of(piece)
        return f"{write_length(part.length_nm, self.tape)} by {write_inches(part.width_nm, self.tape)}"

    def _mark(self, nm: Nm) -> str:
        return write_inches(nm, self.tape)


def moved_share(changes: Iterable[Change]) -> float:
    """Give the share of the pieces still to be hung that are not just where they were, from 0 to 1."""
    now = [change for change in changes if change.after is not None]
    return sum(change.moves_something for change in now) / len(now) if now else 0.0

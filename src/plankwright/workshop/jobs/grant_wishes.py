"""Find out which wishes can be granted, and give the layout with the boards in place that were wished for."""

from collections.abc import Iterator
from dataclasses import dataclass

from plankwright.layout.ground import HAIR
from plankwright.layout.offcuts import clear_runs, usable_across
from plankwright.layout.sawing import name_on, sawn_from
from plankwright.model import Job, Layout, Part, Standing, part_of
from plankwright.workshop.jobs.kept import RefusedError
from plankwright.workshop.jobs.laid_piece import laid_pieces
from plankwright.workshop.jobs.recut import Recut
from plankwright.workshop.jobs.wishes import PieceWish, Wishes


@dataclass(frozen=True, slots=True, kw_only=True)
class Granted:
    """What of some wishes can be granted.

    Parameters
    ----------
    wishes
        Those that can.
    dropped
        Of each of the others, why not, in a sentence.
    recut
        The layout with the boards in place that were wished for; what is wished of stays.
    """

    wishes: Wishes
    dropped: dict[PieceWish | str, str]
    recut: Recut


def grant_wishes(job: Job, layout: Layout, standing: Standing, wishes: Wishes) -> Granted:
    """Find out which wishes can be granted.

    Parameters
    ----------
    job, layout, standing
        The job, the layout that it is worked by, and how far it has come.
    wishes
        What is wished.
    """
    return _Granting(job, layout, standing, wishes).granted()


def why_not_left_out(job: Job, standing: Standing, board_id: str) -> str:
    """Say why a board cannot be left out; empty when it can."""
    if all(board.id != board_id for board in job.boards):
        return f"There is no board {board_id} in the tally, or no longer."
    if board_id in standing.lost:
        return f"Board {board_id} is marked as lost: nothing more is cut from it anyway."
    if board_id in standing.sawn and all(part.board_id != board_id for part in standing.left):
        return f"Nothing of use is left of board {board_id}: nothing more is cut from it anyway."
    return ""


class _Granting:
    """Wishes that are looked at one by one."""

    def __init__(self, job: Job, layout: Layout, standing: Standing, wishes: Wishes) -> None:
        self.job, self.layout, self.standing, self.wishes = job, layout, standing, wishes
        self.pieces = laid_pieces(job, layout, standing)
        self.in_hand = {cut.key: cut.part for cut in standing.cut}
        self.boards = {board.id for board in job.boards}
        self.dropped: dict[PieceWish | str, str] = {}

    def granted(self) -> Granted:
        """Look at what is wished of boards first, then at pieces that stay, then at boards for pieces."""
        without = [board_id for board_id in self.wishes.without if self._can_be_left_out(board_id)]
        kept = [wish for wish in self.wishes.kept if self._can(wish, self._why_not_kept(wish, without))]
        put = [wish for wish in self.wishes.put if self._can(wish, self._why_not_put(wish, without))]
        there = [wish for wish in put if self.pieces[wish.key].piece.board_id == wish.board_id]
        to_come = [wish for wish in put if wish not in there]
        staying = [wish.key for wish in (*kept, *there)]
        recut = Recut(self.job, self.layout, self.standing, staying, [wish.key for wish in to_come])
        come = [wish for wish in to_come if self._comes(recut, wish)]
        return Granted(
            wishes=Wishes(
                kept=tuple(kept),
                put=tuple(wish for wish in put if wish in there or wish in come),
                without=tuple(without),
            ),
            dropped=self.dropped,
            recut=recut,
        )

    def _comes(self, recut: Recut, wish: PieceWish) -> bool:
        """Whether a board can be had for a piece; it is from then on."""
        try:
            recut.take(wish.key, recut.wood(wish.key, wish.board_id))
        except RefusedError as trouble:
            self.dropped[wish] = str(trouble)
        return wish not in self.dropped

    def _can_be_left_out(self, board_id: str) -> bool:
        why = why_not_left_out(self.job, self.standing, board_id)
        if why:
            self.dropped[board_id] = why
        return not why

    def _can(self, wish: PieceWish, reasons: Iterator[str]) -> bool:
        why = next(reasons, "")
        if why:
            self.dropped[wish] = why
        return not why

    def _why_not_kept(self, wish: PieceWish, without: list[str]) -> Iterator[str]:
        yield from self._why_not(wish, without)
        name, piece = self._name(wish), self.pieces[wish.key].piece
        if piece.board_id != wish.board_id:
            yield f"{name} is cut from board {piece.board_id} in this layout, no longer from {wish.board_id}."
        part = part_of(piece)
        if part.board_id in self.standing.sawn and sawn_from(self.standing, part) is None:
            yield f"The wood of {name} is no longer there."
        if not _is_sound(self.job, part):
            yield f"As board {part.board_id} is measured now, it no longer gives {name} where it is laid out."
        if wish.key in self.in_hand and not self.in_hand[wish.key].holds(part):
            yield f"A piece {name} is in hand that is not the one of this layout."

    def _why_not_put(self, wish: PieceWish, without: list[str]) -> Iterator[str]:
        yield from self._why_not(wish, without)
        if self.pieces[wish.key].piece.board_id == wish.board_id:
            yield from self._why_not_kept(wish, without)
        elif wish.key in self.in_hand:
            yield f"{self._name(wish)} is cut already: mark what became of it first."

    def _why_not(self, wish: PieceWish, without: list[str]) -> Iterator[str]:
        name = self._name(wish)
        if wish.label in self.standing.hung_labels(wish.surface_id):
            yield f"{name} hangs by now."
        elif wish.key not in self.pieces:
            yield f"There is no piece {name} in this layout."
        elif wish.board_id not in self.boards:
            yield f"There is no board {wish.board_id} in the tally, or no longer."
        elif wish.board_id in without:
            yield f"Board {wish.board_id} is to be left out, so {name} cannot come from it."

    def _name(self, wish: PieceWish) -> str:
        return name_on(self.job, *wish.key)


def _is_sound(job: Job, part: Part) -> bool:
    """Whether what a piece is cut from is sound, and as wide as its board gives, rounding aside."""
    board, along = job.board(part.board_id), (part.along_from_nm, part.along_to_nm)
    low, high = usable_across(board, job.rules, along)
    runs = clear_runs(board, job.rules)
    return (
        any(start - HAIR <= along[0] and along[1] <= end + HAIR for start, end in runs)
        and low - HAIR <= part.across_from_nm
        and part.across_to_nm <= high + HAIR
    )

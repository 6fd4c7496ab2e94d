"""Swap the boards of two pieces: at once where nothing else has to change."""

from dataclasses import dataclass

from plankwright.check import FindingSeverity, check_layout, faults
from plankwright.layout.parting import PieceKey
from plankwright.layout.result import Result
from plankwright.layout.sawing import name_on
from plankwright.model import Job, Layout, Standing, Work
from plankwright.workshop.ask_enough import ask_enough
from plankwright.workshop.jobs.finish_layout import finish_layout
from plankwright.workshop.jobs.grant_wishes import grant_wishes
from plankwright.workshop.jobs.kept import KeptLayout, Made, RefusedError
from plankwright.workshop.jobs.laid_piece import LaidPiece, laid_piece, laid_pieces
from plankwright.workshop.jobs.recut import Recut
from plankwright.workshop.jobs.wishes import PieceWish, Wishes
from plankwright.workshop.mark_work import begin_work
from plankwright.workshop.tell_remarks import tell_remarks


@dataclass(frozen=True, slots=True, kw_only=True)
class Swapped:
    """What becomes of two pieces that are to swap their boards.

    Parameters
    ----------
    wishes
        With both boards wished for the other piece.
    laid
        The layout in which just they are swapped, made `Made.SWAPPED` and not kept yet; it has passed the
        checker. Nothing when more has to change: then all else is to be laid out around the wishes.
    """

    wishes: Wishes
    laid: KeptLayout | None


def swap_pieces(
    job: Job, kept: KeptLayout, work: Work | None, wishes: Wishes, pieces: tuple[PieceKey, PieceKey]
) -> Swapped:
    """Swap the boards of two pieces.

    Parameters
    ----------
    job, kept, work
        The job, the layout that it is worked by, and what was marked, if anything was.
    wishes
        What is wished already.
    pieces
        Surface and label of both.

    Raises
    ------
    RefusedError
        If there are no such pieces, one is cut already, both are of one board, or a board cannot give the
        other piece.
    """
    standing = (work or begin_work(job)).standing
    one, other = (laid_piece(job, kept.layout, standing, key) for key in pieces)
    if one.key == other.key:
        raise RefusedError(f"Choose another piece to swap boards with {one.name}.")
    if one.piece.board_id == other.piece.board_id:
        raise RefusedError(f"{one.name} and {other.name} are both cut from board {one.piece.board_id}.")
    asked = (_of(one, other), _of(other, one))
    made = wishes
    for wish in asked:
        made = made.putting(wish)
    granted = grant_wishes(job, kept.layout, standing, made)
    for wish in asked:
        if wish in granted.dropped:
            raise RefusedError(granted.dropped[wish])
    return Swapped(wishes=made, laid=_exchanged(job, kept, standing, asked))


def _of(one: LaidPiece, other: LaidPiece) -> PieceWish:
    """Wish that a piece comes from the board of another."""
    return PieceWish(surface_id=one.key[0], label=one.key[1], board_id=other.piece.board_id)


def _exchanged(
    job: Job, kept: KeptLayout, standing: Standing, asked: tuple[PieceWish, PieceWish]
) -> KeptLayout | None:
    """Give the layout in which just two pieces have each other's boards, if that breaks no rule."""
    keys = {wish.key for wish in asked}
    staying = set(laid_pieces(job, kept.layout, standing)) - keys
    recut = Recut(job, kept.layout, standing, staying, keys)
    try:
        for wish in asked:
            recut.take(wish.key, recut.wood(wish.key, wish.board_id))
    except RefusedError:
        return None
    laid = finish_layout(job, recut.layout, standing)
    findings = check_layout(job, laid, standing)
    if faults(findings):
        return None
    return KeptLayout(
        layout=laid,
        made=Made.SWAPPED,
        answer=ask_enough(job, _result(kept, laid), standing),
        news=(_tell(job, asked),),
        minds=tell_remarks(found for found in findings if found.severity is FindingSeverity.WARNING),
    )


def _tell(job: Job, asked: tuple[PieceWish, PieceWish]) -> str:
    (one, board), (other, its_board) = ((name_on(job, *wish.key), wish.board_id) for wish in asked)
    return (
        f"{one} is cut from board {board} now and {other} from board {its_board}; all else stays as it was."
    )


def _result(kept: KeptLayout, laid: Layout) -> Result:
    """Give what a search would have come to: what is wanted and held back is as it was before."""
    if kept.answer is None:
        return Result(layout=laid)
    return Result(layout=laid, wanted=kept.answer.wanted, held_back=kept.answer.held_back)

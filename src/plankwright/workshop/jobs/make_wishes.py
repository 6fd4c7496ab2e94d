"""Make a wish of a layout, as far as it can be granted at all; and find out which still can be."""

from dataclasses import dataclass

from plankwright.layout.parting import PieceKey
from plankwright.layout.sawing import name_on
from plankwright.model import Job, Layout, Standing
from plankwright.workshop.jobs.grant_wishes import Granted, grant_wishes, why_not_left_out
from plankwright.workshop.jobs.kept import RefusedError
from plankwright.workshop.jobs.laid_piece import laid_piece
from plankwright.workshop.jobs.wishes import PieceWish, Wishes
from plankwright.workshop.wording import capital, listed


@dataclass(frozen=True, slots=True, kw_only=True)
class StillPossible:
    """What of some wishes can still be granted.

    Parameters
    ----------
    wishes
        Those that can.
    dropped
        Of each that cannot, what it was and why, in sentences.
    """

    wishes: Wishes
    dropped: tuple[str, ...] = ()


def keep_piece(job: Job, layout: Layout, standing: Standing, wishes: Wishes, piece: PieceKey) -> Wishes:
    """Wish that a piece stays where it is, cut from the wood that it is cut from.

    Parameters
    ----------
    job, layout, standing
        The job, the layout that it is worked by, and how far it has come.
    wishes
        What is wished already.
    piece
        Its surface and its label.

    Returns
    -------
    Wishes
        With this one; whatever was wished of the piece before is taken back.

    Raises
    ------
    RefusedError
        If there is no such piece, it hangs already, or its board is to be left out.
    """
    place = laid_piece(job, layout, standing, piece)
    wish = PieceWish(surface_id=piece[0], label=piece[1], board_id=place.piece.board_id)
    made = wishes.keeping(wish)
    return _as_far_as_granted(grant_wishes(job, layout, standing, made), made, wish)


def put_board(
    job: Job, layout: Layout, standing: Standing, wishes: Wishes, piece: PieceKey, board_id: str
) -> Wishes:
    """Wish that a piece comes from a certain board; the one that it is of already it is to keep.

    Parameters and what is returned are as in `keep_piece`.

    Parameters
    ----------
    board_id
        The board.

    Raises
    ------
    RefusedError
        If there is no such piece or it is cut already, or if the board cannot give it: one sentence why.
    """
    if laid_piece(job, layout, standing, piece).piece.board_id == board_id:
        return keep_piece(job, layout, standing, wishes, piece)
    wish = PieceWish(surface_id=piece[0], label=piece[1], board_id=board_id)
    made = wishes.putting(wish)
    return _as_far_as_granted(grant_wishes(job, layout, standing, made), made, wish)


def leave_out_board(job: Job, layout: Layout, standing: Standing, wishes: Wishes, board_id: str) -> Wishes:
    """Wish that nothing more is cut from a board; parameters and what is returned as in `put_board`.

    Raises
    ------
    RefusedError
        If there is no such board, nothing is left of it, or a piece is to stay that is cut from it, or to
        come from it.
    """
    why = why_not_left_out(job, standing, board_id)
    if why:
        raise RefusedError(why)
    possible = grant_wishes(job, layout, standing, wishes).wishes
    needing = [name_on(job, *wish.key) for wish in possible.pieces if wish.board_id == board_id]
    if needing:
        raise RefusedError(
            f"Board {board_id} is wished for {listed(needing)}, to stay there or to be put there: take that "
            "back first."
        )
    return wishes.leaving_out(board_id)


def still_possible(job: Job, layout: Layout, standing: Standing, wishes: Wishes) -> StillPossible:
    """Find out which wishes can still be granted; parameters as in `keep_piece`.

    It never raises: a wish whose piece is gone, hangs or is another one by now, or whose board is gone or
    cannot give the piece any more, is dropped.
    """
    granted = grant_wishes(job, layout, standing, wishes)
    return StillPossible(wishes=granted.wishes, dropped=tell_dropped(job, wishes, granted))


def tell_dropped(job: Job, wishes: Wishes, granted: Granted) -> tuple[str, ...]:
    """Say which wishes cannot be granted, and why.

    Parameters
    ----------
    job, wishes
        The job, and what was wished.
    granted
        What of that can be granted.
    """
    return tuple(
        f"{capital(told.words)}: no longer possible. {granted.dropped[told.wish]}"
        for told in wishes.told(job)
        if told.wish in granted.dropped
    )


def _as_far_as_granted(granted: Granted, made: Wishes, wish: PieceWish) -> Wishes:
    if wish in granted.dropped:
        raise RefusedError(granted.dropped[wish])
    return made

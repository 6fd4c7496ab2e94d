"""Which boards could give a piece, the best first, and what it would mean to take each."""

from collections.abc import Iterator
from dataclasses import dataclass

from plankwright.layout.parting import PieceKey
from plankwright.layout.sawing import name_on
from plankwright.model import Board, Job, Layout, Standing
from plankwright.workshop.jobs.grant_wishes import grant_wishes
from plankwright.workshop.jobs.kept import RefusedError
from plankwright.workshop.jobs.laid_piece import LaidPiece, laid_piece
from plankwright.workshop.jobs.recut import Recut
from plankwright.workshop.jobs.wishes import NO_WISHES, Wishes
from plankwright.workshop.wording import listed


@dataclass(frozen=True, slots=True, kw_only=True)
class FittingBoard:
    """A board that can give a piece.

    Parameters
    ----------
    board
        The board.
    words
        What it means to take it, such as "a whole board to spare" or "takes the wood of 5a and 5b".
    loses
        Surface and label of each piece that would lose its wood, and be laid out anew.
    waste_nm2
        How much more of the board would be of no use any more, the piece aside. [nm²]
    same_lot, same_tone
        Whether it is of the lot, and of the tone, of the board that the piece is of now.
    """

    board: Board
    words: str
    loses: tuple[PieceKey, ...]
    waste_nm2: int
    same_lot: bool
    same_tone: bool


def fitting_boards(
    job: Job,
    layout: Layout,
    standing: Standing,
    surface_id: str,
    label: str,
    wishes: Wishes = NO_WISHES,
) -> tuple[FittingBoard, ...]:
    """Give the boards that could give a piece, other than the one that it is of.

    Parameters
    ----------
    job, layout, standing
        The job, the layout that it is worked by, and how far it has come.
    surface_id, label
        The piece.
    wishes
        What is wished already: pieces that stay keep their wood, and boards to be left out are left out.

    Returns
    -------
    tuple of FittingBoard
        Those of the same lot and tone first, then those that take no other piece its wood, then those of
        which the least is wasted.

    Raises
    ------
    RefusedError
        If there is no such piece, or it is cut already or hangs.
    """
    place = laid_piece(job, layout, standing, (surface_id, label))
    if any(cut.key == place.key for cut in standing.cut):
        raise RefusedError(f"{place.name} is cut already: mark what became of it first.")
    granted = grant_wishes(job, layout, standing, wishes.less_piece(place.key))
    left_out = {*granted.wishes.without, place.piece.board_id}
    boards = [board for board in job.boards if board.id not in left_out]
    fitting = _Fitting(job, layout, standing, place, granted.recut).among(boards)
    return tuple(sorted(fitting, key=_rank))


class _Fitting:
    """The boards that a piece is looked for on."""

    def __init__(self, job: Job, layout: Layout, standing: Standing, place: LaidPiece, recut: Recut) -> None:
        self.job, self.standing, self.place, self.recut = job, standing, place, recut
        self.used = {piece.board_id for piece in layout.pieces}
        self.now = next((board for board in job.boards if board.id == place.piece.board_id), None)

    def among(self, boards: list[Board]) -> Iterator[FittingBoard]:
        for board in boards:
            try:
                wood = self.recut.wood(self.place.key, board.id)
            except RefusedError:
                continue
            yield FittingBoard(
                board=board,
                words=self._words(board, wood.loses),
                loses=wood.loses,
                waste_nm2=wood.waste_nm2,
                same_lot=self.now is not None and self.now.lot_key == board.lot_key,
                same_tone=self.now is not None and _tone(self.now) == _tone(board),
            )

    def _words(self, board: Board, loses: tuple[PieceKey, ...]) -> str:
        if loses:
            return f"takes the wood of {listed([name_on(self.job, *key) for key in loses])}"
        if board.id not in self.used and board.id not in self.standing.sawn:
            return "a whole board to spare"
        return "from wood that no piece takes"


def _tone(board: Board) -> str:
    return " ".join(board.tone.split()).casefold()


def _rank(fitting: FittingBoard) -> tuple[int, int, int]:
    unlike = (not fitting.same_lot) + (not fitting.same_tone)
    return unlike, len(fitting.loses), fitting.waste_nm2

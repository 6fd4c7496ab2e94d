"""See what is wished of a layout, and among what one can choose: boards for a piece, pieces to swap with."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from plankwright.layout.parting import PieceKey
from plankwright.layout.sawing import name_on
from plankwright.measure import write_inches, write_length
from plankwright.model import Board, Job, Layout, Standing
from plankwright.workshop.jobs.fitting_boards import FittingBoard, fitting_boards
from plankwright.workshop.jobs.make_wishes import still_possible
from plankwright.workshop.jobs.see_layout import looks_of, size_of
from plankwright.workshop.jobs.wishes import PieceWish, ToldWish, Wishes


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedWish:
    """A wish: what it goes by in a form, in words, and whether it is so in the layout already."""

    key: str
    words: str
    holds: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What is wished of a layout.

    Parameters
    ----------
    told
        Each wish in words.
    dropped
        In sentences, which of them can be granted no longer, and why.
    """

    told: tuple[AskedWish, ...]
    dropped: tuple[str, ...] = ()

    @property
    def open(self) -> bool:
        """Whether anything is still to be laid out for it."""
        return not all(wish.holds for wish in self.told)


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardChoice:
    """A board to choose for a piece.

    Parameters
    ----------
    id, size, looks
        The board, its length and width, and its lot and tone as far as they are known.
    words
        What it means to take it.
    alike
        Whether it looks like the one that the piece is of now.
    """

    id: str
    size: str
    looks: str
    words: str
    alike: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapChoice:
    """A piece to swap boards with: the place of its surface in the layout, its label, and both in words."""

    surface: int
    label: str
    words: str


def asked_of(job: Job, layout: Layout, standing: Standing, wishes: Wishes) -> Asked:
    """Say what is wished of a layout.

    Parameters
    ----------
    job, layout, standing
        The job, the layout that it is worked by, and how far it has come.
    wishes
        What is wished.
    """
    if wishes.none:
        return Asked(told=())
    dropped = still_possible(job, layout, standing, wishes).dropped
    boards = {
        (laid.surface_id, piece.label): piece.board_id for laid in layout.surfaces for piece in laid.pieces
    }
    return Asked(told=tuple(_told(wish, boards) for wish in wishes.told(job)), dropped=dropped)


def board_choices(
    job: Job, layout: Layout, standing: Standing, piece: tuple[str, str], wishes: Wishes
) -> tuple[BoardChoice, ...]:
    """Give the boards to choose among for a piece, the best first.

    Parameters
    ----------
    job, layout, standing, wishes
        As in `asked_of`.
    piece
        Its surface and its label.

    Raises
    ------
    RefusedError
        As `fitting_boards` has it.
    """
    surface_id, label = piece
    fitting = fitting_boards(job, layout, standing, surface_id, label, wishes)
    return tuple(_choice(job, one) for one in fitting)


def swap_choices(
    job: Job, layout: Layout, standing: Standing, surface: int, label: str
) -> tuple[SwapChoice, ...]:
    """Give the pieces that a piece might swap boards with: those of other boards that are not sawn yet.

    Parameters
    ----------
    job, layout, standing
        As in `asked_of`.
    surface, label
        The place of the surface of the piece in the layout, from 0, and its label.
    """
    own = next((piece for piece in layout.surfaces[surface].pieces if piece.label == label), None)
    return () if own is None else tuple(_swaps(job, layout, standing, own.board_id))


def _told(told: ToldWish, boards: Mapping[PieceKey, str]) -> AskedWish:
    wish = told.wish
    holds = (
        boards.get(wish.key) == wish.board_id if isinstance(wish, PieceWish) else wish not in boards.values()
    )
    return AskedWish(key=told.key, words=told.words, holds=holds)


def _swaps(job: Job, layout: Layout, standing: Standing, board_id: str) -> Iterator[SwapChoice]:
    cut = {one.key for one in standing.cut}
    for place, laid in enumerate(layout.surfaces):
        hung = standing.hung_labels(laid.surface_id)
        for piece in laid.pieces:
            done = piece.label in hung or (laid.surface_id, piece.label) in cut
            if not done and piece.board_id != board_id:
                name = name_on(job, laid.surface_id, piece.label)
                words = f"{name} · board {piece.board_id} · {size_of(job, piece)}"
                yield SwapChoice(surface=place, label=piece.label, words=words)


def _choice(job: Job, fitting: FittingBoard) -> BoardChoice:
    board = fitting.board
    return BoardChoice(
        id=board.id,
        size=_board_size(job, board),
        looks=looks_of(board),
        words=fitting.words,
        alike=fitting.same_lot and fitting.same_tone,
    )


def _board_size(job: Job, board: Board) -> str:
    width = write_inches(board.narrowest_width_nm, job.tape)
    return f"{write_length(board.length_nm, job.tape)} × {width}"

"""In which order boards are best cut, so that what could go wrong does so while there is still choice.

A board that breaks under the saw is made up for by others, as long as those are whole. So the boards come
first that the layout cannot do without, then those that fewest others could stand in for.
"""

from collections.abc import Collection
from dataclasses import dataclass

from plankwright.layout.break_proof.losing import boards_to_cut, pieces_to_cut, wood_left
from plankwright.layout.butting import thickness_reach
from plankwright.layout.plan import Stick
from plankwright.measure import Nm
from plankwright.model import Board, Job, Layout, Piece, Standing


@dataclass(frozen=True, slots=True, kw_only=True)
class CutFirst:
    """A board in the order of cutting.

    Parameters
    ----------
    board_id
        The board.
    needed
        Whether no full layout was found without it.
    stand_ins
        How many other boards could give any one of its pieces, for the piece that fewest can. [boards]
    spare_stand_ins
        How many of those the layout does not use. [boards]
    longest_nm
        Its longest piece. [nm]
    """

    board_id: str
    needed: bool
    stand_ins: int
    spare_stand_ins: int
    longest_nm: Nm


def cutting_order(
    job: Job, layout: Layout, standing: Standing, needed: Collection[str]
) -> tuple[CutFirst, ...]:
    """Order the boards that are still to be cut.

    Parameters
    ----------
    job, layout, standing
        The job, the layout that it is worked by, and how far it has come.
    needed
        Ids of the boards that the layout cannot do without.

    Returns
    -------
    tuple of CutFirst
        First those that it cannot do without; among these, and then among the others, those first that the
        fewest spare boards could stand in for, then the fewest of all boards, then the ones with the longest
        pieces.
    """
    likeness = _Likeness(job, layout, standing)
    order = [likeness.of(board, needed=board in needed) for board in boards_to_cut(layout, standing)]
    places = {board.id: place for place, board in enumerate(job.boards)}
    return tuple(
        sorted(
            order,
            key=lambda one: (
                not one.needed,
                one.spare_stand_ins,
                one.stand_ins,
                -one.longest_nm,
                places[one.board_id],
            ),
        )
    )


class _Likeness:
    """Which boards could give the pieces of which."""

    def __init__(self, job: Job, layout: Layout, standing: Standing) -> None:
        self.job = job
        self.wood = wood_left(job, standing)
        self.pieces: dict[str, list[Piece]] = {}
        for piece in pieces_to_cut(layout, standing):
            self.pieces.setdefault(piece.board_id, []).append(piece)
        self.boards = {board.id: board for board in job.boards}

    def of(self, board_id: str, *, needed: bool) -> CutFirst:
        """Say how much a board is like others."""
        pieces = self.pieces[board_id]
        stand_ins = [self._stand_ins(self.boards[board_id], piece) for piece in pieces]
        return CutFirst(
            board_id=board_id,
            needed=needed,
            stand_ins=min(map(len, stand_ins)),
            spare_stand_ins=min(sum(other not in self.pieces for other in each) for each in stand_ins),
            longest_nm=max(_length(piece) for piece in pieces),
        )

    def _stand_ins(self, board: Board, piece: Piece) -> Collection[str]:
        return [
            other
            for other, sticks in self.wood.items()
            if other != board.id
            and _alike(board, self.boards[other], thickness_reach(self.job.rules))
            and any(self._gives(stick, piece) for stick in sticks)
        ]

    def _gives(self, stick: Stick, piece: Piece) -> bool:
        width = piece.across_to_nm - piece.across_from_nm
        fits = stick.length >= _length(piece) and stick.makes(width, self.job.rules.width_tolerance_nm)
        return fits and not stick.hidden_only


def _length(piece: Piece) -> Nm:
    return piece.along_to_nm - piece.along_from_nm


def _alike(board: Board, other: Board, reach: Nm) -> bool:
    """Whether two boards may butt in sight: then the one fits wherever the other does."""
    return board.profile == other.profile and abs(board.thickness_nm - other.thickness_nm) <= reach

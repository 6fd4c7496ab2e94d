"""What a board falls into when some of its pieces are cut while others are still to come.

The passes are those of the cut list; of them only the ones are made that free the pieces that are cut.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TypeAlias

from plankwright.layout.guillotine import Patch, whole_board
from plankwright.layout.offcuts import offcuts
from plankwright.layout.sawing import NoOrderOfCutsError, passes_for, rips_first, works_by_part
from plankwright.layout.shaping import Workpiece
from plankwright.model import Board, Job, Layout, Part, Rules, SawnBoard, Standing, part_of

PieceKey: TypeAlias = tuple[str, str]
"""A piece, by its surface and its label."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Parted:
    """What was sawn.

    Parameters
    ----------
    boards
        What is left of each board besides pieces.
    used_up
        Pieces in hand that the pieces were cut from.
    """

    boards: tuple[SawnBoard, ...]
    used_up: tuple[PieceKey, ...]


def part_boards(job: Job, layout: Layout, standing: Standing, cut: Mapping[PieceKey, Part]) -> Parted:
    """Cut some pieces of a layout free, and no others.

    Parameters
    ----------
    job, layout, standing
        The job, the layout that it is worked by, and how far it has come.
    cut
        The pieces, each with what of its board was really cut.

    Returns
    -------
    Parted
        Only what is long and wide enough to be of use is kept of a board, and what holds pieces that are
        still to come.

    Raises
    ------
    NoOrderOfCutsError
        If the pieces cannot be freed by straight cuts at all.
    """
    left = {
        board_id: [part for part in standing.left if part.board_id == board_id] for board_id in standing.sawn
    }
    in_hand = {one.part: one.key for one in standing.cut}
    touched: dict[str, None] = {}
    used_up: list[PieceKey] = []
    for (board_id, part), works in works_by_part(job, layout, standing).items():
        keys = [(work.surface.id, work.piece.label) for work in works]
        freed = {key: cut[key] for key in keys if key in cut}
        if not freed:
            continue
        board = job.board(board_id)
        rests = _rests(job, board, works, part, tuple(freed.values()))
        kept = [other for other in left.get(board_id, ()) if other != part]
        left[board_id] = [*kept, *rests]
        touched[board_id] = None
        if part in in_hand and in_hand[part] not in freed:
            used_up.append(in_hand[part])
    boards = (SawnBoard(board_id=board_id, left=tuple(left[board_id])) for board_id in touched)
    return Parted(boards=tuple(boards), used_up=tuple(used_up))


def _rests(
    job: Job, board: Board, works: Sequence[Workpiece], part: Part | None, cut: tuple[Part, ...]
) -> list[Part]:
    planned = [part_of(work.piece) for work in works]
    to_come = [one for one in planned if all(apart(one, other, job.rules) for other in cut)]
    ripping = rips_first(job, works)
    try:
        passes, _ = passes_for(job, board, [*cut, *to_come], part, rip_first=ripping)
    except NoOrderOfCutsError:
        # What was cut otherwise than planned may stand in the way of what is still to come.
        passes, _ = passes_for(job, board, cut, part, rip_first=ripping)
    freed = {_lies(one) for one in cut}
    parts = {whole_board(board) if part is None else _lies(part)}
    for one in passes:
        if one.through in parts - freed and any(one.through.holds(patch) for patch in freed):
            parts.remove(one.through)
            parts |= {side for side in (one.near, one.far) if side is not None}
    rests = (Part(board_id=board.id, **_named(patch)) for patch in sorted(parts - freed))
    return [rest for rest in rests if offcuts(job, board, (), rest) or any(map(rest.holds, to_come))]


def apart(one: Part, other: Part, rules: Rules) -> bool:
    """Whether there is room for the saw between two pieces of a board."""
    along = max(one.along_from_nm - other.along_to_nm, other.along_from_nm - one.along_to_nm)
    across = max(one.across_from_nm - other.across_to_nm, other.across_from_nm - one.across_to_nm)
    return along >= rules.crosscut_kerf_nm or across >= rules.rip_kerf_nm


def _lies(part: Part) -> Patch:
    return Patch(part.along_from_nm, part.along_to_nm, part.across_from_nm, part.across_to_nm)


def _named(patch: Patch) -> dict[str, int]:
    return {f"{name}_nm": place for name, place in patch._asdict().items()}

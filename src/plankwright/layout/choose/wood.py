"""Pieces fit into the sticks that they come from."""

from collections import defaultdict
from collections.abc import Sequence

from ortools.sat.python import cp_model

from plankwright.layout.choose.model import Candidate, Model


def fit_sticks(model: Model) -> None:
    """Let the pieces of each stick be cut from it, lane beside lane."""
    by_lane: defaultdict[tuple[int, int], list[Candidate]] = defaultdict(list)
    for piece in model.pieces:
        if model.task.sticks[piece.stick].endless:
            continue
        by_lane[piece.stick, piece.lane].append(piece)
    for (stick, _), pieces in by_lane.items():
        _fit_length(model, stick, pieces)
    for stick, lanes in enumerate(model.lanes):
        first, second = by_lane[stick, 0], by_lane[stick, 1]
        if lanes > 1 and first and second:
            _fit_width(model, stick, first, second)


def _fit_length(model: Model, stick: int, pieces: Sequence[Candidate]) -> None:
    """(9) The pieces of a lane, with a kerf between each two, are no longer than the stick."""
    kerf, length = (
        model.task.up(model.task.rules.crosscut_kerf_nm),
        model.task.down(model.task.sticks[stick].length),
    )
    if 2 * min(piece.length for piece in pieces) + kerf > length:
        # Says the same where no two would fit, and helps the solver more.
        model.cp.add_at_most_one(piece.chosen for piece in pieces)
    else:
        model.cp.add(sum((piece.length + kerf) * piece.chosen for piece in pieces) <= length + kerf)


def _fit_width(model: Model, stick: int, first: Sequence[Candidate], second: Sequence[Candidate]) -> None:
    """(10) Where a stick is ripped into two lanes, they and the kerf between them are no wider than it.

    The saw that rips them apart must be able to take the first lane off.
    """
    task, widest_rip = model.task, model.task.sticks[stick].widest_rip
    width, kerf = task.down(task.sticks[stick].width), task.up(task.rules.rip_kerf_nm)
    widths = [_lane_width(model, width, pieces) for pieces in (first, second)]
    ripped = model.cp.new_bool_var("")
    for piece in second:
        model.cp.add_implication(piece.chosen, ripped)
    model.cp.add(widths[0] + widths[1] + kerf <= width).only_enforce_if(ripped)
    if widest_rip is not None:
        model.cp.add(widths[0] <= task.down(widest_rip)).only_enforce_if(ripped)


def _lane_width(model: Model, width: int, pieces: Sequence[Candidate]) -> cp_model.IntVar:
    """Give a lane's width: no less than the height of any course that has a piece of it. [steps]"""
    task = model.task
    lane = model.cp.new_int_var(0, width + task.up(task.rules.width_tolerance_nm), "")
    for height in {model.kinds[piece.kind].height for piece in pieces}:
        for piece in pieces:
            if model.kinds[piece.kind].height == height:
                model.cp.add(lane >= task.up(height)).only_enforce_if(piece.chosen)
    return lane

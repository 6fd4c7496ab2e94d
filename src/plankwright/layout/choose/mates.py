"""Pieces that butt in sight match."""

from collections.abc import Callable, Sequence

from ortools.sat.python import cp_model

from plankwright.layout.butting import thickness_reach
from plankwright.layout.choose.model import Candidate, Model
from plankwright.layout.plan import Stick


def join_mates(model: Model, number: int, place: int, seen: cp_model.IntVar) -> None:
    """(15) Pieces that butt in sight have one profile, and thicknesses within reach of each other.

    Parameters
    ----------
    model
        The model.
    number, place
        Of a kind of course that stays in its place, and of a place in it.
    seen
        Whether there is a joint in sight.
    """
    task = model.task
    sticks = [task.sticks[stick] for stick in model.kinds[number].sticks]
    thinnest, thickest = (pick(stick.thickness for stick in sticks) for pick in (min, max))
    profiles = sorted({(stick.profile.kind, stick.profile.reach_nm) for stick in sticks})
    ending, beginning = model.reaching[number, place], model.leaving[number, place]
    if thickest - thinnest > thickness_reach(task.rules):
        there, reach = _whether(model, seen), task.down(thickness_reach(task.rules))
        left, right = (
            _sum(model, pieces, lambda stick: task.up(stick.thickness - thinnest))
            for pieces in (ending, beginning)
        )
        model.cp.add(left - right <= reach).only_enforce_if(there)
        model.cp.add(right - left <= reach).only_enforce_if(there)
    if len(profiles) > 1:
        left, right = (
            _sum(model, pieces, lambda stick: profiles.index((stick.profile.kind, stick.profile.reach_nm)))
            for pieces in (ending, beginning)
        )
        model.cp.add(left == right).only_enforce_if(_whether(model, seen))


def _whether(model: Model, seen: cp_model.IntVar) -> cp_model.IntVar:
    """Give a variable that is true wherever there is a joint in sight."""
    there = model.cp.new_bool_var("")
    model.cp.add(seen == 0).only_enforce_if(~there)
    return there


def _sum(
    model: Model, pieces: Sequence[Candidate], measure: Callable[[Stick], int]
) -> cp_model.LinearExpr | int:
    """Give a measure of the piece that is cut of some of which one is at most."""
    return sum(measure(model.task.sticks[piece.stick]) * piece.chosen for piece in pieces)

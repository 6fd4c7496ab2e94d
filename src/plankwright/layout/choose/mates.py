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
    sticks = [model.task.sticks[stick] for stick in model.kinds[number].sticks]
    thinnest, thickest = (pick(stick.thickness for stick in sticks) for pick in (min, max))
    profiles = sorted({(stick.profile.kind, stick.profile.reach_nm) for stick in sticks})
    ending, beginning = model.reaching[number, place], model.leaving[number, place]
    reach = thickness_reach(model.task.rules)
    if thickest - thinnest > reach:
        # In nanometres: two thicknesses rounded to the grid could come nearer to each other than they are.
        left, right = (
            _sum(model, pieces, lambda stick: stick.thickness - thinnest) for pieces in (ending, beginning)
        )
        model.cp.add(left - right <= reach).only_enforce_if(seen)
        model.cp.add(right - left <= reach).only_enforce_if(seen)
    if len(profiles) > 1:
        left, right = (
            _sum(model, pieces, lambda stick: profiles.index((stick.profile.kind, stick.profile.reach_nm)))
            for pieces in (ending, beginning)
        )
        model.cp.add(left == right).only_enforce_if(seen)


def _sum(
    model: Model, pieces: Sequence[Candidate], measure: Callable[[Stick], int]
) -> cp_model.LinearExpr | int:
    """Measure the piece that is cut, out of some of which one is at the most."""
    return sum(measure(model.task.sticks[piece.stick]) * piece.chosen for piece in pieces)

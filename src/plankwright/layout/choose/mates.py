"""Pieces that butt in sight match."""

from collections.abc import Callable, Sequence

from ortools.sat.python import cp_model

from plankwright.layout.butting import thickness_reach
from plankwright.layout.choose.model import Candidate, Model, number_of
from plankwright.layout.plan import Stick


def join_mates(model: Model, number: int, place: int, seen: cp_model.IntVar) -> None:
    """(15) Pieces that butt in sight have one profile, and are as thick as each other within the tolerance.

    Shims count. A piece that butts on both sides has one shim for both, so that in a row of ever thicker
    pieces the thinnest may need more than its neighbour asks for.

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
    hanging = any(each.shim is not None for each in model.kinds[number].row.pinned)
    reach = model.task.rules.thickness_tolerance_nm if hanging else thickness_reach(model.task.rules)
    if thickest - thinnest > reach:
        # In nanometres: two thicknesses rounded to the grid could come nearer to each other than they are.
        left, right = (
            _sum(model, pieces, lambda stick: stick.thickness - thinnest) + _shim(model, number, stretch)
            for pieces, stretch in ((ending, place - 1), (beginning, place))
        )
        tolerance = model.task.rules.thickness_tolerance_nm
        model.cp.add(left - right <= tolerance).only_enforce_if(seen)
        model.cp.add(right - left <= tolerance).only_enforce_if(seen)
    if len(profiles) > 1:
        left, right = (
            _sum(model, pieces, lambda stick: profiles.index((stick.profile.kind, stick.profile.reach_nm)))
            for pieces in (ending, beginning)
        )
        model.cp.add(left == right).only_enforce_if(seen)


def _shim(model: Model, number: int, stretch: int) -> cp_model.IntVar | int:
    """Give how thick the shim is behind what hangs from a place to the next. [nm]"""
    kind, most = model.kinds[number], model.task.rules.shim_up_to_nm
    at = kind.places[stretch].at
    for each in kind.row.pinned:
        if each.shim is not None and each.piece.start <= at < each.piece.end:
            return each.shim
    if not most:
        return 0
    if (number, stretch) not in model.shims:
        shim = model.shims[number, stretch] = model.cp.new_int_var(0, most, "")
        if kind.joined(stretch - 1):
            # Only where a piece begins may there be another shim.
            before, changes = _shim(model, number, stretch - 1), number_of(model.leaving[number, stretch])
            model.cp.add(shim - before <= most * changes)
            model.cp.add(before - shim <= most * changes)
    return model.shims[number, stretch]


def _sum(
    model: Model, pieces: Sequence[Candidate], measure: Callable[[Stick], int]
) -> cp_model.LinearExpr | int:
    """Measure the piece that is cut, out of some of which one is at the most."""
    return sum(measure(model.task.sticks[piece.stick]) * piece.chosen for piece in pieces)

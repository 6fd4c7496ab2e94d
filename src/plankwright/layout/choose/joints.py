"""Joints in sight are counted, forbidden, or kept apart.

Joints out of sight are free: no rule here looks at them.
"""

from dataclasses import dataclass
from itertools import product

from ortools.sat.python import cp_model

from plankwright.layout.butting import joints_near
from plankwright.layout.choose.mates import join_mates
from plankwright.layout.choose.model import Model, number_of
from plankwright.measure import Nm
from plankwright.model import JointPolicy


@dataclass(frozen=True, slots=True)
class _Joint:
    """A joint in sight that a course in its place may have: where, in which strip, and whether it has it.

    One that stays is between two pieces that do.
    """

    at: Nm
    strip: tuple[Nm, Nm]
    seen: cp_model.IntVar
    stays: bool = False


def mind_joints(model: Model) -> None:
    """Treat joints in sight as the rules of the job say."""
    staying: list[_Joint] = []
    for number, kind in enumerate(model.kinds):
        for place, node in enumerate(kind.places):
            possible = model.leaving[number, place] and model.reaching[number, place]
            if node.joint and not node.hidden and possible:
                _mind(model, number, place, staying)
    if model.task.rules.joints is JointPolicy.STAGGER and model.task.stack.fixed:
        _stagger(model, staying)


def _mind(model: Model, number: int, place: int, staying: list[_Joint]) -> None:
    """Treat one joint in sight, and remember it if its course stays in its place."""
    task, policy = model.task, model.task.rules.joints
    strip, at = model.kinds[number].row.strip, model.kinds[number].places[place].at
    if strip is not None and _stays(model, number, place):
        # It is counted, and others keep clear of it, but nothing is asked of what is there already.
        staying.append(_Joint(at, strip, model.cp.new_constant(1), stays=True))
        model.in_sight.append(staying[-1].seen)
    elif policy is JointPolicy.NEVER:
        _forbid(model, number, place)
    elif strip is None and not task.bare_allowed:
        # Nothing is bare, so whatever begins here butts something; all wood of the kind is mates.
        model.in_sight.extend(piece.chosen for piece in model.leaving[number, place])
    else:
        seen = _count(model, number, place)
        if strip is not None:
            staying.append(_Joint(at, strip, seen))
            if policy is JointPolicy.STAGGER:
                _keep_clear(model, staying[-1])
            join_mates(model, number, place, seen)


def _stays(model: Model, number: int, place: int) -> bool:
    """Whether a joint is there already, between two pieces that stay."""
    return all(
        any(piece.stays for piece in pieces[number, place]) for pieces in (model.leaving, model.reaching)
    )


def _forbid(model: Model, number: int, place: int) -> None:
    """(11) Where no joint may be in sight, every piece that begins follows what is bare."""
    model.cp.add(_following(model, number, place) <= 0)


def _count(model: Model, number: int, place: int) -> cp_model.IntVar:
    """(12) A joint is in sight where a piece begins that does not follow what is bare."""
    seen = model.cp.new_int_var(0, model.most(number), "")
    model.cp.add(seen >= _following(model, number, place))
    model.in_sight.append(seen)
    return seen


def _following(model: Model, number: int, place: int) -> cp_model.LinearExpr | int:
    """Give how many pieces follow others at a place, at the least, over all courses of a kind."""
    return number_of(model.leaving[number, place]) - model.bare.get((number, place - 1), 0)


def _keep_clear(model: Model, joint: _Joint) -> None:
    """(13) No joint stands nearer than the stagger to one of a touching course that stays as it is."""
    task = model.task
    near = joints_near(task.strips, *joint.strip, task.stack.beside)
    if any(abs(joint.at - other) < task.rules.stagger_nm for other in near):
        model.cp.add(joint.seen == 0)


def _stagger(model: Model, joints: list[_Joint]) -> None:
    """(14) Of two joints of touching courses that stand nearer than the stagger, there is one at most."""
    for lower, upper in product(joints, joints):
        touching = lower.strip[1] == upper.strip[0] and not (lower.stays and upper.stays)
        if touching and abs(lower.at - upper.at) < model.task.rules.stagger_nm:
            model.cp.add(lower.seen + upper.seen <= 1)

"""Courses are covered from end to end."""

from ortools.sat.python import cp_model

from plankwright.layout.choose.model import Model, number_of


def cover_runs(model: Model) -> None:
    """(5) Each run of each course is covered, or bare, from its start to its end.

    All courses of a kind are counted together: for each of them one piece or bare stretch leaves the start of
    a run and one reaches its end, and as many leave a place for a joint as reach it.
    """
    for number, kind in enumerate(model.kinds):
        count = _count(model, number)
        for place, node in enumerate(kind.places):
            before = _bare(model, number, place - 1)
            after = _bare(model, number, place)
            reaching = number_of(model.reaching[number, place]) + before
            leaving = number_of(model.leaving[number, place]) + after
            if node.joint:
                model.cp.add(reaching == leaving)
            elif kind.joined(place):
                model.cp.add(leaving == count)
            else:
                model.cp.add(reaching == count)


def _count(model: Model, number: int) -> cp_model.IntVar:
    """Give the variable that says how many courses of a kind there are."""
    kind = model.kinds[number]
    cp = model.cp
    model.count.append(cp.new_constant(1) if kind.stays else cp.new_int_var(0, model.most(number), ""))
    return model.count[number]


def _bare(model: Model, number: int, place: int) -> cp_model.IntVar | int:
    """Give how many courses of a kind are bare from a place to the next."""
    if not model.task.bare_allowed or not model.kinds[number].joined(place):
        return 0
    if (number, place) not in model.bare:
        model.bare[number, place] = model.cp.new_int_var(0, model.most(number), "")
    return model.bare[number, place]

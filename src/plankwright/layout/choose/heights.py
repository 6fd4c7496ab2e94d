"""Courses fill their stretch, and reach every edge between two bands just as their kinds say."""

from ortools.sat.python import cp_model

from plankwright.layout.choose.model import Model

_Heights = list[cp_model.LinearExpr]


def stack_courses(model: Model) -> None:
    """Let the heights of the courses add up; courses that keep their places need no such rule."""
    if model.task.stack.fixed:
        return
    heights = _heights(model)
    _meet_edges(model, heights)
    _leave_bands_between(model)
    _fill_stretch(model, heights)


def _heights(model: Model) -> _Heights:
    """(6) The closing rip leaves no course lower than the narrowest allowed.

    Gives for each kind the height of all its courses together, after the rip. [steps]
    """
    heights: _Heights = []
    narrowest = model.task.up(model.task.rules.narrowest_course_nm)
    for number, kind in enumerate(model.kinds):
        height = model.task.down(kind.height)
        most = max(0, height - narrowest)
        given_up = model.cp.new_int_var(0, most * model.most(number), "")
        model.cp.add(given_up <= most * model.count[number])
        model.given_up[number] = given_up
        heights.append(height * model.count[number] - given_up)
    return heights


def _meet_edges(model: Model, heights: _Heights) -> None:
    """(7) At each edge between bands the courses wholly below end no higher, and those begun below reach it.

    At most one course lies across it, so that the order of the bands is the order of the courses.
    """
    task, cp = model.task, model.cp
    rows = [kind.row for kind in model.kinds]
    for band, edge in enumerate(task.stack.edges, start=1):
        rise = edge - task.stack.low
        below = sum(part for part, row in zip(heights, rows, strict=True) if row.last_band < band)
        begun = sum(part for part, row in zip(heights, rows, strict=True) if row.first_band < band)
        across = sum(
            count
            for count, row in zip(model.count, rows, strict=True)
            if row.first_band < band <= row.last_band
        )
        cp.add(below <= task.down(rise))
        cp.add(begun >= task.up(rise))
        cp.add(across <= 1)


def _leave_bands_between(model: Model) -> None:
    """(7) Where a course lies across a whole band and both its edges, there is no course within that band."""
    rows = [kind.row for kind in model.kinds]
    for across, wide in enumerate(rows):
        for within, row in enumerate(rows):
            if wide.first_band < row.first_band == row.last_band < wide.last_band:
                none_there = 1 - model.count[across]
                model.cp.add(model.count[within] <= model.most(within) * none_there)


def _fill_stretch(model: Model, heights: _Heights) -> None:
    """(8) All courses together end where the stretch must end at the least, and where it may at the most."""
    task, stack = model.task, model.task.stack
    must, may = task.up(stack.must_end - stack.low), task.down(stack.may_end - stack.low)
    total = sum(heights)
    model.cp.add(total >= must)
    model.cp.add(total <= max(may, must))

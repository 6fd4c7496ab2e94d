"""Courses that are counted, put in places of their own."""

import random
from collections.abc import Sequence

from plankwright.layout.plan import PlannedCourse
from plankwright.layout.rows import Stack, fixed_stack
from plankwright.layout.whole.counting import Counts
from plankwright.layout.whole.question import Question


def placed(question: Question, counts: Counts, chance: random.Random) -> Stack:
    """Put courses in their places, band by band, in an order drawn by lot within each.

    Parameters
    ----------
    question, counts
        Which courses there are.
    chance
        Draws the order.

    Returns
    -------
    Stack
        Of courses that stay.
    """
    courses = [*_stacked(question, counts, chance)]
    courses += [PlannedCourse(*row.strip, (), ()) for row in question.stack.rows if row.strip is not None]
    in_order = sorted(courses, key=lambda course: course.low)
    return fixed_stack(question.strips, in_order, question.stack.beside)


def _stacked(question: Question, counts: Counts, chance: random.Random) -> Sequence[PlannedCourse]:
    stack = question.stack
    kinds = [
        kind
        for kind, courses in sorted(counts.courses.items())
        for _ in range(courses)
        if question.row_of(kind).strip is None
    ]
    chance.shuffle(kinds)
    kinds.sort(key=lambda kind: (question.row_of(kind).first_band, question.row_of(kind).last_band))
    left = {row: lost * question.grid for row, lost in counts.given_up.items()}
    courses, low = [], stack.low
    for number, kind in enumerate(kinds, start=1):
        row, height = question.kinds[kind].row, question.height_of(kind) * question.grid
        lost = min(left[row], max(0, height - question.rules.narrowest_course_nm))
        left[row] -= lost
        high = low + height - lost
        if number == len(kinds):
            high = min(max(high, stack.must_end), stack.may_end)
        courses.append(PlannedCourse(low, high, (), ()))
        low = high
    return courses

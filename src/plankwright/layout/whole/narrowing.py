"""Fewer heights of courses: pieces of courses that are alike in height can take each other's places."""

from collections import Counter
from dataclasses import replace

from plankwright.layout.rows import Stack
from plankwright.layout.whole.programme import Programme
from plankwright.measure import Nm


def narrowed(programme: Programme, most: int) -> Stack:
    """Keep the heights that cover most of the surface.

    In parts of boards any height will do, and a dozen or more are used; in whole boards, what is cut for a
    course that stands alone with its height cannot be hung anywhere else.

    Parameters
    ----------
    programme
        That counts its courses, as solved.
    most
        So many heights are kept of the courses that are counted.

    Returns
    -------
    Stack
        That of the programme, with courses of those heights; courses that stay are as they were.
    """
    question, values = programme.question, programme.values
    covered = Counter[Nm]()
    for kind, column in programme.counts.items():
        if question.row_of(kind).strip is None:
            height = question.course_heights[question.kinds[kind].height]
            covered[height] += round(values[column] * height)
    kept = {height for height, _ in covered.most_common(most)}
    rows = (
        row if row.strip is not None else replace(row, heights=tuple(filter(kept.__contains__, row.heights)))
        for row in question.stack.rows
    )
    return replace(question.stack, rows=tuple(row for row in rows if row.heights))

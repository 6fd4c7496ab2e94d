"""Where the solver starts from: the courses that are there already."""

from collections import Counter
from collections.abc import Sequence

from plankwright.layout.choose.model import Model
from plankwright.layout.plan import PlannedCourse


def hint(model: Model) -> None:
    """Hint at the courses that are there already, as far as the model knows such courses.

    Parameters
    ----------
    model
        With all its variables.
    """
    kinds = [_kind_of(model, course) for course in model.task.now]
    _hint_pieces(model, kinds)
    for number, count in enumerate(model.count):
        if not model.kinds[number].stays:
            model.cp.add_hint(count, kinds.count(number))
        if number in model.given_up:
            model.cp.add_hint(model.given_up[number], 0)
    _hint_bare(model, kinds)


def _hint_pieces(model: Model, kinds: Sequence[int]) -> None:
    there = Counter(
        (number, piece.stick.board, piece.start, piece.end)
        for course, number in zip(model.task.now, kinds, strict=True)
        for piece in course.pieces
    )
    for piece in model.pieces:
        places = model.kinds[piece.kind].places
        board = model.task.sticks[piece.stick].board
        alike = piece.kind, board, places[piece.first].at, places[piece.last].at
        times = there[alike] if model.task.sticks[piece.stick].endless else min(1, there[alike])
        if not piece.stays:
            # What stays is no choice; and where several pieces do, they are one and the same constant.
            model.cp.add_hint(piece.chosen, times)
        there[alike] -= times


def _hint_bare(model: Model, kinds: Sequence[int]) -> None:
    for (number, place), courses in model.bare.items():
        at = model.kinds[number].places[place].at
        bare = sum(
            1
            for course, kind in zip(model.task.now, kinds, strict=True)
            if kind == number and any(start <= at < end for start, end in course.bare)
        )
        model.cp.add_hint(courses, bare)


def _kind_of(model: Model, course: PlannedCourse) -> int:
    """Give the number of the kind of a course that is there already, or -1 when the model knows none."""
    boards = {piece.stick.board for piece in course.pieces}
    edges = model.task.stack.edges
    bands = sum(edge <= course.low for edge in edges), sum(edge < course.high for edge in edges)
    for number, kind in enumerate(model.kinds):
        if (
            kind.height == course.height
            and (kind.row.first_band, kind.row.last_band) == bands
            and boards <= {model.task.sticks[stick].board for stick in kind.sticks}
        ):
            return number
    return -1

"""Which pieces the model knows: what could never hang right is left out from the start."""

from collections.abc import Iterator

from plankwright.layout.butting import can_butt, reaches_barred
from plankwright.layout.choose.kinds import Kind
from plankwright.layout.choose.model import Candidate, Model
from plankwright.layout.choose.task import Task
from plankwright.layout.plan import Stick


def list_pieces(model: Model) -> None:
    """Give the model a variable for each piece that a lane of a stick could give to a kind of course."""
    task = model.task
    pinned = task.pinned
    for number, kind in enumerate(model.kinds):
        _list_pinned(model, number)
        for first, last in _stretches(model, number):
            start, end = kind.places[first].at, kind.places[last].at
            length = task.up(end - start)
            concealed = _concealed(kind, first, last)
            for stick in kind.sticks:
                wood = task.sticks[stick]
                besides = task.terms(kind.row, start, end, wood)
                if (
                    besides is not None
                    and wood not in pinned
                    and _long_enough(task, wood, length)
                    and (concealed or not wood.hidden_only)
                ):
                    for lane in range(model.lanes[stick]):
                        chosen = model.cp.new_int_var(0, model.most(number) if wood.endless else 1, "")
                        _add(model, Candidate(number, first, last, stick, lane, length, chosen, besides))


def _list_pinned(model: Model, number: int) -> None:
    """Give the model the pieces that stay."""
    task, kind = model.task, model.kinds[number]
    at = {(place.at, place.run): index for index, place in enumerate(kind.places)}
    for piece in (each.piece for each in kind.row.pinned):
        run = next(number for place, number in at if place == piece.start and (piece.end, number) in at)
        _add(
            model,
            Candidate(
                number,
                at[piece.start, run],
                at[piece.end, run],
                task.sticks.index(piece.stick),
                0,
                task.up(piece.end - piece.start),
                model.cp.new_constant(1),
                stays=True,
            ),
        )


def _add(model: Model, piece: Candidate) -> None:
    model.pieces.append(piece)
    model.leaving[piece.kind, piece.first].append(piece)
    model.reaching[piece.kind, piece.last].append(piece)


def _stretches(model: Model, number: int) -> Iterator[tuple[int, int]]:
    """(3) A piece that butts is long enough and nailed often enough; no end is one that no saw at hand cuts.

    Gives the pairs of places that a piece can reach between, as far as the longest stick goes.
    """
    task, kind = model.task, model.kinds[number]
    longest = max((task.down(task.sticks[stick].length) for stick in kind.sticks), default=0)
    taken = [(each.piece.start, each.piece.end) for each in kind.row.pinned]
    for i, first in enumerate(kind.places):
        for j in range(i + 1, len(kind.places)):
            last = kind.places[j]
            if last.run != first.run or task.up(last.at - first.at) > longest:
                break
            alone, run = not (first.joint or last.joint), kind.row.runs[first.run]
            if reaches_barred(first.at, last.at, (*run.barred, *taken)):
                continue
            if alone or can_butt(first.at, last.at, run.nails, task.rules):
                yield i, j


def _long_enough(task: Task, stick: Stick, length: int) -> bool:
    """(2) A stick is at least as long as a piece from it."""
    return task.down(stick.length) >= length


def _concealed(kind: Kind, first: int, last: int) -> bool:
    """(4) A blemished stick hangs only where one concealed zone hides the whole piece."""
    start, end = kind.places[first], kind.places[last]
    return kind.row.runs[start.run].hides(start.at, end.at)

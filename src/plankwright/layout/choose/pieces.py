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
    for number, kind in enumerate(model.kinds):
        for first, last in _stretches(model, number):
            length = task.up(kind.places[last].at - kind.places[first].at)
            concealed = _concealed(kind, first, last)
            for stick in kind.sticks:
                if _long_enough(task, task.sticks[stick], length) and (
                    concealed or not task.sticks[stick].hidden_only
                ):
                    for lane in range(model.lanes[stick]):
                        most = model.most(number) if task.sticks[stick].endless else 1
                        chosen = model.cp.new_int_var(0, most, "")
                        piece = Candidate(number, first, last, stick, lane, length, chosen)
                        model.pieces.append(piece)
                        model.leaving[number, first].append(piece)
                        model.reaching[number, last].append(piece)


def _stretches(model: Model, number: int) -> Iterator[tuple[int, int]]:
    """(3) A piece that butts is long enough and nailed often enough; no end is one that no saw at hand cuts.

    Gives the pairs of places that a piece can reach between, as far as the longest stick goes.
    """
    task, kind = model.task, model.kinds[number]
    longest = max((task.down(task.sticks[stick].length) for stick in kind.sticks), default=0)
    for i, first in enumerate(kind.places):
        for j in range(i + 1, len(kind.places)):
            last = kind.places[j]
            if last.run != first.run or task.up(last.at - first.at) > longest:
                break
            alone, run = not (first.joint or last.joint), kind.row.runs[first.run]
            if reaches_barred(first.at, last.at, run.barred):
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

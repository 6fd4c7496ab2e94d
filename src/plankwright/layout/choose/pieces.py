"""Which pieces the model knows: what could never hang right is left out from the start."""

from bisect import bisect_left
from collections.abc import Iterator

from plankwright.layout.butting import can_butt, reaches_barred
from plankwright.layout.choose.kinds import Kind, Place
from plankwright.layout.choose.model import Candidate, Model
from plankwright.layout.choose.task import Task
from plankwright.layout.plan import Stick
from plankwright.layout.rows import Row


def list_pieces(model: Model) -> None:
    """Give the model a variable for each piece that a lane of a stick could give to a kind of course."""
    task = model.task
    pinned = task.pinned
    longest = max((task.down(stick.length) for stick in task.sticks), default=0)
    # Kinds that differ in height or wood alone have the same stretches.
    known: dict[tuple[Row, tuple[Place, ...]], list[tuple[int, int]]] = {}
    for number, kind in enumerate(model.kinds):
        _list_pinned(model, number)
        if (kind.row, kind.places) not in known:
            known[kind.row, kind.places] = list(_stretches(task, kind, longest))
        reach = max((task.down(task.sticks[stick].length) for stick in kind.sticks), default=0)
        for first, last in known[kind.row, kind.places]:
            start, end = kind.places[first].at, kind.places[last].at
            length = task.up(end - start)
            if length > reach:
                continue
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


def _stretches(task: Task, kind: Kind, longest: int) -> Iterator[tuple[int, int]]:
    """(3) A piece that butts is long enough and nailed often enough; no end is one that no saw at hand cuts.

    Gives the pairs of places that a piece can reach between, as far as the longest stick goes.
    """
    taken = [(each.piece.start, each.piece.end) for each in kind.row.pinned]
    along = [place.at for place in kind.places]
    ends = {place.run: index for index, place in enumerate(kind.places)}
    for i, first in enumerate(kind.places):
        run, end = kind.row.runs[first.run], ends[first.run]
        barred = (*run.barred, *taken)
        butting = range(bisect_left(along, first.at + task.rules.shortest_piece_nm, i + 1), end + 1)
        # However short a run is, one piece may cover it.
        whole = (end,) if not first.joint and i < end and end not in butting else ()
        for j in (*butting, *whole):
            last = kind.places[j]
            if task.up(last.at - first.at) > longest:
                break
            if reaches_barred(first.at, last.at, barred):
                continue
            alone = not (first.joint or last.joint)
            if alone or can_butt(first.at, last.at, run.nails, task.rules):
                yield i, j


def _long_enough(task: Task, stick: Stick, length: int) -> bool:
    """(2) A stick is at least as long as a piece from it."""
    return task.down(stick.length) >= length


def _concealed(kind: Kind, first: int, last: int) -> bool:
    """(4) A blemished stick hangs only where one concealed zone hides the whole piece."""
    start, end = kind.places[first], kind.places[last]
    return kind.row.runs[start.run].hides(start.at, end.at)

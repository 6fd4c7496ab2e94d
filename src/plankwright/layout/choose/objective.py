"""What the solver makes least."""

from collections.abc import Iterator

from ortools.sat.python import cp_model

from plankwright.layout.choose.model import Candidate, Model


def minimise(model: Model) -> None:
    """(16) The price is least: of area bare, of wood and pieces, and of joints in sight."""
    model.cp.minimize(sum((*_bare(model), *_wood(model), *_joints(model))))


def _bare(model: Model) -> Iterator[cp_model.LinearExpr]:
    """Price what stays bare by its area."""
    task = model.task
    for (number, place), courses in model.bare.items():
        kind = model.kinds[number]
        length = task.up(kind.places[place + 1].at - kind.places[place].at)
        yield task.prices.bare * length * task.up(kind.height) * courses


def _wood(model: Model) -> Iterator[cp_model.LinearExpr]:
    """Price each piece by the wood that it takes or leaves too short to use, and what is asked besides."""
    for piece in model.pieces:
        yield (_price(model, piece) + piece.besides) * piece.chosen


def _price(model: Model, piece: Candidate) -> int:
    task, stick = model.task, model.task.sticks[piece.stick]
    kerf, length, width = (
        task.up(task.rules.crosscut_kerf_nm),
        task.down(stick.length),
        task.down(stick.width),
    )
    if task.sticks[piece.stick].endless:
        return task.prices.new + task.prices.new_wood * piece.length * task.down(
            task.sticks[piece.stick].width
        )
    rest = length - piece.length
    taken = piece.length + kerf if rest >= task.up(task.rules.shortest_piece_nm) + kerf else length
    if model.lanes[piece.stick] > 1:
        width = min(width, task.up(model.kinds[piece.kind].height + task.rules.rip_kerf_nm))
    return task.prices.wood * taken * width + task.prices.piece


def _joints(model: Model) -> Iterator[cp_model.LinearExpr]:
    """Price joints in sight by their number."""
    for seen in model.in_sight:
        yield model.task.prices.joint * seen

"""The search ends with a look at what it found."""

from itertools import pairwise

from builders import job, studs, wall
from choosing import plain
from looking import boards
from plankwright.layout.lay_out import lay_out
from plankwright.layout.result import Effort, Watch

WORK = job(
    wall(96, 48, framing=studs(*range(0, 97, 8))),
    [*boards("D", 4, 96, tone="dark"), *boards("L", 4, 96, tone="light")],
    plain(),
)
TONES = {board.id: board.tone for board in WORK.boards}
MOMENT = Effort(name="moment", seconds=2.0)


def test_dark_and_light_boards_hang_by_turns() -> None:
    """Any order covers the wall as well."""
    (laid,) = lay_out(WORK, effort=MOMENT).layout.surfaces
    tones = [TONES[piece.board_id] for piece in laid.pieces]
    assert len(tones) == 8
    assert all(one != other for one, other in pairwise(tones))


def test_a_search_that_is_stopped_spends_no_time_on_looks() -> None:
    """The first layout stays as it is."""
    (laid,) = lay_out(WORK, effort=MOMENT, watch=Watch(stopped=lambda: True)).layout.surfaces
    tones = [TONES[piece.board_id] for piece in laid.pieces]
    assert any(one == other for one, other in pairwise(tones))

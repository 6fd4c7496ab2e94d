"""From job to layout: what comes out has passed the checker, whole or in part, the same every time."""

import random
from dataclasses import replace
from importlib import import_module
from pathlib import Path

import pytest

from benched import benched
from builders import board, job, opening, studs, wall
from plankwright.check import check_layout, faults
from plankwright.files import layout_to_json, read_job
from plankwright.layout import Effort, Progress, Verdict, Watch, lay_out, verdict
from plankwright.layout.first import build
from plankwright.layout.sticks import whole_sticks
from plankwright.layout.strips import Strips
from plankwright.model import Job, JointPolicy, Rules

_MOMENT = Effort(name="moment", seconds=1)
_EXAMPLE = Path(__file__).parents[3] / "examples" / "village-hall"


def _small_wall(*boards: tuple[float, float], rules: Rules | None = None) -> Job:
    """Make a wall of 8 by 2 feet on five studs, with the given boards (length, width)."""
    surface = wall(96, 24, framing=studs(0.75, 24, 48, 72, 95.25))
    return job(surface, [board(f"B{n}", *size) for n, size in enumerate(boards, start=1)], rules)


@pytest.fixture(scope="module")
def enough() -> Job:
    """A pile that covers the small wall with something over."""
    return _small_wall(*[(100, 6.5)] * 5, *[(60, 6.5)] * 2)


@pytest.fixture(scope="module")
def too_little() -> Job:
    """A pile that leaves a good part of the small wall bare."""
    return _small_wall((100, 6.5), (100, 6.5), (50, 6.5))


def test_enough_wood_covers_everything(enough: Job) -> None:
    """The answer is yes, with a layout that the checker passes, and no joint where none is needed."""
    layout = lay_out(enough, effort=_MOMENT).layout
    assert not faults(check_layout(enough, layout))
    assert verdict(layout.surfaces[0]) is Verdict.ENOUGH
    assert layout.surfaces[0].score.joints_in_sight == 0


def test_the_same_job_seed_and_effort_give_the_same_layout(enough: Job) -> None:
    """Two searches write the very same document."""
    first, second = (layout_to_json(lay_out(enough, effort=_MOMENT, seed=7).layout) for _ in range(2))
    assert first == second


def test_too_little_wood_is_proven_and_the_boards_that_close_it_are_named(too_little: Job) -> None:
    """The answer is no; what is hung is right, and a layout with the boards wanted covers everything."""
    result = lay_out(too_little, effort=_MOMENT)
    assert not faults(check_layout(too_little, result.layout))
    assert verdict(result.layout.surfaces[0]) is Verdict.NOT_ENOUGH
    assert result.wanted
    assert result.closing is not None
    closing_job, closing = result.closing
    assert len(closing_job.boards) == len(too_little.boards) + sum(wanted.count for wanted in result.wanted)
    assert closing.covers_everything
    assert not faults(check_layout(closing_job, closing))


def test_no_boards_leave_everything_bare() -> None:
    """An empty pile is an answer, not an accident."""
    empty = _small_wall()
    result = lay_out(empty, effort=_MOMENT)
    assert not result.layout.pieces
    assert result.layout.surfaces[0].score.bare_nm2 > 0
    assert not faults(check_layout(empty, result.layout))


def test_a_search_stopped_at_once_still_gives_a_right_layout(enough: Job) -> None:
    """Whoever stops gets the best so far, and it is checked like any other."""
    result = lay_out(enough, effort=Effort(name="long", seconds=600), watch=Watch(stopped=lambda: True))
    assert result.stopped
    assert not faults(check_layout(enough, result.layout))


def test_nobody_who_stops_a_search_waits_for_boards_to_be_asked_for(too_little: Job) -> None:
    """That takes a while where much is bare."""
    result = lay_out(too_little, effort=_MOMENT, watch=Watch(stopped=lambda: True))
    assert result.layout.surfaces[0].bare
    assert result.wanted == ()
    assert result.closing is None


def test_a_search_ends_without_the_clock(monkeypatch: pytest.MonkeyPatch) -> None:
    """A board that fits nowhere leaves the solver nothing to do, over and over."""
    monkeypatch.setattr(import_module("plankwright.layout.one_surface"), "_LATE", 1e9)
    result = lay_out(job(wall(6, 6, framing=studs(3)), [board("A", 4, 2)]), effort=_MOMENT)
    assert not result.layout.pieces


def test_progress_never_gets_worse(enough: Job) -> None:
    """What is reported is the best so far: bare area first, then joints in sight, then wood."""
    seen: list[Progress] = []
    lay_out(_small_wall(*[(60, 6.5)] * 9), effort=_MOMENT, watch=Watch(report=seen.append))
    best = [(p.best.bare_nm2, p.best.joints_in_sight) for p in seen if p.best is not None]
    assert best == sorted(best, reverse=True)
    assert seen[-1].done == 1.0
    assert enough.surfaces[0].id == seen[0].surface_id


def test_boards_held_back_are_not_cut(enough: Job) -> None:
    """As many boards as the rules ask stay whole."""
    holding = replace(enough, rules=Rules(hold_back=2))
    result = lay_out(holding, effort=_MOMENT)
    assert len(result.held_back) == 2
    assert not {piece.board_id for piece in result.layout.pieces} & set(result.held_back)


def test_the_surface_of_most_importance_is_served_first() -> None:
    """With wood for one wall only, the first is covered and the second is not."""
    first = wall(96, 24, id="first", framing=studs(0.75, 24, 48, 72, 95.25))
    both = job([first, replace(first, id="second")], [board(f"B{n}", 100, 6.5) for n in range(1, 5)])
    result = lay_out(both, effort=_MOMENT)
    assert not faults(check_layout(both, result.layout))
    assert [verdict(surface) for surface in result.layout.surfaces] == [Verdict.ENOUGH, Verdict.NOT_ENOUGH]
    assert result.closing is not None
    assert not faults(check_layout(*result.closing))


def test_a_later_surface_takes_the_offcut_that_an_earlier_one_left() -> None:
    """Of 130 inches 64 are left behind the first; they lose less on 60 inches than the board of 70 would."""
    first = wall(66, 6, id="first", framing=studs(1, 33, 59))
    second = wall(60, 6, id="second", framing=studs(1, 33, 59))
    rules = Rules(end_trim_nm=0, straight_edge_loss_nm=0, expansion_gap_nm=0)
    both = job([first, second], [board("long", 130, 6), board("short", 70, 6)], rules)
    result = lay_out(both, effort=_MOMENT)
    assert {piece.board_id for piece in result.layout.pieces} == {"long"}


def test_surfaces_closed_one_after_another_share_the_pile() -> None:
    """What closes the first takes other wood than its layout did: the second gets what is left then."""
    first = wall(96, 18, id="first", framing=studs(0.75, 24, 48, 72, 95.25))
    sizes = [(102, 6.5), (62, 6.5), (93, 5), (90, 4), (78, 6.5)]
    both = job([first, replace(first, id="second")], [board(f"B{n}", *size) for n, size in enumerate(sizes)])
    result = lay_out(both, effort=_MOMENT)
    assert result.closing is not None
    assert not faults(check_layout(*result.closing))


def test_joints_that_must_not_show_do_not_show() -> None:
    """With joints in sight forbidden, short boards leave the long runs bare and cover those beside a door."""
    surface = wall(
        96,
        24,
        framing=studs(0.75, 24, 33, 63, 72, 95.25),
        openings=(opening("door", 36, 0, 60, 23.5, trim=1),),
    )
    short = job(surface, [board(f"B{n}", 40, 6.5) for n in range(1, 9)], Rules(joints=JointPolicy.NEVER))
    layout = lay_out(short, effort=_MOMENT).layout
    assert not faults(check_layout(short, layout))
    assert layout.surfaces[0].score.joints_in_sight == 0
    assert layout.pieces


def test_a_surface_narrower_than_any_course_stays_bare() -> None:
    """A strip of one inch over a door, where no course is narrower than two: rather nothing than a sliver."""
    strip = job(wall(36, 1), [board("A", 96, 6)])
    result = lay_out(strip, effort=_MOMENT)
    assert not faults(check_layout(strip, result.layout))
    assert not result.layout.pieces
    assert result.layout.surfaces[0].bare
    assert result.closing is None


def test_the_example_is_enough_but_not_by_eye() -> None:
    """Course by course from the floor the example runs out of wood; the search covers it."""
    example = read_job(_EXAMPLE).job
    strips = Strips(example.surfaces[0], example.rules)
    sticks = [
        stick
        for place, whole in enumerate(example.boards)
        for stick in whole_sticks(whole, place, example.rules)
    ]
    by_eye = build(strips, sticks, random.Random(0))  # noqa: S311 - chance, not secrecy
    assert sum(course.bare_area for course in by_eye) > 0

    covered: list[bool] = []

    def see(progress: Progress) -> None:
        covered.append(progress.best is not None and progress.best.bare_nm2 == 0)

    watch = Watch(report=see, stopped=lambda: any(covered))
    layout = lay_out(example, effort=Effort(name="until covered", seconds=120), watch=watch).layout
    assert layout.covers_everything
    assert not faults(check_layout(example, layout))


@pytest.mark.parametrize("seed", [1, 4])
def test_a_wall_is_covered_from_a_pile_that_just_covers_it(seed: int) -> None:
    """A wall was cut up to make the pile, so it can be covered, with every joint behind a fixture."""
    layout = lay_out(benched(seed), effort=Effort(name="short", seconds=10)).layout
    assert verdict(layout.surfaces[0]) is Verdict.ENOUGH
    assert layout.surfaces[0].score.joints_in_sight == 0


def test_a_pile_that_lacks_one_board_asks_for_little_more() -> None:
    """A pile just covered the wall before a board was taken from it: two boards do, and close it."""
    short = benched(1)
    short = replace(short, boards=short.boards[:3] + short.boards[4:])
    result = lay_out(short, effort=Effort(name="short", seconds=10))
    assert verdict(result.layout.surfaces[0]) is Verdict.NOT_ENOUGH
    assert sum(each.count for each in result.wanted) <= 2
    assert result.closing is not None
    assert verdict(result.closing[1].surfaces[0]) is Verdict.ENOUGH
    assert not faults(check_layout(*result.closing))

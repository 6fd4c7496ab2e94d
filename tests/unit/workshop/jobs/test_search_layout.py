"""A search for a kept job gives a layout with its answer, and lets it be seen as it gets better."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from builders import board
from in_progress import begun_job, begun_layout, happened, marked
from plankwright.errors import LayoutRefusedError
from plankwright.layout.again import lay_again
from plankwright.layout.crew import ALONE
from plankwright.layout.result import Progress, Result, Verdict, Watch
from plankwright.model import Bound, Job, Score, SurfaceLayout
from plankwright.workshop.ask_enough import ask_enough
from plankwright.workshop.jobs.kept import KeptLayout, Made
from plankwright.workshop.jobs.search_layout import Errand, Sight, faults_so_far, search_layout
from plankwright.workshop.jobs.wishes import NO_WISHES, PieceWish
from plankwright.workshop.lay_out import EffortError, Search, StoppedError
from village import StandInSearch, short_result, small_job, small_layout, small_result, spoilt_layout

SCORE = Score(bare_nm2=0, joints_in_sight=0, wood_spent_nm2=0, cuts=0)
FROM_SCRATCH = Errand(job=small_job(), made=Made.SEARCHED, effort="glance", seed=7)


def found(
    errand: Errand,
    search: Search,
    *,
    tell: Callable[[Sight], None] = lambda _sight: None,
    stopped: Callable[[], bool] = lambda: False,
) -> KeptLayout:
    """Search."""
    return search_layout(errand, tell, stopped, search=search, again=lay_again, crew=ALONE)


def two_walls() -> Job:
    """Give two walls, and boards for both."""
    (wall,) = small_job().surfaces
    boards = tuple(board(name, 97, 5.25) for name in ("A", "B", "C", "D"))
    return replace(small_job(), surfaces=(replace(wall, id="north"), replace(wall, id="east")), boards=boards)


def on(surface_id: str, boards: str = "AB") -> SurfaceLayout:
    """Give a layout of one of them, of two boards."""
    (laid,) = small_layout().surfaces
    courses = (
        replace(row, pieces=(replace(row.pieces[0], board_id=name),))
        for row, name in zip(laid.courses, boards, strict=True)
    )
    return replace(laid, surface_id=surface_id, courses=tuple(courses))


def telling(job: Job, *reports: Progress) -> StandInSearch:
    """Give a search that tells something before it is done."""
    both = replace(small_layout(), surfaces=(on("north"), on("east", "CD")))
    result = small_result() if len(job.surfaces) == 1 else Result(layout=both)

    def tell(watch: Watch) -> None:
        for report in reports:
            watch.report(report)

    return StandInSearch(result, tell)


def step(surface_id: str = "wall", laid: tuple[SurfaceLayout, ...] = (), done: float = 0.5) -> Progress:
    """Give one step forward of a search."""
    return Progress(surface_id=surface_id, stage="at it", done=done, best=SCORE, bound=Bound(), laid=laid)


def seen(errand: Errand, *reports: Progress) -> list[Sight]:
    """Give what is seen of a search that tells something."""
    sights: list[Sight] = []
    found(errand, telling(errand.job, *reports), tell=sights.append)
    return sights


def test_what_is_found_from_scratch_comes_with_its_answer() -> None:
    """It is not kept yet."""
    kept = found(FROM_SCRATCH, StandInSearch(small_result()))
    assert kept == KeptLayout(
        layout=small_layout(), made=Made.SEARCHED, answer=ask_enough(small_job(), small_result())
    )


def test_a_pile_that_is_not_enough_is_told() -> None:
    """With the boards that are wanted."""
    kept = found(FROM_SCRATCH, StandInSearch(short_result()))
    assert kept.answer == ask_enough(small_job(), short_result())
    assert kept.answer is not None
    assert kept.answer.wanted == short_result().wanted


def test_the_search_is_told_how_long_and_by_which_seed() -> None:
    """And that somebody wants to see it."""
    search = StandInSearch(small_result())
    found(replace(FROM_SCRATCH, effort="90s"), search)
    ((job, effort, seed, watch),) = search.called_with
    assert (job, effort.seconds, seed) == (small_job(), 90.0, 7)
    assert watch is not None
    assert watch.sees


def test_the_search_asks_whether_it_is_to_stop() -> None:
    """Whoever began it may want it to."""
    asked: list[bool] = []
    search = StandInSearch(small_result(), lambda watch: asked.append(watch.stopped()))
    found(FROM_SCRATCH, search, stopped=lambda: True)
    assert asked == [True]


def test_a_layout_that_breaks_a_rule_never_leaves() -> None:
    """Nor one of which nothing was laid."""
    with pytest.raises(LayoutRefusedError):
        found(FROM_SCRATCH, StandInSearch(Result(layout=spoilt_layout())))
    (laid,) = short_result().layout.surfaces
    nothing = replace(small_layout(), surfaces=(replace(laid, courses=()),))
    with pytest.raises((StoppedError, LayoutRefusedError)):
        found(FROM_SCRATCH, StandInSearch(Result(layout=nothing, stopped=True)))


def test_an_effort_that_is_none_is_told() -> None:
    """In one sentence, before any search."""
    search = StandInSearch(small_result())
    with pytest.raises(EffortError):
        found(replace(FROM_SCRATCH, effort="for ever"), search)
    assert search.called_with == []


def test_how_far_it_is_is_told_in_words() -> None:
    """Of a job of one surface without its name."""
    (sight,) = seen(FROM_SCRATCH, step(done=0.25))
    assert (sight.stage, sight.done, sight.best) == ("at it", 0.25, None)
    assert sight.told.startswith("all covered")


def test_the_best_so_far_is_seen_as_a_layout_of_the_job() -> None:
    """With the seed and the effort that it came of."""
    (laid,) = small_layout().surfaces
    before, better = seen(FROM_SCRATCH, step(), step(laid=(laid,)))
    assert before.best is None
    assert better.best == replace(small_layout(), seed=7, effort="glance")


def test_a_best_so_far_that_breaks_a_rule_is_not_seen() -> None:
    """Nobody checked it before."""
    (spoilt,) = spoilt_layout().surfaces
    (sight,) = seen(FROM_SCRATCH, step(laid=(spoilt,)))
    assert sight.best is None


def test_of_several_surfaces_each_is_seen_as_far_as_it_has_come() -> None:
    """In the order of the job, whichever came first; what is told names the surface."""
    errand = replace(FROM_SCRATCH, job=two_walls())
    first, second = seen(errand, step("east", (on("east"),)), step("north", (on("north", "CD"),)))
    assert first.stage == "east: at it"
    assert first.told.startswith("east: ")
    assert first.best is not None
    assert [one.surface_id for one in first.best.surfaces] == ["east"]
    assert second.best is not None
    assert second.best.surfaces == (on("north", "CD"), on("east"))


def test_surfaces_that_want_the_same_wood_are_not_seen_together() -> None:
    """Each is right by itself, but they cannot hang at once."""
    errand = replace(FROM_SCRATCH, job=two_walls())
    first, second = seen(errand, step("north", (on("north"),)), step("east", (on("east"),)))
    assert first.best is not None
    assert second.best is None


def test_part_of_a_job_is_judged_by_itself() -> None:
    """What is not laid out yet is no fault, nor that it is linked with it."""
    part = replace(small_layout(), surfaces=(on("east"),))
    spoilt = replace(part, surfaces=(replace(spoilt_layout().surfaces[0], surface_id="east"),))
    for job in (two_walls(), replace(two_walls(), linked=(("north", "east"),))):
        assert not faults_so_far(job, part)
        assert faults_so_far(job, spoilt)


def test_what_is_left_is_laid_out_with_as_little_change_as_can_be() -> None:
    """What was marked and what is different since is told; what is seen meanwhile heeds it."""
    work = marked(happened("hung", "1"), happened("lost", "C"))
    errand = Errand(job=begun_job(), made=Made.AGAIN, effort="glance", before=begun_layout(), work=work)
    sights: list[Sight] = []
    kept = found(errand, StandInSearch(small_result()), tell=sights.append)
    assert kept.made is Made.AGAIN
    assert kept.layout.covers_everything
    assert kept.answer is not None
    assert any("3a" in sentence for sentence in kept.news)
    best = [sight.best for sight in sights if sight.best is not None]
    assert best
    assert not any(faults_so_far(begun_job(), one, work.standing) for one in best)


def test_what_is_left_of_a_job_that_nobody_began_is_all_of_it() -> None:
    """Nothing changes then."""
    errand = Errand(job=begun_job(), made=Made.AGAIN, effort="glance", before=begun_layout())
    kept = found(errand, StandInSearch(small_result()))
    assert [piece.board_id for piece in kept.layout.pieces] == [
        piece.board_id for piece in begun_layout().pieces
    ]


def test_what_is_wished_is_gone_round() -> None:
    """What was granted is told first, then what is different since; what is seen meanwhile heeds it."""
    wishes = NO_WISHES.keeping(PieceWish(surface_id="wall", label="4b", board_id="long")).leaving_out("C")
    errand = Errand(job=begun_job(), made=Made.AROUND, effort="glance", before=begun_layout(), wishes=wishes)
    sights: list[Sight] = []
    kept = found(errand, StandInSearch(small_result()), tell=sights.append)
    assert kept.made is Made.AROUND
    assert kept.answer is not None
    assert kept.answer.verdict is Verdict.ENOUGH
    assert kept.news[0] == "As wished: 4b stays where it is; without board C."
    assert any("3a is cut from board" in sentence for sentence in kept.news)
    best = [sight.best for sight in sights if sight.best is not None]
    assert best
    assert all("C" not in {piece.board_id for piece in one.pieces} for one in best)


@pytest.mark.parametrize("made", [Made.AGAIN, Made.AROUND])
def test_what_is_left_needs_the_layout_that_the_job_is_worked_by(made: Made) -> None:
    """Whoever asks without it has made a mistake of ours."""
    with pytest.raises(ValueError, match="only with the layout that the job is worked by"):
        found(replace(FROM_SCRATCH, made=made), StandInSearch(small_result()))

"""Several searches for one wall: the best is kept, whoever does them, and they are told of as one."""

import random
from collections.abc import Mapping
from dataclasses import replace
from importlib import import_module

import pytest

from many_walls import Backwards, plenty
from plankwright.check import check_layout, faults
from plankwright.layout import Effort, Progress, Watch, lay_out
from plankwright.layout.abreast import lay_abreast
from plankwright.layout.crew import ALONE
from plankwright.layout.one_surface import Laid, Turn
from plankwright.model import Bound, Job, Layout, Score, SurfaceLayout

_TURN = Turn(number=0, stock=(), cut_into=frozenset(), counted=(), shared=False, seed="1 wall", work=1.0)


def _score(bare: int, joints: int, wood: int) -> Score:
    return Score(bare_nm2=bare, joints_in_sight=joints, wood_spent_nm2=wood, cuts=0)


def _one_wall() -> Job:
    job = plenty()
    return replace(job, surfaces=job.surfaces[:1])


@pytest.fixture
def begun(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Let searches find what these seeds are said to, and remember which were begun."""
    seeds: list[str] = []
    found: Mapping[str, Score] = {
        "1 wall": _score(0, 5, 90),
        "1 wall 2": _score(0, 4, 100),
        "1 wall 3": _score(0, 4, 100),
        "proven": _score(0, 4, 80),
        "proven 2": _score(0, 4, 80),
        "short": _score(7, 1, 90),
        "short 2": _score(7, 2, 80),
    }

    def lay_surface(_job: Job, turn: Turn, watch: Watch) -> Laid:
        seeds.append(turn.seed)
        best, bound = found[turn.seed], Bound(joints_in_sight=4, wood_spent_nm2=80)
        watch.report(Progress(surface_id="wall", stage=turn.seed, done=0.5, best=best, bound=bound))
        chance = random.Random(turn.seed)  # noqa: S311 - chance, not secrecy
        return Laid(plan=(), best=best, bound=bound, bounds=(bound,), chance=chance)

    monkeypatch.setattr(import_module("plankwright.layout.abreast"), "lay_surface", lay_surface)
    return seeds


@pytest.mark.usefixtures("begun")
@pytest.mark.parametrize(("seed", "best"), [("1 wall", (0, 4, 100)), ("short", (7, 2, 80))])
def test_the_best_is_kept(seed: str, best: tuple[int, int, int]) -> None:
    """Joints count before wood, but not while something is bare."""
    laid = lay_abreast(_one_wall(), replace(_TURN, seed=seed), 2, ALONE, Watch())
    assert laid is not None
    assert laid.best == _score(*best)


def test_of_two_alike_the_earlier_is_kept_whoever_comes_first(begun: list[str]) -> None:
    """The second and the third are."""
    for crew in (ALONE, Backwards()):
        laid = lay_abreast(_one_wall(), _TURN, 3, crew, Watch())
        assert laid is not None
        assert laid.chance.getstate() == random.Random("1 wall 2").getstate()  # noqa: S311 - not secrecy
    assert begun[:3] == begun[:2:-1] == ["1 wall", "1 wall 2", "1 wall 3"]


def test_what_the_first_proves_ends_the_others(begun: list[str]) -> None:
    """What the second proves does not: in another order the first would have been found."""
    assert lay_abreast(_one_wall(), replace(_TURN, seed="proven"), 2, ALONE, Watch()) is not None
    assert begun == ["proven"]
    lay_abreast(_one_wall(), replace(_TURN, seed="proven"), 2, Backwards(), Watch())
    assert begun == ["proven", "proven 2", "proven"]


@pytest.mark.usefixtures("begun")
def test_they_are_told_of_as_one() -> None:
    """The best so far never gets worse."""
    told: list[Progress] = []
    lay_abreast(_one_wall(), _TURN, 2, Backwards(), Watch(report=told.append))
    assert [progress.stage for progress in told] == ["1 wall 2", "1 wall"]
    assert [progress.best for progress in told] == [_score(0, 4, 100)] * 2


def test_nothing_is_found_where_nothing_was_begun(begun: list[str]) -> None:
    """Somebody stopped it before."""
    assert lay_abreast(_one_wall(), _TURN, 2, ALONE, Watch(stopped=lambda: True)) is None
    assert begun == []


def test_a_wall_is_laid_out_the_same_by_whoever_does_it() -> None:
    """And no worse than by one search."""
    job, crew = _one_wall(), Backwards()
    effort = Effort(name="moment", seconds=0.3, searches=2)
    layout = lay_out(job, effort=effort, crew=crew).layout
    assert crew.asked == [2]
    assert not faults(check_layout(job, layout))
    assert layout == lay_out(job, effort=effort).layout
    one = lay_out(job, effort=replace(effort, searches=1)).layout.surfaces[0].score
    both = layout.surfaces[0].score
    assert (both.bare_nm2, both.joints_in_sight) <= (one.bare_nm2, one.joints_in_sight)


@pytest.mark.parametrize(
    ("reports", "seen"),
    [
        ([(5, "a"), (4, "b"), (3, "c")], ["a", "b", "c"]),
        ([(4, "a"), (5, "b"), (4, "c"), (3, "d")], ["a", "d"]),
        ([(None, ""), (5, "a"), (5, ""), (4, "")], ["a"]),
    ],
)
def test_of_several_only_what_is_better_than_all_before_is_seen(
    monkeypatch: pytest.MonkeyPatch, reports: list[tuple[int | None, str]], seen: list[str]
) -> None:
    """Another search may have found a better one already."""

    def lay_surface(_job: Job, turn: Turn, watch: Watch) -> Laid:
        bound = Bound()
        for joints, name in reports:
            best = None if joints is None else _score(0, joints, 90)
            shown = SurfaceLayout(surface_id=name, courses=(), score=_score(0, 0, 0))
            watch.report(
                Progress(
                    surface_id="wall",
                    stage="",
                    done=0.5,
                    best=best,
                    bound=bound,
                    laid=(shown,) if name else (),
                )
            )
        chance = random.Random(turn.seed)  # noqa: S311 - chance, not secrecy
        return Laid(plan=(), best=_score(0, 0, 0), bound=bound, bounds=(bound,), chance=chance)

    monkeypatch.setattr(import_module("plankwright.layout.abreast"), "lay_surface", lay_surface)
    heard: list[Progress] = []
    lay_abreast(_one_wall(), _TURN, 2, ALONE, Watch(report=heard.append))
    assert [one.surface_id for progress in heard for one in progress.laid] == seen


def test_what_is_seen_of_several_gets_better_and_breaks_no_rule() -> None:
    """The drawing never goes back to a worse one."""
    job = _one_wall()
    heard: list[Progress] = []
    watch = Watch(report=heard.append, sees=True)
    lay_out(job, effort=Effort(name="moment", seconds=0.3, searches=2), watch=watch)
    seen = [progress for progress in heard if progress.laid]
    assert seen
    best = [
        (told.best.bare_nm2, told.best.joints_in_sight, told.best.wood_spent_nm2)
        for told in seen
        if told.best
    ]
    assert best == sorted(set(best), reverse=True)
    for told in seen:
        assert not faults(check_layout(job, Layout(job_name=job.name, surfaces=told.laid)))

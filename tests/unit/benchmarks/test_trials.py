"""One layout is measured: what came of it, what it took, and that the checker has seen it."""

import subprocess
import sys
from dataclasses import replace

import pytest

from benchmarks.__main__ import main
from benchmarks.area import enough_by_area, faces, must_area, plain_area
from benchmarks.clock import Moment
from benchmarks.trials import Follower, baseline, first_layout_s, ours, peak_mib
from builders import board, job, nm, opening, wall
from plankwright.files import read_job
from plankwright.layout.result import Effort, Progress
from plankwright.model import Bound, Rules, Score
from village import small_job, small_layout, spoilt_layout

EFFORT = Effort(name="a moment", seconds=0.5)


def test_our_layout_is_measured() -> None:
    """Covered, checked, with bound, times and stages.

    How long it took is read off a clock of processors whose ticks may be longer than that.
    """
    row, result = ours(small_job(), EFFORT)
    assert row["covers"]
    assert row["faults"] == []
    assert row["wood_nm2"] == result.layout.surfaces[0].score.wood_spent_nm2
    assert 0 < row["bound_wood_nm2"] <= row["wood_nm2"]
    assert 0 <= row["best_s"] <= row["time_s"]
    assert {"first layout", "done"} <= row["stages"].keys()


def test_the_first_layout_is_timed(monkeypatch: pytest.MonkeyPatch) -> None:
    """From when it was begun, here as though that had been an hour ago."""
    begun = Moment(clock=Moment().clock - 3600, work=Moment().work - 3600)
    monkeypatch.setattr("benchmarks.trials.Moment", lambda: begun)
    assert first_layout_s(small_job(), EFFORT) >= 3600


def test_a_baseline_is_held_to_the_checker() -> None:
    """A right layout has no faults, a spoilt one has."""
    assert baseline(small_job(), lambda _: small_layout())["faults"] == []
    assert baseline(small_job(), lambda _: spoilt_layout())["faults"] != []


@pytest.mark.parametrize(("worked", "told"), [(3.0, 3.0), (18.0, 10.0)], ids=["waited", "several at once"])
def test_time_is_what_a_machine_with_nothing_else_to_do_would_take(
    monkeypatch: pytest.MonkeyPatch, worked: float, told: float
) -> None:
    """Ten seconds on the clock: less where the process waited, no more where it had two processors."""
    start = Moment(clock=100.0, work=0.0)
    monkeypatch.setattr("time.perf_counter", lambda: 110.0)
    monkeypatch.setattr("os.times", lambda: (worked - 1, 0.5, 0.25, 0.25, 999.0))
    assert start.since_s() == told


def _progress(bare: int) -> Progress:
    score = Score(bare_nm2=bare, joints_in_sight=0, wood_spent_nm2=0, cuts=0)
    return Progress(surface_id="wall", stage="first layout", done=0.0, best=score, bound=Bound())


def test_a_follower_stops_at_the_first_cover_when_asked() -> None:
    """And not before, and not unasked."""
    asked, not_asked = Follower(enough=True), Follower()
    for follower in (asked, not_asked):
        watch = follower.watch()
        watch.report(_progress(5))
        assert not watch.stopped()
        watch.report(_progress(0))
        follower.end()
        assert set(follower.stages) == {"before the first report", "first layout"}
    assert asked.watch().stopped()
    assert not not_asked.watch().stopped()


def test_areas_are_those_that_people_work_out() -> None:
    """Outline less openings, length times width, a tenth more: by hand for a wall with a door."""
    surface = wall(120, 96, openings=(opening("door", 40, 0, 70, 80),))
    assert plain_area(surface) == nm(120) * nm(96) - nm(30) * nm(80)
    boards = [board(f"B{number}", 100, 5) for number in range(20)]
    assert faces(boards) == 20 * nm(100) * nm(5)
    given = job(surface, boards, Rules(expansion_gap_nm=0))
    assert must_area(given) == plain_area(surface)
    assert not enough_by_area(given)  # 10,000 of 1.1 times 9120 square inches
    more = (*given.boards, board("C", 100, 0.4))
    assert enough_by_area(replace(given, boards=more))


def test_an_instance_is_written_as_a_job_folder(
    tmp_path_factory: pytest.TempPathFactory, capsys: pytest.CaptureFixture[str]
) -> None:
    """By the command, which tells where."""
    folder = tmp_path_factory.mktemp("jobs") / "seven"
    assert main(["write", "exact", "7", str(folder)]) == 0
    assert read_job(folder).job.name == "exact 7"
    assert str(folder / "job.toml") in capsys.readouterr().out


@pytest.mark.parametrize(
    "words", [["run", "exact", "--seeds", "a:b"], ["run", "none"], ["write", "none", "1", "x"], []]
)
def test_what_makes_no_sense_is_refused(words: list[str]) -> None:
    """Before anything is measured."""
    with pytest.raises(SystemExit):
        main(words)


def test_the_memory_of_processes_that_work_for_it_counts() -> None:
    """As many as there are; a process of its own that has ended is there to be counted."""
    subprocess.run([sys.executable, "-c", "pass"], check=True)
    alone, with_others = peak_mib(), peak_mib(2)
    assert (alone is None) is (with_others is None)
    assert alone is None or (with_others is not None and with_others > alone)

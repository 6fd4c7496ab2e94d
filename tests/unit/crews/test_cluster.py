"""Workers of a Dask scheduler: two processes of a cluster on this machine."""

import sys
from collections.abc import Iterator

import pytest
from distributed import LocalCluster

from at_stake import MOMENT, at_stake, one_long_board
from crew_work import divided, gone, tell_of_it, wait_for_stop
from many_walls import plenty
from plankwright.crews import crew_at
from plankwright.crews.cluster import Cluster
from plankwright.crews.cores import Cores
from plankwright.crews.trouble import CrewError
from plankwright.layout import lay_out
from plankwright.layout.again import lay_again
from plankwright.layout.break_proof import one_by_one, random_losses
from plankwright.layout.result import Watch
from plankwright.workshop.live_through import live_through
from plankwright.workshop.mark_work import begin_work
from plankwright.workshop.weigh_risk import HowMuch, weigh_risk

SOON_S = 1.0


@pytest.fixture(scope="module")
def address() -> Iterator[str]:
    """Give the address of a scheduler with two worker processes."""
    with LocalCluster(
        n_workers=2, threads_per_worker=1, processes=True, dashboard_address=":0", host="127.0.0.1"
    ) as cluster:
        yield str(cluster.scheduler_address)


def test_workers_give_what_this_process_would(address: str) -> None:
    """The whole answer, from two workers, from two processes and from this one."""
    job, layout = one_long_board()
    how_much = HowMuch(effort=MOMENT, seed=4, draws=3)
    answers = [
        weigh_risk(job, layout, begin_work(job), crew=crew, again=lay_again, how_much=how_much)
        for crew in (Cores(1), Cores(2), crew_at(address))
    ]
    assert answers[0] == answers[1] == answers[2]
    assert answers[0].learnt.survival is not None


def test_surfaces_are_laid_out_as_in_this_process(address: str) -> None:
    """Side by side, from two workers, from two processes and from this one."""
    layouts = [
        lay_out(plenty(), effort=MOMENT, seed=2, crew=crew).layout
        for crew in (Cores(1), Cores(2), crew_at(address))
    ]
    assert layouts[0] == layouts[1] == layouts[2]
    assert layouts[0].covers_everything


def test_each_piece_of_work_is_done_once(address: str) -> None:
    """Whatever the order."""
    boards = ("left", "right", "long")
    trials = (*one_by_one(boards), *random_losses(boards, 2, 0))
    found = list(Cluster(address).share_out(live_through, at_stake(one_long_board()), trials, watch=Watch()))
    assert sorted(place for place, _ in found) == list(range(len(trials)))


def test_what_is_done_is_given_when_it_is_stopped(address: str) -> None:
    """And what is not yet begun never is."""
    done: list[int] = []
    for place, _ in Cluster(address).share_out(
        divided, 1, [1] * 10_000, watch=Watch(stopped=lambda: len(done) >= 3)
    ):
        done.append(place)
    assert 3 <= len(done) < 10_000


def test_what_is_under_way_ends_soon_when_it_is_stopped(address: str) -> None:
    """And what it has found by then is given."""
    done: list[tuple[int, str]] = []
    watch = Watch(stopped=lambda: bool(done))
    for place, found in Cluster(address).share_out(wait_for_stop, 1, [0, 9, 9, 9], watch=watch):
        done.append((place, found))
    assert done[0] == (0, "done")
    assert {found for _, found in done[1:]} == {"stopped"}


def test_what_the_work_tells_is_handed_on(address: str) -> None:
    """While it goes on: it ends only once all is told."""
    seen: set[str] = set()
    watch = Watch(report=lambda told: seen.add(told.surface_id), stopped=lambda: len(seen) == 2)
    found = list(Cluster(address).share_out(tell_of_it, "at", [1, 2], watch=watch))
    assert sorted(found) == [(0, "stopped"), (1, "stopped")]
    assert seen == {"at-1", "at-2"}


def test_an_error_of_the_work_comes_through(address: str) -> None:
    """As the error that it was."""
    with pytest.raises(ZeroDivisionError):
        list(Cluster(address).share_out(divided, 1, [0], watch=Watch()))


@pytest.mark.parametrize(
    ("nowhere", "sentence"),
    [
        ("tcp://127.0.0.1:1", "No Dask scheduler answers at tcp://127.0.0.1:1"),
        ("tcp://127.0.0.1", "is no address of a Dask scheduler"),
        ("upstairs", "“upstairs” is no address of a Dask scheduler"),
        ("", "“” is no address"),
        ("smoke://127.0.0.1:8786", "is no address of a Dask scheduler"),
    ],
)
def test_a_bad_address_is_one_clear_sentence(
    nowhere: str, sentence: str, capfd: pytest.CaptureFixture[str]
) -> None:
    """And nothing of the library is shown."""
    with pytest.raises(CrewError, match=sentence):
        list(Cluster(nowhere, patience_s=SOON_S).share_out(divided, 1, [1], watch=Watch()))
    assert "".join(capfd.readouterr()) == ""


def test_a_scheduler_without_workers_is_told_of() -> None:
    """Else it would be waited for without end."""
    with LocalCluster(n_workers=0, dashboard_address=":0", host="127.0.0.1") as empty:
        crew = Cluster(str(empty.scheduler_address), patience_s=SOON_S)
        with pytest.raises(CrewError, match="has no workers"):
            list(crew.share_out(divided, 1, [1], watch=Watch()))


def test_workers_that_end_are_told_of(capfd: pytest.CaptureFixture[str]) -> None:
    """In one sentence from us, whatever the library thinks of it."""
    with LocalCluster(
        n_workers=1, threads_per_worker=1, processes=True, dashboard_address=":0", host="127.0.0.1"
    ) as short_lived:
        crew = Cluster(str(short_lived.scheduler_address))
        with pytest.raises(CrewError, match="went away before all was done"):
            list(crew.share_out(gone, 1, [1], watch=Watch()))
        assert "Traceback" not in capfd.readouterr().err


def test_workers_with_another_version_are_told_of(address: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """They might come to another answer."""
    monkeypatch.setattr("plankwright.crews.cluster._ours", lambda: "0.0.7")
    with pytest.raises(CrewError, match=r"have plankwright 0\.0\.7"):
        list(Cluster(address).share_out(divided, 1, [1], watch=Watch()))


def test_without_the_extra_it_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    """All else works without."""
    monkeypatch.setitem(sys.modules, "distributed", None)
    with pytest.raises(CrewError, match="extra “cluster”"):
        list(Cluster("tcp://127.0.0.1:1").share_out(divided, 1, [1], watch=Watch()))

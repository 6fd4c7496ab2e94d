"""Searches go on while the app answers, and what becomes of each is kept: found, stopped or failed."""

import contextlib
import threading
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from at_desk import Waiting, keep_small_job, make_desk, waiting_search
from kept_jobs import plain, whole_job, with_boards
from plankwright.crews.trouble import CrewError
from plankwright.errors import PlankwrightError
from plankwright.layout.result import Progress, Watch
from plankwright.model import Bound, Score
from plankwright.store import StoreError
from plankwright.web.desk import Desk
from plankwright.workshop.jobs.kept import KeptLayout, Made, NotThereError, SearchState
from plankwright.workshop.jobs.search_layout import Errand, Sight
from plankwright.workshop.lay_out import StoppedError
from village import StandInSearch, small_job, small_layout, small_result

ERRAND = Errand(job=small_job(), made=Made.SEARCHED, effort="glance", seed=3)


class Begun:
    """Begins searches that wait to be told to end, and remembers them."""

    def __init__(self) -> None:
        self.all: list[Waiting] = []

    def __call__(self, _errand: Errand) -> Waiting:
        """Begin one."""
        self.all.append(waiting_search())
        return self.all[-1]

    def wait(self) -> Waiting:
        """Wait until the one that was begun last has told something; give it."""
        assert self.all[-1].told.wait(60)
        return self.all[-1]


class Ending:
    """A search that ends as it is told to, at once.

    Parameters
    ----------
    end
        Gives what is found, or raises.
    """

    def __init__(self, end: Callable[[], KeptLayout]) -> None:
        self.end = end

    def stop(self) -> None:
        """Take no notice."""

    def give_up(self) -> None:
        """Take no notice."""

    def follow(self, _listen: Callable[[Sight], None]) -> KeptLayout:
        """End."""
        return self.end()


@pytest.fixture
def begun() -> Begun:
    """Begin searches that wait."""
    return Begun()


@pytest.fixture
def waiting(tmp_path: Path, begun: Begun) -> Iterator[Desk]:
    """Give a desk whose searches wait to be told to end."""
    desk = make_desk(tmp_path, begin=begun)
    yield desk
    desk.searches.give_up_all()


def wait_for_end(search_id: int) -> None:
    """Wait until nobody follows a search any more."""
    for thread in threading.enumerate():
        if thread.name == f"search {search_id}":
            thread.join(60)
            assert not thread.is_alive()


def ended_by(tmp_path: Path, end: Callable[[], KeptLayout]) -> tuple[Desk, str, int]:
    """Have a search end in some way; give the desk, the job and the search."""
    desk = make_desk(tmp_path, begin=lambda _errand: Ending(end))
    job_id = desk.store.add(whole_job()).id
    search = desk.searches.begin(job_id, ERRAND)
    wait_for_end(search.id)
    return desk, job_id, search.id


def test_what_is_found_is_kept_and_the_job_is_worked_by_it(desk: Desk, tmp_path: Path) -> None:
    """As a step that can be taken back."""
    job = keep_small_job(desk.store, tmp_path / "village")
    search = desk.searches.begin(job.id, ERRAND, wishes="{}")
    ended = desk.store.search(search.id)
    assert ended.state is SearchState.DONE
    assert (ended.effort, ended.seed, ended.made, ended.wishes) == ("glance", 3, Made.SEARCHED, "{}")
    assert ended.layout_id is not None
    assert desk.store.job(job.id).layout_id == ended.layout_id != job.layout_id
    assert desk.store.layout(job.id, ended.layout_id).layout == small_layout()
    assert desk.store.changes(job.id, 1)[0].what == "a new layout taken"
    desk.store.undo(job.id)
    assert desk.store.job(job.id) == job


def test_how_far_it_is_can_be_asked_meanwhile(waiting: Desk, begun: Begun) -> None:
    """With the best so far."""
    job_id = waiting.store.add(whole_job()).id
    search = waiting.searches.begin(job_id, ERRAND)
    begun.wait()
    now = waiting.store.search(search.id)
    assert now.state is SearchState.RUNNING
    assert (now.stage, now.done, now.told) == ("laying courses", 0.5, "all is covered")
    assert now.best == small_layout()
    assert waiting.store.job(job_id).layout_id is None


def test_it_is_stopped_with_the_best_that_it_has(waiting: Desk, begun: Begun) -> None:
    """And worked by that."""
    job_id = waiting.store.add(whole_job()).id
    search = waiting.searches.begin(job_id, ERRAND)
    begun.wait()
    waiting.searches.stop(job_id)
    wait_for_end(search.id)
    ended = waiting.store.search(search.id)
    assert ended.state is SearchState.STOPPED
    assert waiting.store.job(job_id).layout_id == ended.layout_id is not None


def test_it_is_given_up_at_once(waiting: Desk, begun: Begun) -> None:
    """It was nobody's fault, so none is told; the best so far stays to be seen."""
    job_id = waiting.store.add(whole_job()).id
    search = waiting.searches.begin(job_id, ERRAND)
    assert not begun.wait().given_up
    waiting.searches.give_up(job_id)
    ended = waiting.store.search(search.id)
    assert begun.wait().given_up
    assert (ended.state, ended.trouble, ended.layout_id) == (SearchState.CUT_OFF, "", None)
    assert ended.best == small_layout()
    assert waiting.store.job(job_id).layout_id is None


def test_one_that_is_begun_anew_takes_the_place_of_the_one_before(waiting: Desk, begun: Begun) -> None:
    """Two would fight for the cores, and for the job."""
    job_id = waiting.store.add(whole_job()).id
    first = waiting.searches.begin(job_id, ERRAND)
    second = waiting.searches.begin(job_id, ERRAND)
    assert [one.given_up for one in begun.all] == [True, False]
    assert waiting.store.search(first.id).state is SearchState.CUT_OFF
    assert waiting.store.last_search(job_id) == waiting.store.search(second.id)


def test_of_two_phones_that_begin_at_once_one_has_its_search(tmp_path: Path) -> None:
    """The other one's is given up, and not forgotten in the background."""
    begun, both = Begun(), threading.Barrier(2)

    def begin(errand: Errand) -> Waiting:
        # Where both are here at the same time, both have looked for one that is under way and found none.
        with contextlib.suppress(threading.BrokenBarrierError):
            both.wait(0.2)
        return begun(errand)

    desk = make_desk(tmp_path, begin=begin)
    job_id = desk.store.add(whole_job()).id
    phones = [threading.Thread(target=desk.searches.begin, args=(job_id, ERRAND)) for _ in range(2)]
    for phone in phones:
        phone.start()
    for phone in phones:
        phone.join(60)
    assert [one.given_up for one in begun.all] == [True, False]
    desk.searches.give_up_all()
    assert begun.all[1].given_up


def test_searches_for_other_jobs_go_on(waiting: Desk, begun: Begun) -> None:
    """Whatever is done with one."""
    one, other = (waiting.store.add(whole_job()).id for _ in range(2))
    first, second = (waiting.searches.begin(job_id, ERRAND) for job_id in (one, other))
    waiting.searches.give_up(one)
    assert [each.given_up for each in begun.all] == [True, False]
    assert waiting.store.search(first.id).state is SearchState.CUT_OFF
    assert waiting.store.search(second.id).state is SearchState.RUNNING


def test_all_are_given_up_when_the_app_is_closed(waiting: Desk, begun: Begun) -> None:
    """No process is left behind."""
    searches = [waiting.searches.begin(waiting.store.add(whole_job()).id, ERRAND) for _ in range(3)]
    waiting.searches.give_up_all()
    assert all(each.given_up for each in begun.all)
    assert {waiting.store.search(search.id).state for search in searches} == {SearchState.CUT_OFF}


def test_there_may_be_none_to_stop(waiting: Desk) -> None:
    """Somebody else may have been quicker."""
    job_id = waiting.store.add(whole_job()).id
    waiting.searches.stop(job_id)
    waiting.searches.give_up(job_id)
    waiting.searches.give_up_all()
    assert waiting.store.last_search(job_id) is None


@pytest.mark.parametrize(
    ("trouble", "told"),
    [
        (StoppedError("Nothing was laid yet."), "Nothing was laid yet."),
        (CrewError("The process ended."), "The process ended."),
        (ZeroDivisionError(), PlankwrightError.default_message),
    ],
)
def test_what_goes_wrong_is_kept_in_one_sentence(tmp_path: Path, trouble: Exception, told: str) -> None:
    """The job stays as it was."""

    def fail() -> KeptLayout:
        raise trouble

    desk, job_id, search_id = ended_by(tmp_path, fail)
    ended = desk.store.search(search_id)
    assert (ended.state, ended.trouble, ended.layout_id) == (SearchState.FAILED, told, None)
    assert desk.store.job(job_id).layout_id is None
    assert desk.store.layouts(job_id) == ()


def test_a_job_that_was_put_away_meanwhile_gets_no_layout(waiting: Desk, begun: Begun) -> None:
    """It is told with the search; what was found is not lost, though."""
    job_id = waiting.store.add(whole_job()).id
    search = waiting.searches.begin(job_id, ERRAND)
    begun.wait()
    waiting.store.put_away(job_id)
    waiting.searches.stop(job_id)
    wait_for_end(search.id)
    ended = waiting.store.search(search.id)
    assert (ended.state, ended.trouble) == (SearchState.FAILED, "The job was put away meanwhile.")
    waiting.store.bring_back(job_id)
    assert waiting.store.job(job_id).layout_id is None
    assert waiting.store.layouts(job_id)[0].layout == small_layout()


def test_a_job_that_was_forgotten_meanwhile_is_no_fault(waiting: Desk, begun: Begun) -> None:
    """There is nothing left to be told."""
    job_id = waiting.store.add(whole_job()).id
    search = waiting.searches.begin(job_id, ERRAND)
    begun.wait()
    waiting.store.put_away(job_id)
    waiting.store.forget(job_id)
    waiting.searches.stop(job_id)
    wait_for_end(search.id)
    with pytest.raises(NotThereError):
        waiting.store.search(search.id)


def test_what_was_changed_meanwhile_stays_changed(waiting: Desk, begun: Begun) -> None:
    """The layout comes on top of it."""
    job_id = waiting.store.add(whole_job()).id
    search = waiting.searches.begin(job_id, ERRAND)
    begun.wait()
    waiting.store.change(job_id, "D added", lambda job: with_boards(job, *job.boards, plain("D")))
    waiting.searches.stop(job_id)
    wait_for_end(search.id)
    job = waiting.store.job(job_id)
    assert [board.id for board in job.boards] == ["A", "B", "C", "D"]
    assert job.layout_id == waiting.store.search(search.id).layout_id


def test_a_search_for_no_job_is_not_begun(waiting: Desk, begun: Begun) -> None:
    """Nor is a process."""
    with pytest.raises(NotThereError):
        waiting.searches.begin("nobody", ERRAND)
    assert begun.all == []


def test_one_that_cannot_be_begun_is_kept_as_failed(tmp_path: Path) -> None:
    """It must not look as though it ran."""

    def fail(_errand: Errand) -> Waiting:
        raise OSError(11, "Resource temporarily unavailable")

    desk = make_desk(tmp_path, begin=fail)
    job_id = desk.store.add(whole_job()).id
    with pytest.raises(OSError, match="unavailable"):
        desk.searches.begin(job_id, ERRAND)
    last = desk.store.last_search(job_id)
    assert last is not None
    assert (last.state, last.trouble) == (SearchState.FAILED, PlankwrightError.default_message)


def test_an_end_that_cannot_be_written_down_is_written_down_later(
    waiting: Desk, begun: Begun, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As when the disk was full: whoever wants to stop it then finds that it is over."""
    job_id = waiting.store.add(whole_job()).id
    search = waiting.searches.begin(job_id, ERRAND)
    begun.wait()

    def refuse(*_what: object) -> None:
        raise StoreError("jobs.db cannot grow: the disk is full.")

    with monkeypatch.context() as full:
        full.setattr(type(waiting.store), "end_search", refuse)
        waiting.searches.stop(job_id)
        wait_for_end(search.id)
    assert waiting.store.search(search.id).state is SearchState.RUNNING
    waiting.searches.stop(job_id)
    assert waiting.store.search(search.id).state is SearchState.CUT_OFF


def test_how_far_it_is_is_not_written_down_oftener_than_anybody_looks(tmp_path: Path) -> None:
    """But for each better layout; a search tells a thousand times a second."""
    score, (laid,) = Score(bare_nm2=0, joints_in_sight=0, wood_spent_nm2=0, cuts=0), small_layout().surfaces
    written: list[str] = []

    def tell(watch: Watch) -> None:
        for number in range(500):
            better = (laid,) if number in {0, 250} else ()
            watch.report(
                Progress(surface_id="wall", stage=str(number), done=0, best=score, bound=Bound(), laid=better)
            )

    desk = make_desk(tmp_path, search=StandInSearch(small_result(), tell))
    noted = type(desk.store).note_search
    with pytest.MonkeyPatch.context() as patch:

        def note(*what: object, **more: object) -> None:
            written.append(str(more["stage"]))
            noted(*what, **more)  # type: ignore[arg-type] # as it was called

        patch.setattr(type(desk.store), "note_search", note)
        desk.searches.begin(desk.store.add(whole_job()).id, ERRAND)
    assert {"0", "250"} <= set(written)
    assert len(written) < 50

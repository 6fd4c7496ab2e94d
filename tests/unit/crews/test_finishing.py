"""Taking what finishes, until all has or it is stopped."""

from collections.abc import Collection
from concurrent.futures import Future

import pytest

from plankwright.crews.finishing import finishing


class Workshop:
    """Begins work that is finished by hand."""

    def __init__(self) -> None:
        self.begun: list[Future[str]] = []
        self.told: list[tuple[Future[str], ...]] = []

    def begin(self, place: int) -> Future[str]:
        """Begin the work of a place, in order."""
        assert place == len(self.begun)
        self.begun.append(Future())
        return self.begun[-1]

    def stop(self, under_way: Collection[Future[str]]) -> None:
        """Bring what is under way to its end."""
        self.told.append(tuple(under_way))
        for each in under_way:
            each.cancel()


@pytest.mark.parametrize("ahead", [1, 2, 3, 9])
def test_everything_is_given_once_and_no_more_than_so_much_is_begun_ahead(ahead: int) -> None:
    """In the order in which it finishes: here always the one that was begun last."""
    workshop, given = Workshop(), list[int]()

    def never() -> bool:
        unfinished = [each for each in workshop.begun if not each.done()]
        assert len(unfinished) <= ahead
        if unfinished:
            unfinished[-1].set_result("done")
        return False

    for place, work in finishing(
        workshop.begin, 7, ahead=ahead, stopped=never, stop=lambda _work: None, meanwhile=lambda: None
    ):
        assert work.result() == "done"
        given.append(place)
    assert sorted(given) == list(range(7))


def test_once_it_is_stopped_nothing_is_begun_and_what_is_under_way_is_told_once() -> None:
    """And what that comes to is given, too."""
    workshop, given = Workshop(), list[int]()

    def stopped() -> bool:
        if workshop.begun and not workshop.begun[0].done():
            workshop.begun[0].set_result("done")
        return len(given) == 1 or len(workshop.told) == 1

    for place, work in finishing(
        workshop.begin, 9, ahead=3, stopped=stopped, stop=workshop.stop, meanwhile=lambda: None
    ):
        given.append(place)
        assert work.cancelled() is (place != 0)
    assert workshop.told == [(workshop.begun[1], workshop.begun[2])]
    assert given == [0, 1, 2]


def test_nothing_to_do_is_done_at_once() -> None:
    """Without asking anybody."""
    nothing = finishing(
        Workshop().begin, 0, ahead=1, stopped=lambda: False, stop=lambda _work: None, meanwhile=lambda: None
    )
    assert list(nothing) == []

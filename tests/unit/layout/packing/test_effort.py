"""Work is counted, set aside and given back."""

from plankwright.layout.packing.effort import Work


def test_a_share_is_set_aside_and_what_is_left_of_it_comes_back() -> None:
    """Of eight seconds a quarter is lent; a second of it is spent."""
    work = Work(8.0, lambda: False)
    aside = work.share(0.25)
    assert (aside.left, work.left) == (2.0, 6.0)
    aside.spend(1.0)
    work.give_back(aside)
    assert (aside.left, work.left) == (0.0, 7.0)


def test_work_is_over_when_it_is_spent_or_somebody_stops_it() -> None:
    """Either is enough."""
    assert not Work(1.0, lambda: False).over
    assert Work(0.0, lambda: False).over
    assert Work(1.0, lambda: True).over


def test_nothing_can_be_shared_of_work_that_is_overdrawn() -> None:
    """The debt stays where it is."""
    work = Work(-1.0, lambda: False)
    assert (work.share(0.5).left, work.left) == (0.0, -1.0)

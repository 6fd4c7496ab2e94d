"""The linear programme over patterns: its mixture, its bound, and whole sticks from it."""

import highspy
import pytest

from plankwright.layout.packing.columns import Columns
from plankwright.layout.packing.effort import Work
from plankwright.layout.packing.kinds import Assortment, NeedKind, StickKind
from plankwright.layout.silent import SilentHighs


def three_halves() -> Assortment:
    """Three needs of just over a third of a stick: two fit one stick, so a mixture takes one and a half."""
    return Assortment(
        [NeedKind(40, 1, hidden=False, count=3)],
        [StickKind(100, 1, hidden_only=False, count=5)],
        kerf=0,
        tolerance=0,
    )


def plenty() -> Work:
    """Give more work than any of these programmes needs."""
    return Work(100.0, lambda: False)


def programme() -> Columns:
    """Make the programme of the three needs; a stick costs 100, a need left bare 1000."""
    return Columns(three_halves(), [1000])


def test_mixture_may_use_half_a_stick() -> None:
    """One and a half sticks are the least mixture, and the bound equals its cost."""
    problem = programme()
    mixture = problem.generate([3], [5], plenty())
    assert mixture.cost == pytest.approx(150)
    assert problem.bound == 150
    assert problem.columns[-1] == (0, ((0, 2),))


def test_mixture_that_is_good_enough_is_not_improved_on() -> None:
    """A programme that may leave everything bare for 3000 asks for no pattern."""
    problem = programme()
    assert problem.generate([3], [5], plenty(), enough=3000).cost == pytest.approx(3000)
    assert problem.columns == []


def test_bound_that_is_high_enough_is_not_raised() -> None:
    """Sixty is proven by the first prices, and then no more is asked."""
    problem = programme()
    problem.generate([3], [5], plenty(), settled=60)
    assert problem.bound >= 60


def test_whole_sticks_follow_from_prices() -> None:
    """A stick is worth no more than two pieces, so three need more than one and a half as much."""
    problem = programme()
    problem.generate([3], [5], plenty())
    (worth,), asked = problem.worths()
    assert worth < asked <= 2 * worth


def test_what_is_kept_of_a_stick_is_not_paid() -> None:
    """One piece of 40 leaves 60, which is kept, so that only 40 is spent; two leave 20, which is not."""
    sticks = [StickKind(100, 1, hidden_only=False, count=5, kept_from=50)]
    choice = Assortment([NeedKind(40, 1, hidden=False, count=3)], sticks, kerf=0, tolerance=0)
    problem = Columns(choice, [1000])
    assert problem.generate([3], [5], plenty()).cost == pytest.approx(120)
    assert problem.bound == 120


def test_bound_holds_without_any_work() -> None:
    """Before a pattern is priced nothing is known."""
    problem = programme()
    problem.generate([3], [5], Work(0.0, lambda: False))
    assert problem.bound == 0


def test_part_of_the_needs_leaves_the_bound_alone() -> None:
    """A bound for two of three needs would not hold for all."""
    problem = programme()
    assert problem.generate([2], [5], plenty()).cost == pytest.approx(100)
    assert problem.bound == 0


def test_fewer_sticks_leave_needs_bare() -> None:
    """One stick gives two pieces; the third costs its bare price, and the bound knows."""
    choice = Assortment(
        [NeedKind(40, 1, hidden=False, count=3)],
        [StickKind(100, 1, hidden_only=False, count=1)],
        kerf=0,
        tolerance=0,
    )
    problem = Columns(choice, [1000])
    problem.generate([3], [1], plenty())
    assert problem.bound == 1100


def test_whole_sticks_are_chosen() -> None:
    """In whole sticks two are needed."""
    problem = programme()
    problem.generate([3], [5], plenty())
    cuts = problem.whole(1, plenty())
    assert sum(cut.count for cut in cuts) == 2
    assert sum(count * cut.count for cut in cuts for _, count in cut.pattern) >= 3


def test_search_for_whole_sticks_that_is_ended_at_once_gives_none() -> None:
    """Nothing is handed back that the solver has not found, and the work is not overdrawn."""
    needs = [NeedKind(250 + 7 * kind, 1, hidden=False, count=1) for kind in range(30)]
    choice = Assortment(needs, [StickKind(1000, 1, hidden_only=False, count=12)], kerf=0, tolerance=0)
    problem = Columns(choice, [4 * need.length for need in needs])
    problem.generate([1] * 30, [12], plenty())
    work = Work(0.0, lambda: False)
    assert problem.whole(1, work) == []
    assert work.left > -0.1


def test_known_and_empty_patterns_are_not_taken_in() -> None:
    """A pattern counts once for a kind of stick, and an empty one never."""
    problem = programme()
    assert problem.add(0, ((0, 2),))
    assert not problem.add(0, ((0, 2),))
    assert not problem.add(0, ())
    assert problem.columns == [(0, ((0, 2),))]


def test_solver_that_gives_up_is_our_fault(monkeypatch: pytest.MonkeyPatch) -> None:
    """An error of the solver is raised, not taken for an answer."""
    problem = programme()
    monkeypatch.setattr(SilentHighs, "run", lambda _: highspy.HighsStatus.kError)
    with pytest.raises(RuntimeError, match="the solver gave up"):
        problem.generate([3], [5], plenty())

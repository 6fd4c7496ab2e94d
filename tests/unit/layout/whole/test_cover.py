"""Ways to cover a wall: with few heights, one after another, and nearly, where it cannot be had whole."""

import random
from collections.abc import Sequence
from importlib import import_module

import pytest

from asking import question
from builders import board, nm, wall
from plankwright.layout.plan import PlannedCourse
from plankwright.layout.rows import Stack, fixed_stack
from plankwright.layout.whole import Covering, Question
from plankwright.layout.whole.counting import Counts
from plankwright.layout.whole.placing import placed
from plankwright.model import Board


def _never() -> bool:
    return False


def _covering(boards: Sequence[Board], heights: Sequence[float]) -> Covering:
    asked = question(boards, heights)
    return Covering(asked, tries=2, chance=random.Random(0), over=_never)  # noqa: S311 - chance, not secrecy


def test_a_wall_is_covered_again_and_again() -> None:
    """Each time whole."""
    covering = _covering([board(f"A{n}", 97, 6) for n in range(4)], (6,))
    for _ in range(3):
        plan = covering.whole()
        assert plan is not None
        assert not any(course.bare for course in plan)
    assert covering.nearly() is None
    assert not covering.hopeless


def test_where_wood_is_short_most_is_covered_at_once() -> None:
    """One board for two courses: even in parts half is bare."""
    plan = _covering([board("A", 97, 6)], (6,)).whole()
    assert plan is not None
    assert sum(len(course.pieces) for course in plan) == 1
    assert sum(course.bare_area for course in plan) == nm(96) * nm(6)


def test_what_is_not_found_whole_is_covered_nearly(monkeypatch: pytest.MonkeyPatch) -> None:
    """By leaving little bare, or else one thing after the other; each is tried in vain once."""
    asked_for: list[float] = []

    def in_vain(*_: object, bare: float = 0.0) -> None:
        asked_for.append(bare)

    monkeypatch.setattr(import_module("plankwright.layout.whole.cover"), "whole_together", in_vain)
    covering = _covering([board(f"A{n}", 97, 6) for n in range(4)], (6,))
    assert covering.whole() is None
    plan = covering.nearly()
    assert plan is not None
    assert not any(course.bare for course in plan)
    steps = question([board("A", 97, 6)], (6,)).up(nm(96)) ** 2 * 12 / 96
    assert asked_for == [0.0, pytest.approx(steps / 100)]
    assert covering.nearly() is None


def test_once_all_heights_had_their_turn_other_numbers_of_courses_are_tried(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Not only those that were looked at first, in other orders."""
    cover = import_module("plankwright.layout.whole.cover")
    put: list[tuple[tuple[int, int], ...]] = []

    def noted(asked: Question, counts: Counts, chance: random.Random) -> Stack:
        put.append(tuple(sorted(counts.courses.items())))
        return placed(asked, counts, chance)

    monkeypatch.setattr(cover, "placed", noted)
    monkeypatch.setattr(cover, "whole_together", lambda *_, **__: None)
    boards = [board(f"{width}{n}", 97, width) for width in (4, 5, 6, 7) for n in range(2)]
    asked = question(boards, (4, 5, 6, 7), surface=wall(96, 36))
    covering = Covering(asked, tries=2, chance=random.Random(0), over=_never)  # noqa: S311 - chance, not secrecy
    for _ in range(2):
        assert covering.whole() is None
    first = set(put)
    assert len(first) == 2
    for _ in range(8):
        assert covering.whole() is None
    assert len(set(put)) > len(first) + 3
    assert not covering.hopeless


def test_courses_that_keep_their_places_are_tried_once() -> None:
    """There is no other order, and there are no other heights."""
    asked = question([board("A", 97, 6), board("B", 97, 6)], (6,))
    courses = [PlannedCourse(nm(low), nm(low + 6), (), ()) for low in (0, 6)]
    stays = Question(asked.strips, asked.sticks, fixed_stack(asked.strips, courses, ()), asked.grid)
    covering = Covering(stays, tries=2, chance=random.Random(0), over=_never)  # noqa: S311 - chance
    assert not covering.hopeless
    plan = covering.whole()
    assert plan is not None
    assert [(course.low, course.high) for course in plan] == [(course.low, course.high) for course in courses]
    assert covering.hopeless


def test_nothing_is_tried_once_somebody_has_stopped_it() -> None:
    """No programme is grown any more, of whatever heights."""
    asked = question([board("A", 97, 6)], (6,))
    covering = Covering(asked, tries=2, chance=random.Random(0), over=lambda: True)  # noqa: S311 - chance
    spent = covering.spent
    assert covering.whole() is None
    assert covering.spent == spent

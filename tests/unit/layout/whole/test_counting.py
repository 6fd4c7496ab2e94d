"""Whole numbers of courses: they fill the wall, come once each, and cost what covering with them costs."""

import itertools
import random
from collections.abc import Iterator

import pytest

from asking import question
from builders import board, nm, opening, studs, wall
from plankwright.layout.whole import Question
from plankwright.layout.whole.counting import Counting, Counts
from plankwright.layout.whole.placing import placed
from plankwright.layout.whole.programme import Programme


def _sets(asked: Question) -> tuple[Programme, Iterator[Counts]]:
    programme = Programme(asked)
    programme.grow()
    return programme, Counting(programme).sets(itertools.count())


def test_half_boards_are_not_whole_ones() -> None:
    """Three boards of four inches, at heights that add up to twelve only so."""
    _, sets = _sets(question([board(name, 96, 4) for name in "ABC"], (4,)))
    assert sum(next(sets).courses.values()) == 3


def test_numbers_of_courses_fill_the_wall_and_are_given_once() -> None:
    """Less what is ripped off, and each from the start edge on."""
    asked = question([board(f"B{number}", 96, 6) for number in range(4)], (3, 4, 6))
    seen = []
    for counts in _sets(asked)[1]:
        height = sum(asked.height_of(kind) * courses for kind, courses in counts.courses.items())
        assert height - sum(counts.given_up.values()) == 4 * 12
        assert counts.courses not in seen
        seen.append(counts.courses)
        stack = placed(asked, counts, random.Random(0))  # noqa: S311 - chance, not secrecy
        assert stack.rows[0].strip is not None
        assert stack.rows[0].strip[0] == 0
        assert stack.may_end == nm(12)
    assert len(seen) > 1


def test_no_course_is_counted_within_a_band_that_another_lies_across() -> None:
    """One of eight lies across all of a low window; the boards as long as what is beside it have no place."""
    boards = [board("A", 96, 8), board("B", 96, 2), board("C", 32, 2), board("D", 32, 2)]
    surface = wall(96, 12, framing=studs(16, 80), openings=(opening("window", 32, 6, 64, 8),))
    asked = question(boards, (2, 8), surface=surface)
    many = 0
    for counts in itertools.islice(_sets(asked)[1], 20):
        rows = [asked.row_of(kind) for kind, courses in counts.courses.items() if courses]
        across = any(row.first_band < 1 < row.last_band for row in rows)
        assert not (across and any(row.first_band == row.last_band == 1 for row in rows))
        many += across
    assert many


def test_numbers_of_courses_are_whole_where_parts_would_do() -> None:
    """In parts a course and a half of eight inches is cheapest; whole, two courses of six are."""
    asked = question([board("A", 96, 8), board("B", 96, 6), board("C", 96, 6)], (6, 8))
    best = min(_sets(asked)[1], key=lambda counts: counts.price)
    assert best.bare == pytest.approx(0, abs=1e-6)
    assert {int(asked.heights[asked.kinds[kind].height]): many for kind, many in best.courses.items()} == {
        4 * 6: 2
    }


def test_courses_cost_what_a_programme_of_just_those_costs() -> None:
    """By the ways and cuts that were known, so no less than with all that it then asks for."""
    boards = [board("A", 96, 6), board("B", 60, 4), board("C", 48, 4), board("D", 96, 4.5), board("E", 72, 3)]
    asked = question(boards, (3, 4, 4.5, 6))
    programme, sets = _sets(asked)
    for counts in itertools.islice(sets, 4):
        held = Programme(asked, counts.courses)
        grown = held.grow()
        assert counts.price >= grown * (1 - 2e-3)
        assert counts.price >= programme.price * (1 - 1e-6)
        for kind, column in programme.counts.items():
            programme.bound(column, counts.courses.get(kind, 0), counts.courses.get(kind, 0))
        assert programme.solve() == pytest.approx(counts.price, rel=1e-4)
        for column in programme.counts.values():
            programme.bound(column, 0)
        programme.solve()

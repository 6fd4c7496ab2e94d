"""The solver's answer: the same each time, proven or not, and whole where a wall can be covered."""

import random

import pytest

from benched import benched
from builders import board, layout, nm, studs, wall
from choosing import Question, can_cover, pieces_of, plain, sticks_of
from plankwright.check import check_layout, faults, recount
from plankwright.layout.choose import Chooser, Prices
from plankwright.layout.courses import courses_from
from plankwright.layout.rows import free_stack
from plankwright.layout.strips import Strips
from plankwright.layout.writing import write_surface
from plankwright.model import Bound


def _hard() -> Question:
    """Give a question that takes the solver long: boards that all nearly fit, and too few of them."""
    chance = random.Random(1)  # noqa: S311 - chance, not secrecy
    boards = [board(f"A{place}", chance.uniform(30, 80), 6) for place in range(14)]
    return Question(
        boards=boards,
        rules=plain(shortest_piece_nm=nm(12), crosscut_kerf_nm=nm(0.125)),
        surface=wall(192, 24, framing=studs(*range(12, 192, 12))),
        courses=[(6 * course, 6 * course + 6) for course in range(4)],
        more={"bare_allowed": True},
    )


def test_a_covered_stretch_is_proven_best() -> None:
    """No cheaper way to cut one board."""
    choice = Question(boards=[board("A", 96, 6)]).answer()
    assert (choice.proven, choice.impossible) == (True, False)
    assert pieces_of(choice) == [(0, 0, 96)]


def test_a_stretch_that_cannot_be_covered_is_said_to_be_impossible() -> None:
    """With too short a board, and with no board at all."""
    for boards in ([board("A", 95, 6)], []):
        choice = Question(boards=boards).answer()
        assert (choice.cuts, choice.proven, choice.impossible) == (None, False, True)


def test_without_wood_everything_is_bare() -> None:
    """When it may be."""
    (cut,) = Question(boards=[], more={"bare_allowed": True}).answer().cuts or ()
    assert sum(end - start for start, end in cut.bare) == nm(96)


def test_too_little_work_proves_nothing() -> None:
    """What was found then is no answer to whether there is better."""
    choice = _hard().chooser().solve(0.01, 0)
    assert (choice.proven, choice.impossible) == (False, False)


def test_the_same_work_and_seed_give_the_same_choice() -> None:
    """Although it is not proven best."""
    first, second = (_hard().chooser().solve(0.5, 3) for _ in range(2))
    assert not first.proven
    assert first.cuts is not None
    assert first == second


def test_whoever_watches_may_stop_the_solver() -> None:
    """It then gives what it has, without the work that it was allowed."""
    choice = _hard().chooser().solve(1e6, 0, stopped=lambda: True)
    assert not choice.proven
    assert choice.work < 1e6


def test_the_size_of_the_model_can_be_told() -> None:
    """One stick, one stretch, one lane: one piece."""
    surface = wall(96, 12, framing=studs(200))
    assert len(Question(boards=[board("A", 96, 6)], surface=surface).chooser().pieces) == 1


def test_lengths_are_rounded_so_that_what_is_found_can_be_cut() -> None:
    """In steps of an inch a board of 96.75 is 96 long, one of 95.75 is 95, and a run of 95.25 asks for 96."""
    surface = wall(95.25, 12, framing=studs(200))
    assert can_cover([board("A", 96.75, 6)], surface=surface, grid=1)
    assert not can_cover([board("A", 95.75, 6)], surface=surface, grid=1)
    assert can_cover([board("A", 95.75, 6)], surface=surface, grid=0.25)


@pytest.mark.parametrize("seed", [0, 1, 2, 3, 5, 6])
def test_a_wall_is_covered_to_the_last_sixteenth_by_the_pile_that_it_was_sawn_into(seed: int) -> None:
    """With no joint in sight, found by the solver alone from nothing; the checker finds no fault."""
    work = benched(seed)
    assert 21 <= len(work.boards) <= 29
    (surface,), rules = work.surfaces, work.rules
    strips = Strips(surface, rules)
    sticks = sticks_of(work.boards, rules)
    heights = sorted({stick.width for stick in sticks})
    chooser = Chooser(
        strips,
        sticks,
        free_stack(strips, heights, (strips.start, strips.must_end, strips.may_end), ()),
        prices=Prices(bare=1, joint=1, wood=0, piece=0),
        grid=nm(1 / 16),
        bare_allowed=False,
        lanes=1,
    )
    choice = chooser.solve(20, seed)
    assert choice.cuts is not None
    chance = random.Random(seed)  # noqa: S311 - chance, not secrecy
    plan = courses_from(strips, chooser.stack, choice.cuts, grid=nm(1 / 16), chance=chance)
    assert plan is not None
    written = write_surface(work, strips, plan, Bound())
    score = recount(work, written)
    assert (score.bare_nm2, score.joints_in_sight) == (0, 0)
    assert not written.bare
    assert faults(check_layout(work, layout(written))) == ()

"""The boards that would close what is bare."""

import random
from collections.abc import Sequence

import pytest

from builders import TAPE, board, job, layout, nm, opening, studs, wall
from choosing import plain, sticks_of
from plankwright.check import check_layout, faults, recount
from plankwright.layout.capacity import UNLIMITED, Capacity
from plankwright.layout.improve import Search
from plankwright.layout.plan import Plan
from plankwright.layout.strips import Strips
from plankwright.layout.wanted import Closing, close
from plankwright.layout.writing import write_surface
from plankwright.model import Board, Bound, EdgeKind, EdgeProfile, Rules, Surface
from plans import planned_course, planned_piece

RULES = plain(
    crosscut_kerf_nm=nm(0.125),
    straight_edge_loss_nm=nm(0.25),
    end_trim_nm=nm(0.5),
    shortest_piece_nm=nm(16),
    narrowest_course_nm=nm(2),
)
TONGUE = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))
LONG = wall(192, 6, framing=studs(96))
"""Two boards of eight feet, with a joint between them."""

PILE = [board("A", 97, 6.5)]


def _closed(
    surface: Surface,
    boards: Sequence[Board],
    plan: Plan,
    rules: Rules = RULES,
    capacity: Capacity = UNLIMITED,
) -> Closing | None:
    search = Search(
        Strips(surface, rules, capacity),
        sticks_of(boards, rules, capacity),
        [each.face_area_nm2 for each in boards],
        nm(1 / 16),
        random.Random(0),  # noqa: S311 - chance, not secrecy
        plan,
    )
    return close(search, search.stock, TAPE, len(boards), work=0.2)


def _half_bare(boards: Sequence[Board], at: tuple[float, float] = (0.5, 0.25)) -> Plan:
    """Cover the left half of the long wall with the first board."""
    piece = planned_piece(job(LONG, boards, RULES), 0, (0, 96), 6, at=at)
    return (planned_course((0, 6), piece, bare=((96, 192),)),)


def _asked(closing: Closing | None) -> list[tuple[int, float, float, float]]:
    """Give how many, how long, how wide and how thick. [in]"""
    assert closing is not None
    return [
        (each.count, each.length_nm / nm(1), each.width_nm / nm(1), (each.thickness_nm or 0) / nm(1))
        for each in closing.wanted
    ]


def test_a_bare_half_takes_another_board() -> None:
    """Of eight feet, with half an inch of trim at each end and a quarter at each edge."""
    assert _asked(_closed(LONG, PILE, _half_bare(PILE))) == [(1, 97, 6.5, 0.75)]


def test_the_wall_closed_so_is_right() -> None:
    """In the eyes of the checker, with the further board in the tally."""
    closing = _closed(LONG, PILE, _half_bare(PILE))
    assert closing is not None
    more = job(LONG, [*PILE, *closing.boards], RULES)
    written = write_surface(more, Strips(LONG, RULES), closing.plan, Bound())
    assert recount(more, written).bare_nm2 == 0
    assert faults(check_layout(more, layout(written))) == ()


@pytest.mark.parametrize(
    ("long", "wanted"),
    [(40, [(1, 81.125, 6.5, 0.75)]), (48, [(2, 49, 6.5, 0.75)])],
)
def test_short_pieces_are_asked_for_on_one_board(
    long: float, wanted: list[tuple[int, float, float, float]]
) -> None:
    """Two of 40 and the kerf between them are shorter than eight feet, two of 48 and a kerf are not."""
    plan = tuple(planned_course(across, bare=((0, long),)) for across in ((0, 6), (6, 12)))
    assert _asked(_closed(wall(long, 12), [], plan)) == wanted


def test_pieces_of_very_different_widths_are_asked_for_apart() -> None:
    """Three inches and nine: a board of nine would be wasted on three."""
    plan = tuple(planned_course(across, bare=((0, 40),)) for across in ((0, 3), (3, 12)))
    assert sorted(_asked(_closed(wall(40, 12), [], plan))) == [(1, 41, 3.5, 0.75), (1, 41, 9.5, 0.75)]


def test_a_board_is_asked_for_that_matches_what_it_butts() -> None:
    """An inch thick, with a tongue, which needs no straightening; most of the pile is thinner and square."""
    boards = [board("T", 97, 6, thickness_nm=nm(1), profile=TONGUE)]
    pile = [*boards, *(board(f"A{number}", 30, 6.5) for number in range(3))]
    closing = _closed(LONG, pile, _half_bare(boards, at=(0.5, 0)))
    assert _asked(closing) == [(1, 97, 6, 1)]
    assert closing is not None
    assert closing.wanted[0].profile == TONGUE


def test_the_pile_is_used_before_anything_is_asked_for() -> None:
    """A spare board of the pile covers the bare half, however much of it is lost; nothing is wanted."""
    boards = [*PILE, board("B", 97, 12)]
    closing = _closed(LONG, boards, _half_bare(boards))
    assert closing is not None
    assert closing.wanted == ()
    assert not any(course.bare for course in closing.plan)


def test_an_empty_pile_asks_for_ordinary_boards() -> None:
    """Eight feet by six inches, three quarters thick, a course."""
    plan = tuple(planned_course(across, bare=((0, 96),)) for across in ((0, 6), (6, 12)))
    assert _asked(_closed(wall(96, 12), [], plan)) == [(2, 97, 6.5, 0.75)]


def test_lengths_are_rounded_up_to_the_tape() -> None:
    """A run of 80 and a 64th, in sixteenths."""
    surface = wall(80 + 1 / 64, 6, framing=studs(200))
    plan = (planned_course((0, 6), bare=((0, 80 + 1 / 64),)),)
    assert _asked(_closed(surface, [], plan)) == [(1, 81.0625, 6.5, 0.75)]


def test_a_run_longer_than_any_board_with_no_place_for_a_joint_cannot_be_closed() -> None:
    """Ten feet of it; with a stud in the middle two boards do."""
    plan = (planned_course((0, 6), bare=((0, 120),)),)
    assert _closed(wall(120, 6, framing=studs(200)), [], plan) is None
    assert _asked(_closed(wall(120, 6, framing=studs(60)), [], plan)) == [(2, 61, 6.5, 0.75)]


@pytest.mark.parametrize("capacity", [Capacity(rip=0), Capacity(crosscut=nm(1))])
def test_nothing_is_asked_for_that_no_saw_could_cut(capacity: Capacity) -> None:
    """No saw to rip with, or none that goes through a course."""
    plan = (planned_course((0, 6), bare=((0, 96),)),)
    assert _closed(wall(96, 6), [], plan, capacity=capacity) is None


def test_a_whole_plan_asks_for_nothing() -> None:
    """And stays as it is."""
    surface = wall(96, 6)
    whole = (planned_course((0, 6), planned_piece(job(surface, PILE, RULES), 0, (0, 96), 6, at=(0.5, 0.25))),)
    closing = _closed(surface, PILE, whole)
    assert closing is not None
    assert (closing.wanted, closing.boards, closing.plan) == ((), (), whole)


def test_boards_much_alike_are_asked_for_in_one_size() -> None:
    """Beside a door courses of 88 and 90 inches are bare, and one of 60: two sizes are asked for."""
    door = [opening("low", 88, 0, 90, 6), opening("high", 60, 12, 90, 18)]
    surface = wall(90, 18, framing=studs(200), openings=door)
    runs = ((0, 88), (0, 90), (0, 60))
    plan = tuple(planned_course((6 * place, 6 * place + 6), bare=(run,)) for place, run in enumerate(runs))
    assert _asked(_closed(surface, [], plan)) == [(2, 91, 6.5, 0.75), (1, 61, 6.5, 0.75)]

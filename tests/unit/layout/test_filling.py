"""One run filled: from what a carpenter would take, where there is just one best way."""

from typing import Any

import pytest

from builders import board, flaw, nm
from choosing import plain, sticks_of
from plankwright.layout.filling import Filled, fill_run
from plankwright.layout.runs import JointPlace, Run
from plankwright.model import Board, JointPolicy, Rules, Severity

RULES = plain(shortest_piece_nm=nm(16), narrowest_course_nm=nm(2), crosscut_kerf_nm=nm(0.125))


def _run(*joints: float, hidden: bool = False, end: float = 96) -> Run:
    """Give a run from 0 with a stud at each place for a joint."""
    places = tuple(JointPlace(nm(at), hidden) for at in joints)
    return Run(0, nm(end), places, tuple(nm(at) for at in joints), ((0, nm(end)),) * hidden)


def _filled(
    boards: list[Board],
    run: Run,
    rules: Rules = RULES,
    near: tuple[float, ...] = (),
    height: float = 6,
) -> Filled:
    return fill_run(run, nm(height), sticks_of(boards, rules), [nm(at) for at in near], rules)


def _pieces(filled: Filled) -> list[tuple[int, float, float]]:
    return [(piece.stick.board, piece.start / nm(1), piece.end / nm(1)) for piece in filled.pieces]


def _bare(filled: Filled) -> list[tuple[float, float]]:
    return [(start / nm(1), end / nm(1)) for start, end in filled.bare]


def test_a_board_that_just_fits_wastes_nothing() -> None:
    """And is taken before a longer one whose rest is too short to keep."""
    filled = _filled([board("A", 100, 6), board("B", 96, 6)], _run(48))
    assert _pieces(filled) == [(1, 0, 96)]
    assert filled.price == 0


def test_a_board_that_leaves_something_useful_is_taken_before_one_that_does_not() -> None:
    """Of 140 inches 44 are of use, of 104 eight are lost."""
    assert _pieces(_filled([board("A", 104, 6), board("B", 140, 6)], _run())) == [(1, 0, 96)]


def test_a_wide_board_is_taken_only_when_its_strip_is_of_use() -> None:
    """Of ten inches four are left for another course; of seven and a half the one and a half is lost."""
    narrow_strip, wide_strip = board("A", 96, 7.5), board("B", 96, 10)
    assert _pieces(_filled([narrow_strip, wide_strip], _run())) == [(1, 0, 96)]


def test_a_joint_in_sight_is_avoided_where_it_saves_little() -> None:
    """A foot of one long board is lost rather than two halves joined, unless the joint is hidden."""
    boards = [board("A", 108, 6), board("B", 48, 6), board("C", 48, 6)]
    rules = plain(shortest_piece_nm=nm(40))
    assert _pieces(_filled(boards, _run(48), rules)) == [(0, 0, 96)]
    assert sorted(_pieces(_filled(boards, _run(48, hidden=True), rules))) == [(1, 0, 48), (2, 48, 96)]


def test_what_no_board_covers_is_bare() -> None:
    """As little as the places for joints let."""
    filled = _filled([board("A", 72, 6)], _run(32, 72))
    assert _pieces(filled) == [(0, 0, 72)]
    assert _bare(filled) == [(72, 96)]
    assert filled.price >= nm(24) * nm(6) * 1000


def test_without_wood_all_is_bare() -> None:
    """In one stretch or in two."""
    filled = _filled([], _run(48))
    assert not filled.pieces
    assert sum(end - start for start, end in filled.bare) == nm(96)


def test_a_board_is_cut_once() -> None:
    """The path over the joints takes it for both halves; one half is left bare in the end."""
    filled = _filled([board("A", 60, 6)], _run(48))
    assert len(filled.pieces) == 1
    assert sum(end - start for start, end in filled.bare) == nm(48)


def test_a_strip_left_of_a_board_fills_the_rest() -> None:
    """Two halves side by side out of one wide board, a kerf apart."""
    rules = plain(rip_kerf_nm=nm(0.25), narrowest_course_nm=nm(2), shortest_piece_nm=nm(16))
    filled = _filled([board("A", 48, 12.25)], _run(48), rules)
    assert not filled.bare
    assert sorted(piece.stick.across_from for piece in filled.pieces) == [0, nm(6.25)]


@pytest.mark.parametrize(
    ("change", "right"),
    [
        ({}, True),
        ({"thickness_nm": nm(1)}, False),
        ({"flaws": (flaw(20, 24, Severity.BLEMISH),)}, False),
        ({"width_start_nm": nm(5), "width_end_nm": nm(5)}, False),
    ],
)
def test_only_what_may_hang_there_is_taken(change: dict[str, Any], *, right: bool) -> None:
    """A second half as thick as the first, clean and wide enough."""
    filled = _filled([board("A", 48, 6), board("B", 48, 6, **change)], _run(48))
    assert (not filled.bare) is right


def test_a_hidden_run_takes_blemished_boards() -> None:
    """Only their blemished part is kept for such places."""
    stained = board("A", 96, 6, flaws=(flaw(0, 96, Severity.BLEMISH),))
    assert _filled([stained], _run()).bare
    hidden = Run(0, nm(95.75), (), (), concealed=((0, nm(95.75)),))
    assert not _filled([stained], hidden).bare


def test_a_blemished_board_hangs_in_the_part_of_a_run_that_is_hidden() -> None:
    """Behind a bench from the corner to 60, left of the joint at 48; in sight it would go nowhere."""
    boards = [board("A", 49, 6, flaws=(flaw(0, 49, Severity.BLEMISH),)), board("B", 60, 6)]
    benched = Run(
        0,
        nm(96),
        tuple(JointPlace(nm(at), at < 60) for at in (48, 72)),
        (nm(48), nm(72)),
        concealed=((nm(-1), nm(60)),),
    )
    assert (0, 0, 48) in _pieces(_filled(boards, benched))
    assert {which for which, _, _ in _pieces(_filled(boards, _run(48, 72)))} == {1}


def test_hidden_joints_take_boards_that_do_not_match() -> None:
    """Three quarters beside an inch, behind a fixture, where either alone would waste more."""
    boards = [board("A", 56, 6), board("B", 40, 6, thickness_nm=nm(1))]
    assert _pieces(_filled(boards, _run(56, hidden=True))) == [(0, 0, 56), (1, 56, 96)]
    assert _filled(boards, _run(56)).bare


def test_joints_keep_the_stagger() -> None:
    """From one at 40 the place at 48 is too near, and the one at 56 is not."""
    rules = plain(joints=JointPolicy.STAGGER, stagger_nm=nm(16))
    boards = [board("A", 56, 6), board("B", 56, 6)]
    assert [piece.start for piece in _filled(boards, _run(48, 56), rules, near=(40,)).pieces] == [0, nm(56)]
    assert _filled(boards, _run(48), rules, near=(40,)).bare


def test_no_joint_is_in_sight_where_none_may_be() -> None:
    """Hidden ones may."""
    rules = plain(joints=JointPolicy.NEVER)
    boards = [board("A", 48, 6), board("B", 48, 6)]
    assert len(_filled(boards, _run(48), rules).pieces) <= 1
    assert len(_filled(boards, _run(48, hidden=True), rules).pieces) == 2


def test_pieces_that_butt_are_long_enough_and_nailed_often_enough() -> None:
    """Twelve inches are too short; and the joint at 48 is the only stud."""
    boards = [board("A", 84, 6), board("B", 48, 6), board("C", 48, 6)]
    assert _pieces(_filled(boards, _run(12, 48)))[0][2] != 12
    assert _filled(boards, _run(48), plain(nailing_points=2)).bare == ((0, nm(48)), (nm(48), nm(96)))


def test_a_stretch_that_no_saw_can_end_is_bare() -> None:
    """Its slope is too long for them."""
    barred = Run(0, nm(96), (JointPlace(nm(24), hidden=False),), (nm(24),), barred=((0, nm(10)),))
    filled = _filled([board("A", 96, 6)], barred)
    assert _pieces(filled) == [(0, 24, 96)]

"""What boards can give: worked out by hand from the rules that the handing out of wood goes by."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builders import board, flaw, nm
from choosing import plain
from plankwright.layout.guillotine import Patch, Sawing, fewest_passes
from plankwright.layout.plan import PlannedCourse, PlannedPiece, Stick
from plankwright.layout.sticks import cut_from, free_sticks, remainders, whole_sticks, without
from plankwright.model import BlemishPolicy, Board, EdgeKind, EdgeProfile, Face, Rules, Severity

RULES = plain(
    crosscut_kerf_nm=nm(0.125),
    rip_kerf_nm=nm(0.125),
    straight_edge_loss_nm=nm(0.25),
    end_trim_nm=nm(0.5),
    shortest_piece_nm=nm(16),
    narrowest_course_nm=nm(2),
)
TONGUE = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))


def _inches(stick: Stick) -> tuple[float, float, float, float]:
    """Give where a stick lies along and across its board."""
    sides = stick.along_from, stick.along_to, stick.across_from, stick.across_to
    along_from, along_to, across_from, across_to = (side / nm(1) for side in sides)
    return along_from, along_to, across_from, across_to


def _sticks(of: Board, rules: Rules = RULES) -> list[tuple[float, float, float, float]]:
    return [_inches(stick) for stick in whole_sticks(of, 3, rules)]


def _course(*parts: Stick) -> PlannedCourse:
    """Give a course of pieces cut from these parts; where they hang does not matter here."""
    return PlannedCourse(0, nm(6), tuple(PlannedPiece(part, 0, part.length) for part in parts))


def _whole() -> Stick:
    """Give a stick of 96 by 8, half an inch from the end of its board and a quarter from its edge."""
    (stick,) = whole_sticks(board("A", 97, 8.5), 3, RULES)
    return stick


def test_a_sound_board_gives_what_is_left_of_it_when_trimmed_and_straightened() -> None:
    """Half an inch off each end, a quarter off each edge."""
    assert _sticks(board("A", 97, 8.5)) == [(0.5, 96.5, 0.25, 8.25)]


def test_a_stick_knows_its_board() -> None:
    """Its place in the tally, thickness and profile."""
    (stick,) = whole_sticks(board("A", 97, 8.5, profile=TONGUE, thickness_nm=nm(1)), 3, RULES)
    assert (stick.board, stick.thickness, stick.profile) == (3, nm(1), TONGUE)


def test_milled_edges_are_not_straightened() -> None:
    """A tongue fits its groove as it is."""
    assert _sticks(board("A", 97, 8.5, profile=TONGUE)) == [(0.5, 96.5, 0, 8.5)]


def test_a_tapered_board_gives_its_narrow_end_over_the_whole_run() -> None:
    """Eight inches at the start, six at the end of 96: at 95.5 it is an 96th of two more than six."""
    ((_, _, near, far),) = _sticks(board("A", 96, 8, width_end_nm=nm(6)))
    assert near == 0.25
    assert far == pytest.approx(8 - 2 * 95.5 / 96 - 0.25, abs=1e-6)


def test_lost_wood_parts_a_board() -> None:
    """What is shorter than the shortest piece is no stick."""
    rotten = board("A", 97, 8.5, flaws=(flaw(30, 40), flaw(50, 60)))
    assert _sticks(rotten) == [(0.5, 30, 0.25, 8.25), (60, 96.5, 0.25, 8.25)]


def test_a_board_too_narrow_to_straighten_gives_nothing() -> None:
    """Half an inch less a quarter at each edge."""
    assert _sticks(board("A", 97, 0.5)) == []


def test_a_blemish_is_kept_apart_and_pays_for_the_kerfs_beside_it() -> None:
    """Each may then be used without the other."""
    stained = board("A", 97, 8.5, flaws=(flaw(30, 60, Severity.BLEMISH),))
    sticks = whole_sticks(stained, 0, RULES)
    assert [(_inches(stick)[:2], stick.hidden_only) for stick in sticks] == [
        ((0.5, 30), False),
        ((30.125, 59.875), True),
        ((60, 96.5), False),
    ]


@pytest.mark.parametrize("severity", Severity)
@pytest.mark.parametrize(
    ("start", "end", "clear"),
    [
        (40, 40.0625, [(0.5, 40), (40.125, 96.5)]),
        (40, 40.125, [(0.5, 40), (40.125, 96.5)]),
        (0.25, 0.5625, [(0.5625, 96.5)]),
    ],
)
def test_a_flaw_narrower_than_a_kerf_keeps_its_neighbours_a_kerf_apart(
    start: float, end: float, clear: list[tuple[float, float]], severity: Severity
) -> None:
    """Pieces from both sides of it are cut apart by a whole blade; at the end there is only one side."""
    flawed = board("A", 97, 8.5, flaws=(flaw(start, end, severity),))
    assert [_inches(stick)[:2] for stick in whole_sticks(flawed, 0, RULES)] == clear


def test_overlapping_blemishes_are_kept_together() -> None:
    """The second goes on where the first ends, and the third lies within both."""
    flaws = [flaw(start, end, Severity.BLEMISH) for start, end in ((30, 60), (50, 80), (52, 58))]
    sticks = whole_sticks(board("A", 120, 8.5, flaws=tuple(flaws)), 0, RULES)
    assert [_inches(stick)[:2] for stick in sticks if not stick.hidden_only] == [(0.5, 30), (80, 119.5)]


def test_blemishes_that_may_hang_anywhere_part_nothing() -> None:
    """One stick, for any place."""
    stained = board("A", 97, 8.5, flaws=(flaw(30, 60, Severity.BLEMISH),))
    (stick,) = whole_sticks(stained, 0, replace(RULES, blemishes=BlemishPolicy.ANYWHERE))
    assert not stick.hidden_only


def test_the_better_face_is_shown() -> None:
    """A stain on the front turns a square board round; a milled one cannot be turned."""
    stain = flaw(30, 60, Severity.BLEMISH, face=Face.FRONT)
    (square,) = whole_sticks(board("A", 97, 8.5, flaws=(stain,)), 0, RULES)
    assert (square.face, square.hidden_only) == (Face.BACK, False)
    milled = whole_sticks(board("A", 97, 8.5, profile=TONGUE, flaws=(stain,)), 0, RULES)
    assert {stick.face for stick in milled} == {Face.FRONT}
    assert [stick.hidden_only for stick in milled] == [False, True, False]


def test_the_front_is_shown_when_both_faces_are_alike() -> None:
    """As boards usually lie."""
    assert _whole().face is Face.FRONT


def test_nothing_cut_leaves_everything() -> None:
    """The very sticks."""
    assert free_sticks([_whole()], (), RULES) == [_whole()]


def test_a_piece_leaves_what_lies_before_beyond_and_beside_it() -> None:
    """A kerf apart each."""
    stick = _whole()
    part = cut_from(stick, nm(30), nm(20), stick.across_from, nm(5))
    assert [_inches(free) for free in free_sticks([stick], (_course(part),), RULES)] == [
        (0.5, 29.875, 0.25, 8.25),
        (30, 50, 5.375, 8.25),
        (50.125, 96.5, 0.25, 8.25),
    ]


def test_what_is_too_short_or_too_narrow_is_not_kept() -> None:
    """Fifteen inches beyond, and less than two beside."""
    stick = _whole()
    part = cut_from(stick, stick.along_from, nm(81), stick.across_from, nm(6.125))
    assert free_sticks([stick], (_course(part),), RULES) == []


def test_pieces_side_by_side_are_parted_from_the_rest_before_they_are_parted_from_each_other() -> None:
    """What lies beyond both first, then what lies beside both, then what lies before the farther one."""
    stick = _whole()
    lower = cut_from(stick, nm(0.5), nm(40), nm(0.25), nm(2))
    upper = cut_from(stick, nm(20), nm(30), nm(2.375), nm(3))
    assert [_inches(free) for free in free_sticks([stick], (_course(lower), _course(upper)), RULES)] == [
        (0.5, 19.875, 2.375, 5.375),
        (0.5, 50, 5.5, 8.25),
        (50.125, 96.5, 0.25, 8.25),
    ]


def test_what_lies_before_a_piece_across_the_board_is_free_as_well() -> None:
    """Ripped from end to end, as the end beyond the piece is too short to be worth a crosscut."""
    stick = _whole()
    upper = cut_from(stick, nm(0.5), nm(90), nm(4), nm(4.25))
    assert [_inches(free) for free in free_sticks([stick], (_course(upper),), RULES)] == [
        (0.5, 96.5, 0.25, 3.875)
    ]


def test_a_strip_wider_than_the_saw_rips_is_not_parted_from_what_lies_beside_it() -> None:
    """Five inches and three, with a saw that rips two and with one that rips three."""
    stick = replace(_whole(), widest_rip=nm(2))
    part = cut_from(stick, stick.along_from, stick.length, stick.across_from, nm(5))
    assert free_sticks([stick], (_course(part),), RULES) == []
    stick = replace(stick, widest_rip=nm(3))
    assert [_inches(free) for free in free_sticks([stick], (_course(part),), RULES)] == [
        (0.5, 96.5, 5.375, 8.25)
    ]


_SAWING = Sawing(crosscut_kerf_nm=RULES.crosscut_kerf_nm, rip_kerf_nm=RULES.rip_kerf_nm)


@given(
    sizes=st.lists(st.tuples(st.integers(16, 60), st.integers(8, 16), st.integers(0, 3)), max_size=6),
    keep=st.integers(0, 63),
)
def test_what_is_released_can_stay_and_all_that_is_free_can_be_sawn(
    sizes: list[tuple[int, int, int]], keep: int
) -> None:
    """Pieces cut one after another from whatever the others left: some stay, the others need not move."""
    left, parts = [_whole()], []
    for length, quarters, which in sizes:
        stick = left[which % len(left)] if left else None
        if stick and nm(length) <= stick.length and nm(quarters / 4) <= stick.width:
            parts.append(cut_from(stick, stick.along_from, nm(length), stick.across_from, nm(quarters / 4)))
            left = without(left, _course(parts[-1]), RULES)
    kept = [part for number, part in enumerate(parts) if keep >> number & 1]
    released = [part for part in parts if part not in kept]
    free = [_patch(part) for part in free_sticks([_whole()], (_course(*kept),), RULES, (_course(*released),))]
    assert all(any(part.holds(_patch(piece)) for part in free) for piece in released)
    pieces = [*free, *map(_patch, kept)]
    assert fewest_passes(board("A", 97, 8.5), pieces, [], _SAWING, rip_first=False) is not None


def _patch(stick: Stick) -> Patch:
    return Patch(stick.along_from, stick.along_to, stick.across_from, stick.across_to)


def test_a_piece_of_another_stick_of_the_board_leaves_this_one_alone() -> None:
    """Rot lies between the two."""
    first, second = whole_sticks(board("A", 97, 8.5, flaws=(flaw(40, 50),)), 3, RULES)
    part = cut_from(first, first.along_from, first.length, first.across_from, first.width)
    assert free_sticks([first, second], (_course(part),), RULES) == [second]


def test_a_cut_stick_is_replaced_by_its_remainders_in_its_place() -> None:
    """What lies beyond comes before what lies beside."""
    stick, other = _whole(), replace(_whole(), board=4)
    part = cut_from(stick, stick.along_from, nm(40), stick.across_from, nm(5))
    left = without([stick, other], _course(part), RULES)
    assert [_inches(rest) for rest in left[:2]] == [(40.625, 96.5, 0.25, 8.25), (0.5, 40.5, 5.375, 8.25)]
    assert left[2:] == [other]
    assert left[:2] == remainders(stick, part, RULES)


def test_pieces_cut_from_remainders_are_taken_in_their_turn() -> None:
    """However the course lists them: the second piece is cut from what the first left."""
    stick = _whole()
    first = cut_from(stick, nm(0.5), nm(40), nm(0.25), nm(8))
    second = cut_from(stick, nm(40.625), nm(30), nm(0.25), nm(8))
    assert [_inches(rest) for rest in without([stick], _course(second, first), RULES)] == [
        (70.75, 96.5, 0.25, 8.25)
    ]


def test_a_part_keeps_what_the_stick_is_like() -> None:
    """Only its rectangle is another."""
    stick = _whole()
    part = cut_from(stick, nm(10), nm(20), nm(1), nm(3))
    assert _inches(part) == (10, 30, 1, 4)
    assert replace(part, along_from=0, along_to=0, across_from=0, across_to=0) == replace(
        stick, along_from=0, along_to=0, across_from=0, across_to=0
    )

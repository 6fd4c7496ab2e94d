"""What a change must not break: each rule by a change that breaks just that."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

import pytest

from builders import board, flaw, nm, opening, outline, rectangle, studs, wall
from choosing import plain
from looking import Dresser, boards, pieced
from plankwright.layout.butting import match
from plankwright.layout.look.places import Places
from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece
from plankwright.model import (
    Board,
    ConcealedZone,
    EdgeKind,
    EdgeProfile,
    JointPolicy,
    KeepOut,
    Rules,
    Severity,
)

STUDS = studs(*range(0, 97, 8))
STAGGERED = plain(joints=JointPolicy.STAGGER, stagger_nm=nm(12))
TONGUE = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))


def _joined(*joints: float, rules: Rules | None = None, **more: Any) -> tuple[Dresser, Plan]:  # noqa: ANN401 - any field of a wall
    """Give courses with one joint each on a wall of their height."""
    rows = [
        [(board(f"{n}a", 96, 6), at), (board(f"{n}b", 96, 6), 96 - at)]
        if at
        else [(board(f"{n}", 96, 6), 96)]
        for n, at in enumerate(joints)
    ]
    return pieced(wall(96, 6 * len(joints), **({"framing": STUDS} | more)), rows, rules=rules)


def _turned(course: PlannedCourse) -> PlannedCourse:
    """Give a course with its pieces from end to end."""
    at, pieces = 0, list[PlannedPiece]()
    for piece in reversed(course.pieces):
        pieces.append(replace(piece, start=at, end=at + piece.end - piece.start))
        at = pieces[-1].end
    return replace(course, pieces=tuple(pieces))


def _exchanged(plan: Plan, first: int, second: int) -> dict[int, PlannedCourse]:
    """Give two courses in each other's places."""
    one, other = plan[first], plan[second]
    return {
        first: replace(other, low=one.low, high=one.high),
        second: replace(one, low=other.low, high=other.high),
    }


def _allows(dresser: Dresser, plan: Plan, changes: dict[int, PlannedCourse]) -> bool:
    return Places(dresser.strips).allow(plan, changes)


def test_a_course_may_be_turned_and_two_may_change_places() -> None:
    """Where nothing speaks against it."""
    dresser, plan = _joined(32, 56, rules=STAGGERED)
    assert _allows(dresser, plan, {0: _turned(plan[0])}) is False, "64 and 56 are too near"
    assert _allows(dresser, plan, {1: _turned(plan[1])}) is False, "32 and 40 are too near"
    assert _allows(dresser, plan, {0: _turned(plan[0]), 1: _turned(plan[1])})
    assert _allows(dresser, plan, _exchanged(plan, 0, 1))


def test_joints_keep_their_stagger_from_courses_that_stay() -> None:
    """The third course would come next to one whose joint is in the same place."""
    dresser, plan = _joined(32, 64, 80, 32, rules=STAGGERED)
    assert not _allows(dresser, plan, _exchanged(plan, 0, 2)), "80 is 16 from 64, but 32 comes below 32"
    assert _allows(dresser, plan, _exchanged(plan, 1, 2))
    unstaggered, plan = _joined(32, 64, 80, 32)
    assert _allows(unstaggered, plan, _exchanged(plan, 0, 2))


def test_joints_stay_on_framing() -> None:
    """Turned round, the joint would fall between two studs."""
    dresser, plan = _joined(32, framing=studs(0, 32, 96))
    assert not _allows(dresser, plan, {0: _turned(plan[0])})


def test_no_joint_comes_out_from_behind_a_fixture() -> None:
    """The lower course has its joint behind the bench; in the upper one's place it would show."""
    bench = ConcealedZone(id="bench", place=rectangle(0, 0, 40, 6))
    dresser, plan = _joined(32, 0, concealed=(bench,))
    assert not _allows(dresser, plan, _exchanged(plan, 0, 1))
    assert not _allows(dresser, plan, {0: _turned(plan[0])})
    dresser, plan = _joined(0, 32, concealed=(bench,))
    assert _allows(dresser, plan, _exchanged(plan, 0, 1)), "one less is in sight"


def test_a_piece_that_butts_stays_nailed() -> None:
    """A pipe leaves the short piece one stud less where it would hang then."""
    pipe = KeepOut(id="pipe", place=rectangle(78, 0, 90, 6))
    dresser, plan = _joined(16, keep_outs=(pipe,), rules=plain(nailing_points=2, shortest_piece_nm=nm(8)))
    assert not _allows(dresser, plan, {0: _turned(plan[0])})
    dresser, plan = _joined(16, rules=plain(nailing_points=2, shortest_piece_nm=nm(8)))
    assert _allows(dresser, plan, {0: _turned(plan[0])})


def _wood(dresser: Dresser, plan: Plan, number: int, spare: int) -> dict[int, PlannedCourse]:
    """Cut the one piece of a course from another board."""
    course = plan[number]
    (piece,) = course.pieces
    (stick,) = [stick for stick in dresser.stock if stick.board == spare]
    height = min(stick.width, course.height) if stick.rippable else stick.width
    part = replace(stick, along_to=stick.along_from + nm(96), across_to=stick.across_from + height)
    return {number: replace(course, pieces=(replace(piece, stick=part),))}


@pytest.mark.parametrize(
    ("width", "rules", "allowed"),
    [
        (6, plain(), True),
        (5.75, plain(), False),
        (5.75, plain(width_tolerance_nm=nm(0.25), gap_tolerance_nm=nm(0.25)), False),
    ],
)
def test_no_piece_is_narrower_than_what_hung_there(width: float, rules: Rules, *, allowed: bool) -> None:
    """Not even by what the tolerance lets pass, since that would leave more of the wall bare."""
    dresser, plan = pieced(
        wall(96, 6, framing=STUDS), [[(board("A", 96, 6), 96)]], spare=[board("B", 96, width)], rules=rules
    )
    assert _allows(dresser, plan, _wood(dresser, plan, 0, 1)) is allowed


def test_a_blemished_piece_stays_behind_its_fixture() -> None:
    """Where blemishes must be hidden."""
    bench = ConcealedZone(id="bench", place=rectangle(0, 0, 96, 6))
    stained = board("S", 96, 6, flaws=(flaw(0, 96, Severity.BLEMISH),))
    dresser, plan = pieced(
        wall(96, 12, framing=STUDS, concealed=(bench,)), [[(stained, 96)], [(board("B", 96, 6), 96)]]
    )
    assert plan[0].pieces[0].stick.hidden_only
    assert not _allows(dresser, plan, _exchanged(plan, 0, 1))


def test_what_is_bare_goes_nowhere() -> None:
    """Nor does a course come to cover less than its strip asks for."""
    dresser, plan = _joined(0, 32)
    gap = replace(plan[1], pieces=plan[1].pieces[:1], bare=((nm(32), nm(96)),))
    assert not _allows(dresser, (plan[0], gap), _exchanged((plan[0], gap), 0, 1))
    assert not _allows(dresser, plan, {1: replace(plan[1], pieces=plan[1].pieces[:1])})
    bare: Plan = tuple(
        PlannedCourse(nm(low), nm(high), (), ((0, nm(96)),)) for low, high in ((0, 5), (5, 12))
    )
    assert not _allows(dresser, bare, {number: bare[1 - number] for number in (0, 1)})


@pytest.mark.parametrize(
    "more",
    [
        {"outline": outline((0, 0), (96, 0), (96, 6), (48, 12), (0, 6))},
        {"openings": (opening("hatch", 40, 8, 56, 12),)},
    ],
)
def test_pieces_that_are_sloped_or_notched_stay(more: dict[str, Any]) -> None:
    """What is cut of them would no longer be what was reckoned with."""
    dresser, plan = pieced(
        wall(96, 12, **({"framing": STUDS} | more)), [[(each, 96)] for each in boards("B", 2, 96)]
    )
    assert not _allows(dresser, plan, _exchanged(plan, 0, 1))


def _thick(*inches: float, profiles: Sequence[EdgeProfile] = ()) -> list[Board]:
    each = profiles or [EdgeProfile()] * len(inches)
    return [
        board(f"T{n}", 24, 6, thickness_nm=nm(thick), profile=profile)
        for n, (thick, profile) in enumerate(zip(inches, each, strict=True))
    ]


@pytest.mark.parametrize(
    ("inches", "tolerance", "shim", "matched"),
    [
        ((1, 1, 1), 0, 0, True),
        ((1, 0.75, 1), 0.25, 0, True),
        ((1, 0.75, 0.5), 0.25, 0, True),
        ((1, 0.5, 1), 0.25, 0, False),
        ((1, 0.5, 1), 0.25, 0.25, True),
        ((1, 0.75, 0.25), 0.25, 0.25, True),
        ((1, 0.5, 0.25), 0.25, 0.25, True),
        ((1, 0.25, 0.25), 0.25, 0.25, False),
        ((1, 0.5, 0.125), 0.25, 0.25, False),
    ],
)
def test_a_row_matches_when_thin_enough_shims_level_it(
    inches: tuple[float, ...], tolerance: float, shim: float, *, matched: bool
) -> None:
    """A piece that is shimmed for one neighbour may ask the next for a shim as well."""
    rules = plain(thickness_tolerance_nm=nm(tolerance), shim_up_to_nm=nm(shim))
    dresser, plan = pieced(
        wall(72, 6, framing=STUDS), [[(each, 24) for each in _thick(*inches)]], rules=rules
    )
    assert match(dresser.strips, plan[0]) is matched


def test_only_like_milling_butts_in_sight() -> None:
    """Behind a fixture anything may."""
    row = [(each, 24) for each in _thick(1, 1, profiles=(TONGUE, EdgeProfile()))]
    for concealed, matched in (((), False), ((ConcealedZone(id="z", place=rectangle(20, 0, 28, 6)),), True)):
        dresser, plan = pieced(wall(48, 6, framing=STUDS, concealed=concealed), [row])
        assert match(dresser.strips, plan[0]) is matched

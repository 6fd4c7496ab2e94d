"""Where nails may be, and how many a piece needs."""

from dataclasses import replace

import pytest

from builders import (
    board,
    course,
    job,
    nm,
    opening,
    outline,
    piece,
    rectangle,
    socket,
    studs,
    surface_layout,
    wall,
)
from plankwright.check import FindingCode
from plankwright.check import nails as rules_of_nails
from plankwright.check.case import open_surface
from plankwright.model import Framing, KeepOut, Rules, Surface
from spoil.walls import entry

ROW, RUN = (0.25, 8.25), (0.25, 96.25)
CHECKS = (
    rules_of_nails.check_nails_on_pieces,
    rules_of_nails.check_nail_edges,
    rules_of_nails.check_nail_ends,
    rules_of_nails.check_nails_on_framing,
    rules_of_nails.check_keep_outs,
    rules_of_nails.check_nailing,
)


def codes(surface: Surface, *nails: tuple[float, float], asked: int = 1) -> list[FindingCode]:
    """Give what is found about the nails of one piece in the only course of a wall 96.5 by 8.5."""
    hung = piece(surface, "1a A", RUN, ROW, nails=tuple((nm(x), nm(y)) for x, y in nails))
    work = job(surface, [board("A", 100, 9)], Rules(nailing_points=asked))
    case = open_surface(work, surface_layout(surface, course(1, ROW, hung)))
    return [finding.code for check in CHECKS for finding in check(case)]


def keep_out(left: float, bottom: float, right: float, top: float) -> KeepOut:
    """Make a pipe."""
    return KeepOut(id="pipe", place=rectangle(left, bottom, right, top), what="water pipe")


@pytest.mark.parametrize(
    ("nail", "expected"),
    [
        ((24, 4), []),
        ((24.75, 4), []),
        ((24.8, 4), [FindingCode.NAIL_OFF_FRAMING]),
        ((23.2, 4), [FindingCode.NAIL_OFF_FRAMING]),
        ((24, 0.75), []),
        ((24, 0.7), [FindingCode.NAIL_NEAR_EDGE]),
        ((24, 7.75), []),
        ((24, 7.8), [FindingCode.NAIL_NEAR_EDGE]),
        ((24, 8.4), [FindingCode.NAIL_OFF_PIECE, FindingCode.NAIL_NEAR_EDGE]),
    ],
)
def test_a_nail_hits_its_piece_and_its_stud(nail: tuple[float, float], expected: list[FindingCode]) -> None:
    """On a course from 1/4 to 8-1/4, stud at 24: at most 3/4 off its middle, at least 1/2 from the edges."""
    assert codes(wall(96.5, 8.5), (8, 4), nail) == expected


@pytest.mark.parametrize(("x", "expected"), [(0.5, []), (0.45, [FindingCode.NAIL_NEAR_END])])
def test_a_nail_keeps_its_distance_from_the_end(x: float, expected: list[FindingCode]) -> None:
    """At least 1/4 inch from the end at 1/4."""
    assert codes(wall(96.5, 8.5, framing=studs(0.75, 24)), (24, 4), (x, 4)) == expected


def test_a_nail_misses_what_is_cut_away() -> None:
    """In a window or a socket there is nothing to nail; under a slope neither."""
    window = wall(96.5, 8.5, openings=(opening("window", 20, 3, 30, 6),))
    box = wall(96.5, 8.5, cut_outs=(socket(23, 3, 25, 6),))
    slope = wall(96.5, 8.5, outline=outline((0, 0), (96.5, 0), (96.5, 2), (40, 8.5), (0, 8.5)))
    assert codes(window, (8, 4), (24, 4)) == [FindingCode.NAIL_OFF_PIECE]
    assert codes(box, (8, 4), (24, 4)) == [FindingCode.NAIL_OFF_PIECE]
    assert codes(slope, (8, 4), (88, 6)) == [FindingCode.NAIL_OFF_PIECE]


@pytest.mark.parametrize(
    ("place", "found"),
    [
        ((25, 0, 26, 8), False),
        ((24.9, 0, 26, 8), True),
        ((23.5, 0, 24.5, 8), True),
        ((24.9, 4.9, 30, 8), True),
        ((25, 4.9, 30, 8), False),
    ],
    ids=[
        "clear by an inch",
        "nearer",
        "through it",
        "off its corner",
        "off its corner and clear of one side",
    ],
)
def test_a_nail_stays_clear_of_what_runs_behind(
    place: tuple[float, float, float, float], *, found: bool
) -> None:
    """A nail at 24 across and 4 up stays an inch clear of each side of a pipe, corners counted square."""
    expected = [FindingCode.NAIL_IN_KEEP_OUT] if found else []
    assert codes(wall(96.5, 8.5, keep_outs=(keep_out(*place),)), (8, 4), (24, 4)) == expected


def test_on_solid_backing_only_keep_outs_count() -> None:
    """Nails may be left out; those given may be anywhere but near a pipe."""
    solid = wall(96.5, 8.5, framing=Framing(solid=True), keep_outs=(keep_out(50, 0, 51, 8),))
    assert codes(solid, asked=5) == []
    assert codes(solid, (30, 4), (0.3, 0.3), (200, 4)) == []
    assert codes(solid, (50.5, 4)) == [FindingCode.NAIL_IN_KEEP_OUT]


def test_two_nails_in_one_stud_are_one_nailing_point() -> None:
    """It is members that count, not nails."""
    assert codes(wall(96.5, 8.5), (8, 2), (8, 6), asked=2) == [FindingCode.NAILS_TOO_FEW]
    assert codes(wall(96.5, 8.5), (8, 2), (24, 6), asked=2) == []


def test_what_is_said_of_one_member_is_singular() -> None:
    """Nobody reads "1 framing members", and what is asked for agrees with its number."""
    surface = wall(96.5, 8.5, framing=studs(8))
    case = open_surface(
        job(surface, [board("A", 100, 9)], Rules(nailing_points=2)),
        surface_layout(surface, course(1, ROW, piece(surface, "1a A", RUN, ROW))),
    )
    assert [finding.message for finding in rules_of_nails.check_nailing(case)] == [
        "It is nailed at no framing members; 1 is asked for and in reach.",
        "It could be nailed at 1 framing member only, not 2: add blocking or adhesive behind it.",
    ]


def test_a_piece_behind_which_no_member_stands() -> None:
    """Says so plainly."""
    surface = wall(96.5, 8.5, framing=studs(200))
    case = open_surface(
        job(surface, [board("A", 100, 9)], Rules(nailing_points=2)),
        surface_layout(surface, course(1, ROW, piece(surface, "1a A", RUN, ROW))),
    )
    assert [finding.message for finding in rules_of_nails.check_nailing(case)] == [
        "No framing member behind it takes a nail, and 2 should: add blocking or adhesive behind it."
    ]


def test_a_piece_is_nailed_where_it_can_be() -> None:
    """On three members one of which a pipe bars, two are asked for; a third would need blocking."""
    surface = wall(96.5, 8.5, framing=studs(8, 40, 72), keep_outs=(keep_out(39, 0, 41, 8.5),))
    assert codes(surface, (8, 4), asked=3) == [FindingCode.NAILS_TOO_FEW, FindingCode.ADD_BLOCKING]
    assert codes(surface, (8, 4), (72, 4), asked=3) == [FindingCode.ADD_BLOCKING]
    assert codes(surface, (8, 4), (72, 4), asked=2) == []


@pytest.mark.parametrize(
    ("surface", "reason"),
    [
        (wall(96.5, 8.5, framing=studs(8, 96.75)), "only the nail's distance from the end lies on it"),
        (wall(96.5, 8.5, framing=studs(8, 40), openings=(opening("door", 38, 0, 42, 8.5),)), "in a doorway"),
        (wall(96.5, 8.5, framing=studs(8, 40), cut_outs=(socket(39, 0.5, 41, 8),)), "behind a box"),
        (wall(96.5, 8.5, framing=studs(8, 40), keep_outs=(keep_out(36, 1.6, 44, 7),)), "near a pipe"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_a_member_that_takes_no_nail_does_not_count(surface: Surface, reason: str) -> None:
    """Where no nail can go none is missed, and blocking is called for."""
    assert codes(surface, (8, 4), asked=2) == [FindingCode.ADD_BLOCKING], reason


def test_room_for_a_nail_is_a_millimetre() -> None:
    """A free strip of 0.1 inch beside a pipe takes a nail; one of 0.02 inch, half a millimetre, is no aim."""
    for top, expected in ((6.65, [FindingCode.NAILS_TOO_FEW]), (6.73, [FindingCode.ADD_BLOCKING])):
        surface = wall(96.5, 8.5, framing=studs(8, 40), keep_outs=(keep_out(38, 0, 42, top),))
        assert codes(surface, (8, 4), asked=2) == expected


def test_a_nail_that_is_there_shows_that_it_can_be() -> None:
    """Where a nail is given at a member that has no room by our reckoning, it counts all the same."""
    surface = wall(96.5, 8.5, framing=studs(8, 40), keep_outs=(keep_out(38, 0, 42, 6.74),))
    assert codes(surface, (8, 4), (40, 7.745), asked=2) == []


def test_what_butts_must_hold_and_what_stands_alone_gets_blocking() -> None:
    """Of the entry's pieces those that butt another are errors, the short one by the window a warning."""
    work, laid = entry()
    asked = replace(work, rules=replace(work.rules, nailing_points=3))
    findings = list(rules_of_nails.check_nailing(open_surface(asked, laid.surfaces[0])))
    assert {(finding.code, finding.where) for finding in findings} == {
        (FindingCode.JOINED_BUT_NOT_HELD, "course 1, piece 1b"),
        (FindingCode.ADD_BLOCKING, "course 3, piece 3b"),
    }


def test_a_piece_that_hangs_nowhere_needs_no_nails() -> None:
    """A piece outside the wall is told to be outside, not to be badly nailed."""
    surface = wall(96.5, 8.5)
    high = (20, 28)
    hung = piece(surface, "1a A", RUN, high)
    case = open_surface(job(surface, [board("A", 100, 9)]), surface_layout(surface, course(1, high, hung)))
    assert list(rules_of_nails.check_nailing(case)) == []

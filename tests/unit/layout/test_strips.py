"""What a strip of the surface asks, by hand on small walls."""

from typing import Any

import pytest

from builders import nm, opening, outline, rectangle, socket, studs, wall
from choosing import plain
from plankwright.layout.capacity import Capacity
from plankwright.layout.runs import Run
from plankwright.layout.strips import Span, Strips
from plankwright.model import ConcealedZone, Direction, Edge, EdgeTrim, Framing, KeepOut, Rules
from plans import span

GAP = plain(expansion_gap_nm=nm(0.25))
GABLE = outline((0, 0), (96, 0), (96, 48), (48, 96), (0, 48))


def _strips(width: float = 96, height: float = 96, rules: Rules | None = None, **more: Any) -> Strips:  # noqa: ANN401 - any field of a surface
    return Strips(wall(width, height, **more), rules or plain())


def _ends(strips: Strips, low: float, high: float) -> list[tuple[float, float]]:
    """Give where the runs of a strip begin and end. [in]"""
    return [(run.start / nm(1), run.end / nm(1)) for run in strips.runs(nm(low), nm(high))]


def _only(strips: Strips, low: float, high: float) -> Run:
    (run,) = strips.runs(nm(low), nm(high))
    return run


def _joints(run: Run) -> list[tuple[float, bool]]:
    return [(joint.at / nm(1), joint.hidden) for joint in run.joints]


def _inches(*lengths: int) -> tuple[float, ...]:
    return tuple(length / nm(1) for length in lengths)


def test_courses_go_from_gap_to_gap() -> None:
    """A quarter of an inch is left open all round."""
    strips = _strips(rules=GAP)
    assert _inches(strips.left, strips.right, strips.start, strips.must_end, strips.may_end) == (
        0.25,
        95.75,
        0.25,
        95.75,
        95.75,
    )
    assert _ends(strips, 0.25, 6) == [(0.25, 95.75)]
    assert strips.level


def test_the_last_course_ends_behind_the_trim() -> None:
    """Of two inches; one at the bottom does not let the first course begin higher on a level floor."""
    strips = _strips(rules=GAP, trim=EdgeTrim(top=nm(2), bottom=nm(2)))
    assert _inches(strips.start, strips.must_end, strips.may_end) == (0.25, 94, 95.75)


def test_behind_a_trim_the_first_course_begins_level_on_an_uneven_floor() -> None:
    """The floor rises half an inch, which a base of two inches hides; one of a quarter hides half of it."""
    uneven = outline((0, 0), (96, 0.5), (96, 96), (0, 96))
    assert _strips(outline=uneven, trim=EdgeTrim(bottom=nm(2))).start == nm(0.5)
    assert _strips(outline=uneven, trim=EdgeTrim(bottom=nm(0.25))).start == pytest.approx(
        nm(0.25), abs=nm(0.01)
    )
    assert _strips(outline=uneven).start == 0


def test_a_door_parts_the_courses_beside_it() -> None:
    """Runs end a gap before it, though its casing would cover two inches; above it, one run goes on."""
    strips = _strips(rules=GAP, openings=(opening("door", 40, 0, 60, 80, trim=2),))
    assert _ends(strips, 10, 16) == [(0.25, 39.75), (60.25, 95.75)]
    assert _ends(strips, 76, 82) == [(0.25, 39.75), (60.25, 95.75)]
    assert _ends(strips, 77, 82.0625) == [(0.25, 95.75)]


def test_a_strip_behind_an_opening_alone_asks_nothing() -> None:
    """An opening from side to side."""
    strips = _strips(openings=(opening("gate", 0, 0, 96, 20),))
    assert _ends(strips, 5, 10) == []
    assert _ends(strips, 15, 21) == [(0, 96)]


def test_no_joint_stands_on_a_notch() -> None:
    """The studs at 40 and 56 lie behind the window that the course reaches; at its very edge one may."""
    strips = _strips(openings=(opening("window", 36, 50, 72, 80),))
    assert _joints(_only(strips, 46, 52)) == [(8, False), (24, False), (72, False), (88, False)]
    assert [at for at, _ in _joints(_only(strips, 44, 50))] == [8, 24, 40, 56, 72, 88]


def test_a_joint_is_hidden_where_one_zone_hides_all_of_it() -> None:
    """Not by two of which each hides a half."""
    zones = (
        ConcealedZone(id="bench", place=rectangle(20, 0, 60, 18)),
        ConcealedZone(id="shelf", place=rectangle(20, 18, 60, 30)),
    )
    strips = _strips(concealed=zones)
    assert _joints(_only(strips, 12, 18)) == [
        (8, False),
        (24, True),
        (40, True),
        (56, True),
        (72, False),
        (88, False),
    ]
    assert not any(hidden for _, hidden in _joints(_only(strips, 15, 21)))
    assert strips.hidden(nm(20), nm(20), nm(30))
    assert not strips.hidden(nm(19.984375), nm(20), nm(30))


def test_a_piece_is_hidden_where_one_zone_hides_all_of_it() -> None:
    """From wall to wall: what the trim covers at the sides does not show anyway."""
    zone = ConcealedZone(id="cupboard", place=rectangle(0, 0, 96, 30))
    strips = _strips(rules=GAP, concealed=(zone,))
    assert (run := _only(strips, 24, 30)).hides(run.start, run.end)
    assert not (run := _only(strips, 25, 31)).hides(run.start, run.end)


def test_half_a_run_is_hidden_behind_half_a_fixture() -> None:
    """A mirror from 20 to 60 hides what lies between, and nothing that reaches an inch further."""
    run = _only(_strips(concealed=(ConcealedZone(id="mirror", place=rectangle(20, 0, 60, 30)),)), 12, 18)
    assert run.hides(nm(20), nm(60))
    assert not run.hides(nm(19), nm(60))
    assert not run.hides(nm(20), nm(61))


def test_a_zone_that_reaches_a_side_hides_what_lies_beyond_it() -> None:
    """A course that begins below the floor line, as none should, is still hidden."""
    strips = _strips(concealed=(ConcealedZone(id="bench", place=rectangle(0, 0, 60, 18)),))
    assert strips.hidden(nm(-5), nm(-1), nm(18))
    assert not strips.hidden(nm(60.5), 0, nm(18))


def test_nails_go_where_framing_is_clear() -> None:
    """A pipe runs along the stud at 24, and a socket sits on the one at 40 as high as the course."""
    pipe = KeepOut(id="pipe", place=rectangle(23.5, 0, 24.5, 96))
    rules = plain(nail_edge_nm=nm(0.5), nail_clearance_nm=nm(1))
    strips = _strips(rules=rules, keep_outs=(pipe,), cut_outs=(socket(39, 10, 41, 16),))
    assert _inches(*_only(strips, 10, 16).nails) == (8, 56, 72, 88)
    assert [at for at, _ in _joints(_only(strips, 10, 16))] == [8, 56, 72, 88]
    assert _inches(*_only(strips, 14, 20).nails) == (8, 40, 56, 72, 88)


def test_nails_find_wood_in_the_narrowest_piece_that_may_hang() -> None:
    """An inch from either edge: a piece an eighth narrower than a course of 2-1/16 has no room."""
    strips = _strips(rules=plain(nail_edge_nm=nm(1), width_tolerance_nm=nm(0.125), gap_tolerance_nm=nm(0.25)))
    assert not _only(strips, 10, 12.0625).nails
    assert not _only(strips, 10, 12.0625).joints
    assert _only(strips, 10, 12.25).nails


def test_no_nail_goes_through_a_window() -> None:
    """A course that is all but half an inch above the sill takes none at the studs behind the window."""
    strips = _strips(rules=plain(nail_edge_nm=nm(1)), openings=(opening("window", 36, 50, 60, 80),))
    assert _inches(*_only(strips, 48.5, 54.5).nails) == (8, 24, 40, 56, 72, 88)
    assert _inches(*_only(strips, 49.5, 55.5).nails) == (8, 24, 72, 88)


def test_solid_backing_takes_a_joint_every_few_inches() -> None:
    """Even where a pipe lets no nail in, since adhesive or a nail beside it does."""
    strips = _strips(width=20, framing=Framing(solid=True))
    assert _joints(_only(strips, 0, 6)) == [(4, False), (8, False), (12, False), (16, False)]


def test_under_a_gable_courses_grow_shorter() -> None:
    """Both slopes rise an inch an inch from 48 up; a run is as long as its longer edge."""
    strips = _strips(outline=GABLE)
    assert not strips.level
    assert _ends(strips, 42, 48) == [(0, 96)]
    assert _ends(strips, 60, 66) == [(12, 84)]
    assert _inches(strips.must_end, strips.may_end) == (96, 96)


def test_a_strip_through_two_peaks_has_two_runs() -> None:
    """One on each, and one below where they meet."""
    peaks = outline((0, 0), (96, 0), (96, 48), (72, 72), (48, 48), (24, 72), (0, 48))
    strips = _strips(outline=peaks)
    assert _ends(strips, 60, 66) == [(12, 36), (60, 84)]
    assert _ends(strips, 44, 50) == [(0, 96)]


def test_outlines_that_meet_again_are_one_run() -> None:
    """A leaning slot parts the strip in two that reach beneath each other; a wide one leaves two runs."""
    undercut = outline((0, 0), (40, 0), (60, 20), (60, 0), (96, 0), (96, 96), (0, 96))
    assert _ends(_strips(outline=undercut), 4, 10) == [(0, 50), (60, 96)]
    leaning = outline((0, 0), (55, 0), (40, 20), (42, 20), (57, 0), (96, 0), (96, 96), (0, 96))
    assert _ends(_strips(outline=leaning), 4, 10) == [(0, 96)]


def test_no_nail_goes_where_the_slope_leaves_no_wood() -> None:
    """At the stud at 16 the slope is 64 up, an inch below where nails may go into a course from 64 up."""
    strips = _strips(outline=GABLE, framing=studs(16, 24, 48), rules=plain(nail_edge_nm=nm(1)))
    assert _inches(*_only(strips, 64, 70).nails) == (24, 48)


def test_level_between_says_where_strips_are_equally_long() -> None:
    """Up to the eaves of a gable, and everywhere on a plain wall."""
    assert _strips().level_between(0, nm(96))
    strips = _strips(outline=GABLE)
    assert strips.level_between(0, nm(48))
    assert not strips.level_between(0, nm(49))


def test_level_until_says_how_far_strips_are_equally_long() -> None:
    """To the end of a wall that is upright, to the eaves of a gable, and nowhere from beyond them."""
    assert _strips().level_until(0) == nm(96)
    strips = _strips(outline=GABLE)
    assert strips.level_until(0) == strips.level_until(nm(20)) == nm(48)
    assert strips.level_until(nm(50)) == nm(50)


@pytest.mark.parametrize(
    ("start", "run", "place"),
    [
        (Edge.BOTTOM, Direction.HORIZONTAL, rectangle(10, 2, 30, 8)),
        (Edge.TOP, Direction.HORIZONTAL, rectangle(10, 88, 30, 94)),
        (Edge.LEFT, Direction.VERTICAL, rectangle(2, 10, 8, 30)),
        (Edge.RIGHT, Direction.VERTICAL, rectangle(64, 10, 70, 30)),
    ],
)
def test_places_are_turned_with_the_courses(start: Edge, run: Direction, place: Any) -> None:  # noqa: ANN401 - a rectangle
    """On a wall of 72 by 96, there and back: a hole is found where it is."""
    hole = opening("hatch", place.left / nm(1), place.bottom / nm(1), place.right / nm(1), place.top / nm(1))
    framing = studs(8, 24, runs=Direction.VERTICAL if run is Direction.HORIZONTAL else Direction.HORIZONTAL)
    strips = _strips(width=72, start=start, courses_run=run, openings=(hole,), framing=framing)
    assert strips.holes == (span(10, 30, 2, 8),)
    assert strips.rectangle(span(10, 30, 2, 8)) == place
    assert strips.extent == nm(96 if run is Direction.HORIZONTAL else 72)
    assert [at for at, _ in _joints(_only(strips, 10, 16))] == [8, 24]


def test_a_surface_within_its_gaps_asks_nothing() -> None:
    """Ten inches high, and six of gap at either edge."""
    strips = _strips(height=10, rules=plain(expansion_gap_nm=nm(6)))
    assert strips.must_end <= strips.start
    assert strips.may.is_empty


def test_a_surface_behind_its_trim_asks_nothing() -> None:
    """A base as high as the wall."""
    strips = _strips(height=10, trim=EdgeTrim(bottom=nm(10)))
    assert strips.must_end <= strips.start


def test_a_slope_that_no_saw_cuts_is_barred() -> None:
    """Through six inches at 45 degrees the cut is eight and a half long."""
    eight, nine = (
        Strips(wall(96, 96, outline=GABLE), plain(), Capacity(crosscut=nm(long))) for long in (8, 9)
    )
    assert [_inches(*ends) for ends in _only(eight, 60, 66).barred] == [(12, 18), (78, 84)]
    assert _only(nine, 60, 66).barred == ()


def test_a_strip_narrower_than_any_course_is_barred() -> None:
    """No board hangs in it; the narrowest course itself is right."""
    strips = _strips(rules=plain(narrowest_course_nm=nm(2)))
    assert [_inches(*ends) for ends in _only(strips, 12, 13.984375).barred] == [(0, 96)]
    assert _only(strips, 12, 14).barred == ()


def test_a_span_is_told_by_its_sides() -> None:
    """Along first, then across."""
    assert span(1, 2, 3, 4) == Span(left=nm(1), right=nm(2), low=nm(3), high=nm(4))

"""What may and what must be covered, against areas worked out by hand."""

import pytest

from builders import board, job, nm, opening, outline, wall
from plankwright.check import check_layout
from plankwright.check.regions import may_cover, must_cover
from plankwright.measure import METRE
from plankwright.model import EdgeTrim, Layout, Rules, Surface

NO_GAP = Rules(expansion_gap_nm=0)
SQUARE_INCH = nm(1) ** 2
ROUNDING = 1e-7
"""Corners are rounded to whole nanometres: over some 10 inches that is far less than this share."""


def may_sq_in(surface: Surface, gap: float) -> float:
    """Give the area that may be covered, in square inches."""
    return may_cover(surface, Rules(expansion_gap_nm=nm(gap))).area / SQUARE_INCH


def must_sq_in(surface: Surface, rules: Rules = NO_GAP) -> float:
    """Give the area that must be covered, in square inches."""
    return must_cover(surface, rules).area / SQUARE_INCH


def test_a_rectangle_shrinks_by_the_gap_all_round() -> None:
    """100 by 50 less 1/4 inch all round is 99.5 by 49.5."""
    assert may_sq_in(wall(100, 50), 0.25) == 99.5 * 49.5


@pytest.mark.parametrize("gap_m", [0.1, 0.25, 0.5, 0.9])
def test_a_3_4_5_triangle_shrinks_to_a_similar_one(gap_m: float) -> None:
    """Inside a 3-4-5 triangle the triangle at distance d is similar in the ratio 1 - d.

    Its inscribed circle has the radius (3 + 4 - 5) / 2 = 1 (Euclid's Elements IV.4 draws it; from memory),
    which shrinks to 1 - d about the same centre, so the area is 6 (1 - d)².
    """
    corners = ((0, 0), (4 * METRE, 0), (0, 3 * METRE))
    surface = wall(100, 50, outline=corners)
    area = may_cover(surface, Rules(expansion_gap_nm=round(gap_m * METRE))).area
    assert area == pytest.approx(6 * (1 - gap_m) ** 2 * METRE**2, rel=ROUNDING)


def test_nothing_is_left_of_a_surface_smaller_than_its_gaps() -> None:
    """A strip narrower than two gaps cannot be covered at all, and that is found out without trouble."""
    surface = wall(100, 0.4)
    assert may_cover(surface, Rules()).is_empty
    assert must_cover(surface, Rules()).is_empty


def test_gaps_meet_in_a_mitre_at_an_inner_corner() -> None:
    """In an L of 10 by 10 less 4 by 4 the gap of 1 keeps its outer corner square: 8·8 - 4·4 is left."""
    corners = outline((0, 0), (10, 0), (10, 6), (6, 6), (6, 10), (0, 10))
    assert may_sq_in(wall(100, 50, outline=corners), 1) == pytest.approx(8 * 8 - 4 * 4, rel=ROUNDING)


def test_openings_take_their_gap_on_all_sides() -> None:
    """A 30 by 20 window with a gap of 1/4 inch takes 30.5 by 20.5 off."""
    window = opening("window", 40, 20, 70, 40)
    assert may_sq_in(wall(100, 50, openings=(window,)), 0.25) == 99.5 * 49.5 - 30.5 * 20.5


def test_trim_hides_a_band_along_each_side() -> None:
    """Trim of 1, 2, 3 and 4 inches at bottom, top, left and right leaves 93 by 47 of 100 by 50."""
    trim = EdgeTrim(bottom=nm(1), top=nm(2), left=nm(3), right=nm(4))
    assert must_sq_in(wall(100, 50, trim=trim)) == (100 - 7) * (50 - 3)


def test_the_wider_of_gap_and_trim_counts() -> None:
    """A base of 3 inches covers the gap below; elsewhere the gap of 1/4 inch stays."""
    surface = wall(
        100,
        50,
        trim=EdgeTrim(bottom=nm(3)),
        openings=(opening("cased", 10, 20, 20, 30, trim=2), opening("bare", 60, 20, 70, 30)),
    )
    assert must_sq_in(surface, Rules()) == 99.5 * (50 - 3.25) - 14 * 14 - 10.5 * 10.5


def test_slopes_take_the_trim_of_the_side_that_they_face() -> None:
    """Steeper than 45 degrees an edge belongs to left or right, flatter or exactly at 45 to the top.

    At 45 degrees: a right triangle with legs of 10 under top trim of t = 1 loses the band between the slope
    and its parallel; what is left has legs of 10 - t√2. Trim at the right takes nothing of it.
    """
    at_45 = wall(100, 50, outline=outline((0, 0), (10, 0), (0, 10)), trim=EdgeTrim(top=nm(1)))
    assert must_sq_in(at_45) == pytest.approx((10 - 2**0.5) ** 2 / 2, rel=ROUNDING)
    steep = wall(100, 50, outline=outline((0, 0), (9, 0), (0, 12)), trim=EdgeTrim(top=nm(1)))
    assert must_sq_in(steep) == pytest.approx(54, rel=ROUNDING)
    steep = wall(100, 50, outline=outline((0, 0), (9, 0), (0, 12)), trim=EdgeTrim(right=nm(1)))
    # The band square to the slope moves it by 1 along its normal (4, 3)/5: the legs shrink by 5/4 and 5/3.
    assert must_sq_in(steep) == pytest.approx((9 - 5 / 4) * (12 - 5 / 3) / 2, rel=ROUNDING)


def test_trim_runs_on_until_it_meets_the_next_side() -> None:
    """Trim of 1 along a roof over an untrimmed wall reaches the wall along its own edge.

    The left wall is 10 high, the roof rises 3 in 4 from it over 8: the trim moves the roof down by 5/4
    measured along the wall, right to the wall, so a parallelogram of 8 by 5/4 is hidden.
    """
    corners = outline((0, 0), (8, 0), (8, 16), (0, 10))
    surface = wall(100, 50, outline=corners, trim=EdgeTrim(top=nm(1)))
    assert must_sq_in(surface) == pytest.approx(8 * 13 - 8 * 5 / 4, rel=ROUNDING)


def test_trim_ends_square_where_a_mitre_would_run_far() -> None:
    """Of two edges nearly in line, one trimmed and one not, the trimmed one's band ends square.

    The slope from (150, 200) to (50, 100) is bent a little in the middle, so that its upper half belongs to
    the top and its lower half to the left. Trim of 1 at the left hides 1 times the left wall and the lower
    half; a mitre would add a spike of about 100 by 1 inside the upper half.
    """
    corners = outline((0, 0), (200, 0), (200, 200), (150, 200), (100, 150.5), (50, 100), (0, 100))
    plain = wall(100, 50, outline=corners)
    trimmed = wall(100, 50, outline=corners, trim=EdgeTrim(left=nm(1)))
    hidden = must_sq_in(plain) - must_sq_in(trimmed)
    assert hidden == pytest.approx(100 + (50**2 + 50.5**2) ** 0.5, rel=ROUNDING)


def test_a_corner_given_twice_changes_nothing() -> None:
    """An outline that names a corner twice in a row encloses what it did."""
    corners = outline((0, 0), (100, 0), (100, 0), (100, 50), (0, 50), (0, 0))
    assert may_sq_in(wall(100, 50, outline=corners), 0.25) == 99.5 * 49.5


def test_a_corner_on_a_straight_edge_changes_nothing() -> None:
    """Neither does one that stands on an edge, where the bands on both sides lie in line."""
    corners = outline((0, 0), (40, 0), (100, 0), (100, 50), (0, 50), (0, 20))
    assert may_sq_in(wall(100, 50, outline=corners), 0.25) == 99.5 * 49.5


def test_what_must_be_covered_may_be_covered() -> None:
    """Under a slope with trim and round an opening nothing must be covered that may not."""
    surface = wall(
        100,
        50,
        outline=outline((0, 0), (100, 0), (100, 20), (40, 50), (0, 31)),
        openings=(opening("door", 50, 0, 60, 25, trim=1),),
        trim=EdgeTrim(top=nm(2), left=nm(0.1)),
    )
    assert must_cover(surface, Rules()).difference(may_cover(surface, Rules())).area < 1


def test_an_outline_that_crosses_itself_is_judged_all_the_same() -> None:
    """A slip in the outline that makes it cross itself is no reason to break down."""
    surface = wall(100, 50, outline=outline((0, 0), (100, 0), (100, 50), (20, -0.0), (0, 50)))
    work = job(surface, [board("A", 60, 6)])
    assert check_layout(work, Layout(job_name="village hall", surfaces=()))
    assert may_cover(surface, Rules()).area > 0

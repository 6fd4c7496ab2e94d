"""Which sides and openings trim covers, where it is too narrow, and where there is none."""

from dataclasses import replace

import pytest

from builders import course, nm, opening, outline, piece, rectangle, surface_layout, with_piece
from plankwright.model import Edge, EdgeTrim, Job, Layout, Rectangle, Surface
from plankwright.trade.edges.facts import TRIM_OVERLAP
from plankwright.workshop.advice.fit_edges import Edges, edges_leaf, fit_edges
from plankwright.workshop.advice.judge_moisture import judge_moisture
from trade_jobs import tongued_job, tongued_layout, tongued_wall

ALL_ROUND = EdgeTrim(bottom=nm(1), top=nm(1), left=nm(1), right=nm(1))


def fitted(surface: Surface, gap: float = 0.25) -> tuple[Edges, str, str]:
    """Give what trim covers on a surface, the headline of it, and all else that is said."""
    made = tongued_job(surface)
    laid = tongued_layout(made)
    made = replace(made, rules=replace(made.rules, expansion_gap_nm=nm(gap)))
    edges = fit_edges(made, laid)
    leaf = edges_leaf(made, edges)
    return edges, leaf.headline.text, " ".join(said.text for part in leaf.parts for said in part.said)


def test_trim_all_round_covers_every_gap() -> None:
    """An inch over a gap of a quarter, on all four sides."""
    edges, headline, text = fitted(tongued_wall(trim=ALL_ROUND))
    assert [side.edge for side in edges.sides] == list(Edge)
    assert edges.uncovered == edges.untrimmed == ()
    assert headline == "One box extender; the trim covers every gap."
    assert "No trim was entered" not in text


@pytest.mark.parametrize(
    ("trim", "places", "along"),
    [
        (
            EdgeTrim(),
            "four places",
            "the bottom of wall, the top of wall, the left of wall and the right of wall",
        ),
        (replace(ALL_ROUND, left=0, right=0), "two places", "the left of wall and the right of wall"),
        (replace(ALL_ROUND, top=0), "one place", "the top of wall"),
    ],
)
def test_sides_without_trim_are_told(trim: EdgeTrim, places: str, along: str) -> None:
    """Every one of them by name, and in the headline: the trim does not cover every gap."""
    edges, headline, text = fitted(tongued_wall(trim=trim))
    assert edges.uncovered == ()
    assert headline == f"One box extender; the gap shows at {places} without trim."
    assert f"No trim was entered along {along}: the gap will show there." in text


def test_without_a_gap_nothing_has_to_be_covered() -> None:
    """Nothing is missing, and there is nothing to praise either."""
    edges, headline, text = fitted(tongued_wall(), gap=0)
    assert edges.untrimmed == ()
    assert headline == "One box extender; no gap is left open."
    assert "No trim was entered" not in text


def test_narrow_trim_and_none_are_told_apart() -> None:
    """Both stand in the headline."""
    edges, headline, text = fitted(tongued_wall(trim=replace(ALL_ROUND, bottom=nm(0.25), right=0)))
    assert [len(edges.uncovered), len(edges.untrimmed)] == [1, 1]
    assert headline.endswith("trim is too narrow at one place and the gap shows at one place without trim.")
    assert "Too narrow: the bottom of wall." in text
    assert "along the right of wall" in text


def test_an_opening_without_casing_is_told() -> None:
    """As a side is, in the headline, the sentences and the table; casing that is wide enough is not."""
    doors = (opening("door", 30, 0, 40, 18), opening("hatch", 44, 6, 50, 12, trim=1))
    made = tongued_job(tongued_wall(trim=ALL_ROUND, openings=doors))
    edges = fit_edges(made, tongued_layout(made))
    leaf = edges_leaf(made, edges)
    assert len(edges.untrimmed) == 1
    assert "the gap shows at one place without trim" in leaf.headline.text
    assert TRIM_OVERLAP in leaf.headline.sources
    part = leaf.parts[1]
    assert "No casing was entered around door: the gap will show there." in part.said[1].text
    assert part.grid is not None
    assert [row[-1] for row in part.grid.rows] == ["no trim, the gap shows", "covered"]


def test_a_gable_has_no_side_that_its_outline_has_not() -> None:
    """Slopes that face up most are the top; a flat triangle has neither a left nor a right side."""
    triangle = tongued_wall(trim=EdgeTrim(top=nm(1)), outline=outline((0, 0), (64, 0), (32, 18.5)))
    edges, _, text = fitted(triangle)
    assert [side.edge for side in edges.sides] == [Edge.BOTTOM, Edge.TOP]
    assert "along the bottom of wall:" in text


def test_edges_draw_back_by_the_course_that_opens_most() -> None:
    """The wet board draws back farthest, though the dry ones swing farther between the seasons."""
    made = tongued_job(tongued_wall(trim=ALL_ROUND))
    dry, wet, other = made.boards
    made = replace(made, boards=(replace(dry, moisture_pct=4.0), wet, replace(other, moisture_pct=4.0)))
    laid = tongued_layout(made)
    (movement,) = judge_moisture(made, laid).movements
    bottom = fit_edges(made, laid).sides[0]
    assert movement.opens.board_id == "T2"
    assert bottom.cover.shrinks_nm == round(movement.opens.most_nm) > nm(0.1)


def covering(made: Job, laid: Layout) -> tuple[Edges, str, str]:
    """Give what trim covers of a layout, the headline of it, and all else that is said."""
    edges = fit_edges(made, laid)
    leaf = edges_leaf(made, edges)
    return edges, leaf.headline.text, " ".join(said.text for part in leaf.parts for said in part.said)


def placed(laid: Layout, which: str, place: Rectangle) -> Layout:
    """Give a layout of one surface with a piece in another place."""
    return replace(laid, surfaces=(with_piece(laid.surfaces[0], which, place=place),))


def test_a_piece_that_ends_at_the_inner_edge_of_the_trim_is_found() -> None:
    """The layout may end anywhere under an inch of trim; here the middle board ends right where it begins."""
    made = tongued_job(tongued_wall(trim=ALL_ROUND))
    laid = placed(tongued_layout(made), "2a", rectangle(0.25, 6.25, 63, 12.25))
    edges, headline, text = covering(made, laid)
    left, right = edges.sides[2:]
    assert (right.edge, right.cover.widest_nm, right.short) == (Edge.RIGHT, nm(1), ("2a",))
    assert right.cover.overlap_nm == -right.cover.shrinks_nm < 0
    assert (left.cover.widest_nm, left.short) == (nm(0.25), ())
    assert headline == "One box extender; boards end too soon under the trim at one place."
    assert 'Least overlap at the right of wall: -0.03 in at piece 2a. Take trim of 1-5/16" or wider' in text
    grid = edges_leaf(made, edges).parts[2].grid
    assert grid is not None
    assert grid.rows[3][2] == '1"'
    assert grid.rows[3][-1] == "too little at 2a"


def test_every_piece_that_ends_too_soon_is_named_the_worst_first() -> None:
    """One by half an inch and one by five eighths; the third is covered by half."""
    made = tongued_job(tongued_wall(trim=replace(ALL_ROUND, left=nm(0.75))))
    laid = placed(tongued_layout(made), "1a", rectangle(0.5, 0.25, 63.75, 6.25))
    laid = placed(laid, "3a", rectangle(0.625, 12.25, 63.75, 18.25))
    edges, _, text = covering(made, laid)
    assert edges.sides[2].short == ("3a", "1a")
    assert 'at piece 3a, and less than 1/4" at 1a as well.' in text
    leaf = edges_leaf(made, edges)
    assert leaf.parts[2].grid is not None
    assert leaf.parts[2].grid.rows[2][-1] == "too little at 3a and 1 more"


def test_a_starter_that_hangs_too_high_under_the_base() -> None:
    """Courses draw back from trim along them by what the liveliest shrinks."""
    made = tongued_job(tongued_wall(trim=ALL_ROUND))
    laid = placed(tongued_layout(made), "1a", rectangle(0.25, 0.75, 63.75, 6.25))
    edges, _, _ = covering(made, laid)
    bottom = edges.sides[0]
    assert (bottom.cover.widest_nm, bottom.short) == (nm(0.75), ("1a",))
    assert bottom.cover.overlap_nm == nm(0.25) - bottom.cover.shrinks_nm


def test_casing_is_judged_by_the_pieces_around_its_opening() -> None:
    """A window of which the lower board ends 3/4 in below, under an inch of casing."""
    window = opening("window", 24, 6, 40, 12.25, trim=1)
    made = tongued_job(tongued_wall(trim=ALL_ROUND, openings=(window,)))
    surface = made.surfaces[0]
    rows = (
        course(1, (0.25, 5.25), piece(surface, "1a T1", (0.25, 63.75), (0.25, 5.25))),
        course(
            2,
            (5.25, 12.25),
            piece(surface, "2a T2", (0.25, 23.75), (5.25, 12.25)),
            piece(surface, "2b T2", (40.25, 63.75), (5.25, 12.25)),
        ),
        course(3, (12.25, 18.25), piece(surface, "3a T3", (0.25, 63.75), (12.25, 18.25))),
    )
    laid = replace(tongued_layout(made), surfaces=(surface_layout(surface, *rows),))
    edges, _, text = covering(made, laid)
    (jamb,) = edges.jambs
    assert (jamb.cover.widest_nm, jamb.short) == (nm(0.75), ("1a",))
    assert "Least overlap at the casing of window:" in text
    assert not edges.sides[0].short


@pytest.mark.parametrize("reach", [33, 36])
def test_slopes_are_measured_square_to_themselves(reach: float) -> None:
    """The blank of the second course ends at 33 in, or reaches past a slope of 45 degrees.

    Its lower corner (33, 14) is (50 - 33 - 14) / sqrt(2) in away from the line x + y = 50.
    """
    gable = tongued_wall(
        trim=EdgeTrim(top=nm(4), left=nm(1), right=nm(1)),
        outline=outline((0, 0), (40, 0), (40, 10), (20, 30), (0, 10)),
        cut_outs=(),
    )
    made = tongued_job(gable)
    blanks = ((1, "T1", 8, 41), (2, "T2", 14, reach), (3, "T3", 20, 31), (4, "T1", 26, 25))
    rows = [
        course(number, (low, low + 6), piece(gable, f"{number}a {board}", (0.25, right), (low, low + 6)))
        for number, board, low, right in blanks
    ]
    laid = replace(tongued_layout(made), surfaces=(surface_layout(gable, *rows),))
    top = fit_edges(made, laid).sides[1]
    assert top.edge is Edge.TOP
    expected = 3 / 2**0.5 if reach == 33 else 0.25  # of the rules
    assert top.cover.widest_nm == pytest.approx(nm(expected), abs=2_000)
    assert not top.short


def test_what_is_bare_is_not_judged() -> None:
    """Neither where a blank beside the last board is missing, nor where the whole last course is."""
    made = tongued_job(tongued_wall(trim=ALL_ROUND))
    (part,) = tongued_layout(made).surfaces
    shorter = with_piece(part, "3a", place=rectangle(0.25, 12.25, 40, 18.25))
    bare = (rectangle(40, 12.25, 63.75, 18.25),)
    laid = replace(tongued_layout(made), surfaces=(replace(shorter, bare=bare),))
    edges, headline, _ = covering(made, laid)
    assert [side.cover.widest_nm for side in edges.sides] == [nm(0.25)] * 4
    assert headline == "One box extender; the trim covers every gap."

    bare = (rectangle(0.25, 12.25, 63.75, 18.25),)
    laid = replace(laid, surfaces=(replace(part, courses=part.courses[:2], bare=bare),))
    edges, _, _ = covering(made, laid)
    top = edges.sides[1]
    assert (top.cover.widest_nm, top.cover.overlap_nm, top.short) == (None, None, ())
    grid = edges_leaf(made, edges).parts[2].grid
    assert grid is not None
    assert grid.rows[1][-1] == "no board ends there"


def test_what_is_bare_under_a_slope_is_not_judged() -> None:
    """Beside the second course a blank is missing: what shows of its end shows there, trim or none."""
    gable = tongued_wall(
        trim=EdgeTrim(top=nm(4), left=nm(1), right=nm(1)),
        outline=outline((0, 0), (40, 0), (40, 10), (20, 30), (0, 10)),
        cut_outs=(),
    )
    made = tongued_job(gable)
    blanks = ((1, "T1", 8, 41), (2, "T2", 14, 30), (3, "T3", 20, 31), (4, "T1", 26, 25))
    rows = [
        course(number, (low, low + 6), piece(gable, f"{number}a {board}", (0.25, right), (low, low + 6)))
        for number, board, low, right in blanks
    ]
    whole = surface_layout(gable, *rows, bare=[rectangle(30, 14, 36, 20)])
    top = fit_edges(made, replace(tongued_layout(made), surfaces=(whole,))).sides[1]
    assert top.cover.widest_nm == nm(0.25)


def test_one_does_not_measure_through_a_joint() -> None:
    """A joint of 1/32 in, under trim wider than the last course: the one below it ends 6-1/4 in off."""
    made = tongued_job(tongued_wall(trim=replace(ALL_ROUND, top=nm(7))))
    surface = made.surfaces[0]
    (part,) = tongued_layout(made).surfaces
    halves = (
        piece(surface, "3a T3", (0.25, 32), (12.25, 18.25)),
        piece(surface, "3b T3", (32.03125, 63.75), (12.25, 18.25)),
    )
    last = course(3, (12.25, 18.25), *halves)
    laid = replace(tongued_layout(made), surfaces=(replace(part, courses=(*part.courses[:2], last)),))
    assert fit_edges(made, laid).sides[1].cover.widest_nm == nm(0.25)


def test_a_seam_that_hangs_open_is_no_gap_at_the_side() -> None:
    """One sees far into the wall between two courses; the trim has nothing to do with that."""
    made = tongued_job(tongued_wall(trim=ALL_ROUND))
    laid = placed(tongued_layout(made), "2a", rectangle(0.25, 6.5, 63.75, 12.25))
    assert [side.short for side in fit_edges(made, laid).sides] == [()] * 4


def test_boards_that_end_under_trim_without_a_gap_of_the_rules_leave_one() -> None:
    """Nothing is to stay open by the rules, and half an inch is."""
    made = tongued_job(tongued_wall(trim=replace(ALL_ROUND, left=nm(1), bottom=nm(1))))
    made = replace(made, rules=replace(made.rules, expansion_gap_nm=0))
    laid = placed(tongued_layout(made), "2a", rectangle(0.5, 6.25, 63.75, 12.25))
    edges, headline, _ = covering(made, laid)
    assert edges.sides[2].cover.widest_nm == nm(0.5)
    assert headline == "One box extender; the trim covers every gap."

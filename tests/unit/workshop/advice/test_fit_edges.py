"""Which sides and openings trim covers, where it is too narrow, and where there is none."""

from dataclasses import replace

import pytest

from builders import nm, opening, outline
from plankwright.model import Edge, EdgeTrim, Surface
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

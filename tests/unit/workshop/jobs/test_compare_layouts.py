"""Two layouts side by side."""

from dataclasses import replace

from builders import course, layout, nm, piece, rectangle, surface_layout
from in_progress import begun_job, begun_layout
from plankwright.check import recount
from plankwright.model import NOTHING_DONE, Layout
from plankwright.workshop.jobs.compare_layouts import (
    differences,
    figure_rows,
    figures_of,
    tell_figures,
    tell_made,
)
from plankwright.workshop.jobs.kept import KeptLayout, Made
from two_walls import walls_job, walls_layout
from village import WALL, small_job, small_layout


def lower_only() -> Layout:
    """Give a layout that leaves the upper course bare."""
    laid = surface_layout(
        WALL, course(1, (0, 5), piece(WALL, "1a C", (0, 96), (0, 5))), bare=[rectangle(0, 5, 96, 10)]
    )
    return layout(replace(laid, score=recount(small_job(), laid)))


def test_the_figures_of_all_surfaces_are_added_up() -> None:
    """Wood of a board that is cut for two of them counts once."""
    found = figures_of(walls_job(), walls_layout())
    apart = sum(laid.score.wood_spent_nm2 for laid in walls_layout().surfaces)
    assert found.pieces == len(walls_layout().pieces)
    assert found.boards == len({piece.board_id for piece in walls_layout().pieces})
    assert 0 < found.wood_nm2 <= apart


def test_what_a_layout_comes_to_is_one_sentence() -> None:
    """What is nothing is said so."""
    told = tell_figures(small_job(), small_layout())
    assert told.startswith("Nothing left bare, no joints in sight, ")
    assert told.endswith("two pieces from two boards.")


def test_the_less_of_a_figure_is_the_better() -> None:
    """Where both are the same neither is."""
    rows = {row.what: row for row in figure_rows(small_job(), lower_only(), small_layout())}
    assert rows["Left bare"].better == 1
    assert rows["Left bare"].words == ("3.3 sq ft", "nothing")
    assert rows["Wood spent"].better == 0
    assert rows["Joints in sight"].better is None


def test_pieces_that_are_different_are_told() -> None:
    """From the one to the other."""
    (first, *_) = differences(small_job(), lower_only(), small_layout(), NOTHING_DONE)
    assert any("1a is cut from board A instead of C" in item for item in first.items)
    assert any("2a is new" in item for item in first.items)
    (same,) = differences(begun_job(), begun_layout(), begun_layout(), NOTHING_DONE)
    assert not same.items


def test_layouts_of_surfaces_that_are_gone_are_not_compared() -> None:
    """Nobody can tell where their pieces are."""
    gone = layout(replace(small_layout().surfaces[0], surface_id="gone"))
    assert differences(small_job(), small_layout(), gone, NOTHING_DONE) == ()


def test_how_a_layout_came_about_is_told() -> None:
    """With its effort and its seed, where it has any."""
    laid = replace(small_layout(), effort="steady", seed=4)
    assert tell_made(KeptLayout(layout=laid, made=Made.SEARCHED)) == "laid out from scratch, steady, seed 4"
    assert (
        tell_made(KeptLayout(layout=replace(laid, effort="", seed=0), made=Made.BROUGHT)) == "brought along"
    )
    assert all(tell_made(KeptLayout(layout=laid, made=made)) for made in Made)


def test_rounding_is_no_wood() -> None:
    """A bare strip that no tape shows is nothing."""
    (laid,) = small_layout().surfaces
    dust = layout(replace(laid, score=replace(laid.score, bare_nm2=nm(0.001) * nm(0.001))))
    assert tell_figures(small_job(), dust).startswith("Nothing left bare")

"""A document read back into a plan is written again as the same document."""

from dataclasses import replace
from pathlib import Path

import pytest

from builders import board, course, job, nm, opening, piece, rectangle, surface_layout, wall
from plankwright.files import read_job, read_layout
from plankwright.layout import Effort, Watch, lay_out
from plankwright.layout.capacity import capacity_of
from plankwright.layout.reading import read_surface
from plankwright.layout.strips import Strips
from plankwright.layout.writing import write_surface
from plankwright.model import Job, Rules, SurfaceLayout
from porch import porch_job, porch_layout, short_porch_layout

ROOT = Path(__file__).parents[3]
AT_ONCE = Watch(stopped=lambda: True)
WALL = wall(96, 12)
PLAIN = Rules(expansion_gap_nm=0)


def again(work: Job, laid: SurfaceLayout) -> SurfaceLayout:
    """Read a layout back and write it again."""
    strips = Strips(work.surface(laid.surface_id), work.rules, capacity_of(work))
    return write_surface(work, strips, read_surface(work, strips, laid), laid.bound)


def test_the_example_is_written_again_as_it_was() -> None:
    """A gable, a door, sockets, fixtures: planted, and laid out by the search."""
    example = read_job(ROOT / "examples" / "village-hall").job
    (planted,) = read_layout(ROOT / "tests" / "unit" / "files" / "village_hall_planted.json").surfaces
    once = again(example, planted)
    assert [row.pieces for row in again(example, once).courses] == [row.pieces for row in once.courses]
    (found,) = lay_out(example, effort=Effort(name="at once", seconds=0.1), watch=AT_ONCE).layout.surfaces
    assert found.bare
    assert again(example, found).courses == found.courses
    assert again(example, found).score == found.score


@pytest.mark.parametrize("layout", [porch_layout(), short_porch_layout()])
def test_a_layout_made_by_hand_keeps_its_pieces(layout: object) -> None:
    """Where they hang, what they are cut from, which face shows; the bare course is bare again."""
    (laid,) = layout.surfaces  # type: ignore[attr-defined]
    written = again(porch_job(), laid)
    for before, after in zip(laid.pieces, written.pieces, strict=True):
        assert (before.board_id, before.place, before.face) == (after.board_id, after.place, after.face)
        assert (before.along_from_nm, before.across_to_nm) == (after.along_from_nm, after.across_to_nm)
    assert written.score.bare_nm2 == laid.score.bare_nm2


def test_a_turned_piece_stays_turned() -> None:
    """The search turns none, but somebody may."""
    turned = surface_layout(WALL, course(1, (0, 6), piece(WALL, "1a A", (0, 96), (0, 6), turned=True)))
    assert again(job(WALL, [board("A", 97, 6.25)], PLAIN), turned).pieces[0].turned


def test_what_no_piece_covers_is_bare() -> None:
    """Within a course, and where there is none but the document says so."""
    work = job(WALL, [board("A", 60, 6.25)], PLAIN)
    strips = Strips(WALL, PLAIN)
    short = surface_layout(
        WALL, course(1, (0, 6), piece(WALL, "1a A", (40, 96), (0, 6))), bare=[rectangle(0, 6, 96, 12)]
    )
    plan = read_surface(work, strips, short)
    assert [(row.low, row.high) for row in plan] == [(0, nm(6)), (nm(6), nm(12))]
    assert [row.bare for row in plan] == [((0, nm(40)),), ((0, nm(96)),)]


def test_bare_courses_under_a_slope_end_where_the_outline_does() -> None:
    """The stretch beside the slope is told less far up than the one at the peak; both are of one course."""
    corners = (0, 0), (96, 0), (96, 8), (0, 12)
    surface = wall(96, 12, outline=tuple((nm(right), nm(up)) for right, up in corners))
    laid = surface_layout(
        surface,
        course(1, (0, 6), piece(surface, "1a A", (0, 96), (0, 6))),
        bare=[rectangle(0, 6, 40, 12), rectangle(40, 6, 96, 10.3)],
    )
    _, peak = read_surface(job(surface, [board("A", 97, 6.25)], PLAIN), Strips(surface, PLAIN), laid)
    assert (peak.low, peak.high) == (nm(6), nm(12))


def test_what_is_bare_of_a_course_may_reach_beyond_its_pieces() -> None:
    """Over a rising floor a piece is cut no wider than what hangs; beside it all is bare from below."""
    corners = (0, 0), (48, 0), (96, 4), (96, 12), (0, 12)
    surface = wall(96, 12, outline=tuple((nm(right), nm(up)) for right, up in corners))
    laid = surface_layout(
        surface,
        course(1, (2, 6), piece(surface, "1a A", (72, 96), (2, 6))),
        course(2, (6, 12), piece(surface, "2a B", (0, 96), (6, 12))),
        bare=[rectangle(0, 0, 72, 6)],
    )
    below, *_ = read_surface(job(surface, [board("B", 97, 6.25)], PLAIN), Strips(surface, PLAIN), laid)
    assert (below.low, below.high) == (0, nm(2))
    assert below.bare == ((0, nm(72)),)


def test_openings_are_not_bare() -> None:
    """A course beside a door has two runs."""
    surface = wall(96, 12, openings=(opening("door", 30, 0, 60, 6),))
    work = job(surface, [board("A", 60, 6.25), board("B", 60, 6.25)], PLAIN)
    laid = surface_layout(
        surface,
        course(1, (0, 6), piece(surface, "1a A", (0, 30), (0, 6)), piece(surface, "1b B", (60, 96), (0, 6))),
    )
    (row,) = read_surface(work, Strips(surface, PLAIN), laid)
    assert row.bare == ()


def test_rounding_of_an_outline_is_taken_back() -> None:
    """A piece that stops a hair short of its run fills it; so it lies on its board, too."""
    work = job(WALL, [board("A", 97, 6.25)], PLAIN)
    hair = nm(96) - 300
    cut = piece(WALL, "1a A", (0, 96), (0, 6))
    short = replace(cut, place=replace(cut.place, right=hair), along_to_nm=cut.along_from_nm + hair)
    (row,) = read_surface(work, Strips(WALL, PLAIN), surface_layout(WALL, course(1, (0, 6), short)))
    assert (row.pieces[0].start, row.pieces[0].end) == (0, nm(96))
    assert row.pieces[0].stick.length == nm(96)


def test_pieces_of_boards_that_are_not_in_the_tally_are_left_out() -> None:
    """Somebody took the row out."""
    work = job(WALL, [board("B", 97, 6.25)], PLAIN)
    laid = surface_layout(WALL, course(1, (0, 6), piece(WALL, "1a A", (0, 96), (0, 6))))
    (row,) = read_surface(work, Strips(WALL, PLAIN), laid)
    assert row.pieces == ()
    assert row.bare == ((0, nm(96)),)

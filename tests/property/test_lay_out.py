"""Whatever the job, what the search returns is right, or says what is missing.

Each example is a search of its own, so there are few of each here; `pytest --hypothesis-profile=fresh`
draws others.
"""

from importlib import import_module
from itertools import combinations
from xml.etree import ElementTree as ET

import pymupdf
import pytest
from hypothesis import given, settings

from plankwright.check import check_layout, faults
from plankwright.files.layout_json import layout_from_json, layout_to_json
from plankwright.layout import Effort, Watch, lay_out
from plankwright.layout.bounds import bound
from plankwright.layout.capacity import capacity_of
from plankwright.layout.guillotine import Patch, whole_board
from plankwright.layout.reading import read_surface
from plankwright.layout.sawing import saw_boards
from plankwright.layout.strips import Strips
from plankwright.layout.writing import write_surface
from plankwright.measure import MILLIMETRE
from plankwright.model import BoardCuts, Job, Layout, Offcut, Piece
from plankwright.workshop.draw_map import draw_map
from plankwright.workshop.print_sheets import print_sheets
from property.strategies import jobs

MOMENT = Effort(name="moment", seconds=0.3)
AT_ONCE = Watch(stopped=lambda: True)
HAIR = MILLIMETRE // 1000
"""Below a micrometre nothing is wood. [nm]"""


def first_layout(job: Job) -> Layout:
    """Give the layout of a search that is stopped at once."""
    return lay_out(job, effort=MOMENT, watch=AT_ONCE).layout


@settings(max_examples=25)
@given(jobs())
def test_no_layout_breaks_a_rule(job: Job) -> None:
    """The checker finds no error, in the layout nor in the one made with the boards that it asks for."""
    result = lay_out(job, effort=MOMENT)
    assert not faults(check_layout(job, result.layout))
    if result.closing is not None:
        more, closed = result.closing
        assert not faults(check_layout(more, closed))
        assert closed.covers_everything
        assert sum(wanted.count for wanted in result.wanted) == len(more.boards) - len(job.boards)


@settings(max_examples=20)
@given(jobs())
def test_a_search_stopped_at_once_breaks_no_rule(job: Job) -> None:
    """The first layout is a layout."""
    result = lay_out(job, effort=MOMENT, watch=AT_ONCE)
    assert result.stopped
    assert not faults(check_layout(job, result.layout))


@settings(max_examples=20)
@given(jobs())
def test_a_layout_read_back_is_written_again_as_it_was(job: Job) -> None:
    """Piece by piece, and as much of it bare, however the bare part is told."""
    for laid in first_layout(job).surfaces:
        strips = Strips(job.surface(laid.surface_id), job.rules, capacity_of(job))
        again = write_surface(job, strips, read_surface(job, strips, laid), laid.bound)
        assert again.courses == laid.courses
        assert again.score == laid.score
        assert (
            not faults(check_layout(job, Layout(job_name=job.name, surfaces=(again,))))
            or len(job.surfaces) > 1
        )


@settings(max_examples=3)
@given(jobs())
def test_the_same_job_effort_and_seed_give_the_same_layout(job: Job) -> None:
    """To the byte, as long as the clock, which stops a search that is late, has no say."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(import_module("plankwright.layout.one_surface"), "_LATE", 1e9)
        one, other = (layout_to_json(lay_out(job, effort=MOMENT, seed=3).layout) for _ in range(2))
    assert one == other


@settings(max_examples=10)
@given(jobs(surfaces=1))
def test_no_bound_claims_more_than_a_layout_shows(job: Job) -> None:
    """What is worked out before the search is no higher than what the search finds."""
    result = lay_out(job, effort=MOMENT)
    (laid,) = result.layout.surfaces
    least = bound(
        Strips(job.surfaces[0], job.rules),
        [board for board in job.boards if board.id not in result.held_back],
        job.rules,
    )
    assert least.bare_nm2 <= laid.score.bare_nm2
    if not laid.bare:
        assert least.joints_in_sight <= laid.score.joints_in_sight
        assert least.wood_spent_nm2 <= laid.score.wood_spent_nm2
    assert laid.bound.bare_nm2 <= laid.score.bare_nm2
    assert laid.bound.joints_in_sight <= laid.score.joints_in_sight
    assert laid.bound.wood_spent_nm2 <= laid.score.wood_spent_nm2


@settings(max_examples=10)
@given(jobs())
def test_a_layout_written_down_reads_back_the_same(job: Job) -> None:
    """To the nanometre."""
    layout = first_layout(job)
    assert layout_from_json(layout_to_json(layout)) == layout


@settings(max_examples=20)
@given(jobs())
def test_the_saw_makes_pieces_and_offcuts_out_of_the_board(job: Job) -> None:
    """They lie apart from each other on their board; what is left beside them is kerf and scrap."""
    layout = first_layout(job)
    all_cuts = saw_boards(job, layout)
    assert {cuts.board_id for cuts in all_cuts} == {piece.board_id for piece in layout.pieces}
    assert sum(len(cuts.piece_labels) for cuts in all_cuts) == len(layout.pieces)
    for cuts in all_cuts:
        board, regions = job.board(cuts.board_id), regions_of(layout, cuts)
        whole = whole_board(board)
        assert all(whole.holds(region) for region in regions)
        assert all(apart(one, other) for one, other in combinations(regions, 2))
        assert sum(map(area, regions)) <= board.face_area_nm2


@settings(max_examples=10)
@given(jobs())
def test_every_layout_can_be_drawn(job: Job) -> None:
    """Each surface is a whole SVG drawing with every piece named in it."""
    layout = first_layout(job)
    for laid in layout.surfaces:
        drawing = ET.fromstring(draw_map(job, laid))  # noqa: S314 - our own drawing
        words = " ".join(drawing.itertext())
        assert all(piece.board_id in words for piece in laid.pieces)


@settings(max_examples=6)
@given(jobs())
def test_every_layout_can_be_printed(job: Job) -> None:
    """The sheets open as a PDF, and the first names the job."""
    with pymupdf.open(stream=print_sheets(job, first_layout(job))) as sheets:
        assert job.name in sheets[0].get_text()


def regions_of(layout: Layout, cuts: BoardCuts) -> list[Patch]:
    """Give where the pieces and the offcuts of a board lie on it."""
    parts: list[Piece | Offcut] = [piece for piece in layout.pieces if piece.board_id == cuts.board_id]
    parts += cuts.offcuts
    return [
        Patch(part.along_from_nm, part.along_to_nm, part.across_from_nm, part.across_to_nm) for part in parts
    ]


def apart(one: Patch, other: Patch) -> bool:
    """Whether two rectangles share nothing."""
    common = one.common(other)
    return (
        common is None
        or min(common.along_to - common.along_from, common.across_to - common.across_from) <= HAIR
    )


def area(patch: Patch) -> int:
    """Give the area of a rectangle. [nm²]"""
    return (patch.along_to - patch.along_from) * (patch.across_to - patch.across_from)

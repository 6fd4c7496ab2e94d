"""Whatever the job and its layout: what the trade says of them holds, and all of it can be printed."""

import io
import json
import math
from collections.abc import Iterator
from dataclasses import replace

import pymupdf
import shapely
from ezdxf.filemanagement import read
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry.base import BaseGeometry

from plankwright.cli.advice import leaf_as_json, values_as_json
from plankwright.layout import Effort, Watch, lay_out
from plankwright.layout.ground import HAIR
from plankwright.layout.hanging import grown
from plankwright.layout.regions import (
    along_and_across,
    as_polygon,
    must_region,
    place_on_surface,
    side_of_edge,
)
from plankwright.measure import INCH
from plankwright.model import (
    Air,
    Edge,
    Fastening,
    Flaw,
    Job,
    Layer,
    Lot,
    Paint,
    Point,
    Room,
    Severity,
    Surface,
    Treatment,
)
from plankwright.paper.leaf import Leaf
from plankwright.trade.fasteners.facts import PROTECTED_DEPTH_NM
from plankwright.trade.fasteners.nails import nail_kinds
from plankwright.workshop.advice.fit_edges import edges_leaf, fit_edges
from plankwright.workshop.advice.go_shopping import go_shopping, shopping_leaf
from plankwright.workshop.advice.judge_moisture import judge_moisture
from plankwright.workshop.advice.measure_lumber import measure_lumber
from plankwright.workshop.advice.nail_plan import Driven
from plankwright.workshop.advice.plan_nails import plan_nails
from plankwright.workshop.advice.ready_boards import ready_boards, readying_leaf
from plankwright.workshop.advice.tell_lumber import lumber_leaf
from plankwright.workshop.advice.tell_moisture import moisture_leaf
from plankwright.workshop.advice.tell_nails import nails_leaf
from plankwright.workshop.advice.watch_out import hazards_leaf, watch_out
from plankwright.workshop.draw_map import draw_full_size
from plankwright.workshop.print_sheets import print_sheets
from property.strategies import jobs

MOMENT = Effort(name="moment", seconds=0.3)
AT_ONCE = Watch(stopped=lambda: True)

airs = st.builds(Air, temperature_c=st.floats(-10.0, 40.0), humidity_pct=st.floats(1.0, 99.0))


@st.composite
def known_jobs(draw: st.DrawFn) -> Job:
    """A job of which more or less is known besides."""
    job = draw(jobs())
    species = st.sampled_from(["", "pine", "white oak", "Douglas fir", "what grandfather had"])
    readings = st.none() | st.floats(0.0, 60.0)
    boards = tuple(
        replace(
            board,
            species=draw(species),
            moisture_pct=draw(readings),
            lot=draw(st.sampled_from(["", "hall"])),
        )
        for board in job.boards
    )
    layers = st.lists(
        st.builds(Layer, what=st.sampled_from(["plaster", "furring"]), thickness_nm=st.integers(1, 2 * INCH)),
        max_size=2,
    )
    surfaces = tuple(
        replace(
            surface,
            between=tuple(draw(layers)),
            framing=replace(surface.framing, opened=draw(st.booleans())),
        )
        for surface in job.surfaces
    )
    return replace(
        job,
        boards=boards,
        surfaces=surfaces,
        room=draw(st.none() | st.builds(Room, dry=airs, damp=airs, now=st.none() | airs)),
        house_built=draw(st.none() | st.integers(1800, 2020)),
        lots=draw(
            st.sampled_from([(), (Lot(name="hall", built=1894, paint=Paint.LEAD, moisture_pct=(5.0, 20.0)),)])
        ),
        fastening=Fastening(kind=draw(st.none() | st.sampled_from(nail_kinds()))),
    )


@settings(max_examples=25)
@given(known_jobs())
def test_no_nail_goes_where_it_must_not(job: Job) -> None:
    """Never past the depth allowed, never nearer to a keep-out than the rules let it."""
    layout = lay_out(job, effort=MOMENT, watch=AT_ONCE).layout
    plan = plan_nails(job, layout)
    for surface in plan.surfaces:
        allowed = plan.rule.allowed_nm(opened=surface.opened, backing_nm=surface.backing_nm)
        assert allowed <= PROTECTED_DEPTH_NM.value
        barred = [
            as_polygon(grown(keep_out.place, job.rules.nail_clearance_nm))
            for keep_out in job.surface(surface.surface_id).keep_outs
        ]
        for piece in surface.pieces:
            for one in piece.driven:
                assert one.chosen.nail is None or 0 < one.chosen.bite_nm <= one.chosen.deepest_nm <= allowed
                for spot in one.spots:
                    tip = _tip(job.surface(surface.surface_id), one, spot)
                    way = shapely.Point(spot) if tip == spot else shapely.LineString((spot, tip))
                    assert not any(way.relate_pattern(place, "T********") for place in barred)
    counted = [one.count for piece in plan.pieces for one in piece.driven if one.chosen.nail is not None]
    assert sum(one.driven for one in plan.to_buy) == sum(counted)


def _tip(surface: Surface, driven: Driven, spot: Point) -> Point:
    """Give where the tip of a nail lies, seen from the room: at a tongue it leans back by 45°."""
    nail = driven.chosen.nail
    if nail is None or not driven.blind:
        return spot
    along, across = along_and_across(surface, spot)
    return place_on_surface(surface, along, across - math.floor(nail.length_nm * math.sqrt(0.5)))


@settings(max_examples=15)
@given(known_jobs())
def test_every_answer_can_be_told_printed_and_given_as_json(job: Job) -> None:
    """All sentences on screen and paper, and no value that JSON cannot hold."""
    layout = lay_out(job, effort=MOMENT, watch=AT_ONCE).layout
    moisture, readying = judge_moisture(job, layout), ready_boards(job, layout)
    lumber, plan = measure_lumber(job, layout), plan_nails(job, layout)
    edges, items, hazards = fit_edges(job, layout), go_shopping(job, layout), watch_out(job)
    told: tuple[tuple[Leaf, object], ...] = (
        (moisture_leaf(job, moisture), moisture),
        (readying_leaf(job, readying), readying),
        (lumber_leaf(job, lumber), lumber),
        (nails_leaf(job, plan), plan),
        (edges_leaf(job, edges), edges),
        (shopping_leaf(items), items),
        (hazards_leaf(hazards), hazards),
    )
    for leaf, values in told:
        document = json.dumps({**leaf_as_json(leaf), "values": values_as_json(values)}, allow_nan=False)
        assert leaf.headline.text in json.loads(document)["headline"]["text"]
        for part in leaf.told_parts:
            assert part.grid is None or all(len(row) == len(part.grid.columns) for row in part.grid.rows)
    with pymupdf.open(stream=print_sheets(job, layout)) as sheets:
        assert sheets.page_count > len(layout.surfaces) + 4
    for laid in layout.surfaces:
        drawing = read(io.StringIO(draw_full_size(job, laid)))
        audit = drawing.audit()
        assert (audit.errors, audit.fixes) == ([], [])


@settings(max_examples=10)
@given(jobs(), st.sampled_from([one for one in Treatment if one is not Treatment.NONE]))
def test_no_layout_uses_a_treated_board(job: Job, treatment: Treatment) -> None:
    """As soon as a board is known to be treated, nothing of it hangs."""
    first = job.boards[0]
    lost = Flaw(start_nm=0, end_nm=first.length_nm, what="treated", severity=Severity.LOST)
    barred = replace(first, treatment=treatment, flaws=(lost, *first.flaws))
    layout = lay_out(replace(job, boards=(barred, *job.boards[1:])), effort=MOMENT, watch=AT_ONCE).layout
    assert first.id not in {piece.board_id for piece in layout.pieces}


@settings(max_examples=15)
@given(known_jobs())
def test_moisture_and_trim_are_judged_of_all_that_hangs_and_of_nothing_else(job: Job) -> None:
    """Hung boards and spares make up the pile; no seam opens farther than the course that opens most."""
    layout = lay_out(job, effort=MOMENT, watch=AT_ONCE).layout
    moisture, edges = judge_moisture(job, layout), fit_edges(job, layout)
    hung = {piece.board_id for piece in layout.pieces}
    if hung:
        assert hung.isdisjoint(moisture.spares)
        assert hung | set(moisture.spares) == {board.id for board in job.boards}
        assert set(moisture.unmeasured) <= hung
        assert {one.surface_id for one in moisture.movements} == {
            part.surface_id for part in layout.surfaces if part.pieces
        }
    for movement in moisture.movements:
        for seams in (movement.tongues, movement.square):
            assert seams is None or seams.opens_nm <= movement.opens.most_nm
        assert movement.square is None or movement.square.closes_nm <= movement.closes.most_nm
    gap = job.rules.expansion_gap_nm
    for side in edges.sides:
        assert side.cover.untrimmed is (gap > 0 and not getattr(job.surface(side.surface_id).trim, side.edge))


@settings(max_examples=40)
@given(jobs())
def test_boards_reach_as_far_under_the_trim_as_is_told(job: Job) -> None:
    """Beside what is covered, all that the trim hides is covered too, up to the widest gap that is told."""
    layout = lay_out(job, effort=MOMENT, watch=AT_ONCE).layout
    gap, tolerance = job.rules.expansion_gap_nm, job.rules.gap_tolerance_nm
    parts = {part.surface_id: part for part in layout.surfaces}
    for side in fit_edges(job, layout).sides:
        widest, trim = side.cover.widest_nm, side.cover.trim_nm
        assert (side.short != ()) is side.cover.too_little
        if widest is None or not trim:
            continue
        assert gap <= widest <= max(trim, gap) + tolerance + 3 * HAIR
        part, surface = parts[side.surface_id], job.surface(side.surface_id)
        bare = shapely.union_all([as_polygon(place) for place in part.bare])
        covered = shapely.union_all([bare, *(as_polygon(piece.place) for piece in part.pieces)])
        without = replace(surface, trim=replace(surface.trim, **{side.edge.value: 0}))
        open_to_see = must_region(without, job.rules).difference(covered)
        beside = must_region(surface, job.rules).difference(bare)
        for under in _under_trim(surface, side.edge, beside, trim, widest):
            assert under.intersection(open_to_see).buffer(-tolerance / 2 - HAIR).is_empty


def _under_trim(
    surface: Surface, edge: Edge, beside: BaseGeometry, trim_nm: int, widest_nm: int
) -> Iterator[BaseGeometry]:
    """Give what lies under trim past the widest gap, along upright and level edges of a side."""
    inwards = {Edge.LEFT: (1, 0), Edge.RIGHT: (-1, 0), Edge.BOTTOM: (0, 1), Edge.TOP: (0, -1)}[edge]
    corners = surface.outline
    for start, end in zip(corners, (*corners[1:], corners[0]), strict=True):
        if side_of_edge(start, end) is edge and (start[0] == end[0] or start[1] == end[1]):
            line = shapely.LineString(_off(place, inwards, trim_nm + HAIR / 2) for place in (start, end))
            for seen in shapely.get_parts(line.intersection(beside)):
                back = [_off(place, inwards, widest_nm - trim_nm - HAIR / 2) for place in seen.coords]
                yield shapely.MultiPoint([*seen.coords, *back]).envelope


def _off(place: tuple[float, ...], inwards: tuple[int, int], by: float) -> tuple[float, float]:
    return place[0] + by * inwards[0], place[1] + by * inwards[1]

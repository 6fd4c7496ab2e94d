"""Gather what is printed besides maps, cut list and hanging sheets."""

from collections.abc import Iterator, Mapping

from plankwright.measure import TapeStyle, write_inches
from plankwright.model import NOTHING_DONE, Job, Layout, Standing
from plankwright.paper.hanging_sheet import Planned
from plankwright.paper.leaf import Leaf, Part
from plankwright.paper.nailing import NailGroup, PieceNailing
from plankwright.paper.pack import Pack, Section
from plankwright.trade.fasteners.facts import NEAR_END_NM
from plankwright.trade.fasteners.nails import Nail
from plankwright.workshop.advice.fit_edges import Box, Edges, edges_leaf, fit_edges
from plankwright.workshop.advice.go_shopping import go_shopping, shopping_leaf
from plankwright.workshop.advice.judge_moisture import judge_moisture
from plankwright.workshop.advice.measure_lumber import measure_lumber
from plankwright.workshop.advice.nail_plan import Driven, NailPlan, PieceNails, SurfaceNails
from plankwright.workshop.advice.plan_nails import plan_nails
from plankwright.workshop.advice.ready_boards import ready_boards, readying_leaf
from plankwright.workshop.advice.tell_lumber import lumber_leaf
from plankwright.workshop.advice.tell_moisture import moisture_leaf
from plankwright.workshop.advice.tell_nails import nails_leaf, write_bit
from plankwright.workshop.advice.watch_out import hazards_leaf, watch_out
from plankwright.workshop.wording import listed


def fill_pack(
    job: Job, layout: Layout, wanted: tuple[str, ...] = (), standing: Standing = NOTHING_DONE
) -> Pack:
    """Gather what is printed besides for a layout.

    Parameters
    ----------
    job
        The job.
    layout
        A layout of it that was checked.
    wanted
        Boards that are missing, each in words.
    standing
        How far the job has come.
    """
    plan, edges = plan_nails(job, layout, standing), fit_edges(job, layout)
    moisture = moisture_leaf(job, judge_moisture(job, layout, standing))
    return Pack(
        before=(
            Section(
                title="Before you cut",
                leaves=(_short(moisture), readying_leaf(job, ready_boards(job, layout, standing))),
            ),
        ),
        at_the_wall=(
            Section(
                title="Before you hang",
                leaves=(_without_pieces(nails_leaf(job, plan)), edges_leaf(job, edges)),
            ),
        ),
        after=(
            Section(
                title="To buy, and what it is worth",
                leaves=(
                    shopping_leaf(go_shopping(job, layout, wanted, standing)),
                    lumber_leaf(job, measure_lumber(job, layout)),
                ),
            ),
            Section(title="What can hurt you", leaves=(hazards_leaf(watch_out(job)),)),
        ),
        planned=_planned_for_all(job, plan, edges),
        mind=tuple(_mind(moisture, plan)),
    )


def plan_hanging(job: Job, layout: Layout, standing: Standing = NOTHING_DONE) -> Mapping[str, Planned]:
    """Give by surface what was planned for hanging it besides: nails and boxes; parameters of `fill_pack`."""
    plan, edges = plan_nails(job, layout, standing), fit_edges(job, layout)
    return _planned_for_all(job, plan, edges)


def _planned_for_all(job: Job, plan: NailPlan, edges: Edges) -> Mapping[str, Planned]:
    return {surface.surface_id: _planned(job, surface, plan, edges) for surface in plan.surfaces}


def _mind(moisture: Leaf, plan: NailPlan) -> Iterator[str]:
    """Say whether the boards are dry, and where they hang overhead by nails that nobody could reckon with."""
    yield f"Are the boards dry? {moisture.headline.text}"
    unchecked = [surface.surface_id for surface in plan.surfaces if surface.unchecked]
    if unchecked:
        yield (
            f"What the nails hold overhead was not checked: nobody told how thick the backing of "
            f"{listed(unchecked)} is. Give its thickness under [surface.framing] before a board hangs there."
        )


def _short(leaf: Leaf) -> Leaf:
    """Leave out a table of readings that fills a page: the tally has it."""
    return Leaf(
        title=leaf.title,
        headline=leaf.headline,
        parts=tuple(
            Part(title=part.title, said=part.said, grid=part.grid if _few(part) else None)
            for part in leaf.parts
        ),
    )


_FEW = 24
"""Rows of readings that are printed."""


def _few(part: Part) -> bool:
    return part.grid is not None and len(part.grid.rows) <= _FEW


def _without_pieces(leaf: Leaf) -> Leaf:
    """Leave out the table of pieces: the hanging sheet tells each."""
    return Leaf(
        title=leaf.title,
        headline=leaf.headline,
        parts=tuple(
            Part(
                title=part.title,
                said=part.said,
                grid=None if part.grid is not None and part.grid.columns[0] == "piece" else part.grid,
            )
            for part in leaf.parts
        ),
    )


def _planned(job: Job, surface: SurfaceNails, plan: NailPlan, edges: Edges) -> Planned:
    tape = job.tape
    boxes = [box for box in edges.boxes if box.surface_id == surface.surface_id]
    return Planned(
        intro=tuple(_intro(job, surface, plan)),
        pieces={piece.label: _nailing(surface, piece, boxes, tape) for piece in surface.pieces},
    )


def _intro(job: Job, surface: SurfaceNails, plan: NailPlan) -> Iterator[str]:
    tape = job.tape
    allowed = write_inches(plan.rule.allowed_nm(opened=surface.opened, backing_nm=surface.backing_nm), tape)
    yield (
        f"Nails are {plan.kind}s, of the length that stands with each piece, and none longer: it stays "
        f"within {allowed} of the {'backing' if surface.solid else 'framing'}'s face."
    )
    edge, end = (write_inches(least, tape) for least in (job.rules.nail_edge_nm, job.rules.nail_end_nm))
    yield f"No nail stands nearer than {edge} to a long edge or {end} to an end, but for those at a tongue."
    bits = sorted({piece.bit_nm for piece in surface.pieces if piece.bit_nm})
    if bits:
        near = write_inches(NEAR_END_NM.value, tape)
        yield f"Drill {write_bit(bits[0])} first for every nail within {near} of an end."


def _nailing(surface: SurfaceNails, piece: PieceNails, boxes: list[Box], tape: TapeStyle) -> PieceNailing:
    return PieceNailing(
        groups=tuple(_group(one, one.chosen.nail, tape) for one in piece.driven if one.chosen.nail),
        besides=tuple(_besides(surface, piece, boxes, tape)),
    )


def _group(one: Driven, nail: Nail, tape: TapeStyle) -> NailGroup:
    return NailGroup(
        nail=write_inches(nail.length_nm, tape),
        where="at the tongue, at 45°" if one.blind else "",
        spots=one.spots,
        count=one.count,
    )


def _besides(surface: SurfaceNails, piece: PieceNails, boxes: list[Box], tape: TapeStyle) -> Iterator[str]:
    if piece in surface.too_heavy:
        yield "too heavy for its nails alone: thicker ones, more of them, or glue as well."
    if not piece.held and piece.cut_off_by:
        yield f"cut off from framing by {', '.join(piece.cut_off_by)}: blocking or adhesive."
    for box in boxes:
        if box.extension_nm and any(notch.label == piece.label for notch in box.notches):
            yield f"extender {write_inches(box.extension_nm, tape)} deep for {box.called}; circuit off."

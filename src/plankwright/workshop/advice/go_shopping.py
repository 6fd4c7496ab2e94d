"""What has to be bought: nails, extenders, blades, adhesive, trim, and the boards that are missing."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil, dist

from plankwright.layout.done import to_hang
from plankwright.layout.regions import edges_of, side_of_edge
from plankwright.layout.sawing import saw_boards, works_by_part
from plankwright.measure import FOOT, METRE, Nm, System, round_up, write_fine, write_inches, write_length
from plankwright.model import NOTHING_DONE, Edge, Job, Layout, Rectangle, SawKind, Standing, Surface
from plankwright.paper.leaf import Grid, Leaf, Part
from plankwright.trade.edges.facts import EXTENDER, FLUSH
from plankwright.trade.fasteners.facts import (
    ADHESIVE,
    CARTRIDGE,
    NEAR_END,
    PIECES_A_CARTRIDGE,
    PREBORED,
    SPARE,
)
from plankwright.trade.hazards.doubts import doubtful_layers, doubtful_lots
from plankwright.trade.hazards.facts import ASBESTOS, LEAD_WHO, METAL, WOOD_DUST
from plankwright.trade.lumber.facts import NEW_EXTRA, NEW_EXTRA_SHARE
from plankwright.trade.readying.facts import NAILS_FIRST, OLD_BLADE
from plankwright.trade.source import Said, Source
from plankwright.workshop.advice.fit_edges import Edges, fit_edges
from plankwright.workshop.advice.judge_moisture import judge_moisture
from plankwright.workshop.advice.nail_plan import NailPlan
from plankwright.workshop.advice.plan_nails import plan_nails
from plankwright.workshop.advice.tell_nails import called_nail, write_bit
from plankwright.workshop.advice.watch_out import situation_of
from plankwright.workshop.wording import counted


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """Something to buy.

    Parameters
    ----------
    what
        As it is asked for in a shop.
    amount
        How much of it, in words; a count where it is one.
    why
        What it is for.
    sources
        Of the figures.
    """

    what: str
    amount: str
    why: str
    sources: tuple[Source, ...] = ()


def go_shopping(
    job: Job, layout: Layout, wanted: tuple[str, ...] = (), standing: Standing = NOTHING_DONE
) -> tuple[Item, ...]:
    """List what has to be bought for a layout.

    Parameters
    ----------
    job
        The job.
    layout
        A layout of it that was checked.
    wanted
        Boards that are missing, each in words, if a search found which.
    standing
        How far the job has come. Nails, adhesive, shims and box extenders are listed for pieces that do not
        hang yet, and jamb extensions for surfaces that have such; trim, blades and guards for the whole job.
    """
    plan, edges = plan_nails(job, layout, standing), fit_edges(job, layout)
    left = frozenset((surface_id, piece.label) for surface_id, piece in to_hang(layout, standing))
    return (
        *_boards(layout, wanted),
        *_nails(job, plan, layout),
        *_glue(plan),
        *_boxes(job, edges, left),
        *_jambs(job, edges, left),
        *_shims(job, layout, left),
        *_trim(job),
        *_blades(job),
        *_jigsaw(job, layout, standing),
        *_meter(job, layout, standing),
        *_guards(job),
    )


_Labels = frozenset[tuple[str, str]]
"""Pieces, each by its surface and its label."""


def _boards(layout: Layout, wanted: tuple[str, ...]) -> Iterator[Item]:
    for board in wanted:
        yield Item(what=board, amount="", why="missing for a full cover")
    if not wanted and not layout.covers_everything:
        yield Item(
            what="boards", amount="?", why="something stays bare: “plankwright enough” says which close it"
        )


def shopping_leaf(items: tuple[Item, ...]) -> Leaf:
    """Tell what has to be bought.

    Parameters
    ----------
    items
        As listed.
    """
    rows = tuple((item.what, item.amount, item.why) for item in items)
    sources = tuple(dict.fromkeys(source for item in items for source in item.sources))
    return Leaf(
        title="To buy",
        headline=Said(f"{len(items)} things to buy; look first what is in the shed.", sources),
        parts=(Part(title="List", grid=Grid(columns=("what", "how much", "for"), rows=rows, ticks=(0,))),),
    )


def _nails(job: Job, plan: NailPlan, layout: Layout) -> Iterator[Item]:
    only = "" if layout.covers_everything else ", for what hangs by this layout"
    for one in plan.to_buy:
        pounds = "" if one.pounds is None else f", {one.pounds:.1f} lb"
        yield Item(
            what=called_nail(one.nail, job.tape),
            amount=f"{one.bought}{pounds}",
            why=f"{one.driven} are driven{only}",
            sources=(*one.nail.sources, SPARE),
        )
    bits = sorted({piece.bit_nm for piece in plan.pieces if piece.bit_nm})
    for bit in bits:
        yield Item(
            what=f"drill bit, {write_bit(bit)}",
            amount="2",
            why="nails near the ends; thin bits break",
            sources=(PREBORED, NEAR_END),
        )


def _glue(plan: NailPlan) -> Iterator[Item]:
    glued = [piece for surface in plan.surfaces for piece in (*surface.not_held, *surface.too_heavy)]
    count = len({(piece.surface_id, piece.label) for piece in glued})
    if count:
        yield Item(
            what="construction adhesive, cartridge",
            amount=str(ceil(count / PIECES_A_CARTRIDGE.value)),
            why=f"{count} piece{'' if count == 1 else 's'} that nails alone do not hold; or blocking",
            sources=(ADHESIVE, CARTRIDGE),
        )


def _boxes(job: Job, edges: Edges, left: _Labels) -> Iterator[Item]:
    # Where everything around a box hangs, it was seen to.
    depths = Counter(
        box.extension_nm
        for box in edges.boxes
        if box.extension_nm and any((box.surface_id, notch.label) in left for notch in box.notches)
    )
    for depth, count in sorted(depths.items()):
        yield Item(
            what=f"box extender, {write_inches(depth, job.tape)} deep",
            amount=str(count),
            why="boxes flush with the new face; ask whoever is licensed",
            sources=(FLUSH, EXTENDER),
        )


def _jambs(job: Job, edges: Edges, left: _Labels) -> Iterator[Item]:
    unfinished = {surface_id for surface_id, _ in left}
    by_depth: dict[Nm, list[str]] = {}
    for jamb in edges.jambs:
        if jamb.extension_nm and jamb.surface_id in unfinished:
            by_depth.setdefault(jamb.extension_nm, []).append(jamb.called)
    for depth, openings in sorted(by_depth.items()):
        yield Item(
            what=f"jamb extension, {write_inches(depth, job.tape)} deep",
            amount=f"for {counted(len(openings), 'opening')}",
            why=f"{', '.join(openings)}: where the jamb ends flush with what lies below the boards",
        )


def _shims(job: Job, layout: Layout, left: _Labels) -> Iterator[Item]:
    shims = Counter(
        piece.shim_nm
        for part in layout.surfaces
        for piece in part.pieces
        if piece.shim_nm and (part.surface_id, piece.label) in left
    )
    for thickness, count in sorted(shims.items()):
        yield Item(what=f"shim, {write_fine(thickness, job.tape)}", amount=str(count), why="thinner boards")


def _trim(job: Job) -> Iterator[Item]:
    lengths: Counter[tuple[str, Nm]] = Counter()
    for surface in job.surfaces:
        for edge in Edge:
            width = getattr(surface.trim, edge.value)
            if width:
                lengths[f"trim, {edge.value}", width] += _length_of(surface, edge)
        for opening in surface.openings:
            if opening.trim_nm:
                around = 2 * opening.place.height_nm + opening.place.width_nm
                sill = opening.place.width_nm if opening.place.bottom > 0 else 0
                lengths["casing", opening.trim_nm] += around + sill
    for (what, width), length in lengths.items():
        step = METRE // 10 if job.tape.system is System.METRIC else FOOT
        bought = round_up(ceil(length * (1 + NEW_EXTRA_SHARE.value)), step)
        yield Item(
            what=f"{what}, covering {write_inches(width, job.tape)}",
            amount=write_length(bought, job.tape),
            why=f"the gap along the boards; {float(NEW_EXTRA_SHARE.value):.0%} more than it measures",
            sources=(NEW_EXTRA,),
        )


def _length_of(surface: Surface, edge: Edge) -> Nm:
    """Give how long a side is: along its slopes too, less what openings on the floor take of it. [nm]"""
    total = 0.0
    for start, end in edges_of(surface.outline):
        if side_of_edge(start, end) is edge:
            total += dist(start, end)
    if edge is Edge.BOTTOM:
        total -= sum(one.place.width_nm for one in surface.openings if one.place.bottom <= 0)
    return max(0, round(total))


def _blades(job: Job) -> Iterator[Item]:
    for kind in (SawKind.CROSSCUT, SawKind.RIP):
        if any(saw.cuts is kind for saw in job.saws) or not job.saws:
            yield Item(
                what=f"{kind.value} blade",
                amount="1 worn, 1 good",
                why="old wood; the good one for checked boards only",
                sources=(OLD_BLADE, NAILS_FIRST),
            )


def _jigsaw(job: Job, layout: Layout, standing: Standing) -> Iterator[Item]:
    """List what cuts notches and holes, unless a saw that does is at hand."""
    if any(name in saw.name.casefold() for saw in job.saws for name in _CUTS_HOLES):
        return
    works = [work for several in works_by_part(job, layout, standing).values() for work in several]
    blanks = {work.label: work.piece.place for work in works}
    closed = [
        _is_closed(cut.notch, blanks[cut.label])
        for board in saw_boards(job, layout, standing)
        for cut in board.cuts
        if cut.notch is not None
    ]
    holes, notches = closed.count(True), closed.count(False)
    told = [f"{notches} notch{'' if notches == 1 else 'es'}"] if notches else []
    if holes:
        told.append(f"{counted(holes, 'hole')} that no edge opens: start it from a drilled one")
    if told:
        yield Item(what="jigsaw, or a hole saw for round boxes", amount="1", why=", ".join(told))


_CUTS_HOLES = ("jigsaw", "jig saw", "hole saw")


def _is_closed(notch: Rectangle, blank: Rectangle) -> bool:
    """Tell whether a notch, measured from the lower left corner of its piece, reaches no edge of it."""
    beside = notch.left > 0 and notch.right < blank.width_nm
    return beside and notch.bottom > 0 and notch.top < blank.height_nm


def _meter(job: Job, layout: Layout, standing: Standing) -> Iterator[Item]:
    unmeasured = judge_moisture(job, layout, standing).unmeasured
    if unmeasured:
        yield Item(
            what="moisture meter",
            amount="1, or borrowed",
            why=f"{counted(len(unmeasured), 'board')} that nobody measured",
        )


def _guards(job: Job) -> Iterator[Item]:
    yield Item(
        what="metal detector for wood, goggles, dust mask, gloves",
        amount="as you lack them",
        why="nails, dust, splinters",
        sources=(METAL, WOOD_DUST),
    )
    situation = situation_of(job)
    lots, layers = doubtful_lots(situation), doubtful_layers(situation)
    if lots:
        yield Item(
            what="lead test of the paint",
            amount=str(len(lots)),
            why=f"lots whose paint nobody tested: {', '.join(lots)}",
            sources=(LEAD_WHO,),
        )
    if layers:
        yield Item(
            what="asbestos test by a laboratory",
            amount="where in doubt",
            why=f"what lies below the boards: {', '.join(layers)}",
            sources=(ASBESTOS,),
        )

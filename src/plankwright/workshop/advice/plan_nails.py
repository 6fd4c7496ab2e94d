"""What each piece is nailed with: which nail, how many and how, how deep they go, and what they hold."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import ceil

import shapely

from plankwright.draw.subject import HungRow, Subject, subject
from plankwright.layout.done import Done, done_on
from plankwright.layout.hanging import called
from plankwright.layout.regions import member_at
from plankwright.measure import INCH, METRE, MILLIMETRE
from plankwright.model import (
    NOTHING_DONE,
    Job,
    Layout,
    Standing,
    Surface,
    SurfaceKind,
)
from plankwright.trade.fasteners.facts import (
    ON_SOLID_NM,
    SPARE_SHARE,
    TWO_ACROSS_NM,
    WEAK_GRAVITY,
)
from plankwright.trade.fasteners.nails import USUAL_KIND, Nail, nails_of
from plankwright.trade.fasteners.predrilling import drill_bit_nm
from plankwright.trade.fasteners.reach import (
    DepthRule,
    Passage,
    blind_passage,
    choose_nail,
    face_passage,
    published_lengths,
)
from plankwright.trade.fasteners.withdrawal import withdrawal_n
from plankwright.trade.lumber.weight import density_kg_m3
from plankwright.trade.wood.species import wood_named
from plankwright.workshop.advice.nail_plan import Driven, NailPlan, PieceNails, SurfaceNails, ToBuy
from plankwright.workshop.advice.nail_spots import covers, crossed, nail_spots, near_end
from plankwright.workshop.advice.woods import gravity_of, moisture_of

_GRAVITY_M_S2 = 9.80665


def plan_nails(job: Job, layout: Layout, standing: Standing = NOTHING_DONE) -> NailPlan:
    """Plan how the pieces of a layout are nailed.

    Parameters
    ----------
    job
        The job.
    layout
        A layout of it that was checked.
    standing
        What hangs already is not nailed again.

    Returns
    -------
    NailPlan
        No nail in it reaches deeper than is allowed, or stands nearer to a keep-out than the rules let it.
    """
    rule = rule_of(job)
    kind = job.fastening.kind or USUAL_KIND
    surfaces = tuple(
        _surface(subject(job, part), rule, kind, done_on(job, part, standing)) for part in layout.surfaces
    )
    counts: Counter[Nail] = Counter()
    for surface in surfaces:
        for piece in surface.pieces:
            for one in piece.driven:
                if one.chosen.nail is not None:
                    counts[one.chosen.nail] += one.count
    return NailPlan(kind=kind, rule=rule, surfaces=surfaces, to_buy=tuple(_to_buy(counts)))


def rule_of(job: Job) -> DepthRule:
    """Give the rule for depths of a job: what the user asks for, else the defaults."""
    asked = {
        "bite_nm": job.fastening.bite_nm,
        "unknown_nm": job.fastening.depth_unknown_nm,
        "opened_nm": job.fastening.depth_opened_nm,
    }
    return replace(DepthRule(), **{name: depth for name, depth in asked.items() if depth is not None})


def _to_buy(counts: Counter[Nail]) -> Iterator[ToBuy]:
    for nail, driven in sorted(counts.items(), key=lambda item: item[0].length_nm):
        bought = ceil(driven * (1 + SPARE_SHARE.value))
        yield ToBuy(
            nail=nail,
            driven=driven,
            bought=bought,
            pounds=None if nail.per_pound is None else bought / nail.per_pound,
        )


def _surface(what: Subject, rule: DepthRule, kind: str, done: Done) -> SurfaceNails:
    surface = what.surface
    rows = [row for row in what.rows if row.piece.label not in done.hung]
    nails = _one_for_all(what, rows, rule, nails_of(kind))
    boards = Counter(what.job.board(row.piece.board_id).thickness_nm for row in what.rows)
    usual = max(boards, key=lambda thickness: (boards[thickness], thickness), default=INCH * 3 // 4)
    return SurfaceNails(
        surface_id=surface.id,
        opened=surface.framing.opened,
        overhead=surface.kind is SurfaceKind.CEILING,
        solid=surface.framing.solid,
        between_nm=surface.between_nm,
        board_nm=usual,
        published=published_lengths(usual, surface.between_nm),
        pieces=tuple(_piece(what, row, rule, nails) for row in rows),
    )


def _one_for_all(
    what: Subject, rows: Sequence[HungRow], rule: DepthRule, nails: tuple[Nail, ...]
) -> tuple[Nail, ...]:
    """Give the one length that does for every piece of a surface, or all of a kind where none does.

    Nobody wants to change nails with every board: a length that none may pass and that bites enough in all
    is taken for all, the longest of such.
    """
    passages = [passage for row in rows for passage in _passages(what, row)]
    for nail in sorted(nails, key=lambda one: -one.length_nm):
        if all(
            choose_nail((nail,), passage, rule, opened=what.surface.framing.opened).enough
            for passage in passages
        ):
            return (nail,)
    return nails


def _passages(what: Subject, row: HungRow) -> Iterator[Passage]:
    """Give what the nails of a piece go through: at its tongue, through its face, or both."""
    thickness = what.job.board(row.piece.board_id).thickness_nm
    between = what.surface.between_nm + row.piece.shim_nm
    at_tongue, through_face = nail_spots(what, row)
    if at_tongue:
        yield blind_passage(thickness, between)
    if through_face or what.surface.framing.solid:
        yield face_passage(thickness, between)


def _piece(what: Subject, row: HungRow, rule: DepthRule, nails: tuple[Nail, ...]) -> PieceNails:
    surface, piece = what.surface, row.piece
    if surface.framing.solid and not piece.nails:
        return _on_solid(what, row, rule, nails)
    board = what.job.board(piece.board_id)
    between = surface.between_nm + piece.shim_nm
    at_tongue, through_face = nail_spots(what, row)
    driven = tuple(
        Driven(
            chosen=choose_nail(nails, passage, rule, opened=surface.framing.opened),
            count=len(spots),
            spots=spots,
            blind=blind,
        )
        for spots, passage, blind in (
            (at_tongue, blind_passage(board.thickness_nm, between), True),
            (through_face, face_passage(board.thickness_nm, between), False),
        )
        if spots
    )
    spots = (*at_tongue, *through_face)
    reached = {member for spot in spots if (member := member_at(surface, spot)) is not None}
    behind = set(crossed(what, row))
    nail = next((one.chosen.nail for one in driven if one.chosen.nail), None)
    near_ends = sum(near_end(surface, row, spot) for spot in spots)
    return PieceNails(
        surface_id=surface.id,
        label=piece.label,
        driven=driven,
        members=len(reached),
        members_wanted=0 if surface.framing.solid else what.job.rules.nailing_points,
        cut_off_by=tuple(
            called(keep_out)
            for keep_out in surface.keep_outs
            if any(covers(what, keep_out, row, member) for member in behind - reached)
        ),
        weight_n=_weight_n(what, row),
        holds_n=_holds_n(surface, driven) if spots else None,
        near_ends=near_ends,
        bit_nm=drill_bit_nm(nail, gravity_of(board)[0]) if nail and near_ends else 0,
    )


def _on_solid(what: Subject, row: HungRow, rule: DepthRule, nails: tuple[Nail, ...]) -> PieceNails:
    """Plan a piece on solid backing: how many nails, and which; where they go is left to the eye."""
    surface = what.surface
    (passage,) = _passages(what, row)
    chosen = choose_nail(nails, passage, rule, opened=surface.framing.opened)
    along = max(2, ceil(row.length_nm / ON_SOLID_NM.value) + 1)
    across = 2 if row.course.height_nm >= TWO_ACROSS_NM.value else 1
    driven = (Driven(chosen=chosen, count=along * across, spots=(), blind=False),)
    board = what.job.board(row.piece.board_id)
    near_ends = 2 * across
    return PieceNails(
        surface_id=surface.id,
        label=row.piece.label,
        driven=driven,
        members=0,
        members_wanted=0,
        cut_off_by=(),
        weight_n=_weight_n(what, row),
        holds_n=_holds_n(surface, driven) if surface.framing.thickness_nm is not None else None,
        near_ends=near_ends,
        bit_nm=drill_bit_nm(chosen.nail, gravity_of(board)[0]) if chosen.nail else 0,
    )


def _weight_n(what: Subject, row: HungRow) -> float:
    """Give what a piece weighs at most. [N]"""
    board = what.job.board(row.piece.board_id)
    volume_m3 = shapely.Polygon(row.hung.shape).area * board.thickness_nm / METRE**3
    density = density_kg_m3(gravity_of(board)[1], moisture_of(board, what.job))
    return volume_m3 * density * _GRAVITY_M_S2


def _holds_n(surface: Surface, driven: tuple[Driven, ...]) -> float:
    """Give what pulls all nails of a piece out, by the lightest wood that the framing may be. [N]"""
    known = wood_named(surface.framing.wood).gravity if surface.framing.wood else None
    gravity = known[0] if known else WEAK_GRAVITY.value
    through = surface.framing.thickness_nm
    return sum(
        one.count
        * withdrawal_n(
            gravity,
            one.chosen.nail.diameter_nm / MILLIMETRE,
            # What sticks out behind the backing holds nothing.
            (one.chosen.bite_nm if through is None else min(one.chosen.bite_nm, through)) / MILLIMETRE,
        )
        for one in driven
        if one.chosen.nail is not None
    )

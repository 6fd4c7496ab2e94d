"""What each piece is nailed with: which nail, how many and how, how deep they go, and what they hold."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from math import ceil

import shapely

from plankwright.draw.subject import HungRow, Subject, subject
from plankwright.layout.done import Done, done_on
from plankwright.layout.hanging import called
from plankwright.layout.regions import member_at
from plankwright.measure import INCH, METRE, MILLIMETRE, Nm
from plankwright.model import (
    NOTHING_DONE,
    Job,
    Layout,
    Point,
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

Places = tuple[tuple[Passage, tuple[Point, ...]], ...]
"""What the nails of a piece go through and where: at its tongue, through its face, or both. On solid backing
there may be no places, for it takes nails anywhere."""


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
    places = {row.piece.label: _places(what, row, rule) for row in rows}
    passages = [passage for some in places.values() for passage, _ in some]
    nails = _one_for_all(passages, rule, nails_of(kind), opened=surface.framing.opened)
    boards = Counter(what.job.board(row.piece.board_id).thickness_nm for row in what.rows)
    usual = max(boards, key=lambda thickness: (boards[thickness], thickness), default=INCH * 3 // 4)
    return SurfaceNails(
        surface_id=surface.id,
        opened=surface.framing.opened,
        overhead=surface.kind is SurfaceKind.CEILING,
        solid=surface.framing.solid,
        backing_nm=_backing_nm(surface),
        between_nm=surface.between_nm,
        board_nm=usual,
        published=published_lengths(usual, surface.between_nm),
        pieces=tuple(_piece(what, row, places[row.piece.label], rule, nails) for row in rows),
    )


def _one_for_all(
    passages: Sequence[Passage], rule: DepthRule, nails: tuple[Nail, ...], *, opened: bool
) -> tuple[Nail, ...]:
    """Give the one length that does for every piece of a surface, or all of a kind where none does.

    Nobody wants to change nails with every board: a length that none may pass and that bites enough in all
    is taken for all, the longest of such.
    """
    for nail in sorted(nails, key=lambda one: -one.length_nm):
        if all(choose_nail((nail,), passage, rule, opened=opened).enough for passage in passages):
            return (nail,)
    return nails


def _places(what: Subject, row: HungRow, rule: DepthRule) -> Places:
    surface = what.surface
    thickness = what.job.board(row.piece.board_id).thickness_nm
    between = surface.between_nm + row.piece.shim_nm
    leaning = blind_passage(thickness, between)
    straight = face_passage(thickness, between, _backing_nm(surface))
    aside = leaning.aside_nm(rule.allowed_nm(opened=surface.framing.opened))
    at_tongue, through_face = nail_spots(what, row, aside)
    if surface.framing.solid and not through_face:
        return ((straight, ()),)
    return tuple(
        (passage, spots) for passage, spots in ((leaning, at_tongue), (straight, through_face)) if spots
    )


def _backing_nm(surface: Surface) -> Nm | None:
    """Give how thick the backing of a surface is, where it is solid and that is known. [nm]"""
    return surface.framing.thickness_nm if surface.framing.solid else None


def _piece(
    what: Subject, row: HungRow, places: Places, rule: DepthRule, nails: tuple[Nail, ...]
) -> PieceNails:
    surface, piece = what.surface, row.piece
    board = what.job.board(piece.board_id)
    driven = tuple(
        Driven(
            chosen=choose_nail(nails, passage, rule, opened=surface.framing.opened),
            count=len(spots) or _on_solid(row),
            spots=spots,
            blind=passage.lean_deg > 0,
        )
        for passage, spots in places
    )
    spots = tuple(spot for _, some in places for spot in some)
    nailed = [spot for one in driven if one.chosen.nail is not None for spot in one.spots]
    reached, held = (_members(surface, some) for some in (spots, nailed))
    behind = set(crossed(what, row))
    nail = next((one.chosen.nail for one in driven if one.chosen.nail), None)
    near_ends = sum(near_end(surface, row, spot) for spot in spots)
    if surface.framing.solid and not spots:
        near_ends = 2 * _abreast(row)
    return PieceNails(
        surface_id=surface.id,
        label=piece.label,
        driven=driven,
        members=len(held),
        members_wanted=0 if surface.framing.solid else what.job.rules.nailing_points,
        cut_off_by=tuple(
            called(keep_out)
            for keep_out in surface.keep_outs
            if any(covers(what, keep_out, row, member) for member in behind - reached)
        ),
        weight_n=_weight_n(what, row),
        holds_n=_holds_n(surface, driven),
        near_ends=near_ends,
        bit_nm=drill_bit_nm(nail, gravity_of(board)[0]) if nail and near_ends else 0,
    )


def _members(surface: Surface, spots: Iterable[Point]) -> set[int]:
    """Give the members that nails stand on."""
    return {member for spot in spots if (member := member_at(surface, spot)) is not None}


def _on_solid(row: HungRow) -> int:
    """Count the nails of a piece on solid backing; where they go is left to the eye."""
    return max(2, ceil(row.length_nm / ON_SOLID_NM.value) + 1) * _abreast(row)


def _abreast(row: HungRow) -> int:
    return 2 if row.course.height_nm >= TWO_ACROSS_NM.value else 1


def _weight_n(what: Subject, row: HungRow) -> float:
    """Give what a piece weighs at most. [N]"""
    board = what.job.board(row.piece.board_id)
    volume_m3 = shapely.Polygon(row.hung.shape).area * board.thickness_nm / METRE**3
    density = density_kg_m3(gravity_of(board)[1], moisture_of(board, what.job))
    return volume_m3 * density * _GRAVITY_M_S2


def _holds_n(surface: Surface, driven: tuple[Driven, ...]) -> float | None:
    """Give what pulls all nails of a piece out, by the lightest wood that the framing may be. [N]

    Nothing on solid backing of which nobody knows how thick it is, or where there are no nails to pull.
    """
    nails = [(one.chosen.nail, one) for one in driven if one.chosen.nail is not None]
    if not nails or (surface.framing.solid and surface.framing.thickness_nm is None):
        return None
    known = wood_named(surface.framing.wood).gravity if surface.framing.wood else None
    gravity = known[0] if known else WEAK_GRAVITY.value
    return sum(
        one.count * withdrawal_n(gravity, nail.diameter_nm / MILLIMETRE, one.chosen.bite_nm / MILLIMETRE)
        for nail, one in nails
    )

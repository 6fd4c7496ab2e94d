"""What each piece is nailed with: which nail, how many and how, how deep they go, and what they hold."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import ceil

import shapely

from plankwright.draw.subject import HungRow, Subject, subject
from plankwright.layout.done import Done, done_on
from plankwright.layout.hanging import called, grown
from plankwright.layout.regions import along_and_across, extent_in_course, place_on_surface
from plankwright.measure import INCH, METRE, MILLIMETRE, Nm
from plankwright.model import (
    NOTHING_DONE,
    EdgeKind,
    EdgeTreatment,
    Job,
    KeepOut,
    Layout,
    Point,
    Standing,
    Surface,
    SurfaceKind,
)
from plankwright.trade.fasteners.facts import (
    BLIND_ALONE_NM,
    NEAR_END_NM,
    ON_SOLID_NM,
    SPARE_SHARE,
    TRUSTED_SHARE,
    TWO_ACROSS_NM,
    WEAK_GRAVITY,
)
from plankwright.trade.fasteners.nails import USUAL_KIND, Nail, nails_of
from plankwright.trade.fasteners.predrilling import drill_bit_nm
from plankwright.trade.fasteners.reach import (
    Chosen,
    DepthRule,
    Passage,
    PublishedLengths,
    blind_passage,
    choose_nail,
    face_passage,
    published_lengths,
)
from plankwright.trade.fasteners.withdrawal import withdrawal_n
from plankwright.trade.lumber.weight import density_kg_m3
from plankwright.trade.wood.species import wood_named
from plankwright.workshop.advice.woods import gravity_of, moisture_of

_GRAVITY_M_S2 = 9.80665


@dataclass(frozen=True, slots=True, kw_only=True)
class Driven:
    """Nails of one sort in a piece.

    Parameters
    ----------
    chosen
        The nail, and how deep it goes.
    count
        How many.
    spots
        Where they go in, in the frame of the surface; none on solid backing, which takes them anywhere.
    blind
        Whether they go in at the root of the tongue, instead of through the face.
    """

    chosen: Chosen
    count: int
    spots: tuple[Point, ...]
    blind: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceNails:
    """What a piece is nailed with.

    Parameters
    ----------
    surface_id, label
        The piece.
    driven
        Nails through the face, nails at the tongue, or both.
    members, members_wanted
        At how many framing members it is held, and at how many it should be.
    cut_off_by
        What runs behind it and keeps nails from members that it crosses.
    weight_n
        Of the piece, at most. [N]
    holds_n
        Load that pulls all of its nails out; nothing on solid backing where none are planned. [N]
    near_ends
        How many of its nails stand near an end.
    bit_nm
        Widest drill bit for those; zero where the nail is too thin for any. [nm]
    """

    surface_id: str
    label: str
    driven: tuple[Driven, ...]
    members: int
    members_wanted: int
    cut_off_by: tuple[str, ...]
    weight_n: float
    holds_n: float | None
    near_ends: int
    bit_nm: Nm

    @property
    def held(self) -> bool:
        """Whether it is nailed at as many members as it should be, by nails that there are."""
        return self.members >= self.members_wanted and all(one.chosen.nail for one in self.driven)

    @property
    def times_its_weight(self) -> float | None:
        """How many times its weight pulls the nails out."""
        return None if self.holds_n is None or not self.weight_n else self.holds_n / self.weight_n


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfaceNails:
    """How a surface is nailed.

    Parameters
    ----------
    surface_id
        The surface.
    opened
        Whether its inside was looked at.
    overhead
        Whether it is a ceiling.
    solid
        Whether its backing takes nails anywhere.
    between_nm, board_nm
        What lies between framing and boards, and the thickness that most boards have. [nm]
    published
        What two published rules would ask for with such a board.
    pieces
        Piece by piece.
    """

    surface_id: str
    opened: bool
    overhead: bool
    solid: bool
    between_nm: Nm
    board_nm: Nm
    published: PublishedLengths
    pieces: tuple[PieceNails, ...]

    @property
    def not_held(self) -> tuple[PieceNails, ...]:
        """Pieces that nails alone do not hold."""
        return tuple(piece for piece in self.pieces if not piece.held)

    @property
    def too_heavy(self) -> tuple[PieceNails, ...]:
        """Pieces overhead whose nails are trusted with less than their weight."""
        if not self.overhead:
            return ()
        return tuple(
            piece
            for piece in self.pieces
            if piece.times_its_weight is not None and piece.times_its_weight < TRUSTED_SHARE.value
        )

    @property
    def short_bite(self) -> tuple[PieceNails, ...]:
        """Pieces whose nails reach less far into the framing than is wanted."""
        return tuple(
            piece
            for piece in self.pieces
            if any(one.chosen.nail and not one.chosen.enough for one in piece.driven)
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ToBuy:
    """Nails to buy.

    Parameters
    ----------
    nail
        The nail.
    driven, bought
        How many are driven, and how many are bought.
    pounds
        What those weigh, where a count by the pound is known. [lb]
    """

    nail: Nail
    driven: int
    bought: int
    pounds: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class NailPlan:
    """How a job is nailed.

    Parameters
    ----------
    kind
        The kind of nail.
    rule
        How deep nails may and should go.
    surfaces
        Surface by surface.
    to_buy
        The nails, by length.
    """

    kind: str
    rule: DepthRule
    surfaces: tuple[SurfaceNails, ...]
    to_buy: tuple[ToBuy, ...]

    @property
    def pieces(self) -> tuple[PieceNails, ...]:
        """Every piece of every surface."""
        return tuple(piece for surface in self.surfaces for piece in surface.pieces)


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
    reached = {member for spot in spots if (member := _member_at(surface, spot)) is not None}
    crossed = set(_crossed(what, row))
    nail = next((one.chosen.nail for one in driven if one.chosen.nail), None)
    near_ends = sum(_near_end(surface, row, spot) for spot in spots)
    return PieceNails(
        surface_id=surface.id,
        label=piece.label,
        driven=driven,
        members=len(reached),
        members_wanted=0 if surface.framing.solid else what.job.rules.nailing_points,
        cut_off_by=tuple(
            called(keep_out)
            for keep_out in surface.keep_outs
            if any(_covers(what, keep_out, row, member) for member in crossed - reached)
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


def nail_spots(what: Subject, row: HungRow) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """Give where a piece is nailed: at its tongue, and through its face.

    A tongue that the next course covers takes the nails, a face nail besides where the board is wide; the
    starter is nailed through its face as well, where its base trim hides that, and so is the closing course.

    Parameters
    ----------
    what, row
        The piece on its surface.

    Returns
    -------
    tuple
        Places at the tongue, then places through the face, which are among those of the layout.
    """
    piece, surface = row.piece, what.surface
    blind = tuple(_at_tongue(what, row)) if _takes_blind_nails(what, row) else ()
    if not blind:
        return (), piece.nails
    held = {_member_at(surface, spot) for spot in blind}
    first = row.course is what.layout.courses[0]
    wide = row.course.height_nm > BLIND_ALONE_NM.value
    kept: list[Point] = []
    for member, nails in _by_member(surface, piece.nails).items():
        if member not in held:
            kept += nails
        elif first or wide:
            # Of two nails at a member the one nearer to the start: the tongue holds the other side.
            kept.append(min(nails, key=lambda nail: along_and_across(surface, nail)[1]))
    return blind, tuple(kept)


def _takes_blind_nails(what: Subject, row: HungRow) -> bool:
    board = what.job.board(row.piece.board_id)
    followed = any(course.number > row.course.number and course.pieces for course in what.layout.courses)
    # The tongue lies along the edge that is not the reference edge: the far one, unless the piece is turned.
    return (
        board.profile.kind is EdgeKind.TONGUE_AND_GROOVE
        and row.piece.far is EdgeTreatment.AS_FOUND
        and not row.piece.turned
        and followed
        and not what.surface.framing.solid
    )


def _at_tongue(what: Subject, row: HungRow) -> Iterator[Point]:
    """Give the places at the far edge of a piece, on the centres of the members it is nailed at."""
    surface, rules = what.surface, what.job.rules
    barred = [grown(keep_out.place, rules.nail_clearance_nm) for keep_out in surface.keep_outs]
    shape = shapely.Polygon(row.hung.shape)
    for nails in _by_member(surface, row.piece.nails).values():
        along, _ = along_and_across(surface, nails[0])
        spot = place_on_surface(surface, along, row.course.to_nm)
        x, y = spot
        if any(place.left < x < place.right and place.bottom < y < place.top for place in barred):
            continue
        if shape.distance(shapely.Point(spot)) < MILLIMETRE:
            yield spot


def _by_member(surface: Surface, nails: tuple[Point, ...]) -> dict[int | None, list[Point]]:
    found: dict[int | None, list[Point]] = {}
    for nail in nails:
        found.setdefault(_member_at(surface, nail), []).append(nail)
    return found


def _member_at(surface: Surface, spot: Point) -> int | None:
    """Give which member a place is on, counted along the courses."""
    along, _ = along_and_across(surface, spot)
    for number, member in enumerate(surface.crossing_members):
        if abs(along - member.centre_nm) <= member.width_nm // 2:
            return number
    return None


def _crossed(what: Subject, row: HungRow) -> Iterator[int]:
    """Give the members that a piece crosses, those that it only touches at an end apart."""
    along_from, along_to, *_ = extent_in_course(what.surface, row.piece.place)
    for number, member in enumerate(what.surface.crossing_members):
        if along_from <= member.centre_nm <= along_to:
            yield number


def _covers(what: Subject, keep_out: KeepOut, row: HungRow, number: int) -> bool:
    """Tell whether a keep-out bars the whole of a member behind a piece, or much of it."""
    place = grown(keep_out.place, what.job.rules.nail_clearance_nm)
    along_from, along_to, across_from, across_to = extent_in_course(what.surface, place)
    member = what.surface.crossing_members[number]
    return (
        along_from < member.centre_nm < along_to
        and across_from < row.course.to_nm
        and across_to > row.course.from_nm
    )


def _near_end(surface: Surface, row: HungRow, spot: Point) -> bool:
    along, _ = along_and_across(surface, spot)
    along_from, along_to, *_ = extent_in_course(surface, row.piece.place)
    return min(along - along_from, along_to - along) <= NEAR_END_NM.value


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

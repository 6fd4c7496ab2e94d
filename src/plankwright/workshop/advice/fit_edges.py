"""Boxes and edges: what is notched, how far boxes come forward, and whether trim covers what moves."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from plankwright.draw.subject import Subject, subject
from plankwright.layout.hanging import called
from plankwright.layout.regions import edges_of, side_of_edge
from plankwright.layout.sawing import name_on
from plankwright.measure import Nm, TapeStyle, round_up, write_inches, write_small
from plankwright.model import CutOut, Direction, Edge, Job, Layout, Rectangle
from plankwright.paper.leaf import Grid, Leaf, Part
from plankwright.trade.edges.boxes import extension_nm
from plankwright.trade.edges.facts import (
    BOX_GAP_NM,
    EXTENDER,
    FLUSH,
    GAP,
    OVERLAP_NM,
    REVEAL,
    REVEAL_NM,
    TRIM_OVERLAP,
)
from plankwright.trade.edges.trim import EdgeCover
from plankwright.trade.source import Said
from plankwright.workshop.advice.judge_moisture import judge_moisture
from plankwright.workshop.advice.judge_movement import Movement
from plankwright.workshop.advice.under_trim import gaps_at_opening, gaps_at_side
from plankwright.workshop.wording import capital, counted, listed


@dataclass(frozen=True, slots=True, kw_only=True)
class Notch:
    """What is cut out of a piece for a box.

    Parameters
    ----------
    label
        The piece.
    left_nm, bottom_nm
        From its left end and from its lower edge to the notch. [nm]
    width_nm, height_nm
        [nm]
    """

    label: str
    left_nm: Nm
    bottom_nm: Nm
    width_nm: Nm
    height_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """What comes through the boards.

    Parameters
    ----------
    surface_id, called
        Where, and what it is called.
    notches
        In its pieces.
    finish_nm
        From the face of the framing to the new face there, with the thickest of its pieces. [nm]
    front_nm
        From the face of the framing to its front as it is. [nm]
    extension_nm
        How deep an extender it takes to end flush. [nm]
    """

    surface_id: str
    called: str
    notches: tuple[Notch, ...]
    finish_nm: Nm
    front_nm: Nm
    extension_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Jamb:
    """An opening whose jamb has to come forward.

    Parameters
    ----------
    surface_id, called
        Where, and what it is called.
    extension_nm
        How far, from what lies between framing and boards on. [nm]
    cover
        What its casing covers.
    short
        Labels of the pieces of which it covers too little, the least first.
    """

    surface_id: str
    called: str
    extension_nm: Nm
    cover: EdgeCover
    short: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """A side of a surface, with trim along it or without.

    Parameters
    ----------
    surface_id, edge
        Where.
    cover
        What the trim along it covers.
    short
        Labels of the pieces of which it covers too little, the least first.
    """

    surface_id: str
    edge: Edge
    cover: EdgeCover
    short: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Edges:
    """Everything that boards meet.

    Parameters
    ----------
    boxes, jambs, sides
        Surface by surface.
    """

    boxes: tuple[Box, ...]
    jambs: tuple[Jamb, ...]
    sides: tuple[Side, ...]

    @property
    def trimmable(self) -> tuple[Side | Jamb, ...]:
        """Every side and opening."""
        return (*self.sides, *self.jambs)

    @property
    def uncovered(self) -> tuple[Side | Jamb, ...]:
        """Sides and openings where trim covers too little: it is too narrow, or boards end too soon."""
        return tuple(one for one in self.trimmable if one.cover.too_little)

    @property
    def untrimmed(self) -> tuple[Side | Jamb, ...]:
        """Sides and openings where a gap is left open and no trim was entered."""
        return tuple(one for one in self.trimmable if one.cover.untrimmed)


def fit_edges(job: Job, layout: Layout) -> Edges:
    """Find out what a layout does to boxes, jambs and trim.

    Parameters
    ----------
    job
        The job.
    layout
        A layout of it that was checked.
    """
    movements = {movement.surface_id: movement for movement in judge_moisture(job, layout).movements}
    subjects = [subject(job, part) for part in layout.surfaces]
    return Edges(
        boxes=tuple(_box(what, cut_out) for what in subjects for cut_out in what.surface.cut_outs),
        jambs=tuple(jamb for what in subjects for jamb in _jambs(what, movements.get(what.surface.id))),
        sides=tuple(side for what in subjects for side in _sides(what, movements.get(what.surface.id))),
    )


def edges_leaf(job: Job, edges: Edges) -> Leaf:
    """Tell what is notched, what comes forward, and what the trim covers.

    Parameters
    ----------
    job
        The job.
    edges
        What was found of it.
    """
    return Leaf(
        title="Boxes and edges",
        headline=_headline(edges),
        parts=(
            Part(title="Boxes", said=tuple(_tell_boxes(job, edges)), grid=_boxes_grid(job, edges)),
            Part(title="Openings", said=tuple(_tell_jambs(job, edges)), grid=_jambs_grid(job, edges)),
            Part(title="Trim", said=tuple(_tell_sides(job, edges)), grid=_sides_grid(job, edges)),
        ),
    )


def _box(what: Subject, cut_out: CutOut) -> Box:
    name = called(cut_out)
    meeting = [row for row in what.rows if any(told == name for _, told in row.hung.notches)]
    between = what.surface.between_nm
    finish = max(
        (between + row.piece.shim_nm + what.job.board(row.piece.board_id).thickness_nm for row in meeting),
        default=between,
    )
    front = between if cut_out.front_nm is None else cut_out.front_nm
    return Box(
        surface_id=what.surface.id,
        called=name,
        notches=tuple(
            _notch(row.piece.label, place, _body(row.hung.shape))
            for row in meeting
            for place, told in row.hung.notches
            if told == name
        ),
        finish_nm=finish,
        front_nm=front,
        extension_nm=extension_nm(finish, front),
    )


def _body(shape: tuple[tuple[int, int], ...]) -> tuple[Nm, Nm]:
    """Give the left end and the lower edge of a piece."""
    return min(x for x, _ in shape), min(y for _, y in shape)


def _notch(label: str, place: Rectangle, corner: tuple[Nm, Nm]) -> Notch:
    return Notch(
        label=label,
        left_nm=place.left - corner[0],
        bottom_nm=place.bottom - corner[1],
        width_nm=place.width_nm,
        height_nm=place.height_nm,
    )


def _jambs(what: Subject, movement: Movement | None) -> Iterator[Jamb]:
    thickest = max((what.job.board(row.piece.board_id).thickness_nm for row in what.rows), default=0)
    for opening in what.surface.openings:
        gaps = gaps_at_opening(what, opening)
        cover = _cover(what, opening.trim_nm, gaps, movement)
        yield Jamb(
            surface_id=what.surface.id,
            called=name_on(what.job, what.surface.id, opening.id),
            extension_nm=thickest,
            cover=cover,
            short=_short(cover, gaps),
        )


def _sides(what: Subject, movement: Movement | None) -> Iterator[Side]:
    found = {side_of_edge(*edge) for edge in edges_of(what.surface.outline) if edge[0] != edge[1]}
    for edge in Edge:
        if edge in found:
            ends = (edge in _UPRIGHT) is (what.surface.courses_run is Direction.HORIZONTAL)
            gaps = gaps_at_side(what, edge)
            cover = _cover(what, getattr(what.surface.trim, edge), gaps, movement, ends=ends)
            yield Side(surface_id=what.surface.id, edge=edge, cover=cover, short=_short(cover, gaps))


_UPRIGHT = frozenset({Edge.LEFT, Edge.RIGHT})


def _cover(
    what: Subject, trim_nm: Nm, gaps: Mapping[str, Nm], movement: Movement | None, *, ends: bool = False
) -> EdgeCover:
    """Give what trim covers along an edge, by the gaps that the pieces leave there.

    Where courses lie along it the edge course alone draws back, for each is nailed by itself; where their
    ends meet it, boards hardly move at all. Where nothing hangs nothing moves. Without trim boards must reach
    as far as the rules let them, so that no more than their gap is open.
    """
    drawn_back = 0.0 if movement is None else movement.end_opens_nm if ends else movement.opens.most_nm
    gap = what.job.rules.expansion_gap_nm
    return EdgeCover(
        trim_nm=trim_nm,
        gap_nm=gap,
        widest_nm=max(gaps.values(), default=None) if trim_nm else gap,
        shrinks_nm=round(drawn_back),
    )


def _short(cover: EdgeCover, gaps: Mapping[str, Nm]) -> tuple[str, ...]:
    return tuple(label for label, gap in gaps.items() if replace(cover, widest_nm=gap).too_little)


def _headline(edges: Edges) -> Said:
    extended = [box for box in edges.boxes if box.extension_nm]
    told = capital(counted(len(extended), "box extender"))
    troubles = []
    narrow = [one for one in edges.uncovered if one.cover.too_narrow]
    if narrow:
        troubles.append(f"trim is too narrow at {counted(len(narrow), 'place')}")
    if len(edges.uncovered) > len(narrow):
        ends = counted(len(edges.uncovered) - len(narrow), "place")
        troubles.append(f"boards end too soon under the trim at {ends}")
    if edges.untrimmed:
        troubles.append(f"the gap shows at {counted(len(edges.untrimmed), 'place')} without trim")
    if not troubles:
        gaps = any(one.cover.widest_nm for one in edges.trimmable)
        troubles.append("the trim covers every gap" if gaps else "no gap is left open")
    return Said(f"{told}; {listed(troubles)}.", (TRIM_OVERLAP,))


def _tell_boxes(job: Job, edges: Edges) -> Iterator[Said]:
    if not edges.boxes:
        yield Said("Nothing comes through the boards.")
        return
    yield Said(
        "Switch the circuit off and test before you notch or touch a box, and have it extended by whoever "
        "is licensed for it: in a surface that burns its front ends flush or stands out, and an extender "
        "is one that was made for it. Local codes decide.",
        (FLUSH, EXTENDER),
    )
    gap = write_inches(BOX_GAP_NM.value, job.tape)
    yield Said(f"The hole may be up to {gap} wider than the box on each side.", (GAP,))


def _boxes_grid(job: Job, edges: Edges) -> Grid | None:
    def inches(nm: Nm) -> str:
        return write_inches(nm, job.tape)

    rows = tuple(
        (
            name_on(job, box.surface_id, box.called),
            notch.label,
            f"{inches(notch.width_nm)} × {inches(notch.height_nm)}",
            f"{inches(notch.left_nm)} / {inches(notch.bottom_nm)}",
            inches(box.finish_nm - box.front_nm) if box.extension_nm else "none",
        )
        for box in edges.boxes
        for notch in box.notches
    )
    columns = ("box", "piece", "notch, wide × high", "from its left / from below", "extender")
    return Grid(columns=columns, rows=rows) if rows else None


def _tell_jambs(job: Job, edges: Edges) -> Iterator[Said]:
    if not edges.jambs:
        yield Said("No opening meets the boards.")
        return
    yield Said(
        "Jambs that end flush with what lies below the boards come forward by the boards' thickness; "
        f"casing is set back {write_inches(REVEAL_NM.value, job.tape)} so that their edge shows.",
        (REVEAL,),
    )
    yield from _tell_uncovered(edges.jambs, job.tape)
    bare = [jamb.called for jamb in edges.jambs if jamb.cover.untrimmed]
    if bare:
        yield Said(
            f"No casing was entered around {listed(bare)}: the gap will show there. Give its width as trim "
            "under [[surface.opening]]."
        )


def _jambs_grid(job: Job, edges: Edges) -> Grid | None:
    rows = tuple(
        (
            jamb.called,
            write_inches(jamb.extension_nm, job.tape),
            write_inches(jamb.cover.trim_nm, job.tape),
            *_outcome(jamb, job.tape),
        )
        for jamb in edges.jambs
    )
    columns = ("opening", "jamb comes forward", "casing on the boards", "least overlap", "")
    return Grid(columns=columns, rows=rows) if rows else None


def _tell_sides(job: Job, edges: Edges) -> Iterator[Said]:
    if any(side.cover.trim_nm for side in edges.sides):
        yield Said(
            f"Trim should lie on the boards by {write_inches(OVERLAP_NM.value, job.tape)} or more in the "
            "driest season.",
            (TRIM_OVERLAP,),
        )
    yield from _tell_uncovered(edges.sides, job.tape)
    bare = [side for side in edges.sides if side.cover.untrimmed]
    if bare:
        yield Said(
            f"No trim was entered along {_places(bare)}: the gap will show there. Give its width under "
            "[surface.trim]."
        )


def _tell_uncovered(places: Sequence[Side | Jamb], tape: TapeStyle) -> Iterator[Said]:
    """Say where trim lies on too little of the boards, at which pieces, and how wide it would have to be."""
    narrow = [one for one in places if one.cover.too_narrow]
    if narrow:
        yield Said(f"Too narrow: {_places(narrow)}. Take wider trim there, or a smaller expansion_gap.")
    for one in places:
        overlap = one.cover.overlap_nm
        if one.cover.too_little and overlap is not None:
            first, *others = one.short
            wanted = write_inches(OVERLAP_NM.value, tape)
            more = f", and less than {wanted} at {listed(others)} as well" if others else ""
            enough = round_up(one.cover.wide_enough_nm, tape.step_nm)
            longer = (
                ""
                if one.cover.too_narrow
                else ", or leave more of its board on such a piece, if there is more and it is not cut yet"
            )
            yield Said(
                f"Least overlap at {_place(one)}: {write_small(overlap, tape)} at piece {first}{more}. "
                f"Take trim of {write_inches(enough, tape)} or wider there and keep this layout{longer}.",
                (TRIM_OVERLAP,),
            )


def _places(places: Sequence[Side | Jamb]) -> str:
    return listed([_place(one) for one in places])


def _place(one: Side | Jamb) -> str:
    if isinstance(one, Jamb):
        return f"the casing of {one.called}"
    return f"the {one.edge} of {one.surface_id}"


def _outcome(one: Side | Jamb, tape: TapeStyle) -> tuple[str, str]:
    """Tell how much of the boards trim covers at least, and whether that is enough."""
    cover = one.cover
    if not cover.trim_nm:
        return "", "no trim, the gap shows" if cover.untrimmed else "no trim, no gap"
    if cover.overlap_nm is None:
        return "", "no board ends there"
    overlap = write_small(cover.overlap_nm, tape)
    if not cover.too_little:
        return overlap, "covered"
    more = f" and {len(one.short) - 1} more" if len(one.short) > 1 else ""
    return overlap, "too narrow" if cover.too_narrow else f"too little at {one.short[0]}{more}"


def _sides_grid(job: Job, edges: Edges) -> Grid | None:
    rows = tuple(
        (
            f"{side.surface_id}, {side.edge}",
            write_inches(side.cover.trim_nm, job.tape),
            "" if side.cover.widest_nm is None else write_inches(side.cover.widest_nm, job.tape),
            write_small(side.cover.shrinks_nm, job.tape),
            *_outcome(side, job.tape),
        )
        for side in edges.sides
    )
    columns = ("side", "trim", "gap", "draws back", "least overlap", "")
    return Grid(columns=columns, rows=rows) if rows else None

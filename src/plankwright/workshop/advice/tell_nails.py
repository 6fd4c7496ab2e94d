"""Say in plain words what a layout is nailed with, and what pulls against what."""

from collections.abc import Iterator, Sequence

from plankwright.measure import Nm, System, TapeStyle, write_fine, write_force, write_inches
from plankwright.model import Job
from plankwright.paper.leaf import Grid, Leaf, Part
from plankwright.trade.fasteners.facts import (
    ADHESIVE,
    BITE,
    BLIND,
    BLIND_ALONE,
    CABLE_DEPTH,
    HEAD_SET,
    HOLE_SHARE,
    HOLE_SHARE_DENSE,
    NEAR_END,
    NO_BRADS,
    ON_SOLID,
    ON_SOLID_NM,
    OPENED,
    PIPE_DEPTH,
    PREBORED,
    PROTECTED_DEPTH_NM,
    SHARE_OF_ULTIMATE,
    SHEET_BACK,
    SIDING,
    SIDING_BITE_NM,
    SPARE,
    SPARE_SHARE,
    THREE_TIMES,
    TONGUE_ROOT,
    TRUSTED_SHARE,
    TWO_ACROSS,
    TWO_ACROSS_NM,
    WEAK_FRAMING,
    WITHDRAWAL,
)
from plankwright.trade.fasteners.nails import Nail
from plankwright.trade.source import Said, Source
from plankwright.workshop.advice.nail_plan import Driven, NailPlan, PieceNails, SurfaceNails
from plankwright.workshop.wording import counted, listed

_MOST_NAMED = 12
_FEW_TIMES = 10.0


def nails_leaf(job: Job, plan: NailPlan) -> Leaf:
    """Tell how a job is nailed.

    Parameters
    ----------
    job
        The job.
    plan
        What was planned for it.
    """
    tape = job.tape
    return Leaf(
        title="Nails",
        headline=_headline(plan, tape),
        parts=(
            Part(title="How deep", said=tuple(_rule(plan, tape))),
            *(
                Part(
                    title=surface.surface_id,
                    said=tuple(_surface(job, surface, plan, tape)),
                    grid=_pieces(surface, tape),
                )
                for surface in plan.surfaces
            ),
            Part(
                title="To buy",
                said=(Said(f"{float(SPARE_SHARE.value):.0%} more than are driven.", (SPARE,)),)
                if plan.to_buy
                else (),
                grid=_buying(plan, tape),
            ),
        ),
    )


def called_nail(nail: Nail, tape: TapeStyle) -> str:
    """Say what a nail is asked for by in a shop."""
    size = f" ({nail.size})" if nail.size else ""
    return f"{write_inches(nail.length_nm, tape)}{size} {nail.kind}"


def write_bit(bit_nm: Nm) -> str:
    """Write a drill bit by its 64ths of an inch, and in millimetres, for it is sold by either."""
    inches, millimetres = (write_fine(bit_nm, TapeStyle(system=system)) for system in System)
    return f"{inches} ({millimetres})"


def _headline(plan: NailPlan, tape: TapeStyle) -> Said:
    total = sum(one.driven for one in plan.to_buy)
    if not plan.pieces:
        return Said("Nothing is left to nail.")
    if not total:
        return Said("No nail of this kind reaches the framing without passing the depth allowed: see below.")
    sorts = listed([f"{one.driven} × {called_nail(one.nail, tape)}" for one in plan.to_buy])
    if len(plan.to_buy) == 1:
        sorts = f"all {called_nail(plan.to_buy[0].nail, tape)}s"
    loose = sum(len(surface.not_held) for surface in plan.surfaces)
    more = f" {counted(loose, 'piece').capitalize()} need more than nails." if loose > 1 else ""
    more = " One piece needs more than nails." if loose == 1 else more
    unchecked = [surface.surface_id for surface in plan.surfaces if surface.unchecked]
    if unchecked:
        more += f" Whether they hold it up was not checked: {listed(unchecked)}."
    sources = tuple(dict.fromkeys(source for one in plan.to_buy for source in one.nail.sources))
    return Said(f"{total} nails: {sorts}.{more}", sources)


def _rule(plan: NailPlan, tape: TapeStyle) -> Iterator[Said]:
    rule = plan.rule
    yield Said(
        f"The longest nail is taken whose tip stays within {write_inches(rule.unknown_nm, tape)} of the "
        f"framing's face where nobody looked inside, {write_inches(rule.opened_nm, tape)} where it was "
        f"opened and mapped; at least {write_inches(rule.bite_nm, tape)} of bite is wanted.",
        (CABLE_DEPTH, HEAD_SET, OPENED, BITE),
    )
    protected = PROTECTED_DEPTH_NM.value
    if max(rule.unknown_nm, rule.opened_nm) > protected:
        yield Said(
            f"You allow more than {write_inches(protected, tape)}, at which a cable may lie unprotected: "
            "that takes somebody who knows what runs there.",
            (CABLE_DEPTH, PIPE_DEPTH),
        )


def _surface(job: Job, surface: SurfaceNails, plan: NailPlan, tape: TapeStyle) -> Iterator[Said]:
    if surface.solid:
        yield Said(
            f"Solid backing takes nails anywhere: about every {write_inches(ON_SOLID_NM.value, tape)}, two "
            f"abreast from a width of {write_inches(TWO_ACROSS_NM.value, tape)} on, clear of what runs "
            "behind. Depths are counted from the backing's face.",
            (ON_SOLID, TWO_ACROSS),
        )
        yield from _backing(surface, tape)
    told = surface.published
    board = write_inches(surface.board_nm, tape)
    allowed = plan.rule.allowed_nm(opened=surface.opened, backing_nm=surface.backing_nm)
    between = write_inches(surface.between_nm, tape)
    over = f" over {between} of what lies between" if surface.between_nm else ""
    yield Said(
        f"With boards of {board}{over}, other rules would have: three times the board, "
        f"{write_inches(told.three_times_nm, tape)}, whose tip is "
        f"{_past(told.three_times_depth_nm, allowed, tape)}; {write_inches(SIDING_BITE_NM.value, tape)} of "
        f"bite, {write_inches(told.siding_nm, tape)}, {_past(told.siding_depth_nm, allowed, tape)}. They "
        "are not followed where they go deeper than is allowed.",
        (THREE_TIMES, SIDING),
    )
    short = surface.short_bite
    if short:
        yield Said(
            f"Less bite than is wanted: {_named(short)}. A ring shank, a thicker nail or glue makes up for "
            "it; a deeper nail does only where you know what runs behind.",
            (BITE, ADHESIVE),
        )
    if any(one.blind for piece in surface.pieces for one in piece.driven):
        yield Said(
            "Tongued boards are nailed at 45° at the root of the tongue; the starter, wide ones, the last "
            "course and those on a board without a tongue through the face as well.",
            (BLIND, TONGUE_ROOT, BLIND_ALONE),
        )
    yield from _not_held(surface)
    yield from _strength(job, surface, tape)
    if any(piece.near_ends for piece in surface.pieces):
        yield Said(
            f"Drill first near the ends of old boards; the hole is up to {float(HOLE_SHARE.value):.0%} of "
            f"the nail, in dense wood up to {float(HOLE_SHARE_DENSE.value):.0%}.",
            (NEAR_END, PREBORED, SIDING),
        )


def _backing(surface: SurfaceNails, tape: TapeStyle) -> Iterator[Said]:
    """Tell what solid backing does to depth and hold."""
    if surface.backing_nm is None:
        open_behind = (
            ""
            if surface.opened
            else (" Behind a thin sheet a tip may come out and hit a cable or pipe that touches its back.")
        )
        yield Said(
            "What nails hold in it, and whether they come out behind it, depends on how thick it is: say so "
            f"under [surface.framing].{open_behind}",
            (WITHDRAWAL, SHEET_BACK),
        )
    elif surface.behind_nm:
        yield Said(
            f"Nails come out behind the backing by up to {write_inches(surface.behind_nm, tape)}, for you "
            "say that it was opened and mapped; only what is in the backing is counted as bite.",
            (SHEET_BACK, OPENED),
        )
    else:
        thick = write_inches(surface.backing_nm, tape)
        yield Said(f"No tip comes out behind the backing, which is {thick} thick.", (SHEET_BACK,))


def _past(depth: int, allowed: int, tape: TapeStyle) -> str:
    said = f"{write_inches(depth, tape)} into the framing"
    return f"{said}, {write_inches(depth - allowed, tape)} too deep" if depth > allowed else said


def _not_held(surface: SurfaceNails) -> Iterator[Said]:
    by_reason: dict[str, list[PieceNails]] = {}
    for piece in surface.not_held:
        by_reason.setdefault(_why_loose(piece), []).append(piece)
    for why, pieces in by_reason.items():
        yield Said(
            f"{_named(pieces)}: {why}. Let blocking in between the framing before it is covered, or glue as "
            "well: beads of construction adhesive on what lies behind, and no nail there.",
            (ADHESIVE,),
        )


def _why_loose(piece: PieceNails) -> str:
    if any(one.chosen.nail is None for one in piece.driven):
        return "no nail of this kind reaches the framing within the depth allowed"
    if piece.cut_off_by:
        return f"cut off from framing by {', '.join(piece.cut_off_by)}"
    return "held at too few places"


def _strength(job: Job, surface: SurfaceNails, tape: TapeStyle) -> Iterator[Said]:
    if surface.brads_alone:
        yield Said(
            "Brads alone hold no board overhead: take a thicker nail or screws, with glue or without.",
            (NO_BRADS,),
        )
    judged = [piece for piece in surface.pieces if piece.times_its_weight is not None]
    if not judged:
        return
    weakest = min(judged, key=lambda piece: piece.times_its_weight or 0.0)
    times = weakest.times_its_weight or 0.0
    sources: tuple[Source, ...] = (WITHDRAWAL, SHARE_OF_ULTIMATE)
    if not job.surface(surface.surface_id).framing.wood:
        sources = (*sources, WEAK_FRAMING)
    weight, holds = (write_force(force, tape) for force in (weakest.weight_n, weakest.holds_n or 0.0))
    how = "all of it hangs on the nails" if surface.overhead else "on a wall little of it pulls straight out"
    yield Said(
        f"Weakest against its weight is {weakest.label}: it weighs {weight} ({how}), and {holds} would draw "
        f"its nails, {_times(times)} times as much; at least {TRUSTED_SHARE.value:.0f} times are asked for "
        "overhead.",
        sources,
    )
    if surface.too_heavy:
        yield Said(
            f"Too heavy for their nails: {_named(surface.too_heavy)}. Take thicker nails or screws, more of "
            "them, or glue as well.",
            (SHARE_OF_ULTIMATE, ADHESIVE),
        )


def _pieces(surface: SurfaceNails, tape: TapeStyle) -> Grid | None:
    rows = tuple(
        (
            piece.label,
            " + ".join(_driven(one, tape) for one in piece.driven) or "none",
            " + ".join(write_inches(one.chosen.bite_nm, tape) for one in piece.driven) or "-",
            " + ".join(write_inches(one.chosen.deepest_nm, tape) for one in piece.driven) or "-",
            f"{piece.members} of {piece.members_wanted}" if piece.members_wanted else "",
            str(piece.near_ends or ""),
            "" if piece.times_its_weight is None else f"{_times(piece.times_its_weight)} ×",
        )
        for piece in surface.pieces
    )
    columns = ("piece", "nails", "bite", "deepest", "held at", "drill", "holds")
    return Grid(columns=columns, rows=rows) if rows else None


def _times(times: float) -> str:
    """Write how many times as much: with a decimal where it decides."""
    return f"{times:.1f}" if times < _FEW_TIMES else f"{times:.0f}"


def _driven(one: Driven, tape: TapeStyle) -> str:
    nail = one.chosen.nail
    if nail is None:
        return f"{one.count} places, but no nail of this kind is short enough"
    where = "at the tongue" if one.blind else "through the face"
    return f"{one.count} × {called_nail(nail, tape)} {where}"


def _buying(plan: NailPlan, tape: TapeStyle) -> Grid | None:
    if not plan.to_buy:
        return None
    rows = [(called_nail(one.nail, tape), str(one.driven), str(one.bought)) for one in plan.to_buy]
    pounds = ["" if one.pounds is None else f"{one.pounds:.2f} lb" for one in plan.to_buy]
    if not any(pounds):
        return Grid(columns=("nail", "driven", "to buy"), rows=tuple(rows))
    weighed = tuple((*row, weight) for row, weight in zip(rows, pounds, strict=True))
    return Grid(columns=("nail", "driven", "to buy", "about"), rows=weighed)


def _named(pieces: Sequence[PieceNails]) -> str:
    labels = [piece.label for piece in pieces]
    if len(labels) <= _MOST_NAMED:
        return listed(labels)
    return f"{', '.join(labels[:_MOST_NAMED])} and {len(labels) - _MOST_NAMED} more"

"""Say in plain words whether the boards are ready, and how far they will move."""

from collections.abc import Iterator

from plankwright.measure import TapeStyle, round_up, write_inches, write_small, write_temperature
from plankwright.model import Air, Job
from plankwright.paper.leaf import Grid, Leaf, Part
from plankwright.trade.moisture.equilibrium import humidity_for_pct
from plankwright.trade.moisture.facts import (
    ALLOWANCE,
    CHANGE,
    CHANGE_BEYOND,
    COVER_PCT,
    EMC,
    FLAT_SAWN,
    GRAIN,
    INTERIOR,
    LEAST_READABLE_BY_RESISTANCE_PCT,
    LEAST_READABLE_PCT,
    METERS,
    MIDPOINT,
    MOST_READABLE_PCT,
    NEAR_ENOUGH_PCT,
    NO_FORMULA,
    SEASON,
    STACKED,
    TONGUE_SHARE,
    TONGUE_STAYS,
)
from plankwright.trade.moisture.movement import within_coefficients
from plankwright.trade.source import Said, Source
from plankwright.workshop.advice.judge_moisture import Moisture, Verdict
from plankwright.workshop.advice.judge_movement import Change, Movement, SquareEdges, Tongues
from plankwright.workshop.advice.woods import seasons
from plankwright.workshop.wording import capital, counted


def moisture_leaf(job: Job, moisture: Moisture) -> Leaf:
    """Tell whether the boards are ready.

    Parameters
    ----------
    job
        The job.
    moisture
        What was judged of it.
    """
    return Leaf(
        title="Moisture and movement",
        headline=_headline(moisture),
        parts=(
            Part(title="The room", said=tuple(_room(job, moisture))),
            Part(title="The boards", said=tuple(_boards(moisture)), grid=_readings(moisture)),
            *(
                Part(
                    title=f"Movement, {movement.surface_id}",
                    said=tuple(_movement(movement, moisture, job.tape)),
                )
                for movement in moisture.movements
            ),
        ),
    )


def _headline(moisture: Moisture) -> Said:
    near = (MIDPOINT, NO_FORMULA)
    judged = " that is still to hang" if moisture.hung else " that hangs" if moisture.spares else ""
    match moisture.verdict:
        case Verdict.GO if moisture.unmeasured:
            return Said(
                f"Go for what was measured ({counted(len(moisture.readings), 'reading')}); measure the "
                f"other {len(moisture.unmeasured)} before they are hung.",
                near,
            )
        case Verdict.GO:
            return Said(f"Go: every board{judged} is near enough to the moisture of its room.", near)
        case Verdict.WAIT:
            return Said(
                f"Wait: {counted(len(moisture.far), 'reading')} of {len(moisture.readings)} "
                f"{'is' if len(moisture.far) == 1 else 'are'} too far off. Leave such boards stacked with "
                f"stickers in the room for {moisture.least_days} days at least, and go by the meter, not by "
                "the calendar.",
                (STACKED, *near),
            )
        case Verdict.MEASURE:
            return Said(
                f"Measure first: no board{judged} has a reading. A meter at a few boards of each lot tells "
                "whether they are ready; write it into the column moisture of the tally.",
                near,
            )
        case Verdict.DONE:
            return Said("Nothing is left to hang.")
        case Verdict.BARRED:
            return Said("No board may be hung: not one of those that are left is free of treatment.")


def _room(job: Job, moisture: Moisture) -> Iterator[Said]:
    room, tape = job.room, job.tape
    if room is None:
        yield Said(
            "Nothing is known of the room's air, so it is taken as most heated rooms: wood comes to "
            f"{moisture.dry_pct:.0f} to {moisture.damp_pct:.0f} %. Say under [room] in job.toml what it is.",
            (INTERIOR,),
        )
    else:
        dry, damp = seasons(room)
        yield Said(
            f"In the dry season ({_air(dry.air, tape)}) wood comes to {_pct(dry.moisture_pct)}, in the "
            f"damp one ({_air(damp.air, tape)}) to {_pct(damp.moisture_pct)}: midway "
            f"{_pct(moisture.middle_pct)}.",
            (EMC, MIDPOINT),
        )
        if max(room.dry.humidity_pct, room.damp.humidity_pct) > COVER_PCT:
            yield Said(f"Above {COVER_PCT:.0f} % of humidity the figure is rough.", (EMC,))
        if room.now is not None and moisture.now_pct is not None:
            now = _air(room.now, tape)
            yield Said(f"In its air now ({now}) it comes to {_pct(moisture.now_pct)}.", (EMC,))
    if moisture.room_itself_off:
        yield Said(
            "That is not where the boards should be: waiting in this air leads them astray. Heat the room, "
            f"or dry or dampen its air, as it will be lived in{_to_hold(job, moisture)}, and then wait.",
            (MIDPOINT, EMC),
        )


def _to_hold(job: Job, moisture: Moisture) -> str:
    """Say which humidity keeps wood midway at the temperature that the room has in between its seasons."""
    if job.room is None:
        return ""
    middle = (job.room.dry.temperature_c + job.room.damp.temperature_c) / 2
    humidity = humidity_for_pct(middle, moisture.middle_pct)
    return f" (about {humidity:.0f} % of humidity at {write_temperature(middle, job.tape)})"


def _boards(moisture: Moisture) -> Iterator[Said]:
    if moisture.readings:
        yield from _read(moisture)
    if moisture.spares:
        yield Said(
            f"{capital(counted(len(moisture.spares), 'board'))} that the layout does not use "
            f"{'was' if len(moisture.spares) == 1 else 'were'} not judged."
        )
    if moisture.hung:
        hangs, was = ("hangs", "was") if len(moisture.hung) == 1 else ("hang", "were")
        yield Said(
            f"{capital(counted(len(moisture.hung), 'board'))} of which all {hangs} already {was} not judged."
        )


def _read(moisture: Moisture) -> Iterator[Said]:
    read = sorted(reading.moisture_pct for reading in moisture.readings)
    median = (read[(len(read) - 1) // 2] + read[len(read) // 2]) / 2
    yield Said(
        f"{capital(counted(len(read), 'reading'))}: {_pct(read[0])} to {_pct(read[-1])}, the middle one "
        f"{_pct(median)}. Within {NEAR_ENOUGH_PCT.value:g} points of {_pct(moisture.middle_pct)} is near "
        "enough.",
        (ALLOWANCE, MIDPOINT),
    )
    if any(not reading.readable for reading in moisture.readings):
        yield Said(
            f"Readings below {LEAST_READABLE_PCT.value:g} % ({LEAST_READABLE_BY_RESISTANCE_PCT.value:g} with "
            f"a resistance meter) or above {MOST_READABLE_PCT.value:g} % are none that a meter can be "
            f"trusted with; above {MOST_READABLE_PCT.value:g} the board is wet.",
            (METERS,),
        )
    yield Said("Correct what a resistance meter reads for the temperature of the wood.", (METERS,))


def _readings(moisture: Moisture) -> Grid | None:
    rows = [
        (
            reading.of,
            _pct(reading.moisture_pct),
            f"{reading.off_pct:+.1f}",
            "wait" if reading.waits else "go",
        )
        for reading in moisture.readings
    ]
    if not rows:
        return None
    return Grid(columns=("of", "moisture", "off", ""), rows=tuple(rows))


def _movement(movement: Movement, moisture: Moisture, tape: TapeStyle) -> Iterator[Said]:
    sources = _change_sources(movement, moisture)
    told = _tell_most(movement.opens, movement.closes, tape)
    if movement.opens.most_nm or movement.closes.most_nm:
        told += f" That is for flat-sawn boards; quarter-sawn ones move {_quarter_sawn(moisture)}."
    yield Said(told, sources)
    if movement.tongues is not None:
        yield _tell_tongues(movement.tongues, sources, tape)
    if movement.square is not None:
        yield _tell_square(movement.square, sources, tape, laid=movement.laid)
    yield _tell_swelling(movement, sources, tape)
    tight = movement.laid and not movement.all_hangs
    if tight and not (movement.room and movement.square is None):
        yield Said("The marks of the layout are tight: leave no gaps between its courses.")
    end = write_small(max(movement.end_closes_nm, movement.end_opens_nm), tape)
    yield Said(f"Along the grain the longest run moves by {end} at most.", (GRAIN,))


def _tell_most(opens: Change, closes: Change, tape: TapeStyle) -> str:
    """Say which course, or which board, opens most and which closes most."""
    narrower, wider = f"{_range(opens, tape)} narrower", f"{_range(closes, tape)} wider"
    once_ready = opens.once_ready or closes.once_ready
    if opens.most_nm and closes.most_nm and _which(opens, tape) == _which(closes, tape) and not once_ready:
        return (
            f"{_which(opens, tape)} moves most: it gets {narrower} by the dry season and {wider} by the "
            "damp one."
        )
    opening = (
        f"{_which(opens, tape)} opens most: {_once_ready(opens)}it gets {narrower} by the dry season."
        if opens.most_nm
        else f"No {_kind(opens)} gets narrower by the dry season."
    )
    closing = (
        f"{_which(closes, tape)} closes most: {_once_ready(closes)}it gets {wider} by the damp season."
        if closes.most_nm
        else f"No {_kind(closes)} gets wider by the damp season."
    )
    return f"{opening} {closing}"


def _once_ready(change: Change) -> str:
    return "once it has come to midway " if change.once_ready else ""


def _kind(change: Change) -> str:
    return "board" if change.course is None else "course"


def _which(change: Change, tape: TapeStyle) -> str:
    width = write_inches(change.width_nm, tape)
    if change.course is None:
        return f"Board {change.board_id} ({width})"
    return f"Course {change.course} ({width}, board {change.board_id})"


def _tell_tongues(tongues: Tongues, sources: tuple[Source, ...], tape: TapeStyle) -> Said:
    reach, opens = write_inches(tongues.reach_nm, tape), write_small(tongues.opens_nm, tape)
    share = f"{100 * TONGUE_SHARE.value:.0f} %"
    if tongues.covered:
        told = f"A tongue or lap of {reach} stays covered by {share} or more where seams open by {opens}."
    else:
        told = (
            f"A tongue or lap of {reach} would stay covered by less than {share} where seams open by {opens}"
        )
        if not tongues.hangs:
            told += ": let the boards dry first, or take narrower ones"
        told += "."
    if tongues.open_nm:
        told += (
            f" That is a seam that is open by {write_small(tongues.open_nm, tape)} as it hangs, which is "
            "counted in."
        )
    return Said(told, (TONGUE_STAYS, *sources))


def _tell_square(square: SquareEdges, sources: tuple[Source, ...], tape: TapeStyle, *, laid: bool) -> Said:
    opens, closes = write_small(square.opens_nm, tape), write_small(square.closes_nm, tape)
    if laid:
        return Said(f"Seams that no tongue or lap covers open by {opens} at most.", sources)
    return Said(
        f"Seams of square edges open by {opens} at most: hang boards tight if they are damper than the room "
        f"will be, and with {closes} between courses if they are drier.",
        (*sources, SEASON),
    )


def _tell_swelling(movement: Movement, sources: tuple[Source, ...], tape: TapeStyle) -> Said:
    swell, half = (write_small(nm, tape) for nm in (movement.most_swell_nm, movement.most_swell_nm / 2))
    gap = write_inches(movement.gap_nm, tape)
    together = "All courses together"
    if movement.swells_more_once_ready:
        together = "Once the boards are ready, all courses together"
        sources = (*sources, MIDPOINT)
    if movement.room:
        may = "may swell" if movement.swells_more_once_ready else "swell"
        return Said(
            f"{together} {may} by {swell} at most, {half} a side if none of it is taken up between them: the "
            f"gap of {gap} has room for it.",
            sources,
        )
    over = f"{together} may swell by {swell}, {half} a side, which is more than the gap of {gap}"
    if not movement.laid:
        return Said(f"{over}: leave a hair between courses, or make expansion_gap wider.", sources)
    if movement.all_hangs:
        return Said(f"{over}. All of it hangs: look after its edges in the damp season.", sources)
    wider = _wider_gap(movement, tape)
    if movement.ready_swell_nm >= movement.all_swell_nm or movement.swells_more_once_ready:
        return Said(f"{over}: {wider}.", sources)
    ready, half_ready = (
        write_small(nm, tape) for nm in (movement.ready_swell_nm, movement.ready_swell_nm / 2)
    )
    if movement.room_once_ready:
        remedy = (
            f"let the boards come nearer to midway first, from where they swell by {ready}, {half_ready} a "
            f"side; or {wider}"
        )
    else:
        remedy = (
            f"{wider}. Boards that have come to midway first swell by {ready}, {half_ready} a side, which is "
            "still more"
        )
    return Said(f"{over}: {remedy}.", (*sources, MIDPOINT))


def _wider_gap(movement: Movement, tape: TapeStyle) -> str:
    """Say how wide a gap has room for what swells; what hangs keeps the one that it has."""
    enough = round_up(round(movement.most_swell_nm / 2), tape.step_nm)
    told = f"set expansion_gap in job.toml to {write_inches(enough, tape)} or more and lay out anew"
    return f"where nothing hangs yet, {told}" if movement.hanging else told


def _change_sources(movement: Movement, moisture: Moisture) -> tuple[Source, ...]:
    inside = within_coefficients(
        moisture.dry_pct, moisture.damp_pct, movement.driest_pct, movement.dampest_pct
    )
    woods = [source for wood in moisture.woods for source in wood.coefficient_sources]
    if not inside:
        woods += [source for wood in moisture.woods for source in wood.total_sources]
    return ((CHANGE if inside else CHANGE_BEYOND), *dict.fromkeys(woods), FLAT_SAWN)


def _quarter_sawn(moisture: Moisture) -> str:
    """Say how much boards move whose growth rings stand upright, against those whose rings lie flat."""
    shares = [
        one.radial / one.tangential
        for wood in moisture.woods
        for one in wood.species
        if one.radial is not None
    ]
    if not shares:
        return "less"
    low, high = (f"{share:.0%}" for share in (min(shares), max(shares)))
    share = low if low == high else f"{low.rstrip('%')} to {high}"
    return f"{share} as much"


def _range(change: Change, tape: TapeStyle) -> str:
    low, high = (write_small(end, tape) for end in (change.least_nm, change.most_nm))
    return high if low == high else f"{low.rsplit(' ', 1)[0]} to {high}"


def _air(air: Air, tape: TapeStyle) -> str:
    return f"{write_temperature(air.temperature_c, tape)}, {air.humidity_pct:.0f} %"


def _pct(moisture: float) -> str:
    return f"{moisture:.1f} %"

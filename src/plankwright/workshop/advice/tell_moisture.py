"""Say in plain words whether the boards are ready, and how far they will move."""

from collections.abc import Iterator

from plankwright.measure import TapeStyle, write_inches, write_small, write_temperature
from plankwright.model import Air, Job
from plankwright.paper.leaf import Grid, Leaf, Part
from plankwright.trade.moisture.equilibrium import humidity_for_pct
from plankwright.trade.moisture.facts import (
    CHANGE,
    CHANGE_BEYOND,
    COVER_PCT,
    EMC,
    FLAT_SAWN,
    GRAIN,
    INTERIOR,
    METERS,
    MIDPOINT,
    NEAR_ENOUGH_PCT,
    NO_FORMULA,
    SEASON,
    STACKED,
    TONGUE_STAYS,
)
from plankwright.trade.moisture.movement import within_coefficients
from plankwright.trade.source import Said, Source
from plankwright.workshop.advice.judge_moisture import Moisture, Movement, Verdict
from plankwright.workshop.wording import capital, counted

_MOST_ROWS = 12


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
    match moisture.verdict:
        case Verdict.GO if moisture.unmeasured:
            return Said(
                f"Go for what was measured ({counted(len(moisture.readings), 'reading')}); measure the "
                f"other {len(moisture.unmeasured)} before they are hung.",
                near,
            )
        case Verdict.GO:
            return Said("Go: every board is near enough to the moisture of its room.", near)
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
                "Measure first: no board has a reading. A meter at a few boards of each lot tells whether "
                "they are ready; write it into the column moisture of the tally.",
                near,
            )


def _room(job: Job, moisture: Moisture) -> Iterator[Said]:
    room, tape = job.room, job.tape
    if room is None:
        yield Said(
            "Nothing is known of the room's air, so it is taken as most heated rooms: wood comes to "
            f"{moisture.dry_pct:.0f} to {moisture.damp_pct:.0f} %. Say under [room] in job.toml what it is.",
            (INTERIOR,),
        )
    else:
        yield Said(
            f"In the dry season ({_air(room.dry, tape)}) wood comes to {_pct(moisture.dry_pct)}, in the "
            f"damp one ({_air(room.damp, tape)}) to {_pct(moisture.damp_pct)}: midway "
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
    if not moisture.readings:
        return
    read = sorted(reading.moisture_pct for reading in moisture.readings)
    median = (read[(len(read) - 1) // 2] + read[len(read) // 2]) / 2
    yield Said(
        f"{capital(counted(len(read), 'reading'))}: {_pct(read[0])} to {_pct(read[-1])}, the middle one "
        f"{_pct(median)}. Within {NEAR_ENOUGH_PCT.value:g} points of {_pct(moisture.middle_pct)} is near "
        "enough.",
        (NO_FORMULA,),
    )
    if any(not reading.readable for reading in moisture.readings):
        yield Said(
            "Readings below 4 % (6 with a resistance meter) or above 30 % are none that a meter can be "
            "trusted with; above 30 the board is wet.",
            (METERS,),
        )
    yield Said("Correct what a resistance meter reads for the temperature of the wood.", (METERS,))


def _readings(moisture: Moisture) -> Grid | None:
    rows = [
        (
            reading.of,
            _pct(reading.moisture_pct),
            f"{reading.off_pct:+.1f}",
            "wait" if reading in moisture.far else "go",
        )
        for reading in moisture.readings
    ]
    if not rows:
        return None
    return Grid(columns=("of", "moisture", "off", ""), rows=tuple(rows))


def _movement(movement: Movement, moisture: Moisture, tape: TapeStyle) -> Iterator[Said]:
    sources = _change_sources(moisture)
    yield Said(
        f"The widest course ({write_inches(movement.widest_nm, tape)}) gets "
        f"{_range(movement.opens_nm, tape)} narrower by the dry season, and "
        f"{_range(movement.closes_nm, tape)} wider by the damp one, flat-sawn; quarter-sawn boards move "
        f"{_quarter_sawn(moisture)} as much.",
        sources,
    )
    if movement.tongue_nm is not None:
        reach = write_inches(movement.tongue_nm, tape)
        if movement.tongue_covered:
            yield Said(f"A tongue or lap of {reach} still covers such a gap.", (TONGUE_STAYS,))
        else:
            yield Said(
                f"A tongue or lap of {reach} would be drawn out by more than half: let the boards dry "
                "first, or set narrower ones.",
                (TONGUE_STAYS,),
            )
    else:
        yield Said(
            "Square edges open by as much: hang them tight if they are damper than the room will be, and "
            f"with {write_small(movement.closes_nm[1], tape)} between courses if they are drier.",
            (*sources, SEASON),
        )
    half = write_small(movement.all_swell_nm / 2, tape)
    gap = write_inches(movement.gap_nm, tape)
    if movement.room:
        yield Said(
            f"All courses together swell by {write_small(movement.all_swell_nm, tape)} at most, {half} a "
            f"side if none of it is taken up between them: the gap of {gap} has room for it.",
            sources,
        )
    else:
        yield Said(
            f"All courses together may swell by {write_small(movement.all_swell_nm, tape)}, {half} a side, "
            f"which is more than the gap of {gap}: leave a hair between courses, or make expansion_gap "
            "wider.",
            sources,
        )
    end = write_small(max(movement.end_closes_nm, movement.end_opens_nm), tape)
    yield Said(f"Along the grain the longest run moves by {end} at most.", (GRAIN,))


def _change_sources(moisture: Moisture) -> tuple[Source, ...]:
    read = [reading.moisture_pct for reading in moisture.readings]
    inside = within_coefficients(moisture.dry_pct, moisture.damp_pct, *read)
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
        return "about half"
    low, high = (f"{share:.0%}" for share in (min(shares), max(shares)))
    return low if low == high else f"{low.rstrip('%')} to {high}"


def _range(ends_nm: tuple[float, float], tape: TapeStyle) -> str:
    low, high = (write_small(end, tape) for end in ends_nm)
    return high if low == high else f"{low.rsplit(' ', 1)[0]} to {high}"


def _air(air: Air, tape: TapeStyle) -> str:
    return f"{write_temperature(air.temperature_c, tape)}, {air.humidity_pct:.0f} %"


def _pct(moisture: float) -> str:
    return f"{moisture:.1f} %"

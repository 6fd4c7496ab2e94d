"""What is said of paint: where it has to be tested for lead, and what to do where lead was found."""

from collections.abc import Iterator, Sequence

from plankwright.measure import FOOT, METRE, to_celsius
from plankwright.model import Paint
from plankwright.trade.hazards.doubts import doubtful_lots
from plankwright.trade.hazards.facts import (
    DUSTY_TASK,
    HEAT_GUN_F,
    LEAD_BARRED,
    LEAD_BODY,
    LEAD_CHANCE,
    LEAD_CHANCE_PCT,
    LEAD_CLOTHES,
    LEAD_DEEP,
    LEAD_FUMES,
    LEAD_HOME,
    LEAD_MILLED,
    LEAD_OUT,
    LEAD_RULE,
    LEAD_UNTIL,
    LEAD_WHO,
    MINOR_INSIDE_FT2,
    MINOR_OUTSIDE_FT2,
    RESPIRATOR,
    WHO_DECIDES,
)
from plankwright.trade.hazards.situation import PaintedLot, Situation
from plankwright.trade.source import Said


def lead_chance_pct(built: int) -> int | None:
    """Give how many of a hundred houses of a year have lead paint, as far as a summary goes. [%]"""
    return next((chance for before, chance in LEAD_CHANCE_PCT.value if built < before), None)


def tell_lead(situation: Situation) -> Iterator[Said]:
    """Tell what is known of the paint on the boards and in the house, and what follows.

    Parameters
    ----------
    situation
        What of the job decides.
    """
    if not situation.tallied:
        yield Said(
            "Paint of unknown age may hold lead: have it tested before boards are scraped, sanded, planed, "
            "heated or sawn.",
            (LEAD_CHANCE,),
        )
    for lot in situation.lots:
        yield from _of_lot(lot)
    yield from _of_house(situation.house_built)
    untested = doubtful_lots(situation)
    found = tuple(lot.name for lot in situation.lots if lot.paint is Paint.LEAD)
    yield from _of_tasks(situation.tasks, untested, found)
    if untested:
        yield Said(
            f"Have paint tested before it is scraped, sanded, planed, heated or sawn: {', '.join(untested)}."
        )
    if found:
        yield from _where_found(found)
    if untested or found:
        yield _rule(situation.lots)


def _of_lot(lot: PaintedLot) -> Iterator[Said]:
    area = f"{lot.area} a face"
    match lot.paint:
        case Paint.LEAD:
            yield Said(f"{lot.name}: lead was found on {area} of boards.")
        case Paint.UNKNOWN:
            chance = None if lot.built is None else lead_chance_pct(lot.built)
            if chance is not None:
                yield Said(
                    f"{lot.name}: paint on {area} was not tested. Of houses as old ({lot.built}), about "
                    f"{chance} in a hundred have lead paint.",
                    (LEAD_CHANCE,),
                )
            elif lot.built is None and lot.seen:
                yield Said(
                    f"{lot.name}: the tally speaks of paint on {', '.join(lot.seen)}. Neither its age nor a "
                    "test of it is known, so it may hold lead."
                )
            elif lot.built is None:
                yield Said(
                    f"{lot.name}: neither the age nor any paint on {area} is known, so it may hold lead. "
                    "What is known of a lot of the tally can be told under [[lot]] in job.toml."
                )
            else:
                yield Said(
                    f"{lot.name}: paint on {area} was not tested, and wood may be older than its house."
                )
        case Paint.NO_LEAD_FOUND:
            yield Said(f"{lot.name}: a test found no lead; other coats and boards may differ.")
        case Paint.NONE:
            if lot.seen:
                yield _against_what_is_said(lot)


def _against_what_is_said(lot: PaintedLot) -> Said:
    """Tell of boards that are painted in a lot of which it is said that nothing is on it."""
    chance = None if lot.built is None else lead_chance_pct(lot.built)
    odds = f" Of houses as old ({lot.built}), about {chance} in a hundred have lead paint." if chance else ""
    return Said(
        f"{lot.name}: said to be unpainted, yet the tally speaks of paint on {', '.join(lot.seen)}: test "
        f"it.{odds}",
        (LEAD_CHANCE,) if chance else (),
    )


def _of_house(built: int | None) -> Iterator[Said]:
    """Tell of the paint on the walls of the house itself."""
    if built is None or built < LEAD_UNTIL.value:
        chance = None if built is None else lead_chance_pct(built)
        told = "is of unknown age" if built is None else f"is from {built}"
        odds = f"; about {chance} in a hundred as old have it" if chance else ""
        yield Said(
            f"The house {told}, so the paint on its own walls may hold lead too{odds}: nailing, notching "
            "and sanding disturb it.",
            (LEAD_CHANCE, LEAD_WHO),
        )


def _of_tasks(tasks: Sequence[str], untested: Sequence[str], found: Sequence[str]) -> Iterator[Said]:
    """Hold the user's own tasks against the paint that they would make dust or fumes of."""
    dusty = [task for task in tasks if DUSTY_TASK.search(task.lower())]
    if not dusty:
        return
    limits = []
    if untested:
        limits.append(f"Not before the paint of {', '.join(untested)} was tested")
    if found:
        limits.append(f"To {', '.join(found)} only as is told below, for lead was found there")
    if limits:
        yield Said(
            f"You plan to do this: {', '.join(dusty)}. {'. '.join(limits)}; it makes dust or fumes of "
            "whatever is in the paint.",
            (LEAD_WHO,),
        )


def _where_found(names: Sequence[str]) -> Iterator[Said]:
    """Tell the usual practice with boards whose paint holds lead."""
    yield Said(
        f"Where lead was found ({', '.join(names)}), better leave the boards out, or leave them to a "
        "certified renovator; local codes decide what may be done with them.",
        (LEAD_OUT, LEAD_BODY, WHO_DECIDES),
    )
    heat_f = HEAT_GUN_F.value
    yield Said(
        "If you work on them all the same: no dry sanding or scraping, no planing, no flame and no heat gun. "
        f"Rules for paid work bar flames, heat guns above {heat_f} °F ({to_celsius(heat_f):.0f} °C) and "
        "machines without HEPA suction, a stricter one dry sanding and scraping; the hotter, the more fumes.",
        (LEAD_BARRED, LEAD_FUMES),
    )
    yield Said(
        "Mist what you sand, scrape or saw by hand; a power tool gets HEPA suction instead, and no water "
        "near it. Plastic below, and over doors and vents; then a HEPA vacuum and wet wiping. Children, "
        "pregnant women and pets stay away all the while.",
        (LEAD_HOME,),
    )
    yield Said(
        f"Wear a respirator that fits, of class {RESPIRATOR.value}, and coveralls to throw away. Neither eat "
        "nor smoke at work, wash as soon as you stop, and wash your clothes apart from the family's.",
        (LEAD_BODY, LEAD_CLOTHES),
    )
    yield Said(
        "Planing may not be rid of it: up to a third of the thickness had to come off elsewhere, and mills "
        "that plane such boards have suction made for it.",
        (LEAD_DEEP, LEAD_MILLED),
    )


def _rule(lots: Sequence[PaintedLot]) -> Said:
    """Tell from which area on there are rules for paid work, and whether the boards are more."""
    over = sum(lot.face_ft2 for lot in lots if lot.doubtful) > MINOR_INSIDE_FT2.value
    more = ", and these boards are more" if over else ""
    return Said(
        f"In the United States work for pay in housing from before {LEAD_UNTIL.value} has rules above "
        f"{_square_feet(MINOR_INSIDE_FT2.value)} of painted surface a room, or above "
        f"{_square_feet(MINOR_OUTSIDE_FT2.value)} outside{more}; working the same way in your own home is "
        "urged.",
        (LEAD_RULE, LEAD_WHO),
    )


def _square_feet(area_ft2: int) -> str:
    """Write an area of a rule in its own unit, and in square metres."""
    return f"{area_ft2} ft² ({area_ft2 * FOOT**2 / METRE**2:.2f} m²)"

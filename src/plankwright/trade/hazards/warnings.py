"""Which hazards a job has, and what is said of each.

Short, specific, and with the threshold where there is one. Nothing here says that anything is permitted or
that it cannot hurt: local codes and licensed trades decide.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from plankwright.measure import FOOT, METRE, Nm, System, TapeStyle, write_inches, write_length
from plankwright.model import Paint
from plankwright.trade.fasteners.facts import CABLE_DEPTH, PROTECTED_DEPTH_NM
from plankwright.trade.hazards.facts import (
    ARSENATE_UNTIL,
    ASBESTOS,
    ASBESTOS_PCT,
    ASBESTOS_WORDS,
    BOOSTER_CLEAN_YEARS,
    BOOSTER_DEEP_YEARS,
    DUST_ADVISED_MG,
    DUST_LAW_MG,
    DUST_STATE_MG,
    DUSTY_WORDS,
    FLAME,
    KICKBACK,
    LEAD_CHANCE,
    LEAD_CHANCE_PCT,
    LEAD_DEEP,
    LEAD_RULE,
    LEAD_UNTIL,
    LEAD_WHO,
    METAL,
    MINOR_INSIDE_FT2,
    MINOR_OUTSIDE_FT2,
    OVERHEAD,
    REDCEDAR_MG,
    REFUSED,
    SAWING_TREATED,
    SILICA,
    SILICA_ACTION_UG,
    SILICA_LIMIT_UG,
    SILICA_WORDS,
    TETANUS,
    WHO_DECIDES,
    WOOD_DUST,
    WOOD_DUST_STATE,
)
from plankwright.trade.hazards.situation import PaintedLot, Situation
from plankwright.trade.source import Said

_WORD = re.compile(r"[a-z]+")


@dataclass(frozen=True, slots=True, kw_only=True)
class Hazard:
    """A hazard of a job.

    Parameters
    ----------
    what
        In a word or two.
    said
        What about this job, and what to do.
    """

    what: str
    said: tuple[Said, ...]


def hazards_of(situation: Situation) -> tuple[Hazard, ...]:
    """Give the hazards of a job, in the order in which they are met: pulling, sawing, hanging.

    Parameters
    ----------
    situation
        What of the job decides.
    """
    found = ((what, tuple(say(situation))) for what, say in _HAZARDS)
    return tuple(Hazard(what=what, said=said) for what, said in found if said)


def lead_chance_pct(built: int) -> int | None:
    """Give how many of a hundred houses of a year have lead paint, as far as a summary goes. [%]"""
    return next((chance for before, chance in LEAD_CHANCE_PCT.value if built < before), None)


def _treated(situation: Situation) -> Iterator[Said]:
    by_sort: dict[str, list[str]] = {}
    for name, treatment in situation.treated:
        by_sort.setdefault(treatment, []).append(name)
    for treatment, (told, source) in REFUSED.items():
        names = by_sort.get(treatment, [])
        if names:
            yield Said(
                f"{told} is kept out: {', '.join(names)}. Sources advise against it in homes.", (source,)
            )
    if by_sort:
        yield Said(
            "Do not hang, sand or burn it. If it must be sawn, then outdoors, with a dust mask, goggles "
            "and gloves; wash before you eat, and wash those clothes apart.",
            (SAWING_TREATED,),
        )
    else:
        yield Said(
            "Nothing was entered as treated. Green or oily wood, tarry smell, stamps and tags speak of "
            "treatment; wood for decks, sills and fences was treated with arsenate until about 2003. Leave "
            "out what you doubt.",
            (ARSENATE_UNTIL,),
        )


def _lead(situation: Situation) -> Iterator[Said]:
    for lot in situation.lots:
        yield from _lead_of(lot)
    built = situation.house_built
    if built is None or built < LEAD_UNTIL.value:
        chance = None if built is None else lead_chance_pct(built)
        told = "is of unknown age" if built is None else f"is from {built}"
        odds = f"; about {chance} in a hundred as old have it" if chance else ""
        yield Said(
            f"The house {told}, so the paint on its own walls may hold lead too{odds}: nailing, notching "
            "and sanding disturb it.",
            (LEAD_CHANCE, LEAD_WHO),
        )
    doubtful = [lot for lot in situation.lots if lot.doubtful]
    if doubtful:
        dusty = [task for task in situation.tasks if not DUSTY_WORDS.isdisjoint(_words(task))]
        if dusty:
            names = ", ".join(lot.name for lot in doubtful)
            yield Said(
                f"You plan to do this: {', '.join(dusty)}. Not before the paint of {names} was tested; it "
                "makes dust or fumes of whatever is in it.",
                (LEAD_WHO,),
            )
        over = sum(lot.face_ft2 for lot in doubtful) > MINOR_INSIDE_FT2.value
        more = ", and these boards are more" if over else ""
        yield Said(
            "Have paint tested before it is scraped, sanded, planed, heated or sawn. In the United States "
            f"work for pay in housing from before {LEAD_UNTIL.value} has rules from "
            f"{_square_feet(MINOR_INSIDE_FT2.value)} of painted surface a room on, or "
            f"{_square_feet(MINOR_OUTSIDE_FT2.value)} outside{more}; working the same way in your own "
            "home is urged.",
            (LEAD_RULE, LEAD_WHO),
        )
    if any(lot.paint is Paint.LEAD for lot in situation.lots):
        yield Said(
            "Planing may not be rid of it: up to a third of the thickness had to come off elsewhere.",
            (LEAD_DEEP,),
        )


def _lead_of(lot: PaintedLot) -> Iterator[Said]:
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


def _asbestos(situation: Situation) -> Iterator[Said]:
    doubtful = [layer for layer in situation.layers if not ASBESTOS_WORDS.isdisjoint(_words(layer))]
    if doubtful:
        yield Said(
            f"{_capital(', '.join(doubtful))} may hold asbestos. Have it tested before you cut, nail "
            f"through, sand or scrape it; more than {ASBESTOS_PCT.value} % counts as containing it.",
            (ASBESTOS,),
        )
    else:
        yield Said(
            "It may be behind or under old boards: tile, backing, glue, loose filling, textured coating, "
            "pipe wrap. Leave what you suspect alone and have it tested.",
            (ASBESTOS,),
        )


def _dust(situation: Situation) -> Iterator[Said]:
    yield Said(
        "Draw wood dust off and wear a mask, for the dust of old boards most of all. Limits over eight "
        f"hours in the United States: {DUST_LAW_MG.value} mg/m³ by federal law, {DUST_STATE_MG.value} in "
        f"one state, {DUST_ADVISED_MG.value} as advised.",
        (WOOD_DUST, WOOD_DUST_STATE),
    )
    if any("cedar" in wood.lower() for wood in situation.woods):
        yield Said(
            f"For the dust of western redcedar {REDCEDAR_MG.value} mg/m³ is advised: it makes people "
            "allergic.",
            (WOOD_DUST,),
        )
    gritty = [layer for layer in situation.layers if not SILICA_WORDS.isdisjoint(_words(layer))]
    if gritty:
        yield Said(
            f"{_capital(', '.join(gritty))}: the dust may hold silica, with a limit of "
            f"{SILICA_LIMIT_UG.value} µg/m³ and action from {SILICA_ACTION_UG.value} on. Cut wet or with "
            "suction.",
            (SILICA,),
        )


def _nails(situation: Situation) -> Iterator[Said]:
    count = len(situation.nails_in)
    if count:
        yield Said(
            f"{count} board{'' if count == 1 else 's'} may still hold nails. Pull or nip them and pass a "
            "metal detector over each board before a blade touches it; gloves, hard soles, eye protection.",
            (METAL,),
        )
    yield Said(
        "Tetanus: a booster is due after a deep or dirty wound when the last is over "
        f"{BOOSTER_DEEP_YEARS.value} years old, after a clean small one when over "
        f"{BOOSTER_CLEAN_YEARS.value}; with fewer than three doses or none known see a doctor at once.",
        (TETANUS,),
    )


def _blades(_: Situation) -> Iterator[Said]:
    yield Said(
        "Metal that was missed breaks teeth and throws them; split and bowed boards bind and kick back. "
        "Never the good blade first, a push stick for narrow strips, guard and riving knife on.",
        (METAL, KICKBACK),
    )


def _wires(situation: Situation) -> Iterator[Said]:
    if situation.unseen:
        yield Said(
            f"Nobody has looked into {', '.join(situation.unseen)}. A cable laid by the rules may lie "
            f"{_both_tapes(PROTECTED_DEPTH_NM.value)} behind the face of the framing, and in old houses "
            "anywhere: find wires and pipes with a detector, switch off and test before you cut or nail.",
            (CABLE_DEPTH,),
        )
    told = f"{situation.keep_outs} keep-out{'' if situation.keep_outs == 1 else 's'}"
    yield Said(f"Only what was entered is marked: {told if situation.keep_outs else 'no keep-out'}.")


def _overhead(situation: Situation) -> Iterator[Said]:
    if situation.ceilings:
        yield Said(
            f"{', '.join(situation.ceilings)}: boards overhead fall on whoever stands below. Two people or "
            "a prop, eye protection, and nails that hold the weight; see “Nails”.",
            (OVERHEAD,),
        )


def _fire(_: Situation) -> Iterator[Said]:
    yield Said(
        "Boards on walls and ceilings burn. Codes limit how fast flames spread over a finish: ask what "
        "holds at your place, near stoves and in shared buildings most of all.",
        (FLAME,),
    )


def _who(_: Situation) -> Iterator[Said]:
    yield Said(
        "Local codes and licensed trades decide what may be done. The program sees neither your boards nor "
        "your wall, and judges neither structure nor fire nor wiring.",
        (WHO_DECIDES,),
    )


_HAZARDS: tuple[tuple[str, Callable[[Situation], Iterator[Said]]], ...] = (
    ("Treated wood", _treated),
    ("Paint and lead", _lead),
    ("Asbestos", _asbestos),
    ("Nails and rust", _nails),
    ("Dust", _dust),
    ("Blades", _blades),
    ("Wires and pipes", _wires),
    ("Overhead", _overhead),
    ("Fire", _fire),
    ("Who decides", _who),
)


def _square_feet(area_ft2: int) -> str:
    """Write an area of a rule in its own unit, and in square metres."""
    return f"{area_ft2} ft² ({area_ft2 * FOOT**2 / METRE**2:.2f} m²)"


def _both_tapes(nm: Nm) -> str:
    """Write a length of a rule in inches, and in millimetres."""
    inches, metric = TapeStyle(system=System.IMPERIAL), TapeStyle(system=System.METRIC)
    return f"{write_inches(nm, inches)} ({write_length(nm, metric)})"


def _words(text: str) -> frozenset[str]:
    return frozenset(_WORD.findall(text.lower()))


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]

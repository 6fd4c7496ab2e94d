"""Which hazards a job has, and what is said of each.

Short, specific, and with the threshold where there is one. Nothing here says that anything is permitted or
that it cannot hurt: local codes and licensed trades decide.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from plankwright.measure import Nm, System, TapeStyle, write_inches, write_length
from plankwright.trade.fasteners.facts import CABLE_DEPTH, NO_BRADS, PROTECTED_DEPTH_NM
from plankwright.trade.hazards.doubts import doubtful_layers, words
from plankwright.trade.hazards.facts import (
    ARSENATE_UNTIL,
    ASBESTOS,
    ASBESTOS_PCT,
    BOOSTER_CLEAN_YEARS,
    BOOSTER_DEEP_YEARS,
    DUST_ADVISED_MG,
    DUST_LAW_MG,
    DUST_STATE_MG,
    FLAME,
    KICKBACK,
    METAL,
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
from plankwright.trade.hazards.lead import tell_lead
from plankwright.trade.hazards.situation import Situation
from plankwright.trade.source import Said
from plankwright.trade.wood.species import wood_named

_REDCEDAR = frozenset({"western", "redcedar"})


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


def _asbestos(situation: Situation) -> Iterator[Said]:
    doubtful = doubtful_layers(situation)
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
    if any(_may_be_redcedar(name) for name in situation.woods):
        yield Said(
            f"For the dust of western redcedar {REDCEDAR_MG.value} mg/m³ is advised: it makes people "
            "allergic.",
            (WOOD_DUST,),
        )
    gritty = [layer for layer in situation.layers if not SILICA_WORDS.isdisjoint(words(layer))]
    if gritty:
        yield Said(
            f"{_capital(', '.join(gritty))}: the dust may hold silica, with a limit of "
            f"{SILICA_LIMIT_UG.value} µg/m³ and action from {SILICA_ACTION_UG.value} on. Cut wet or with "
            "suction.",
            (SILICA,),
        )


def _may_be_redcedar(name: str) -> bool:
    """Tell whether western redcedar is among what a name is understood as."""
    wood = wood_named(name)
    return wood.understood and any(one.words >= _REDCEDAR for one in wood.species)


def _nails(situation: Situation) -> Iterator[Said]:
    count = len(situation.nails_in)
    if count or not situation.tallied:
        boards = f"{count} board{'' if count == 1 else 's'}" if count else "Old boards"
        yield Said(
            f"{boards} may still hold nails. Pull or nip them and pass a "
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
    if situation.unseen or not situation.measured:
        where = ", ".join(situation.unseen) if situation.measured else "what lies behind"
        yield Said(
            f"Nobody has looked into {where}. A cable laid by the rules may lie "
            f"{_both_tapes(PROTECTED_DEPTH_NM.value)} behind the face of the framing, and in old houses "
            "anywhere: find wires and pipes with a detector, switch off and test before you cut or nail.",
            (CABLE_DEPTH,),
        )
    if not situation.measured:
        return
    told = f"{situation.keep_outs} keep-out{'' if situation.keep_outs == 1 else 's'}"
    yield Said(f"Only what was entered is marked: {told if situation.keep_outs else 'no keep-out'}.")


def _overhead(situation: Situation) -> Iterator[Said]:
    if situation.ceilings:
        yield Said(
            f"{', '.join(situation.ceilings)}: boards overhead fall on whoever stands below. Two people or "
            "a prop, eye protection, and nails that hold the weight, brads alone never; see “Nails”.",
            (OVERHEAD, NO_BRADS),
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
    ("Paint and lead", tell_lead),
    ("Asbestos", _asbestos),
    ("Nails and rust", _nails),
    ("Dust", _dust),
    ("Blades", _blades),
    ("Wires and pipes", _wires),
    ("Overhead", _overhead),
    ("Fire", _fire),
    ("Who decides", _who),
)


def _both_tapes(nm: Nm) -> str:
    """Write a length of a rule in inches, and in millimetres."""
    inches, metric = TapeStyle(system=System.IMPERIAL), TapeStyle(system=System.METRIC)
    return f"{write_inches(nm, inches)} ({write_length(nm, metric)})"


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]

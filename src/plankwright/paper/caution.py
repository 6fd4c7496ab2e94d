"""The hazard note that stands on every cut list and hanging sheet; its sources are in docs/hazards.md."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """One hazard, and what to do about it.

    Parameters
    ----------
    what
        In a word or two.
    advice
        In a sentence or two.
    """

    what: str
    advice: str


CAUTIONS = (
    Caution(
        what="Nails and rust",
        advice="Pull every nail and pass a metal detector over the board before a blade or a plane "
        "touches it. "
        "Wear eye protection and gloves, and have a current tetanus shot; with a deep or dirty wound, "
        "see a doctor.",
    ),
    Caution(
        what="Blades",
        advice="Metal that was missed breaks teeth and throws them. Old, bowed and split boards bind "
        "and kick back.",
    ),
    Caution(
        what="Paint",
        advice="Paint of unknown age may hold lead: have it tested before it is sanded, planed, heated "
        "or sawn.",
    ),
    Caution(
        what="Asbestos",
        advice="It may be behind or under old boards, in tile, glue, wrap, filling or plaster. "
        "Leave what you suspect alone and have it tested.",
    ),
    Caution(
        what="Wires and pipes",
        advice="They run behind the wall. Find them, switch off and test before you cut or nail. "
        "Only the keep-outs that were entered are marked here.",
    ),
    Caution(
        what="Dust",
        advice="Wood dust, the dust of old boards most of all, harms lungs and catches fire: "
        "draw it off and wear a mask.",
    ),
    Caution(
        what="Who decides",
        advice="Local codes and licensed trades do. The program does not know whether anything on these "
        "sheets is permitted, and it judges neither structure nor fire nor wiring.",
    ),
)
"""In the order in which they are met."""

"""The words that people put into a tally for what a board is milled, nailed and soaked with."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import TypeVar

from plankwright.model import EdgeKind, NailsLeft, Treatment

_Meaning = TypeVar("_Meaning")

EDGES = MappingProxyType(
    {
        EdgeKind.SQUARE: ("square", "square edge", "square edged", "sq", "s", "plain", "straight"),
        EdgeKind.TONGUE_AND_GROOVE: (
            "tongue and groove",
            "tongue & groove",
            "t&g",
            "t & g",
            "t+g",
            "t + g",
            "tg",
            "t and g",
            "matched",
        ),
        EdgeKind.SHIPLAP: ("shiplap", "ship lap", "lap", "lapped", "rabbeted", "half lap"),
    }
)
"""How people write the edges."""

NAILS = MappingProxyType(
    {
        NailsLeft.IN: ("in", "still in", "yes", "left in", "not pulled"),
        NailsLeft.PULLED: ("pulled", "out", "no", "none", "de nailed", "denailed"),
        NailsLeft.NIPPED: ("nipped", "cut off", "broken off", "some nipped"),
        NailsLeft.CHECKED: ("checked", "scanned", "detector", "clean"),
    }
)
"""How people write how far a board is rid of nails."""

TREATMENTS = MappingProxyType(
    {
        Treatment.NONE: ("none", "no", "untreated"),
        Treatment.ARSENATE: ("arsenate", "cca", "chromated copper arsenate", "copper arsenate"),
        Treatment.CREOSOTE: ("creosote", "creosoted", "tar oil"),
        Treatment.PENTACHLOROPHENOL: ("pentachlorophenol", "penta", "pcp"),
        Treatment.UNKNOWN: ("unknown", "treated", "yes", "pressure treated", "?"),
    }
)
"""How people write what wood was soaked with."""


def meaning(written: str, words: Mapping[_Meaning, tuple[str, ...]]) -> _Meaning | None:
    """Find out what a word means, whatever its case, hyphens and spaces; nothing where it is none of them.

    Parameters
    ----------
    written
        What the cell holds.
    words
        How people write each meaning.
    """
    plain = " ".join(written.lower().replace("-", " ").split())
    return next((meant for meant, known in words.items() if plain in known), None)

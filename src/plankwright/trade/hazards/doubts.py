"""What of a job has to be tested before anybody can say whether it is a hazard."""

import re

from plankwright.trade.hazards.facts import ASBESTOS_WORDS
from plankwright.trade.hazards.situation import Situation

_WORD = re.compile(r"[a-z]+")


def doubtful_lots(situation: Situation) -> tuple[str, ...]:
    """Name the lots whose paint should be tested for lead; one that is known to hold it needs no test.

    Parameters
    ----------
    situation
        What is known of the lots.
    """
    return tuple(lot.name for lot in situation.lots if lot.untested)


def doubtful_layers(situation: Situation) -> tuple[str, ...]:
    """Name the layers behind the boards that may hold asbestos.

    Parameters
    ----------
    situation
        What lies behind the boards.
    """
    return tuple(layer for layer in situation.layers if not ASBESTOS_WORDS.isdisjoint(words(layer)))


def words(text: str) -> frozenset[str]:
    """Give the words of what somebody wrote, in small letters."""
    return frozenset(_WORD.findall(text.lower()))

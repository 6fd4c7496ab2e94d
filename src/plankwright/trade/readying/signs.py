"""Signs of insects, mould, rot, paint and heating in the words of whoever tallied a board."""

import re

_WORD = re.compile(r"[a-z]+|[,;:.]")
_INSECTS = frozenset(
    {
        "worm",
        "worms",
        "wormholes",
        "wormhole",
        "beetle",
        "beetles",
        "insect",
        "insects",
        "eaten",
        "powderpost",
    }
    | {"woodworm", "larvae", "frass", "borer", "borers", "ants", "termite", "termites", "bugs"}
)
_MOULD = frozenset({"mould", "mold", "mouldy", "moldy", "mildew", "fungus", "mushroom"})
_ROT = frozenset({"rot", "rotten", "rotted", "decay", "decayed", "punky"})
_PAINT = frozenset({"paint", "paints", "painted", "overpainted", "repainted", "whitewash", "whitewashed"})
_HEATED = frozenset({"heated"})
_SIGNS = _INSECTS | _MOULD | _ROT | _PAINT | _HEATED
_NOT_MET = frozenset({"no", "not", "never", "without"})
# Words over which a "no" reaches: "no live worms", "without any sign of rot or mould", "not yet heated".
_REACHED = _SIGNS | {"any", "sign", "signs", "trace", "traces", "of", "live", "fresh", "hole", "holes"}
_REACHED |= {"or", "nor", "yet", "been"}
_STILL_TO_DO = _NOT_MET | {"be", "if", "when", "unless", "until"}


def shows_insects(words: str) -> bool:
    """Tell whether words speak of insects."""
    return _any(words, _INSECTS)


def shows_mould(words: str) -> bool:
    """Tell whether words speak of mould."""
    return _any(words, _MOULD)


def shows_rot(words: str) -> bool:
    """Tell whether words speak of rot."""
    return _any(words, _ROT)


def shows_paint(words: str) -> bool:
    """Tell whether words speak of paint."""
    return _any(words, _PAINT)


def tells_heated(words: str) -> bool:
    """Tell whether words say that a board was heated, and not that it is still to be."""
    return _any(words, _HEATED, _STILL_TO_DO)


def _any(words: str, signs: frozenset[str], denials: frozenset[str] = _NOT_MET) -> bool:
    """Tell whether one of the signs is named and not denied just before."""
    denied = False
    for word in _WORD.findall(words.lower()):
        denied = word in denials or (denied and word in _REACHED)
        if word in signs and not denied:
            return True
    return False

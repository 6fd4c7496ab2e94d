"""Signs of insects and mould in the words of whoever tallied a flaw."""

import re

_WORD = re.compile(r"[a-z]+")
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
_ROT = frozenset({"rot", "rotten", "rotted", "decay", "decayed", "punky", "soft"})


def shows_insects(words: str) -> bool:
    """Tell whether words speak of insects."""
    return _any(words, _INSECTS)


def shows_mould(words: str) -> bool:
    """Tell whether words speak of mould."""
    return _any(words, _MOULD)


def shows_rot(words: str) -> bool:
    """Tell whether words speak of rot."""
    return _any(words, _ROT)


def _any(words: str, signs: frozenset[str]) -> bool:
    return not signs.isdisjoint(_WORD.findall(words.lower()))

"""Signs of insects, mould, rot, paint and heating in the words of whoever tallied a board."""

import re
from collections.abc import Callable

ROT = ("rot", "decay", "punky")
INSECTS = ("insect", "worm", "beetle", "termite")
"""How words of them begin; flaws of a tally are told by the same beginnings."""

ONLY_ALIKE = ("rota", "roto", "rotu", "wormwood", "insecticid", "painter")
"""How words begin that speak of something else: rotated, insecticide, painter's tape."""

_INSECTS_BESIDES = ("woodworm", "powderpost", "larva", "frass", "borer", "eaten")
# Too many other words begin like these and those of mould: antique, moulding, mushroomed ends.
_SHORT = frozenset({"ant", "ants", "bug", "bugs"})
_MOULD = frozenset({"mould", "mold", "mouldy", "moldy", "mouldiness", "moldiness", "mushroom", "mushrooms"})
_MOULD_BESIDES = ("mildew", "fung")
_PAINT = ("paint", "overpaint", "repaint", "whitewash")
_HEATED = frozenset({"heated"})

_WORD = re.compile(r"[a-z]+|[,;:.]")
_NOT_MET = frozenset({"no", "not", "never", "without"})
# Words over which a "no" reaches: "no live worms", "without any sign of rot or mould", "not yet heated".
_REACHED = frozenset({"any", "sign", "signs", "trace", "traces", "of", "live", "fresh", "hole", "holes"})
_REACHED |= {"or", "nor", "yet", "been"}
_STILL_TO_DO = _NOT_MET | {"be", "if", "when", "unless", "until"}


def shows_insects(words: str) -> bool:
    """Tell whether words speak of insects."""
    return _any(words, _is_insect)


def shows_mould(words: str) -> bool:
    """Tell whether words speak of mould."""
    return _any(words, _is_mould)


def shows_rot(words: str) -> bool:
    """Tell whether words speak of rot."""
    return _any(words, _is_rot)


def shows_paint(words: str) -> bool:
    """Tell whether words speak of paint."""
    return _any(words, _is_paint)


def tells_heated(words: str) -> bool:
    """Tell whether words say that a board was heated, and not that it is still to be."""
    return _any(words, _is_heated, _STILL_TO_DO)


def _is_insect(word: str) -> bool:
    return word in _SHORT or _begins(word, (*INSECTS, *_INSECTS_BESIDES))


def _is_mould(word: str) -> bool:
    return word in _MOULD or _begins(word, _MOULD_BESIDES)


def _is_rot(word: str) -> bool:
    return _begins(word, ROT)


def _is_paint(word: str) -> bool:
    return _begins(word, _PAINT)


def _is_heated(word: str) -> bool:
    return word in _HEATED


def _begins(word: str, beginnings: tuple[str, ...]) -> bool:
    return word.startswith(beginnings) and not word.startswith(ONLY_ALIKE)


_SIGNS = (_is_insect, _is_mould, _is_rot, _is_paint, _is_heated)


def _any(words: str, is_sign: Callable[[str], bool], denials: frozenset[str] = _NOT_MET) -> bool:
    """Tell whether a sign is named and not denied just before."""
    denied = False
    for word in _WORD.findall(words.lower()):
        denied = word in denials or (denied and _reached(word))
        if is_sign(word) and not denied:
            return True
    return False


def _reached(word: str) -> bool:
    """Tell whether a denial reaches over a word."""
    return word in _REACHED or any(is_sign(word) for is_sign in _SIGNS)

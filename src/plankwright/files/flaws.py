"""The short notation for the flaws of a board: where, what, and if need be how bad and on which face.

    12-18 rot; 0-3 split; 40-44 stain front; 60 nail hole back; last 6 dry end lost; all paint back

Where is from–to, a single place, `first` or `last` so much, or `all`. The severity follows from what it is
when that is one of the usual kinds, and has to be said otherwise. Some positions can be read two ways
(`1-1/2` is one and a half, `1-2` a stretch): when both readings make sense, the user is asked.
"""

import re
from collections.abc import Iterator
from types import MappingProxyType

from plankwright.files.document import one_line
from plankwright.files.notation import Notation
from plankwright.files.sentences import listed, quoted
from plankwright.measure import INCH, Nm
from plankwright.model import Face, Flaw, Severity
from plankwright.trade.readying.signs import INSECTS, ONLY_ALIKE, ROT

SPOT_NM = INCH // 2
"""A flaw at a single place takes so much to each side. [nm]"""

KINDS = MappingProxyType(
    {
        Severity.LOST: (
            *ROT,
            "split",
            "crack",
            "shake",
            "broke",
            "break",
            *INSECTS,
            "hole",
            "missing",
            "gone",
            "notch",
            "crush",
            "char",
        ),
        Severity.BLEMISH: (
            "nail hole",
            "screw hole",
            "staple hole",
            "stain",
            "paint",
            "scratch",
            "burn",
            "scorch",
            "dirt",
            "glue",
            "dent",
            "gouge",
            "rust",
            "mark",
            "saw mark",
            "discolo",
            "weather",
        ),
    }
)
"""How the usual kinds begin, and what they do to the wood; of two that fit, the longer counts."""

_SEVERITY_OF = MappingProxyType({kind: severity for severity, kinds in KINDS.items() for kind in kinds})
NO_FLAW = frozenset({"none", "no", "nil", "-", "ok", "sound", "clear", "no flaws"})
"""What people write into the cell of a board that has none."""

_FURTHER_PLACE = re.compile(r"[0-9½¼¾⅛⅜⅝⅞⅓⅔]|\b(?:first|last)\b", re.IGNORECASE)
_DENIAL = re.compile(r"\b(no|not|without)\b", re.IGNORECASE)
_FEW = 12
_KIND = re.compile(
    rf"\b(?!{'|'.join(ONLY_ALIKE)})(?P<kind>{'|'.join(sorted(_SEVERITY_OF, key=len, reverse=True))})"
)
_SEVERITY_WORD = re.compile(r"\b(lost|blemish)\b", re.IGNORECASE)
_FACE_WORD = re.compile(
    r"\b(?:on\s+)?(?:the\s+)?(front|back|both)(?:\s+(?:face|faces|side|sides))?\b", re.IGNORECASE
)

_UNIT = r"(?:in|inch(?:es)?|ft|feet|foot|mm|cm|m|(?:milli|centi)?met(?:re|er)s?)\b\.?"
_DIGIT = "0-9.,½¼¾⅛⅜⅝⅞⅓⅔"
_AMOUNT = rf"\s*[{_DIGIT}](?:[{_DIGIT}/'\"′″’”]|{_UNIT}|\s)*"
_WHERE = re.compile(
    rf"(?P<all>all|whole|everywhere)\b"
    rf"|(?P<side>first|last)\s+(?P<much>{_AMOUNT}(?:-{_AMOUNT})*)"
    rf"|(?:at\s+|from\s+)?(?P<place>{_AMOUNT}(?:(?:-|to\b|\.\.){_AMOUNT})*(?:(?:-|to\b|\.\.)\s*end\b)?)",
    re.IGNORECASE,
)
_DASHES = str.maketrans(dict.fromkeys("\u2010\u2011\u2012–—―−", "-"))
_ONE_UNIT = re.compile(rf"[^a-z'\"′″’”]*(?P<unit>{_UNIT}|['\"′″’”])\s*", re.IGNORECASE)
_ANY_UNIT = re.compile(rf"[0-9]\s*{_UNIT}|['\"′″’”]", re.IGNORECASE)
_BARE = re.compile(r"[^a-z'\"′″’”]*", re.IGNORECASE)


def read_flaws(text: str, length_nm: Nm, notation: Notation) -> tuple[tuple[Flaw, ...], tuple[str, ...]]:
    """Read the flaws of one board.

    Parameters
    ----------
    text
        The cell of the tally: flaws parted by semicolons.
    length_nm
        Length of the board. [nm]
    notation
        How lengths are written.

    Returns
    -------
    tuple
        The flaws in order along the board, and a sentence for each thing that is wrong.
    """
    flaws, problems = [], []
    for entry in re.split(r"[;\n]", text):
        plain = one_line(entry.translate(_DASHES)).strip()
        if entry.strip() and plain.lower().rstrip(".") not in NO_FLAW:
            try:
                flaws.append(_flaw(plain, length_nm, notation))
            except ValueError as trouble:
                problems.append(f"flaw {quoted(entry.strip())} {trouble}")
    return tuple(sorted(flaws, key=lambda flaw: (flaw.start_nm, flaw.end_nm))), tuple(problems)


def goes_on_like_a_place(what: str) -> bool:
    """Tell whether what a flaw is would be read as part of its place, as “in bad shape” after a number."""
    place = "1 "
    match = _WHERE.match(f"{place}{what}")
    return match is not None and match.end() > len(place)


def _flaw(entry: str, length_nm: Nm, notation: Notation) -> Flaw:
    match = _WHERE.match(entry)
    if match is None:
        raise ValueError(
            "does not say where: begin with from-to, like 12-18 rot, or with first 6, last 6 or all"
        )
    start, end = _stretch(match, length_nm, notation)
    if end > length_nm:
        raise ValueError(
            "reaches beyond the end of the board: check its position and the length of the board"
        )
    rest = entry[match.end() :]
    _demand_one_flaw(match, rest)
    severity, face, what = _described(rest)
    return Flaw(start_nm=start, end_nm=end, what=what, severity=severity, face=face)


def _demand_one_flaw(match: re.Match[str], rest: str) -> None:
    """Refuse what would lose a second flaw, or take a count for a place."""
    if _FURTHER_PLACE.search(rest):
        raise ValueError(
            "goes on behind what it is: part flaws by semicolons, like 3-5 rot; 10-12 split, "
            "and write any other number as a word"
        )
    if denial := _DENIAL.search(rest):
        raise ValueError(f"says {quoted(denial[1])}: leave it out, or say what is there")
    place = (match["place"] or "").strip()
    alone = place.isdecimal() and int(place) <= _FEW and match.start("place") == 0
    if alone and rest.rstrip(" .,").lower().endswith("s"):
        raise ValueError(
            f"can be read two ways: write at {place} if that is the place; "
            f"if there are {place} of them, give each its place"
        )


def _stretch(match: re.Match[str], length_nm: Nm, notation: Notation) -> tuple[Nm, Nm]:
    if match["all"]:
        return 0, length_nm
    if match["side"]:
        much = _length(match["much"], notation)
        if much == 0:
            raise ValueError("takes up nothing: say how much")
        return (
            (0, much)
            if match["side"].lower() == "first"
            else (max(length_nm - much, 0), max(length_nm, much))
        )
    return _from_to(match["place"].strip(), length_nm, notation)


def _from_to(place: str, length_nm: Nm, notation: Notation) -> tuple[Nm, Nm]:
    """Find the one reading of a place that makes sense."""
    if notation.unit is None and not _ANY_UNIT.search(place):
        raise ValueError(f"has no unit: write it behind the position, like {place} in or {place} mm")
    readings = list(_stretches(place, length_nm, notation))
    stretches = {reading for reading in readings if reading[0] < reading[1]}
    spot, trouble = _spot(place, notation)
    if len(stretches) + (spot is not None) > 1:
        raise ValueError(
            "can be read two ways: write `to` between two positions, like 1 to 1-1/2, and a unit behind each"
        )
    if stretches:
        return stretches.pop()
    if spot is not None:
        return max(spot - SPOT_NM, 0), spot + SPOT_NM if spot > length_nm else min(spot + SPOT_NM, length_nm)
    if readings:
        raise ValueError("ends before it begins: write the position nearer to the marked end first")
    raise ValueError(f"has a position that cannot be read: {trouble}")


def _stretches(place: str, length_nm: Nm, notation: Notation) -> Iterator[tuple[Nm, Nm]]:
    """Give every reading as from-to, one for each place where the text can be parted."""
    words = re.search(r"\bto\b|\.\.", place, re.IGNORECASE)
    cuts = [words] if words else list(re.finditer("-", place))
    for cut in cuts:
        first, second = place[: cut.start()].strip(), place[cut.end() :].strip()
        try:
            if second.lower() == "end":
                yield _length(first, notation), length_nm
            else:
                yield _pair(first, second, notation)
        except ValueError:
            continue


def _pair(first: str, second: str, notation: Notation) -> tuple[Nm, Nm]:
    """Read two positions, of which one may leave its unit to the other."""
    bare = [_BARE.fullmatch(text) is not None for text in (first, second)]
    if bare[0] != bare[1]:
        alone = _ONE_UNIT.fullmatch(second if bare[0] else first)
        if alone is None:
            raise ValueError("one position has no unit")
        if bare[0]:
            first = f"{first} {alone['unit']}"
        else:
            second = f"{second} {alone['unit']}"
    return _length(first, notation), _length(second, notation)


def _spot(place: str, notation: Notation) -> tuple[Nm | None, str]:
    try:
        return _length(place, notation), ""
    except ValueError as trouble:
        return None, str(trouble)


def _length(text: str, notation: Notation) -> Nm:
    return notation.read(text.strip())


def _described(rest: str) -> tuple[Severity, Face | None, str]:
    """Read what is wrong, how bad it is and where it shows from the words behind the position."""
    severity_word, face_word = _SEVERITY_WORD.search(rest), _FACE_WORD.search(rest)
    what = " ".join(_FACE_WORD.sub(" ", _SEVERITY_WORD.sub(" ", rest)).split()).strip(" ,:.")
    kinds = {_SEVERITY_OF[match["kind"]] for match in _KIND.finditer(what.lower())}
    if severity_word is not None:
        severity = Severity(severity_word[1].lower())
    elif kinds:
        severity = Severity.LOST if Severity.LOST in kinds else Severity.BLEMISH
    else:
        raise ValueError(f"does not say how bad it is: add {listed(list(Severity))} behind it")
    face = None
    if severity is Severity.BLEMISH and face_word is not None and face_word[1].lower() != "both":
        face = Face(face_word[1].lower())
    return severity, face, what or severity.value

"""Boards of every sort that a tally can hold, for tests that must hold for all of them."""

from fractions import Fraction

from hypothesis import strategies as st

from plankwright.files.document import one_line
from plankwright.measure import INCH, MILLIMETRE, Nm
from plankwright.model import Board, EdgeKind, EdgeProfile, Face, Flaw, NailsLeft, Severity, Treatment

_STEPS = (INCH, INCH // 16, INCH // 64, MILLIMETRE, MILLIMETRE // 2, 123_457)
"""What lengths are whole numbers of; the last is from a laser. [nm]"""

_DITTO = {'"', "''", "〃", "″", "”", "ditto"}
_LOST = ("rot", "split at the end", "in bad shape", "M-shaped crack", "lost", "worm, old")
_UGLY = ("stain", "old paint; no", "nail hole", "feet of a ladder", "blemish", "ink, (red)")


def words(most: int = 20) -> st.SearchStrategy[str]:
    """Give what a cell of words can be read as, and nothing; also what looks like a formula."""
    odd = st.sampled_from(["", "=1+1", "@home", "-3", "+ ½ “new”", "hall; stage", 'left, "old"', "楠木", "é"])
    free = st.text(st.characters(codec="utf-8", exclude_categories=["C", "Z"]) | st.just(" "), max_size=most)
    return (odd | free).map(one_line).filter(_may_be_read)


def ids() -> st.SearchStrategy[str]:
    """Give marks that somebody writes on boards."""
    plain = st.builds("{}{}".format, st.sampled_from(["F", "D16-", "", "stage "]), st.integers(1, 99))
    return plain | words(12).filter(lambda text: bool(text) and not text.startswith("#"))


@st.composite
def boards(draw: st.DrawFn, names: st.SearchStrategy[str] | None = None) -> Board:
    """Give a board."""
    step = draw(st.sampled_from(_STEPS))
    width, other = draw(_lengths(step, 12)), draw(_lengths(step, 12))
    length = max(draw(_lengths(step, 200)), width, other)
    treatment = draw(st.sampled_from([Treatment.NONE, Treatment.NONE, *Treatment]))
    flaws = draw(st.lists(_flaws(length), max_size=3))
    whole = () if treatment is Treatment.NONE else (_treated(treatment, length),)
    return Board(
        id=draw(names or ids()),
        length_nm=length,
        width_start_nm=width,
        width_end_nm=draw(st.sampled_from([width, other])),
        thickness_nm=draw(_lengths(step, 3)),
        profile=draw(_profiles(step)),
        flaws=(*whole, *sorted(flaws, key=lambda flaw: (flaw.start_nm, flaw.end_nm))),
        lot=draw(words()),
        species=draw(words()),
        tone=draw(words()),
        note=draw(words(60)),
        moisture_pct=draw(st.none() | _moistures()),
        nails=draw(st.none() | st.sampled_from(NailsLeft)),
        treatment=treatment,
        untreated=treatment is Treatment.NONE and draw(st.booleans()),
    )


def piles(most: int = 6) -> st.SearchStrategy[list[Board]]:
    """Give boards of which no two are called alike."""
    return st.lists(boards(), max_size=most, unique_by=lambda board: board.id)


def _may_be_read(text: str) -> bool:
    """Leave out ditto marks, and an apostrophe that was put before a formula and would be taken off."""
    return text.lower() not in _DITTO and not text.startswith(("'=", "'+", "'-", "'@"))


def _lengths(step: Nm, inches: int) -> st.SearchStrategy[Nm]:
    return st.integers(1, inches * INCH // step).map(lambda count: count * step)


def _moistures() -> st.SearchStrategy[float]:
    tenths = st.integers(0, 2_000).map(lambda number: number / 10)
    return tenths | st.integers(1, 200_000_000_000).map(lambda number: float(Fraction(number, 10**9)))


@st.composite
def _profiles(draw: st.DrawFn, step: Nm) -> EdgeProfile:
    kind = draw(st.sampled_from(EdgeKind))
    return EdgeProfile(kind=kind, reach_nm=0 if kind is EdgeKind.SQUARE else draw(_lengths(step, 2)))


@st.composite
def _flaws(draw: st.DrawFn, length: Nm) -> Flaw:
    start = draw(st.integers(0, length - 1))
    severity = draw(st.sampled_from(Severity))
    ugly = severity is Severity.BLEMISH
    what = draw(st.sampled_from(_UGLY if ugly else _LOST)).partition(";")[0]
    return Flaw(
        start_nm=start,
        end_nm=draw(st.integers(start + 1, length)),
        what=what,
        severity=severity,
        face=draw(st.none() | st.sampled_from(Face)) if ugly else None,
    )


def _treated(treatment: Treatment, length: Nm) -> Flaw:
    what = f"treated ({treatment}), not for indoors"
    return Flaw(start_nm=0, end_nm=length, what=what, severity=Severity.LOST)

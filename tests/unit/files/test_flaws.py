"""The short notation for flaws: what it means, and what is asked about."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plankwright.files.flaws import KINDS, NO_FLAW, SPOT_NM, read_flaws
from plankwright.files.notation import Notation
from plankwright.measure import INCH, MILLIMETRE, System, TapeStyle, Unit, write_exact
from plankwright.model import Face, Severity
from plankwright.trade.readying.signs import INSECTS, ROT, shows_insects, shows_rot

INCHES = Notation(unit=Unit.INCH)
LOST, BLEMISH = Severity.LOST, Severity.BLEMISH
LENGTH = 96


def places(text: str, notation: Notation = INCHES) -> list[tuple[float, float]]:
    """Give from where to where each flaw goes, in inches, on a board of 96 in."""
    flaws, problems = read_flaws(text, LENGTH * INCH, notation)
    assert problems == ()
    return [(flaw.start_nm / INCH, flaw.end_nm / INCH) for flaw in flaws]


@pytest.mark.parametrize(
    ("where", "start", "end"),
    [
        ("12-18", 12, 18),
        ("12 - 18", 12, 18),
        ("12–18", 12, 18),
        ("12 to 18", 12, 18),
        ("from 12 to 18", 12, 18),
        ("12..18", 12, 18),
        ("0-3", 0, 3),
        ("6-7-1/2", 6, 7.5),
        ("2-5/8-6", 2.625, 6),
        ("2-5/8-6-1/2", 2.625, 6.5),
        ("1/2-3/4", 0.5, 0.75),
        ("2 5/8 to 6 1/2", 2.625, 6.5),
        ("1' 2\"-1' 6\"", 14, 18),
        ("1' - 2'", 12, 24),
        ("1-2 ft", 12, 24),
        ("1 ft to 2", 12, 24),
        ('3-8"', 3, 8),
        ("12-18 in", 12, 18),
        ("first 6", 0, 6),
        ("first 3-1/2", 0, 3.5),
        ("last 6", 90, 96),
        ("last 1 ft", 84, 96),
        ("last 200", -104, 200),
        ("90-end", 90, 96),
        ("90 to end", 90, 96),
        ("all", 0, 96),
        ("whole", 0, 96),
        ("60", 59.5, 60.5),
        ("at 60", 59.5, 60.5),
        ("3-5/8", 3.125, 4.125),
        ("0", 0, 0.5),
        ("96", 95.5, 96),
        ("12.5-18.25", 12.5, 18.25),
        ("½-1½", 0.5, 1.5),
    ],
)
def test_where_is_read(where: str, start: float, end: float) -> None:
    """From–to, first and last, all of it, or a spot of half an inch to each side."""
    if end <= LENGTH:
        assert places(f"{where} rot") == [(start, end)]
    else:
        assert "beyond the end" in read_flaws(f"{where} rot", LENGTH * INCH, INCHES)[1][0]


def test_positions_follow_the_notation_of_the_tally() -> None:
    """Bare numbers are in its unit, also with a decimal comma, and a unit on one side serves both."""
    metric = Notation(unit=Unit.MILLIMETRE, decimal_comma=True)
    flaws, problems = read_flaws("100-200,5 rot; 10-20 cm rot; 3 to 8 in rot", 2000 * MILLIMETRE, metric)
    assert problems == ()
    assert [(flaw.start_nm, flaw.end_nm) for flaw in flaws] == [
        (3 * INCH, 8 * INCH),
        (100 * MILLIMETRE, 200 * MILLIMETRE),
        (100 * MILLIMETRE, 200_500_000),
    ]


@pytest.mark.parametrize(
    ("rest", "what", "severity", "face"),
    [
        ("rot", "rot", LOST, None),
        ("rotten", "rotten", LOST, None),
        ("Split", "Split", LOST, None),
        ("knot hole", "knot hole", LOST, None),
        ("nail holes", "nail holes", BLEMISH, None),
        ("stain", "stain", BLEMISH, None),
        ("stain front", "stain", BLEMISH, Face.FRONT),
        ("stain on the back", "stain", BLEMISH, Face.BACK),
        ("stain both faces", "stain", BLEMISH, None),
        ("paint blemish back", "paint", BLEMISH, Face.BACK),
        ("stain lost", "stain", LOST, None),
        ("rot blemish", "rot", BLEMISH, None),
        ("stain and rot", "stain and rot", LOST, None),
        ("lost", "lost", LOST, None),
        ("blemish, back", "blemish", BLEMISH, Face.BACK),
        ("split back", "split", LOST, None),
        ("strange knot lost", "strange knot", LOST, None),
    ],
)
def test_what_it_is_tells_how_bad_it_is(rest: str, what: str, severity: Severity, face: Face | None) -> None:
    """Usual kinds need no word for it; a word overrules them; lost wood has no face."""
    (flaw,), problems = read_flaws(f"12-18 {rest}", LENGTH * INCH, INCHES)
    assert problems == ()
    assert (flaw.what, flaw.severity, flaw.face) == (what, severity, face)


def test_flaws_are_put_in_order() -> None:
    """Semicolons and line breaks part them, empty entries are nothing."""
    assert places("40-44 stain; 0-3 split;\n12-18 rot;;") == [(0, 3), (12, 18), (40, 44)]


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        (
            "rot",
            "flaw “rot” does not say where: begin with from-to, like 12-18 rot, or with first 6",
        ),
        (
            "18-12 rot",
            "flaw “18-12 rot” ends before it begins: write the position nearer to the marked end",
        ),
        ("12-12 rot", "flaw “12-12 rot” ends before it begins"),
        ("12-18", "flaw “12-18” does not say how bad it is: add lost or blemish behind it"),
        ("12-18 odd", "flaw “12-18 odd” does not say how bad it is: add lost or blemish behind it"),
        (
            "90-97 rot",
            "flaw “90-97 rot” reaches beyond the end of the board: check its position and the length",
        ),
        ("97 rot", "flaw “97 rot” reaches beyond the end of the board"),
        ("first 0 rot", "flaw “first 0 rot” takes up nothing: say how much"),
        ("12/7 rot", "flaw “12/7 rot” has a position that cannot be read: “12/7”"),
        ("1-2-3 rot", "flaw “1-2-3 rot” has a position that cannot be read: “1-2-3”"),
        (
            "0-5/8 rot",
            "flaw “0-5/8 rot” can be read two ways: write `to` between two positions, like 1 to 1-1/2",
        ),
        ("12 to 1' 6\" rot", "flaw “12 to 1' 6\" rot” has a position that cannot be read"),
    ],
)
def test_what_cannot_be_read_is_told(text: str, problem: str) -> None:
    """Each with the flaw as written and a mend."""
    flaws, (told,) = read_flaws(text, LENGTH * INCH, INCHES)
    assert flaws == ()
    assert told.startswith(problem)


def test_every_flaw_that_is_wrong_is_told() -> None:
    """One wrong flaw hides neither another nor a right one."""
    flaws, problems = read_flaws("rot; 3-4 rot; 9 odd", LENGTH * INCH, INCHES)
    assert (len(flaws), len(problems)) == (1, 2)


@given(st.text())
def test_any_text_is_read_or_told(text: str) -> None:
    """Nothing that somebody types raises, and what is read lies on the board."""
    flaws, _ = read_flaws(text, LENGTH * INCH, INCHES)
    assert all(0 <= flaw.start_nm < flaw.end_nm <= LENGTH * INCH for flaw in flaws)


@given(st.text("0123456789 -/'\".;toendfirslacm", max_size=30))
def test_any_notation_is_read_or_told(text: str) -> None:
    """The same with marks that mean something here."""
    flaws, problems = read_flaws(text, LENGTH * INCH, INCHES)
    told = [entry.strip().rstrip(".") for entry in text.split(";") if entry.strip()]
    assert len(flaws) + len(problems) == sum(entry not in NO_FLAW for entry in told)


@given(st.integers(0, 95 * 64), st.integers(1, 95 * 64), st.sampled_from(System))
def test_positions_written_exactly_are_read_back(start: int, more: int, system: System) -> None:
    """With units behind both and `to` between, any stretch reads as it was meant."""
    tape = TapeStyle(system=system)
    first, second = (nm * INCH // 64 for nm in (start, min(start + more, 96 * 64)))
    text = f"{write_exact(first, tape)} to {write_exact(second, tape)} rot"
    (flaw,), problems = read_flaws(text, LENGTH * INCH, INCHES)
    assert problems == ()
    assert (flaw.start_nm, flaw.end_nm) == (first, second)


def test_a_spot_is_half_an_inch_to_each_side() -> None:
    """The documented size of a spot."""
    assert INCH == 2 * SPOT_NM


@pytest.mark.parametrize("text", ["none", "None.", "-", "–", "nil", "ok", "sound; ", "no flaws"])
def test_a_cell_that_says_there_is_none_holds_none(text: str) -> None:
    """People fill every cell of a form."""
    assert places(text) == []


@pytest.mark.parametrize(
    "text",
    [
        "3-5 rot, 10-12 split",
        "20-22 rot and 30 to 32 rot",
        "first 4 and last 6 split",
        "12-18 rot / 20-22 split",
        "12-18 rot 40 stain",
        "3-5 rot, last end split",
        "3-5 rot, ½ split",
    ],
)
def test_a_second_flaw_without_a_semicolon_is_not_lost(text: str) -> None:
    """Read as the words of the first, rotten wood would hang on the wall."""
    flaws, (problem,) = read_flaws(text, LENGTH * INCH, INCHES)
    assert flaws == ()
    assert "part flaws by semicolons, like 3-5 rot; 10-12 split" in problem


def test_a_count_is_not_taken_for_a_place() -> None:
    """Two nail holes are somewhere, and not at two inches."""
    _, (problem,) = read_flaws("2 nail holes", LENGTH * INCH, INCHES)
    assert problem.endswith("write at 2 if that is the place; if there are 2 of them, give each its place")
    assert places("at 2 nail holes; 2 nail hole; 60 nail holes") == [(1.5, 2.5), (1.5, 2.5), (59.5, 60.5)]


@pytest.mark.parametrize(("text", "word"), [("20 no rot", "no"), ("12-18 not rotten", "not")])
def test_what_is_denied_is_asked_about(text: str, word: str) -> None:
    """It names a kind of flaw all the same."""
    _, (problem,) = read_flaws(text, LENGTH * INCH, INCHES)
    assert problem.endswith(f"says “{word}”: leave it out, or say what is there")


@pytest.mark.parametrize("text", ["0-4 rot", "90 to end rot", "60 rot"])
def test_a_position_without_any_unit_is_told_so(text: str) -> None:
    """Not that it has two numbers side by side."""
    _, (problem,) = read_flaws(text, LENGTH * INCH, Notation(unit=None))
    assert "has no unit: write it behind the position" in problem


def test_flaws_and_signs_of_a_board_are_told_by_the_same_words() -> None:
    """What is a flaw by rot or insects is a sign of them as well."""
    lost = KINDS[LOST]
    assert [kind for kind in lost if shows_rot(kind)] == list(ROT)
    assert [kind for kind in lost if shows_insects(kind)] == list(INSECTS)


def test_a_word_that_only_begins_like_a_kind_is_none() -> None:
    """A rotary saw leaves no rot: its marks are a blemish, and what is rotated is asked about."""
    (flaw,), _ = read_flaws("3-5 rotary saw marks", LENGTH * INCH, INCHES)
    assert flaw.severity is BLEMISH
    (flaw,), _ = read_flaws("3-5 rotting", LENGTH * INCH, INCHES)
    assert flaw.severity is LOST
    _, (problem,) = read_flaws("3-5 rotated grain", LENGTH * INCH, INCHES)
    assert "does not say how bad it is" in problem

"""What holds for every length: nothing is lost, nothing drifts, and no text gets past unread."""

from contextlib import suppress
from decimal import ROUND_HALF_EVEN, Decimal, localcontext
from fractions import Fraction
from math import ceil, floor

from hypothesis import example, given
from hypothesis import strategies as st

from plankwright.measure import (
    FOOT,
    INCH,
    METRE,
    MILLIMETRE,
    LengthError,
    System,
    TapeStyle,
    Unit,
    read_length,
    round_down,
    round_nearest,
    round_up,
    write_area,
    write_exact,
    write_inches,
    write_length,
)

KILOMETRE = 1_000 * METRE

lengths = st.one_of(
    st.integers(0, KILOMETRE),
    st.integers(0, 20 * FOOT),
    st.integers(0, 64 * 12 * 20).map(lambda count: count * (INCH // 64)),
)
styles = st.one_of(
    st.builds(
        TapeStyle, system=st.just(System.IMPERIAL), denominator=st.sampled_from([1, 2, 4, 8, 16, 32, 64])
    ),
    st.builds(
        TapeStyle,
        system=st.just(System.METRIC),
        millimetre_step=st.sampled_from([MILLIMETRE // 2, MILLIMETRE]),
    ),
)
units = st.sampled_from([None, *Unit])


@given(lengths, styles, units)
def test_exact_text_reads_back_to_the_same_length(nm: int, style: TapeStyle, unit: Unit | None) -> None:
    """Writing exactly and reading loses nothing, whatever bare numbers would mean."""
    assert read_length(write_exact(nm, style), default_unit=unit) == nm


@given(lengths, styles, units)
def test_written_length_reads_back_within_half_a_step(nm: int, style: TapeStyle, unit: Unit | None) -> None:
    """What is printed is at most half a step of the tape off, for the eye and for the saw."""
    for write in (write_length, write_inches):
        text = write(nm, style)
        if nm > KILOMETRE - style.step_nm and read_is_refused(text):
            continue  # Rounded up over the longest length that is read.
        read = read_length(text, default_unit=unit)
        assert 2 * abs(read - nm) <= style.step_nm
        assert read % style.step_nm == 0


def read_is_refused(text: str) -> bool:
    """Tell whether a text is no length."""
    try:
        read_length(text, default_unit=None)
    except LengthError:
        return True
    return False


@given(
    lengths.filter(lambda nm: nm < KILOMETRE - INCH), lengths.filter(lambda nm: nm < KILOMETRE - INCH), styles
)
def test_longer_is_never_written_shorter(one: int, other: int, style: TapeStyle) -> None:
    """The order of two lengths survives their writing."""
    short, long = sorted([one, other])
    assert read_length(write_length(short, style), default_unit=None) <= read_length(
        write_length(long, style), default_unit=None
    )


foot_marks = st.sampled_from(["'", "' ", "'-", "ft ", " ft ", " ft. ", " feet ", "\N{PRIME}", "’ "])
gaps = st.sampled_from([" ", "-", "  ", " - ", "\N{EN DASH}", "\N{NO-BREAK SPACE}"])
inch_marks = st.sampled_from(['"', "''", "in", " in", " in.", " inches", "", "\N{DOUBLE PRIME}", "”"])


@given(
    whole=st.tuples(st.integers(0, 99), st.integers(0, 11)),
    part=st.integers(1, 6).flatmap(lambda power: st.tuples(st.integers(0, 2**power - 1), st.just(2**power))),
    marks=st.tuples(foot_marks, gaps, inch_marks),
)
def test_every_tape_fraction_is_read_in_every_form(
    whole: tuple[int, int], part: tuple[int, int], marks: tuple[str, str, str]
) -> None:
    """Halves to 64ths, reduced or not, against exact fractions of an inch."""
    (feet, inches), (top, bottom), (foot, gap, inch) = whole, part, marks
    expected = (12 * feet + inches + Fraction(top, bottom)) * Fraction("25.4") * 1_000_000
    text = f"{feet}{foot}{inches}{gap}{top}/{bottom}{inch}"
    assert read_length(text, default_unit=None) == expected


SIZES_MM = {
    Unit.INCH: "25.4",
    Unit.FOOT: "304.8",
    Unit.MILLIMETRE: "1",
    Unit.CENTIMETRE: "10",
    Unit.METRE: "1000",
}


@given(
    number=st.decimals(0, 900, allow_nan=False, allow_infinity=False, places=12),
    places=st.integers(0, 12),
    unit=st.sampled_from(Unit),
    decimal_comma=st.booleans(),
)
def test_decimals_agree_with_the_decimal_module(
    *, number: Decimal, places: int, unit: Unit, decimal_comma: bool
) -> None:
    """Any decimals in any unit come to what decimal arithmetic gives, rounded once and half to even."""
    with localcontext() as context:
        context.prec = 60
        number = number.quantize(Decimal(1).scaleb(-places))
        text = f"{number:f}".replace(".", "," if decimal_comma else ".")
        nanometres = number * Decimal(SIZES_MM[unit]) * 1_000_000
        expected = int(nanometres.quantize(Decimal(1), rounding=ROUND_HALF_EVEN))
    assert read_length(f"{text} {unit}", default_unit=None, decimal_comma=decimal_comma) == expected
    assert read_length(text, default_unit=unit, decimal_comma=decimal_comma) == expected


shreds = st.sampled_from([*"0123456789 .,/-'\"½′″’–e", "ft", "in", "mm", "cm", "m", "nan"])
junk = st.one_of(st.text(), st.lists(shreds, max_size=12).map("".join))


@given(text=junk, unit=units, decimal_comma=st.booleans())
@example(text="9" * 5000, unit=Unit.INCH, decimal_comma=False)
@example(text="1/" + "9" * 50, unit=Unit.INCH, decimal_comma=False)
@example(text="\N{ARABIC-INDIC DIGIT THREE} mm", unit=Unit.INCH, decimal_comma=False)
@example(text="1/0", unit=Unit.INCH, decimal_comma=False)
@example(text=".", unit=Unit.INCH, decimal_comma=False)
@example(text="\N{SUPERSCRIPT TWO}", unit=Unit.INCH, decimal_comma=True)
def test_no_text_raises_anything_but_length_error(
    *, text: str, unit: Unit | None, decimal_comma: bool
) -> None:
    """Whatever stands in a cell is a length up to a kilometre, or is refused in one printable line."""
    outcome: int | str
    try:
        outcome = read_length(text, default_unit=unit, decimal_comma=decimal_comma)
    except LengthError as error:
        outcome = str(error)
    assert outcome.isprintable() if isinstance(outcome, str) else 0 <= outcome <= KILOMETRE


def read_both_ways(text: str) -> set[int]:
    """Read a text with the point and with the comma as decimal mark; give what could be read."""
    lengths_read = set()
    for decimal_comma in (False, True):
        with suppress(LengthError):
            lengths_read.add(read_length(text, default_unit=Unit.MILLIMETRE, decimal_comma=decimal_comma))
    return lengths_read


@given(st.text(alphabet="0123456789.,", max_size=12))
@example("1,234")
@example("1.234")
@example("1,234.5")
def test_no_number_is_two_lengths(text: str) -> None:
    """What a file with points reads, a file with commas reads alike or refuses."""
    assert len(read_both_ways(text)) <= 1


@given(st.integers(-KILOMETRE, KILOMETRE), st.integers(1, METRE))
def test_rounding_agrees_with_exact_fractions(nm: int, step: int) -> None:
    """Down, nearest and up are floor, floor of a half more, and ceiling of the exact ratio."""
    steps = Fraction(nm, step)
    assert round_down(nm, step) == floor(steps) * step
    assert round_nearest(nm, step) == floor(steps + Fraction(1, 2)) * step
    assert round_up(nm, step) == ceil(steps) * step


@given(st.integers(0, (100 * METRE) ** 2), st.sampled_from(System))
def test_area_is_within_half_its_last_decimal(nm2: int, system: System) -> None:
    """What is printed is at most half of its last decimal off the exact area."""
    number, name = write_area(nm2, TapeStyle(system=system)).split(" ", 1)
    square_mm, name_expected, half = (
        (Fraction("304.8") ** 2, "sq ft", Fraction(1, 20))
        if system is System.IMPERIAL
        else (Fraction(1000) ** 2, "m²", Fraction(1, 200))
    )
    assert name == name_expected
    assert abs(Fraction(number) - Fraction(nm2, 10**12) / square_mm) <= half

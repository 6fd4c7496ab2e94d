"""What people write is read exactly; what could be two lengths is asked about.

Expected lengths are worked by hand in inches or millimetres: 7' 3-5/8" is 7 x 12 + 3 + 5/8 = 87.625 in, and
87.625 x 25.4 mm = 2225.675 mm.
"""

import pickle
from decimal import Decimal

import pytest

from plankwright.errors import PlankwrightError
from plankwright.measure import LengthError, Unit, read_length


def mm(text: str) -> int:
    """Turn a decimal number of millimetres into nanometres."""
    nm = Decimal(text) * 1_000_000
    assert nm == int(nm)
    return int(nm)


def refusal(text: str, default_unit: Unit | None = Unit.INCH, *, decimal_comma: bool = False) -> str:
    """Give the reason why a text is refused."""
    with pytest.raises(LengthError) as caught:
        read_length(text, default_unit=default_unit, decimal_comma=decimal_comma)
    assert str(caught.value).endswith(f"” {caught.value.reason}")
    return caught.value.reason


@pytest.mark.parametrize(
    "text",
    [
        "7' 3-5/8\"",
        "7' 3 5/8\"",
        "7'3-5/8\"",
        "7'-3 5/8\"",
        "7'-3-5/8\"",
        "7' - 3 5/8\"",
        "7ft 3 5/8",
        "7 ft 3 5/8 in",
        "7 ft. 3 5/8 in.",
        "7ft-3-5/8in",
        "7 feet 3 5/8 inches",
        "7 FEET 3.625 Inches",
        "7' 3.625",
        "7' 3 10/16\"",
        "7' 3 40/64\"",
        "7' 3 5 / 8\"",
        "87 5/8",
        "87-5/8",
        "87 - 5/8",
        "87.625",
        '87.625"',
        "87 5/8 in",
        "87-5/8 inches",
        "  87 5/8\t",
        "7\N{PRIME} 3 5/8\N{DOUBLE PRIME}",
        "7\N{RIGHT SINGLE QUOTATION MARK} 3 5/8\N{RIGHT DOUBLE QUOTATION MARK}",
        "7\N{LEFT SINGLE QUOTATION MARK} 3 5/8\N{LEFT DOUBLE QUOTATION MARK}",
        "7\N{ACUTE ACCENT} 3 5/8\N{ACUTE ACCENT}\N{ACUTE ACCENT}",
        "7` 3 5/8``",
        "7' 3 5/8''",
        "7\N{PRIME} 3 5/8\N{PRIME}\N{PRIME}",
        "7\N{MODIFIER LETTER PRIME} 3 5/8\N{MODIFIER LETTER DOUBLE PRIME}",
        "7' 3⅝\"",
        "7' 3 ⅝\"",
        "7' 3-⅝ in",
        "87⅝",
        "7' 3\N{EN DASH}5/8\"",
        "7'\N{EN DASH}3\N{EM DASH}5/8\"",
        "7' 3\N{NON-BREAKING HYPHEN}5/8\"",
        "7' 3 5\N{FRACTION SLASH}8\"",
        "7'\N{NO-BREAK SPACE}3\N{NARROW NO-BREAK SPACE}5/8\"",
        "2225.675 mm",
        "222.5675cm",
        "2.225675 metres",
        "2,225.675 mm",
    ],
)
def test_reads_seven_feet_three_and_five_eighths(text: str) -> None:
    """All the ways to write one length give that length."""
    assert read_length(text, default_unit=Unit.INCH) == mm("2225.675")


@pytest.mark.parametrize(
    ("text", "millimetres"),
    [
        ("7'", "2133.6"),
        ("7 foot", "2133.6"),
        ("7'3\"", "2209.8"),
        ("7 feet 3 inches", "2209.8"),
        ("1 foot 1 inch", "330.2"),
        ("7' 5/8\"", "2149.475"),
        ("7'-5/8\"", "2149.475"),
        ("7' 0-5/8\"", "2149.475"),
        ("7' 0\"", "2133.6"),
        ('5/8"', "15.875"),
        ('½"', "12.7"),
        ('0/16"', "0"),
        ("''", None),
        ("7''", "177.8"),
        ("7.5 ft", "2286"),
        ("7 1/2 ft", "2286"),
        ("7½'", "2286"),
        (".5 in", "12.7"),
        ("2226mm", "2226"),
        ("2226 mm", "2226"),
        ("2226 MM", "2226"),
        ("2226 millimeters", "2226"),
        ("222.6 cm", "2226"),
        ("2.226 m", "2226"),
        ("1 metre", "1000"),
        ("1/2 m", "500"),
        ("0", "0"),
        ("0 mm", "0"),
        ("007 mm", "7"),
        ("1000 m", "1000000"),
        ("1,000,000 mm", None),
    ],
)
def test_reads_other_lengths(text: str, millimetres: str | None) -> None:
    """Each form stands for one length, worked by hand; None where it is no length after all."""
    if millimetres is None:
        refusal(text)
    else:
        assert read_length(text, default_unit=Unit.INCH) == mm(millimetres)


@pytest.mark.parametrize(
    ("unit", "millimetres"),
    [
        (Unit.INCH, "304.8"),
        (Unit.FOOT, "3657.6"),
        (Unit.MILLIMETRE, "12"),
        (Unit.CENTIMETRE, "120"),
        (Unit.METRE, "12000"),
    ],
)
def test_bare_number_takes_the_default_unit(unit: Unit, millimetres: str) -> None:
    """A number without a unit is in the unit of the file."""
    assert read_length("12", default_unit=unit) == mm(millimetres)


def test_number_behind_feet_is_inches_whatever_the_default() -> None:
    """After feet nothing but inches can come, even in a file of millimetres."""
    for unit in (None, *Unit):
        assert read_length("7ft 3 5/8", default_unit=unit) == mm("2225.675")


@pytest.mark.parametrize(
    ("text", "millimetres"),
    [
        ("2,226 m", "2226"),
        ("222,6 cm", "2226"),
        ("1.234,5 mm", "1234.5"),
        ('87,625"', "2225.675"),
        ("7' 3,625\"", "2225.675"),
        (",5 mm", "0.5"),
        ("2226 mm", "2226"),
        ("7' 3-5/8\"", "2225.675"),
    ],
)
def test_decimal_comma_where_the_file_says_so(text: str, millimetres: str) -> None:
    """With the comma as decimal mark, the point parts thousands."""
    assert read_length(text, default_unit=None, decimal_comma=True) == mm(millimetres)


@pytest.mark.parametrize(
    ("text", "nm"),
    [
        ("0.0000004 mm", 0),
        ("0.0000005 mm", 0),
        ("0.0000015 mm", 2),
        ("0.0000025 mm", 2),
        ("0.00000250001 mm", 3),
        ("0.333333333333 in", 8_466_667),
        ("1' 0.00000001 in", 304_800_000),
    ],
)
def test_decimals_round_once_half_to_even(text: str, nm: int) -> None:
    """What is finer than a nanometre goes to the nearest one, and from half-way to the even one."""
    assert read_length(text, default_unit=None) == nm


@pytest.mark.parametrize(
    ("text", "decimal_comma", "thousands", "decimals"),
    [
        ("2,226 m", False, "2226 m", "2.226 m"),
        ("2,226", False, "2226", "2.226"),
        ("1,234 mm", False, "1234 mm", "1.234 mm"),
        ("7' 1,234\"", False, "7' 1234\"", "7' 1.234\""),
        ("2.226 m", True, "2226 m", "2,226 m"),
        ('87.625"', True, '87625"', '87,625"'),
    ],
)
def test_one_mark_before_three_digits_is_asked_about(
    text: str,
    decimal_comma: bool,  # noqa: FBT001
    thousands: str,
    decimals: str,
) -> None:
    """Thousands or decimals? The refusal says how to write each."""
    reason = refusal(text, decimal_comma=decimal_comma)
    assert "two ways" in reason
    assert f"write {thousands} if" in reason
    assert f"{decimals} if" in reason
    assert read_length(decimals, default_unit=Unit.MILLIMETRE, decimal_comma=decimal_comma) > 0


@pytest.mark.parametrize(
    ("text", "decimal_comma", "better"),
    [("222,6 cm", False, "222.6 cm"), ("0,226 m", False, "0.226 m"), ("222.6 cm", True, "222,6 cm")],
)
def test_wrong_decimal_mark_is_told_the_right_one(text: str, decimal_comma: bool, better: str) -> None:  # noqa: FBT001
    """One file has one decimal mark; the refusal writes the number with it, and that can be read."""
    assert refusal(text, decimal_comma=decimal_comma).endswith(f"write {better}")
    assert read_length(better, default_unit=None, decimal_comma=decimal_comma) > 0


@pytest.mark.parametrize("text", ["7 3", "7-3", "2 226 mm", '7-3 5/8"', "87 5 8", "7' 3 5"])
def test_two_numbers_without_a_mark_are_asked_about(text: str) -> None:
    """7 3 may be feet and inches, 7-3/8 or a slip: nobody but its writer knows."""
    reason = refusal(text)
    assert "two numbers" in reason
    assert "7' 3\" for feet and inches" in reason


def test_number_without_unit_is_asked_about_where_none_is_set() -> None:
    """Without a default, the refusal offers the text with a unit."""
    assert refusal("87", None) == 'has no unit: write 87" if it is inches, 87 mm if it is millimetres'
    assert refusal("87 5/8", None) == "has no unit: write 87 5/8\" if it is inches, 87 5/8' if it is feet"


@pytest.mark.parametrize("unit", [Unit.MILLIMETRE, Unit.CENTIMETRE, Unit.METRE])
def test_bare_fraction_among_metric_numbers_is_asked_about(unit: Unit) -> None:
    """No metric tape has eighths, so 87 5/8 is most likely inches there; a wrong guess is 25 times off."""
    reason = refusal("87 5/8", unit)
    assert 'write 87 5/8" if it is inches' in reason
    assert f"87.5 {unit}" in reason


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "is empty"),
        (" \t ", "is empty"),
        ("nan", "not a length"),
        ("inf", "not a length"),
        ("board", "not a length"),
        ("7' x", "not a length"),
        ("about 7'", "not a length"),
        ("+7", "not a length"),
        ("7-", "not a length"),
        ("1/2/3", "not a length"),
        ("7..5", "cannot be read"),
        ("1,2345,6", "cannot be read"),
        ("12,34.5 mm", "cannot be read"),
        ("1234,567.5 mm", "cannot be read"),
        ("0,123.5 mm", "cannot be read"),
        ("7.5/8", "not a length"),
        ("7\N{DEGREE SIGN}", "not a length"),
        ("\N{ARABIC-INDIC DIGIT SEVEN} mm", "not a length"),
        ("5 cubits", "unknown unit, cubits"),
        ("1e3 mm", "unknown unit, e"),
        ("-7", "negative"),
        ("- 7' 3\"", "negative"),
        ('\N{MINUS SIGN}5/8"', "negative"),
        ("3/8 5", "fraction before another number"),
        ("3/8-5/8", "fraction before another number"),
        ("½5", "fraction before another number"),
        ('12/0"', "on no tape"),
        ('1/1"', "on no tape"),
        ('1/3"', "on no tape"),
        ('⅔"', "on no tape"),
        ('3/10"', "on no tape"),
        ('1/128"', "on no tape"),
        ('87 9/8"', "9/8 is 1-1/8"),
        ('73/8"', "73/8 is 9-1/8"),
        ('8/8"', "8/8 is 1"),
        ('87.5 3/8"', "decimals and a fraction"),
        ('87.0 3/8"', "decimals and a fraction"),
        ("7' 14\"", "a foot or more of inches"),
        ("7' 12\"", "a foot or more of inches"),
        ("7.5' 3\"", "a part of a foot"),
        ("7 1/2' 3\"", "a part of a foot"),
        ("1/2' 3\"", "a part of a foot"),
        ("7' 3 mm", "mixes units"),
        ("2 m 26 cm", "mixes units"),
        ("7\" 3'", "mixes units"),
        ("7' 3'", "mixes units"),
        ("2 m 26", "mixes units"),
        ("1000.000001 m", "longer than a kilometre"),
        ("9" * 50, "longer than a kilometre"),
        ("9" * 61, "too long"),
    ],
)
def test_what_is_no_length_is_refused_with_its_reason(text: str, words: str) -> None:
    """Each slip gets a sentence of its own, with how to mend it behind a colon."""
    reason = refusal(text)
    trouble, _, mend = reason.partition(": ")
    assert words in reason
    assert trouble
    assert mend


def test_refusal_shows_the_decimal_mark_of_the_file() -> None:
    """The example in a refusal can be read in the same file."""
    assert '87.625"' in refusal("board")
    assert '87,625"' in refusal("board", decimal_comma=True)


def test_refusal_shows_long_and_unprintable_text_safely() -> None:
    """A message stays one short printable line, whatever was in the cell."""
    with pytest.raises(LengthError) as caught:
        read_length("7\x00\n\ud800" + "x" * 5000, default_unit=None)
    shown = str(caught.value)
    assert shown.isprintable()
    assert len(shown) < 200


def test_refusal_is_bad_input_of_ours() -> None:
    """A length from the command line ends as bad input does, and whoever expects a ValueError gets one."""
    assert issubclass(LengthError, PlankwrightError)
    assert issubclass(LengthError, ValueError)
    assert LengthError.exit_code == 2


def test_refusal_comes_whole_from_another_process() -> None:
    """Text and reason survive the way between processes."""
    error = LengthError("7 3", "has two numbers side by side: write a mark")
    copy = pickle.loads(pickle.dumps(error))  # noqa: S301 - our own bytes, made one call ago
    assert (copy.text, copy.reason, str(copy)) == (error.text, error.reason, str(error))

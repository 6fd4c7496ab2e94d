"""Measures and counts in messages."""

from plankwright.check.wording import counted, tell
from plankwright.measure import INCH, MILLIMETRE, System, TapeStyle

INCHES = TapeStyle(system=System.IMPERIAL, denominator=16)
METRIC = TapeStyle(system=System.METRIC)


def test_measures_are_read_off_the_tape() -> None:
    """A measure off every mark is told to the nearest one."""
    assert tell(INCHES, 5 * INCH + 12_345, 2 * INCH) == ('5"', '2"')
    assert tell(METRIC, 1_234_567_891) == ("1235 mm",)


def test_a_limit_between_the_marks_is_told_in_full() -> None:
    """A tolerance of 1/32 inch is not rounded up to 1/16 on a tape of sixteenths."""
    assert tell(INCHES, INCH, INCH // 32) == ('1"', '1/32"')
    assert tell(METRIC, MILLIMETRE // 2) == ("0.5 mm",)


def test_unequal_measures_never_read_alike() -> None:
    """Where the tape would show two unequal measures as one, all of them are told in full."""
    assert tell(METRIC, 3 * MILLIMETRE, 3 * MILLIMETRE - 10_000) == ("3 mm", "2.99 mm")
    assert tell(METRIC, 3 * MILLIMETRE, 3 * MILLIMETRE) == ("3 mm", "3 mm")


def test_one_of_a_thing_is_singular() -> None:
    """Nothing reads "1 members"."""
    assert [counted(count, "member") for count in (0, 1, 2)] == ["no members", "1 member", "2 members"]

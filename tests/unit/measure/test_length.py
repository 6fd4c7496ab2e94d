"""Units by their published definitions, tapes, and rounding to their steps."""

from dataclasses import FrozenInstanceError
from fractions import Fraction

import pytest

from plankwright.measure import (
    CENTIMETRE,
    FOOT,
    INCH,
    METRE,
    MILLIMETRE,
    SIXTY_FOURTH,
    System,
    TapeStyle,
    Unit,
    round_down,
    round_nearest,
    round_up,
)

YARD = 3 * FOOT


def test_yard_by_nbs_circular_572_addendum() -> None:
    """A yard is 0.9144 m exactly, and so an inch 25.4 mm.

    Source, seen as the text of a scanned page: National Bureau of Standards, addendum of 22 January 1960 to
    Circular 572, section 2: "1 yard = 0.914 4 meter exactly. From this definition it follows that 1 inch
    equals 25.4 millimeters." The agreement itself, Federal Register document 59-5442 of 1 July 1959, is cited
    from memory.
    """
    assert Fraction(YARD, METRE) == Fraction("0.9144")
    assert Fraction(INCH, MILLIMETRE) == Fraction("25.4")


def test_foot_by_24_fr_5348() -> None:
    """A foot is 0.3048 m.

    Source: 24 FR 5348 (1 July 1959), seen as it is told in "Deprecation of the United States (U.S.) Survey
    Foot", Point of Beginning: the notice "defined this international foot as 0.304 8 meter".
    """
    assert Fraction(FOOT, METRE) == Fraction("0.3048")
    assert FOOT == 12 * INCH


def test_metric_units_by_their_prefixes() -> None:
    """A metre is a thousand millimetres, a hundred centimetres and 10^9 nanometres, by the SI prefixes."""
    assert METRE == 10**9
    assert (MILLIMETRE, CENTIMETRE) == (10**6, 10**7)


def test_sixty_fourth_is_whole_and_the_finest() -> None:
    """A 64th of an inch is 396,875 nm, which is 25.4 mm over 64; a 128th is no whole number."""
    assert SIXTY_FOURTH == 396_875
    assert 64 * SIXTY_FOURTH == INCH
    assert INCH % 128 != 0


@pytest.mark.parametrize(
    ("unit", "size_nm", "metric"),
    [
        (Unit.INCH, INCH, False),
        (Unit.FOOT, FOOT, False),
        (Unit.MILLIMETRE, MILLIMETRE, True),
        (Unit.CENTIMETRE, CENTIMETRE, True),
        (Unit.METRE, METRE, True),
    ],
)
def test_unit_knows_its_size_and_system(unit: Unit, size_nm: int, metric: bool) -> None:  # noqa: FBT001
    """Each unit stands for one length and belongs to one system."""
    assert unit.size_nm == size_nm
    assert unit.is_metric is metric


@pytest.mark.parametrize(
    ("denominator", "step_nm"), [(1, INCH), (2, INCH // 2), (16, 1_587_500), (64, 396_875)]
)
def test_imperial_tape_steps_by_its_denominator(denominator: int, step_nm: int) -> None:
    """An imperial tape is read to its fraction of an inch."""
    assert TapeStyle(system=System.IMPERIAL, denominator=denominator).step_nm == step_nm


def test_metric_tape_steps_by_a_whole_or_half_millimetre() -> None:
    """A metric tape is read to the millimetre, or to the half where it is asked for."""
    assert TapeStyle(system=System.METRIC).step_nm == 1_000_000
    assert TapeStyle(system=System.METRIC, millimetre_step=500_000).step_nm == 500_000


@pytest.mark.parametrize("denominator", [-16, 0, 3, 10, 24, 128])
def test_tape_refuses_a_fraction_that_is_on_none(denominator: int) -> None:
    """Tenths, thirds and 128ths are on no carpenter's tape."""
    with pytest.raises(ValueError, match="64ths"):
        TapeStyle(system=System.IMPERIAL, denominator=denominator)


@pytest.mark.parametrize("step_nm", [-1_000_000, 0, 1, 250_000, 10_000_000])
def test_tape_refuses_another_metric_step(step_nm: int) -> None:
    """A metric step is 1 mm or 0.5 mm."""
    with pytest.raises(ValueError, match=r"0\.5 mm"):
        TapeStyle(system=System.METRIC, millimetre_step=step_nm)


def test_tape_is_frozen() -> None:
    """A style is a value: whoever wants another makes another."""
    style = TapeStyle(system=System.METRIC)
    with pytest.raises(FrozenInstanceError):
        style.denominator = 8  # type: ignore[misc]


@pytest.mark.parametrize(
    ("nm", "down", "nearest", "up"),
    [
        (0, 0, 0, 0),
        (1, 0, 0, 10),
        (4, 0, 0, 10),
        (5, 0, 10, 10),
        (10, 10, 10, 10),
        (14, 10, 10, 20),
        (15, 10, 20, 20),
        (-1, -10, 0, 0),
        (-5, -10, 0, 0),
        (-6, -10, -10, 0),
        (-15, -20, -10, -10),
    ],
)
def test_rounding_by_hand(nm: int, down: int, nearest: int, up: int) -> None:
    """Down is towards less, up towards more, the nearest goes up from half-way: worked by hand on tens."""
    assert (round_down(nm, 10), round_nearest(nm, 10), round_up(nm, 10)) == (down, nearest, up)


def test_rounding_to_an_odd_step_has_no_half_way() -> None:
    """With a step of three, one goes down and two go up."""
    assert [round_nearest(nm, 3) for nm in range(7)] == [0, 0, 3, 3, 3, 6, 6]


@pytest.mark.parametrize("step", [0, -1])
def test_rounding_refuses_a_step_that_is_none(step: int) -> None:
    """A step of zero or less is a slip of ours and is told, not divided by."""
    for rounding in (round_down, round_nearest, round_up):
        with pytest.raises(ValueError, match="over zero"):
            rounding(5, step)

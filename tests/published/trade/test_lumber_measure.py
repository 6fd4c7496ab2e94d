"""Board feet, surface measure, weight, waste and carbon against worked examples of others."""

from fractions import Fraction

import pytest

from plankwright.measure import FOOT, INCH, METRE
from plankwright.trade.lumber.board_measure import board_feet, cubic_metres, to_hundredth
from plankwright.trade.lumber.surface_measure import exact_surface_measure, surface_measures
from plankwright.trade.lumber.waste import to_buy
from plankwright.trade.lumber.weight import density_kg_m3, stored_carbon_dioxide_kg
from plankwright.trade.wood.species import wood_named


def inches(text: str) -> int:
    """Give a number of inches in nanometres."""
    return round(Fraction(text) * INCH)


@pytest.mark.parametrize(
    ("thick", "wide", "long_in", "feet"),
    [
        ("2", "4", 14 * 12, "9.33"),  # tpub.com engbas 6-3, formula read, computed
        ("2", "10", 14 * 12, "23.33"),  # inman.com, everything you wanted to know about wood, read
        ("1", "9", 96, "6"),  # woodworkingtips.com etip04, read
        ("3/2", "9", 96, "9"),  # the same
        ("4", "6", 10 * 12, "20"),  # elmwoodreclaimedtimber.com, useful math, read
        ("1", "6", 120, "5"),  # peacocklumber.ca faq, read
        ("1", "6", 8 * 12, "4"),  # doityourself.com, read earlier
        ("2", "3", 8 * 12, "4"),  # the same
        ("2", "12", 10 * 12, "20"),  # the same
        ("3/4", "6", 120, "5"),  # under an inch counts as an inch: tpub.com, read
    ],
)
def test_board_feet(thick: str, wide: str, long_in: int, feet: str) -> None:
    """Each to the hundredth, as softwood is tallied."""
    found = board_feet(inches(thick), inches(wide), long_in * INCH)
    assert to_hundredth(found) == Fraction(feet)


def test_a_board_foot_in_metric() -> None:
    """ruby-units (read): a twelfth of a cubic foot. CORRIM (read earlier): 423.8 to a cubic metre."""
    assert float(cubic_metres(Fraction(1))) == pytest.approx(0.002359737, abs=5e-10)
    assert 1 / float(cubic_metres(Fraction(1))) == pytest.approx(423.8, abs=0.05)
    # The same by way of our own lengths: an inch by a foot by a foot.
    assert float(cubic_metres(Fraction(1))) == pytest.approx(INCH * FOOT * FOOT / METRE**3)


@pytest.mark.parametrize(
    ("wide", "long_ft", "exact", "whole"),
    [
        ("13/2", 8, Fraction(13, 3), 4),  # gophuongdong.com, hardwood lumber measurement, read
        ("8", 12, Fraction(8), 8),  # the same
        ("10", 13, Fraction(65, 6), 11),  # the same
        ("25/4", 8, Fraction(25, 6), 4),  # americanhardwood.org, read earlier
        ("31/4", 8, Fraction(31, 6), 5),  # the rule computed; that page rounds the width first, and agrees
    ],
)
def test_surface_measure(wide: str, long_ft: int, exact: Fraction, whole: int) -> None:
    """Width with its fractions by whole feet of length over twelve."""
    assert exact_surface_measure(inches(wide), long_ft * FOOT) == exact
    assert surface_measures([(inches(wide), long_ft * FOOT)]) == (whole,)


def test_lengths_are_cut_down_to_whole_feet() -> None:
    """goodwoodcorp.com, hardwood terminology (read): 8 ft 3 in counts as 8 ft."""
    assert exact_surface_measure(inches("31/4"), 8 * FOOT + 3 * INCH) == Fraction(31, 6)


def test_halves_go_up_and_down_by_turns() -> None:
    """Woodweb, rounding numbers when figuring (read): up the first time, down the next, up, down.

    6 in by 9 ft is 4-1/2 each time; what is between them and ends in no half changes nothing.
    """
    half, plain = (6 * INCH, 9 * FOOT), (8 * INCH, 12 * FOOT)
    assert surface_measures([half, half, plain, half, half]) == (5, 4, 8, 5, 4)


def test_waste_is_a_share_of_what_is_bought() -> None:
    """Woodweb, calculating waste from rough lumber (read): 30 % of waste means 142.85 for 100, not 130."""
    assert float(to_buy(Fraction(100), Fraction(3, 10))) == pytest.approx(142.857, abs=0.001)
    # The same page: adding 30 % is a waste of 23 %.
    assert float(to_buy(Fraction(100), Fraction(23, 100))) == pytest.approx(130, abs=0.2)


def test_density() -> None:
    """oakmissouri.org quoting the Wood Handbook (read): G 0.4 at 12 % is 448 kg/m³, 27.968 lb/ft³."""
    assert density_kg_m3(0.4, 12.0) == pytest.approx(448.0)
    assert density_kg_m3(0.4, 12.0) / 1000 * 62.43 == pytest.approx(27.968, abs=0.001)


@pytest.mark.parametrize(
    ("species", "pounds"),
    [
        ("western redcedar", 23),  # pennytimberproducts.com, cedar wood, read
        ("northern white cedar", 22),  # oakbrookwoodturningsupply.com, western cedar, read
        ("American chestnut", 30),  # aikenwoodcarvers.org, common wood database, read
    ],
)
def test_dried_weight_of_a_cubic_foot(species: str, pounds: float) -> None:
    """At 12 % moisture, from the gravities that are used here; the pages round to whole pounds."""
    gravity = wood_named(species).gravity
    assert gravity is not None
    assert density_kg_m3(gravity[0], 12.0) / 1000 * 62.43 == pytest.approx(pounds, abs=0.75)


def test_stored_carbon() -> None:
    """Half of the dry mass, times 44/12: 825 kg for a cubic metre of 450 kg, 1.95 a board foot (computed)."""
    assert stored_carbon_dioxide_kg(0.45, 1.0) == pytest.approx(825.0)
    assert stored_carbon_dioxide_kg(0.45, 0.002359737) == pytest.approx(1.95, abs=0.005)

"""Shrinkage and swelling against worked examples, and the two tables of the handbook against each other."""

import pytest

from plankwright.trade.moisture.movement import (
    change_along,
    change_by_coefficient,
    change_by_total,
    total_from_coefficient,
    width_change,
)
from plankwright.trade.wood.species import Species, every_species, wood_named

OWN_LINE_OF_TABLE_13_5 = {"Ash, green", "Birch, sweet", "Elm, cedar", "Fir, grand"}
"""Table 13-5 lists them with the figures of white ash, yellow birch, winged elm and white fir."""


def coefficient_from_total(total_pct: float, saturation_pct: float = 30.0) -> float:
    """Give the slope of equation 13-3 at 10 % moisture, which is what Table 13-5 lists."""
    return 1 / (100 * saturation_pct / total_pct - saturation_pct + 10)


def tangential(name: str) -> float:
    """The coefficient of a species that is known by its whole name."""
    wood = wood_named(name)
    assert wood.known, wood.species
    return wood.species[0].tangential


def test_a_wide_board_to_eleven_per_cent() -> None:
    """Wood Handbook, FPL-GTR-190, chapter 13 (read): 232 mm becomes 233.7 mm, 9.15 in becomes 9.217 in.

    The start at 8 % and the species, white fir, are from memory of the page before.
    """
    coefficient = tangential("Fir, white")
    assert coefficient == pytest.approx(0.00245)
    assert change_by_coefficient(232.0, coefficient, 8.0, 11.0) == pytest.approx(1.7, abs=0.05)
    assert 9.15 + change_by_coefficient(9.15, coefficient, 8.0, 11.0) == pytest.approx(9.217, abs=0.0005)


def test_cherry_beyond_the_range_of_the_coefficients() -> None:
    """Woodweb, allowing for wood expansion in solid board panels (read): 9 in comes to about 9-5/32."""
    cherry = wood_named("Cherry, black").species[0]
    swelled = width_change(9.0, cherry.tangential, 7.5, 15.0, total_pct=cherry.tangential_total_pct)
    assert 9 + swelled == pytest.approx(9 + 5 / 32, abs=1 / 32)


def test_mesquite_by_its_coefficient() -> None:
    """Woodwright.net, stability of wood flooring (read earlier): 5 in by 3 points at 0.00129 is 0.019 in."""
    assert change_by_coefficient(5.0, 0.00129, 6.0, 9.0) == pytest.approx(0.019, abs=0.0005)


def test_both_equations_agree_in_the_middle() -> None:
    """Douglas-fir, 5.5 in, 12 to 8 %: -0.0587 by coefficient and -0.0584 by total shrinkage (computed)."""
    fir = wood_named("Douglas-fir, coast").species[0]
    assert fir.tangential_total_pct == pytest.approx(7.6)
    assert change_by_coefficient(5.5, fir.tangential, 12.0, 8.0) == pytest.approx(-0.0587, abs=5e-5)
    assert change_by_total(5.5, 7.6, 12.0, 8.0) == pytest.approx(-0.0584, abs=5e-5)


def test_a_barn_board_dries_indoors() -> None:
    """Eastern white pine, 190 mm, 16 to 8 %: -3.18 mm, by total shrinkage since 16 % is beyond (computed)."""
    pine = wood_named("Pine, eastern white").species[0]
    change = width_change(190.0, pine.tangential, 16.0, 8.0, total_pct=pine.tangential_total_pct)
    assert change == pytest.approx(-3.18, abs=0.01)


def test_a_wall_of_courses() -> None:
    """Twenty courses of 140 mm, Douglas-fir, 8 to 11 %: 22.4 mm over the wall (computed)."""
    assert 20 * change_by_coefficient(140.0, 0.00267, 8.0, 11.0) == pytest.approx(22.4, abs=0.05)


def test_total_shrinkage_is_what_it_says() -> None:
    """From green to ovendry a size loses its total shrinkage, and above fibre saturation nothing moves."""
    assert change_by_total(100.0, 7.0, 30.0, 0.0) == pytest.approx(-7.0)
    assert change_by_total(100.0, 7.0, 60.0, 0.0) == pytest.approx(-7.0)
    assert change_by_total(100.0, 7.0, 60.0, 35.0) == 0.0


def test_along_the_grain_next_to_nothing() -> None:
    """Longitudinal total shrinkage up to 0.2 % (read earlier): 12 ft from 16 to 8 % lose about 1/13 in."""
    assert change_along(144.0, 16.0, 8.0) == pytest.approx(-0.077, abs=0.001)


BOTH_TABLES = [one for one in every_species() if one.total_source]


def test_most_species_stand_in_both_tables() -> None:
    """Table 4-3 was read as far as hemlock; further rows are from memory and say so."""
    assert len(BOTH_TABLES) > 55
    assert {one.name for one in BOTH_TABLES} > OWN_LINE_OF_TABLE_13_5


@pytest.mark.parametrize("row", BOTH_TABLES, ids=lambda one: one.name)
def test_coefficients_follow_from_total_shrinkage(row: Species) -> None:
    """Table 13-5 is Table 4-3 at 10 % moisture: every pair agrees, but for the four listed."""
    assert row.tangential_total_pct is not None
    assert row.radial_total_pct is not None
    assert row.radial is not None
    for total, coefficient in (
        (row.tangential_total_pct, row.tangential),
        (row.radial_total_pct, row.radial),
    ):
        computed = coefficient_from_total(total, row.saturation_pct)
        agrees = computed == pytest.approx(coefficient, abs=1.1e-5)
        assert agrees or row.name in OWN_LINE_OF_TABLE_13_5


@pytest.mark.parametrize("total", [4.7, 7.6, 11.9])
def test_coefficient_and_total_there_and_back(total: float) -> None:
    """The one is the other turned round."""
    assert total_from_coefficient(coefficient_from_total(total)) == pytest.approx(total)


@pytest.mark.parametrize(("before", "after"), [(5.9, 10.0), (10.0, 14.1)])
def test_coefficients_are_not_used_beyond_their_range(before: float, after: float) -> None:
    """Equation 13-2 holds for 6 to 14 % only (read)."""
    with pytest.raises(ValueError, match="6 to 14"):
        change_by_coefficient(100.0, 0.0025, before, after)

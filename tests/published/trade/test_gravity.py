"""Specific gravities at 12 % moisture against pages of others, and against the handbook's own conversion."""

import pytest

from plankwright.trade.wood.species import every_species

OF_SPECIES = {one.name: one.gravity for one in every_species()}


@pytest.mark.parametrize(
    ("species", "gravity"),
    [
        ("Cedar, western redcedar", 0.32),  # realcedar.co.uk, characteristics and properties, read
        ("Maple, sugar", 0.63),  # maplefloor.org, physical properties and characteristics, read
        ("Pine, longleaf", 0.59),  # fastcarpenter.com, longleaf pine, read
        ("Pine, ponderosa", 0.40),  # UFC 3-130-04, Table 2-2, read
        ("Cedar, yellow", 0.44),  # the same
        ("Ash, white", 0.60),  # synthmind.com, tree species strength properties, read
        ("Hickory, pecan", 0.66),  # the same
    ],
)
def test_gravity(species: str, gravity: float) -> None:
    """Ovendry mass over volume at 12 %."""
    assert OF_SPECIES[species] == (gravity, gravity)


def test_rows_that_stand_for_several_species() -> None:
    """Wood Handbook, Table 5-3a, transcribed: shellbark 0.69 to pignut 0.75, water 0.63 to willow 0.69."""
    assert OF_SPECIES["Hickory, true"] == (0.69, 0.75)
    assert OF_SPECIES["Red oak: water, laurel, willow"] == (0.63, 0.69)


@pytest.mark.parametrize(
    ("species", "basic"),
    [
        ("Apple", 0.61),
        ("Ash, pumpkin", 0.48),
        ("Birch, river", 0.49),
        ("Buckeye, yellow", 0.33),
        ("Catalpa, northern", 0.38),
        ("Elm, cedar", 0.59),
        ("Elm, winged", 0.60),
        ("Holly, American", 0.50),
        ("Honeylocust", 0.60),
        ("Madrone, Pacific", 0.58),
        ("Magnolia, sweetbay", 0.42),
        ("Persimmon, common", 0.64),
        ("Pine, Jeffrey", 0.37),
        ("Red oak, California", 0.51),
        ("Tanoak", 0.58),
        ("White oak, Oregon white", 0.64),
    ],
)
def test_gravity_from_green_volume(species: str, basic: float) -> None:
    """Forest inventory's species table (copy, read) by Wood Handbook equation 4-11, saturation 30 %."""
    at_12 = basic / (1 - 0.265 * basic * (1 - 12 / 30))
    assert OF_SPECIES[species] == pytest.approx((at_12, at_12), abs=0.0051)

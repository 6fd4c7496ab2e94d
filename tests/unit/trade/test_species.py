"""Which wood a name means."""

import pytest

from plankwright.trade.wood.species import every_species, wood_named


@pytest.mark.parametrize(
    ("written", "name"),
    [
        ("longleaf pine", "Pine, longleaf"),
        ("Pine, longleaf", "Pine, longleaf"),
        ("heart pine", "Pine, heart (trade name)"),
        ("tulip poplar", "Yellow-poplar"),
        ("American chestnut boards", "Chestnut, American"),
        ("cypress", "Baldcypress"),
    ],
)
def test_one_species(written: str, name: str) -> None:
    """Whatever the order of its words, and with words that say nothing."""
    wood = wood_named(written)
    assert wood.known
    assert wood.name == name


def test_a_family() -> None:
    """The range from its quietest to its liveliest member, and which word was understood."""
    wood = wood_named("old pine")
    assert not wood.known
    assert wood.name == "pine of unknown kind"
    assert wood.tangential == (0.00194, 0.00271)
    assert wood.gravity == (0.35, 0.59)


@pytest.mark.parametrize("written", ["", "mystery", "???", "oak pine"])
def test_nothing_that_is_known(written: str) -> None:
    """Everything in the table may be meant."""
    wood = wood_named(written)
    assert wood.species == every_species()
    assert wood.name == "wood of unknown species"


def test_every_figure_names_its_source() -> None:
    """A coefficient always, a total and a gravity where there is one."""
    for species in every_species():
        assert species.coefficient_source.title
        assert (species.tangential_total_pct is None) == (species.total_source is None)
        assert (species.gravity is None) == (species.gravity_source is None)


def test_the_table_is_whole() -> None:
    """105 rows, names once each, tangential more than radial as in all wood."""
    every = every_species()
    assert len({one.name for one in every}) == len(every) == 105
    assert all(one.radial is None or one.radial < one.tangential for one in every)

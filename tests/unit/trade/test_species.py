"""Which wood a name means."""

import pytest

from plankwright.trade.wood.species import every_species, not_understood, wood_named


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


@pytest.mark.parametrize(
    ("written", "outside", "inside"),
    [
        ("cedar", "Elm, cedar", "Cedar, incense"),
        ("old cedar boards", "Elm, cedar", "Cedar, incense"),
        ("willow", "Red oak: water, laurel, willow", "Willow, black"),
    ],
)
def test_a_family_holds_its_own_only(written: str, outside: str, inside: str) -> None:
    """And no species of another family that is called after it."""
    names = {one.name for one in wood_named(written).species}
    assert outside not in names
    assert inside in names


@pytest.mark.parametrize(
    ("written", "names"),
    [
        ("cedar elm", {"Elm, cedar"}),
        ("redcedar", {"Cedar, eastern redcedar", "Cedar, western redcedar"}),
        ("white cedar", {"Cedar, Atlantic white", "Cedar, northern white"}),
        ("red oak", {"Red oak, California", "Red oak, commercial", "Red oak: water, laurel, willow"}),
        ("southern pine", {"Pine, southern yellow (trade name)"}),
    ],
)
def test_a_part_of_a_family(written: str, names: set[str]) -> None:
    """Words that no family goes by may stand anywhere in a name."""
    assert {one.name for one in wood_named(written).species} == names


@pytest.mark.parametrize(
    ("written", "gravity"),
    [
        ("cedar", (0.31, 0.47)),
        ("maple", (0.47, 0.63)),
        ("true hickory", (0.69, 0.75)),
        ("red oak", (0.56, 0.69)),
        ("oak", (0.56, 0.88)),
        ("southern pine", None),
        ("heart pine", None),
        ("willow", None),
        ("mystery", None),
    ],
)
def test_gravity_of_all_that_a_name_may_mean(written: str, gravity: tuple[float, float] | None) -> None:
    """Nothing where a member's is not known: the range of the rest would be too narrow."""
    assert wood_named(written).gravity == gravity


def test_names_that_mean_nothing_here() -> None:
    """Counted, whatever their case; a name of which one word is known, and no name, are left out."""
    written = ["pine", "unobtainium", "", "Unobtainium ", "old oak", "oak pine"]
    assert not_understood(written) == {"unobtainium": 2, "oak pine": 1}


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

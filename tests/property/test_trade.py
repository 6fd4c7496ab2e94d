"""What holds of the trade's formulas at points that no table has: monotone, bounded, alike in every unit."""

from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from plankwright.measure import FOOT, INCH, MILLIMETRE
from plankwright.trade.fasteners.nails import Nail, every_nail, nail_kinds, nails_of
from plankwright.trade.fasteners.predrilling import drill_bit_nm, widest_hole_nm
from plankwright.trade.fasteners.reach import DepthRule, blind_passage, choose_nail, face_passage
from plankwright.trade.fasteners.withdrawal import withdrawal_n
from plankwright.trade.lumber.board_measure import board_feet, to_hundredth
from plankwright.trade.lumber.surface_measure import exact_surface_measure, surface_measures
from plankwright.trade.lumber.waste import to_buy
from plankwright.trade.lumber.weight import density_kg_m3
from plankwright.trade.moisture.equilibrium import equilibrium_pct, humidity_for_pct
from plankwright.trade.moisture.movement import change_by_total, width_change
from plankwright.trade.wood.species import Species, every_species, wood_named

temperatures = st.floats(0.0, 40.0)
humidities = st.floats(1.0, 99.0)
moistures = st.floats(0.0, 30.0)
species = st.sampled_from(every_species())
sizes = st.tuples(st.integers(INCH, 20 * INCH), st.integers(FOOT, 20 * FOOT))
thicknesses = st.integers(INCH // 4, 3 * INCH)
gravities = st.floats(0.3, 0.9)


@given(temperatures, humidities, humidities)
def test_damper_air_means_damper_wood(temperature: float, one: float, other: float) -> None:
    """At every temperature of a house; and never outside what wood can hold from air."""
    assume(one < other)
    assert 0.0 < equilibrium_pct(temperature, one) < equilibrium_pct(temperature, other) < 30.0


@given(temperatures, humidities)
def test_humidity_there_and_back(temperature: float, humidity: float) -> None:
    """The inverse finds the humidity again."""
    found = humidity_for_pct(temperature, equilibrium_pct(temperature, humidity))
    assert found == pytest.approx(humidity, abs=1e-4)


@given(species, moistures, moistures)
def test_wood_swells_with_moisture(row: Species, before: float, after: float) -> None:
    """The sign of the change is that of the moisture's, and no width doubles or vanishes."""
    change = width_change(100.0, row.tangential, before, after, saturation_pct=row.saturation_pct)
    assert change == 0 or (change > 0) == (after > before)
    assert -20.0 < change < 25.0


@given(st.floats(1.0, 15.0), moistures, moistures)
def test_there_and_back_is_where_it_was(total: float, before: float, after: float) -> None:
    """Drying and wetting by total shrinkage comes back to the same size."""
    there = 100.0 + change_by_total(100.0, total, before, after)
    assert there + change_by_total(there, total, after, before) == pytest.approx(100.0)


@given(st.floats(0.1, 1000.0), moistures, moistures)
def test_change_goes_with_the_size(factor: float, before: float, after: float) -> None:
    """In inches or in millimetres: the same share of the width."""
    change = width_change(1.0, 0.0025, before, after)
    assert width_change(factor, 0.0025, before, after) == pytest.approx(factor * change)


@given(st.text(max_size=30))
def test_any_name_means_some_wood(name: str) -> None:
    """Whatever stands in the tally: a species, a family, or everything; its range holds its members."""
    wood = wood_named(name)
    low, high = wood.tangential
    assert wood.species
    assert all(low <= one.tangential <= high for one in wood.species)


@given(species)
def test_a_species_is_found_by_its_own_name(row: Species) -> None:
    """As the table has it, so does the tally."""
    assert row in wood_named(row.name).species


@given(sizes, thicknesses)
def test_board_feet_are_exact_and_round_to_a_hundredth(size: tuple[int, int], thickness: int) -> None:
    """Never drifting: twice as long is twice as many, and rounding is within half a hundredth."""
    width, length = size
    feet = board_feet(thickness, width, length)
    assert board_feet(thickness, width, 2 * length) == 2 * feet
    assert abs(to_hundredth(feet) - feet) <= Fraction(1, 200)
    assert feet >= Fraction(width * length, 12 * INCH * FOOT)


@given(st.lists(sizes, max_size=40))
def test_surface_measures_stay_near_the_truth(tally: list[tuple[int, int]]) -> None:
    """Each within a half of what it is, and halves even out in pairs."""
    exact = [exact_surface_measure(*size) for size in tally]
    measured = surface_measures(tally)
    assert all(abs(whole - true) <= Fraction(1, 2) for whole, true in zip(measured, exact, strict=True))
    halves = [whole - true for whole, true in zip(measured, exact, strict=True) if true % 1 == Fraction(1, 2)]
    assert sum(halves) in {0, Fraction(1, 2)}


@given(st.fractions(1, 1000), st.fractions(0, Fraction(99, 100)))
def test_what_is_bought_leaves_what_is_needed(needed: Fraction, waste: Fraction) -> None:
    """Buying and losing comes back to what was needed, exactly."""
    assert to_buy(needed, waste) * (1 - waste) == needed


@given(gravities, moistures, moistures)
def test_damper_wood_is_heavier(gravity: float, one: float, other: float) -> None:
    """At the same specific gravity."""
    assume(one < other)
    assert density_kg_m3(gravity, one) < density_kg_m3(gravity, other)


@given(gravities, st.floats(0.5, 8.0), st.floats(3.0, 80.0), st.floats(1.1, 3.0))
def test_more_nail_holds_more(gravity: float, diameter: float, bite: float, times: float) -> None:
    """In proportion to its diameter and its bite, and faster than that with the weight of the wood."""
    holds = withdrawal_n(gravity, diameter, bite)
    assert withdrawal_n(gravity, diameter * times, bite) == pytest.approx(times * holds)
    assert withdrawal_n(gravity, diameter, bite * times) == pytest.approx(times * holds)
    assert withdrawal_n(gravity * times, diameter, bite) > times * holds


@given(
    st.sampled_from(nail_kinds()),
    thicknesses,
    st.integers(0, 2 * INCH),
    st.booleans(),
    st.booleans(),
)
def test_the_longest_nail_that_may(kind: str, board: int, between: int, opened: bool, blind: bool) -> None:  # noqa: FBT001 - drawn
    """Never past the depth allowed, never short of the framing, and no longer one would do."""
    passage = (blind_passage if blind else face_passage)(board, between)
    rule = DepthRule()
    chosen = choose_nail(nails_of(kind), passage, rule, opened=opened)
    allowed = rule.allowed_nm(opened=opened)
    if chosen.nail is None:
        assert all(passage.deepest_nm(one) > allowed or passage.bite_nm(one) == 0 for one in nails_of(kind))
        return
    assert 0 < chosen.bite_nm <= chosen.deepest_nm <= allowed
    longer = [one for one in nails_of(kind) if one.length_nm > chosen.nail.length_nm]
    assert all(passage.deepest_nm(one) > allowed for one in longer)


@given(st.sampled_from(every_nail()), st.none() | gravities)
def test_a_hole_is_thinner_than_its_nail(one: Nail, gravity: float | None) -> None:
    """And the drill bit no wider than the hole."""
    assert drill_bit_nm(one, gravity) <= widest_hole_nm(one, gravity) < one.diameter_nm
    assert widest_hole_nm(one, gravity) - drill_bit_nm(one, gravity) < INCH // 64
    assert one.length_nm > 10 * MILLIMETRE

"""Constants of lumber measure, beside their sources."""

from fractions import Fraction

from plankwright.trade.source import Fact, Source, Trust

BOARD_FOOT = Source(
    key="board-foot",
    title="Board measure, engineering aid training text: T (in) x W (in) x L (ft) / 12, and less than 1 in "
    "thick counts as 1 in",
    address="http://www.tpub.com/engbas/6-3.htm",
    trust=Trust.READ,
    note="To the hundredth; nominal sizes where wood is sold by them. Salvaged boards are measured as "
    "they are.",
)
SURFACE_MEASURE = Source(
    key="surface-measure",
    title="Hardwood measure: width with its fractions x length in whole feet / 12, rounded to the whole foot",
    address="http://goodwoodcorp.com/HardWoodTerminology.asp",
    trust=Trust.READ,
    note="Boards of random width are tallied by it (NHLA rule book of 2015, paragraph 18, read). Yards "
    "that round widths and lengths up come to more.",
)
HALVES = Source(
    key="half-feet",
    title="A surface measure that ends in a half is rounded up the first time, down the next, and so on",
    address="http://www.woodweb.com/knowledge_base/Rounding_Numbers_when_Figuring.html",
    trust=Trust.READ,
)
DENSITY = Source(
    key="density",
    title="Wood Handbook, chapter 4, on density: water x specific gravity at a moisture x (1 + moisture)",
    address="https://oakmissouri.org/forestfunction/density.html",
    trust=Trust.SECONDARY,
)
UNKNOWN_GRAVITY = Source(
    key="unknown-gravity",
    title="Least and greatest specific gravity among the species whose figures are known here",
    trust=Trust.COMPUTED,
    note="Name the species in the tally, such as longleaf pine, for a narrower answer.",
)
WASTE = Source(
    key="waste",
    title="Calculating waste from rough lumber: with 30 % waste, 143 are bought for 100, not 130",
    address="http://www.woodweb.com/knowledge_base/Calculating_Waste_from_Rough_Lumber.html",
    trust=Trust.READ,
)
NEW_EXTRA = Source(
    key="new-extra",
    title="Tenth of new flooring bought beyond the area of a straight lay",
    address="https://sypdirect.net/waste-factor",
    trust=Trust.READ,
)
CARBON = Source(
    key="carbon",
    title="About half of the dry mass of wood is carbon",
    address="https://millerwoodtradepub.com/how-sustainably-produced-forest-products-can-help-slow-global-warming-2/",
    trust=Trust.READ,
    note="44/12 is the ratio of the molar masses of carbon dioxide and carbon. Carbon that stays in the "
    "wood is stored, which is not the same as emissions avoided.",
)
LIFE_CYCLE = Source(
    key="life-cycle",
    title="Bergman, Gu, Falk and Napier (2010), abstract: new against salvaged wood",
    address="https://urbanmachine.build/environmental-benefits-of-reclaimed-framing-lumber-compared-to-virgin",
    trust=Trust.SECONDARY,
    note="New framing lumber takes about 11 times the energy of salvaged, new flooring about 13 times; the "
    "warming potential is about 3 and 5 times. Their kilograms per cubic metre were not found, so none are "
    "given here.",
)
HEAVY_BOARD = Source(key="lifting", title="A piece over 50 lb (23 kg) takes two people", trust=Trust.PRACTICE)

LEAST_THICKNESS_IN = Fact(value=Fraction(1), source=BOARD_FOOT)
"""Less counts as this much. [in]"""

CUBIC_METRES_PER_BOARD_FOOT = Fraction(144) * Fraction(254, 10_000) ** 3
"""A board foot is 144 cubic inches. [m³]"""

WATER_KG_M3 = Fact(value=1000.0, source=DENSITY)
"""Density of water. [kg/m³]"""

CARBON_SHARE = Fact(value=0.5, source=CARBON)
CARBON_DIOXIDE_PER_CARBON = Fact(value=44 / 12, source=CARBON)
"""Carbon in the dry mass of wood, and carbon dioxide to a mass of carbon. [kg/kg]"""

ENERGY_TIMES = Fact(value=(11, 13), source=LIFE_CYCLE)
WARMING_TIMES = Fact(value=(3, 5), source=LIFE_CYCLE)
"""New against salvaged wood, framing and flooring. [times]"""

NEW_EXTRA_SHARE = Fact(value=Fraction(1, 10), source=NEW_EXTRA)
"""How much new wood is bought beyond the area, as a share of it."""

TWO_PEOPLE_KG = Fact(value=23.0, source=HEAVY_BOARD)
"""From which weight on a piece takes two. [kg]"""

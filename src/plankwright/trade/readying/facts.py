"""Constants of getting boards ready, beside their sources."""

from plankwright.measure import INCH, Nm
from plankwright.trade.source import Fact, Source, Trust

NAILS_FIRST = Source(
    key="nails-first",
    title="Nails are pulled or nipped below the face, and a metal detector is passed over the board, before "
    "any saw or planer touches it; never the good blade first",
    trust=Trust.PRACTICE,
)
OLD_BLADE = Source(
    key="old-blade",
    title="A worn blade for wood that may hold metal, a good one for what was checked",
    trust=Trust.PRACTICE,
)
HEAT = Source(
    key="heat",
    title="Wood Handbook, FPL-GTR-190 (2010), chapter 14, and ISPM 15: a core of 56 °C (133 °F) for 30 "
    "minutes kills insects in wood",
    address="http://www.treesearch.fs.fed.us/pubs/7546",
    trust=Trust.READ,
    note="It kills what is present and protects from nothing later. Boards piled without stickers take "
    "two to ten times as long to heat through.",
)
LARVAE = Source(
    key="larvae",
    title="Wood Handbook, FPL-GTR-190 (2010), chapter 14: reused wood often has beetle larvae",
    address="https://issuhub.com/view/index/5801?pageIndex=321",
    trust=Trust.READ,
    note="Furniture beetles need wood of about 15 % moisture or more and take two to three years.",
)
POWDERPOST = Source(
    key="powderpost",
    title="Powderpost beetles live in dry large-pored hardwoods such as oak, hickory and ash",
    address="https://palletenterprise.com/sawmilling-treating-insights-prevent-control-powderpost-beetle-"
    "infestations-in-hardwood-lumber",
    trust=Trust.READ,
    note="A finish on every face stops them from laying eggs.",
)
MOULD = Source(
    key="mould",
    title="Wood Handbook, FPL-GTR-190 (2010): mould comes back on wood that was heated and not dried",
    address="https://issuhub.com/view/index/5801?pageIndex=460",
    trust=Trust.READ,
)
SHIM_OR_PLANE = Source(
    key="shim-or-plane",
    title="A board thinner than its neighbours is shimmed, one thicker is planed on its back or swapped",
    trust=Trust.PRACTICE,
)

CORE_C = Fact(value=56.0, source=HEAT)
CORE_MINUTES = Fact(value=30, source=HEAT)
"""How hot the core of a board must be, and for how long, to be rid of insects. [°C], [min]"""

SOLID_PILE_TIMES = Fact(value=(2, 10), source=HEAT)
"""How much longer boards take that are piled without stickers. [times]"""

BEETLE_MOISTURE_PCT = Fact(value=15.0, source=LARVAE)
"""From which moisture on furniture beetles live in wood. [% of dry mass]"""

LARGE_PORED = frozenset({"oak", "hickory", "ash", "chestnut", "walnut", "elm", "pecan"})
"""Words of species that powderpost beetles live in; the source names three, the rest are practice."""

PLANE_UP_TO_NM: Fact[Nm] = Fact(value=INCH // 8, source=SHIM_OR_PLANE)
"""More difference in thickness than this is better swapped than planed away. [nm]"""

"""Constants of moisture and movement, beside their sources."""

from types import MappingProxyType

from plankwright.trade.source import Fact, Source, Trust

EMC = Source(
    key="emc",
    title="Wood Handbook, FPL-GTR-282 (2021), section 4.1, equation 4-5",
    address="https://research.fs.usda.gov/treesearch/62243",
    trust=Trust.SECONDARY,
    note="Read as quoted word for word elsewhere; it meets the 342 cells of Table 4-2 of the edition of 2010 "
    "within 0.06 points. For any species; a tenth of a point is not meaningful.",
)
METERS = Source(
    key="meters",
    title="Wood Handbook, FPL-GTR-190 (2010), chapter 13, moisture meters",
    address="https://issuhub.com/view/index/5801?pageIndex=294",
    trust=Trust.READ,
    note="Dielectric meters are reliable from 4 to about 30 %, resistance meters from about 6 to 30 %. "
    "Correct the reading of a resistance meter by 0.5 points for each 5.6 °C (10 °F) that the wood is "
    "colder (add) or warmer (subtract) than its calibration.",
)
CHANGE = Source(
    key="change",
    title="Wood Handbook, FPL-GTR-190 (2010), chapter 13, equation 13-2",
    address="http://www.extension.org/pages/66444/can-i-predict-how-much-wood-will-shrink-and-swell",
    trust=Trust.SECONDARY,
    note="For moisture between 6 and 14 %.",
)
CHANGE_BEYOND = Source(
    key="change-beyond",
    title="Wood Handbook, FPL-GTR-190 (2010), chapter 13, equation 13-3, as a calculator for log walls "
    "has it",
    address="http://www.timbertoolbox.com/Calcs/logshrinkcalc.htm",
    trust=Trust.SECONDARY,
    note="In the copy of the handbook that was read the formula is a picture. It reproduces 102 of 110 "
    "coefficients of Table 13-5 from Table 4-3.",
)
FLAT_SAWN = Source(
    key="flat-sawn",
    title="Wood Handbook, FPL-GTR-190 (2010), chapter 13, on boards that are neither flat- nor quarter-sawn",
    address="https://issuhub.com/view/index/5801?pageIndex=308",
    trust=Trust.READ,
    note="The tangential coefficient overestimates how far such a board's width moves.",
)
MIDPOINT = Source(
    key="midpoint",
    title="E. C. Peck, Moisture content of wood in use, Forest Products Laboratory report 1655 (1956)",
    address="https://studylib.net/doc/13624631",
    trust=Trust.READ,
    note="Install near the midpoint of the high and the low moisture that the wood will have in use.",
)
INTERIOR = Source(
    key="interior",
    title="Wood Handbook, Table 13-2: wood for use indoors, most of the United States",
    trust=Trust.MEMORY,
    note="The average of 8 % was read in a quotation of figure 13-1.",
)
STACKED = Source(
    key="stacked",
    title="Paneling basics, leaflet of a lumber association",
    address="https://docslib.org/doc/9145555",
    trust=Trust.READ,
    note="Solid panelling: stacked with separators in its room for a week to ten days.",
)
NO_FORMULA = Source(
    key="wait",
    title="What is the right moisture content at installation, flooring trade journal",
    address="https://woodfloorbusiness.com/installation/article/15125288",
    trust=Trust.READ,
    note="Within 4 points of what lies beneath, within 2 for wider boards; 72 hours are called a "
    "misconception, and a humid place takes weeks. No equation for a board's drying time was found.",
)
UNKNOWN_SPECIES = Source(
    key="unknown-species",
    title="Least and greatest tangential coefficient among the species of Wood Handbook Table 13-5",
    trust=Trust.COMPUTED,
    note="Name the species in the tally for a narrower answer.",
)
GRAIN = Source(
    key="along-grain",
    title="Longitudinal shrinkage from green to ovendry, usually 0.1 to 0.2 %, answer of a wood council",
    address="https://awc.org/faqs/general/where-can-i-find-information-on-wood-shrinkage",
    trust=Trust.READ,
    note="The Forest Products Laboratory has 0.1 to 0.3 %, and far more in abnormal wood (report 1093, "
    "read).",
)
ALLOWANCE = Source(
    key="near-enough",
    title="Readings within 2 points of the room's moisture may be hung",
    address="https://woodfloorbusiness.com/installation/article/15125288",
    trust=Trust.READ,
    note="The figure is given for wide flooring against its subfloor; for walls it is used by analogy.",
)
SEASON = Source(
    key="season",
    title="Working with tongue-and-groove boards: hung in a dry season they need room, in a damp one they go "
    "tight",
    address="https://finehomebuilding.com/2021/10/13/working-with-tongue-and-groove-boards",
    trust=Trust.READ,
)
TONGUE_STAYS = Source(
    key="tongue-cover",
    title="A tongue should stay covered by half of its reach",
    trust=Trust.PRACTICE,
)

WATER_FULL_PCT = Fact(value=30.0, source=CHANGE_BEYOND)
"""Fibre saturation, above which wood does not swell, as equation 13-3 takes it. [% of dry mass]"""

COEFFICIENTS_FROM_PCT, COEFFICIENTS_TO_PCT = 6.0, 14.0
"""Between which moistures the coefficients of equation 13-2 hold. [% of dry mass]"""

FIBRE_SATURATION_PCT = MappingProxyType({"Cedar, western redcedar": 22.0, "Cedar, northern white": 22.0})
"""Of the species that leave the usual 30 %: from memory of a footnote, and the coefficients agree. [%]"""

LEAST_READABLE_PCT = Fact(value=4.0, source=METERS)
MOST_READABLE_PCT = Fact(value=30.0, source=METERS)
"""Readings beyond these are no measurements, whatever the meter. [% of dry mass]"""

LEAST_READABLE_BY_RESISTANCE_PCT = Fact(value=6.0, source=METERS)
"""Readings below this are none of a resistance meter's. [% of dry mass]"""

NEAR_ENOUGH_PCT = Fact(value=2.0, source=ALLOWANCE)
"""How far a reading may be from the room's moisture. [points]"""

INTERIOR_FROM_PCT = Fact(value=6.0, source=INTERIOR)
INTERIOR_TO_PCT = Fact(value=10.0, source=INTERIOR)
"""Moisture of wood indoors where nothing is known of the room. [% of dry mass]"""

LEAST_DAYS_STACKED = Fact(value=7, source=STACKED)
LEAST_DAYS_FAR_OFF = Fact(value=14, source=NO_FORMULA)
"""How long boards are left in the room at least: near its moisture, and farther off. [days]"""

LONGITUDINAL_TOTAL_PCT = Fact(value=0.2, source=GRAIN)
"""Shrinkage along the grain from green to ovendry, the upper end. [% of length]"""

TONGUE_SHARE = Fact(value=0.5, source=TONGUE_STAYS)
"""How much of a tongue is to stay in its groove. [share]"""

COVER_PCT = 95.0
"""Beyond this humidity the moisture equation is not shown as exact: its table ends there. [%]"""

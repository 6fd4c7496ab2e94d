"""Constants of boxes and edges, beside their sources."""

from plankwright.measure import INCH, Nm
from plankwright.trade.source import Fact, Source, Trust

FLUSH = Source(
    key="box-flush",
    title="NEC 314.20 (2014, 2017): in a surface that burns, a box ends flush with it or stands out",
    address="https://www.electricallicenserenewal.com/Electrical-Continuing-Education-Courses/"
    "NEC-Content.php?sectionID=285.0",
    trust=Trust.READ,
    note="Editions and places differ; whoever is licensed decides.",
)
EXTENDER = Source(
    key="box-extender",
    title="Panelling over wallboard needs an extender that is listed for it, electrical trade journal",
    address="https://www.ecmweb.com/whats-wrong-here/what-s-wrong-here-hint-matter-depth",
    trust=Trust.READ,
)
GAP = Source(
    key="box-gap",
    title="NEC 314.21: gap around a flush box, up to 1/8 in",
    address="https://www.electrical-contractor.net/forums/ubbthreads.php/topics/30859/oversize-plates.html",
    trust=Trust.SECONDARY,
    note="Written for plaster and other surfaces that do not burn; used here for boards by analogy.",
)
REVEAL = Source(
    key="reveal",
    title="Casing is set back from the edge of a jamb by 3/16 in so that the edge shows",
    trust=Trust.PRACTICE,
)
TRIM_OVERLAP = Source(
    key="trim-overlap",
    title="Trim should lie on the boards by 1/4 in or more when they are at their narrowest",
    trust=Trust.PRACTICE,
)

BOX_GAP_NM: Fact[Nm] = Fact(value=INCH // 8, source=GAP)
"""Widest gap between a box and the boards around it. [nm]"""

REVEAL_NM: Fact[Nm] = Fact(value=INCH * 3 // 16, source=REVEAL)
"""How much of a jamb's edge shows beside its casing. [nm]"""

OVERLAP_NM: Fact[Nm] = Fact(value=INCH // 4, source=TRIM_OVERLAP)
"""How much of the boards trim should cover at least. [nm]"""

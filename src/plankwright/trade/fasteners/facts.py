"""Constants of fastening, beside their sources."""

from fractions import Fraction
from types import MappingProxyType

from plankwright.measure import INCH, Nm
from plankwright.trade.source import Fact, Source, Trust

CABLE_DEPTH = Source(
    key="cable-depth",
    title="NEC 300.4(A)(1), old edition",
    address="http://www.naffainc.com/x/CB2/Elect/300-4.HTM",
    trust=Trust.READ,
    note="A cable in a bored hole lies 1-1/4 in or more behind the edge of the framing, or behind a steel "
    "plate. What was laid in older houses, or by other rules, may lie anywhere. Editions and places differ.",
)
PIPE_DEPTH = Source(
    key="pipe-depth",
    title="IPC 305: a pipe less than 1-1/2 in behind the edge has a steel plate",
    address="https://www.thebuildingcodeforum.com/forum/goto/post?id=196855",
    trust=Trust.READ,
    note="Another code asks for a plate within 1 in only. Editions and places differ.",
)
HEAD_SET = Source(
    key="head-set",
    title="An eighth of an inch is kept back, for heads are set below the face and old boards vary",
    trust=Trust.PRACTICE,
)
OPENED = Source(
    key="opened",
    title="Where the inside of the wall was opened and mapped the protected depth is used whole; "
    "a deeper one is set by whoever looked",
    trust=Trust.PRACTICE,
)
BITE = Source(
    key="bite",
    title="Trim is fastened at least 3/4 in into its framing, rule of one author",
    trust=Trust.SECONDARY,
)
THREE_TIMES = Source(
    key="three-times",
    title="A nail is three times as long as the board it holds is thick, military training text",
    address="http://enginemechanics.tpub.com/14119/Wood-Screws-85.html",
    trust=Trust.READ,
)
SIDING = Source(
    key="siding",
    title="Installation guide for wood siding: 1-1/2 in into solid wood, 1-1/4 in with ring shanks; "
    "predrill at ends",
    address="https://www.manualshelf.com/manual/sierra-pacific-industries/168bstg/"
    "installation-guide-english/page-9.html",
    trust=Trust.READ,
    note="Written for outside walls; used here by analogy.",
)
WITHDRAWAL = Source(
    key="withdrawal",
    title="Wood Handbook, withdrawal of bright common nails from side grain of seasoned wood, "
    "p = 7850 G^(5/2) D L",
    address="https://www.engineersedge.com/calculators/wood_nail_pullout_withdraw_resistance_15386.htm",
    trust=Trust.SECONDARY,
    note="The exponent was read in FPL-093 (https://docslib.org/doc/2677380). For thinner finish nails it is "
    "used by analogy; old dry framing and nails near its edge hold less.",
)
SHARE_OF_ULTIMATE = Source(
    key="fifth",
    title="A fifth of what pulls a nail out is what it is trusted with: the design form 1380 G^(5/2) D "
    "against 6900 G^(5/2) D",
    address="https://www.engineeringtoolbox.com/nails-spikes-withdrawal-load-d_1814.html",
    trust=Trust.READ,
)
WEAK_FRAMING = Source(
    key="weak-framing",
    title="Framing of unknown wood is taken as one of the lightest, specific gravity 0.35",
    trust=Trust.PRACTICE,
)
PREBORED = Source(
    key="prebored",
    title="Prebored holes: up to 75 % of the nail's diameter, up to 90 % where the specific gravity is "
    "over 0.6",
    address="https://www.civilengineeringx.com/bdac/nails-and-spikes/",
    trust=Trust.READ,
)
NEAR_END = Source(
    key="near-end", title="Drill first within 2 in of an end of an old board", trust=Trust.PRACTICE
)
BLIND = Source(
    key="blind",
    title="Blind nailing, dictionary of construction: at the root of the tongue, at 45 degrees",
    address="http://constructiondatacompany.com/dictionary/blind-nailing/",
    trust=Trust.READ,
)
TONGUE_ROOT = Source(
    key="tongue-root",
    title="The root of a tongue lies between a third and two thirds of the board's thickness",
    trust=Trust.PRACTICE,
)
SPARE = Source(key="spare-nails", title="A tenth more nails than are driven", trust=Trust.PRACTICE)
SHEET_BACK = Source(
    key="sheet-back",
    title="A cable or pipe may touch the back of a sheet: the depth that is kept free behind the edge of "
    "studs guards nothing there",
    trust=Trust.PRACTICE,
)
NO_BRADS = Source(key="no-brads", title="Brads alone hold no board overhead", trust=Trust.PRACTICE)
ADHESIVE = Source(
    key="adhesive",
    title="Where too few nails hold, blocking is let in between the framing, or the piece is glued as well",
    trust=Trust.PRACTICE,
)

PROTECTED_DEPTH_NM: Fact[Nm] = Fact(value=INCH * 5 // 4, source=CABLE_DEPTH)
"""How far behind the face of the framing a cable laid by the rules may lie unprotected. [nm]"""

KEPT_BACK_NM: Fact[Nm] = Fact(value=INCH // 8, source=HEAD_SET)
"""How much short of the protected depth a nail stays where nobody knows what lies inside. [nm]"""

BITE_NM: Fact[Nm] = Fact(value=INCH * 3 // 4, source=BITE)
"""How far into the framing a nail should reach at least. [nm]"""

SIDING_BITE_NM: Fact[Nm] = Fact(value=INCH * 3 // 2, source=SIDING)
TIMES_THICKNESS: Fact[int] = Fact(value=3, source=THREE_TIMES)
"""What two published rules ask for, which are shown beside the bite that is used. [nm], [times]"""

TRUSTED_SHARE = Fact(value=5.0, source=SHARE_OF_ULTIMATE)
"""How many times the weight must pull before a nail comes out. [times]"""

WEAK_GRAVITY = Fact(value=0.35, source=WEAK_FRAMING)
"""Specific gravity of framing of which nothing is known. [ovendry mass over volume at 12 %]"""

HOLE_SHARE = Fact(value=Fraction(3, 4), source=PREBORED)
HOLE_SHARE_DENSE = Fact(value=Fraction(9, 10), source=PREBORED)
DENSE_GRAVITY = Fact(value=0.6, source=PREBORED)
"""Widest hole drilled first, as a share of the nail's diameter, and from which gravity on it may be wider."""

NEAR_END_NM: Fact[Nm] = Fact(value=2 * INCH, source=NEAR_END)
"""How near to an end a nail is drilled for. [nm]"""

ROOT_FROM = Fact(value=Fraction(1, 3), source=TONGUE_ROOT)
ROOT_TO = Fact(value=Fraction(2, 3), source=TONGUE_ROOT)
"""How much of a tongued board a blind nail has still to go through, of its thickness."""

BLIND_DEG = Fact(value=45.0, source=BLIND)
"""How far a blind nail leans from square. [degrees]"""

SPARE_SHARE = Fact(value=Fraction(1, 10), source=SPARE)
"""How many nails are bought beyond those that are driven, as a share of them."""

DIMENSIONS = MappingProxyType(
    {
        source.key: source
        for source in (
            Source(
                key="nail-table",
                title="Dimensions of common and box nails, table citing NDS and ASTM F1667",
                trust=Trust.SECONDARY,
                note="The standard itself was not seen.",
            ),
            Source(
                key="finishing-gauge",
                title="Finishing nails: lengths, gauges and counts a pound "
                "(https://sizes.com/tools/nails_finish.htm), gauges in inches",
                address="http://www.wovenwire.com/reference/wiregauge-print1.htm",
                trust=Trust.READ,
                note="Half gauges are taken midway between their neighbours. The standard itself was not "
                "seen.",
            ),
            Source(
                key="gauge-16",
                title="16 gauge finish nails: 0.0625 in, 1 to 2-1/2 in long",
                address="https://bestnailers.com/?p=52002",
                trust=Trust.READ,
                note="Steps of a quarter inch are common practice.",
            ),
            Source(
                key="gauge-15",
                title="15 gauge finish nails: 0.072 in, 1 to 2-1/2 in long",
                address="https://engineerfix.com/what-is-a-15-gauge-nail-gun-used-for",
                trust=Trust.READ,
                note="Steps of a quarter inch are common practice.",
            ),
            Source(
                key="gauge-18",
                title="18 gauge brads: 0.0475 in",
                address="https://help.mytoolkit.co.uk/article/50-sizes-and-types-of-fasteners",
                trust=Trust.READ,
                note="Lengths of 5/8 to 2 in are common practice.",
            ),
            Source(
                key="nails-per-pound",
                title="Nails per pound, table of lengths and counts",
                address="http://woodtools.nov.ru/projects2/WoodPlan/about_nails.htm",
                trust=Trust.READ,
            ),
        )
    }
)
"""Sources that nails.csv names by their keys."""

BLIND_ALONE = Source(
    key="blind-alone",
    title="Tongued boards up to 6 in wide hold by their blind nails; wider ones take one through the "
    "face as well",
    trust=Trust.PRACTICE,
)
BLIND_ALONE_NM: Fact[Nm] = Fact(value=6 * INCH, source=BLIND_ALONE)
"""Up to which width blind nails do by themselves. [nm]"""

CARTRIDGE = Source(
    key="cartridge", title="A cartridge of construction adhesive does about six pieces", trust=Trust.PRACTICE
)
PIECES_A_CARTRIDGE = Fact(value=6, source=CARTRIDGE)
"""How many pieces a cartridge does. [pieces]"""

ON_SOLID = Source(key="on-solid", title="On solid backing a nail every 16 in", trust=Trust.PRACTICE)
TWO_ACROSS = Source(
    key="two-across", title="From 4 in of width on a board takes two nails abreast", trust=Trust.PRACTICE
)
ON_SOLID_NM: Fact[Nm] = Fact(value=16 * INCH, source=ON_SOLID)
"""How far apart nails stand on solid backing. [nm]"""

TWO_ACROSS_NM: Fact[Nm] = Fact(value=4 * INCH, source=TWO_ACROSS)
"""From which width on two nails stand abreast, at a member as on solid backing. [nm]"""

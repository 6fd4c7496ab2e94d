"""Thresholds of hazards, beside their sources."""

import re
from types import MappingProxyType

from plankwright.model import Treatment
from plankwright.trade.source import Fact, Source, Trust

LEAD_CHANCE = Source(
    key="lead-chance",
    title="Share of United States houses with lead paint by year built, summary of EPA figures",
    address="https://healthyjoco.com/2019/03/01/residential-dwelling-age/",
    trust=Trust.SECONDARY,
    note="Another summary has 86 and 66 % for the first two groups.",
)
LEAD_RULE = Source(
    key="lead-rule",
    title="40 CFR 745.83, minor repair and maintenance, EPA answer",
    address="https://19january2021snapshot.epa.gov/lead/please-provide-guidance-how-agency-will-interpret-"
    "term-minor-repair-and-maintenance-activities_.html",
    trust=Trust.READ,
    note="A part that is taken out counts whole; 6 ft² is per room within 30 days.",
)
LEAD_WHO = Source(
    key="lead-who",
    title="Work for pay in housing from before 1978; owners in their own home are urged to work alike",
    address="https://huddleston.law/2010/05/get-the-lead-out-new-epa-regulations-for-renovation-repair-of-"
    "pre-1978-housing/",
    trust=Trust.SECONDARY,
)
LEAD_DEEP = Source(
    key="lead-deep",
    title="Up to a third of a board's thickness was planed off to be rid of lead, report on military salvage",
    address="https://www.recyclingtoday.com/news/military-project-marches-forward",
    trust=Trust.READ,
)
LEAD_OUT = Source(
    key="lead-out",
    title="Boards with lead paint are left out, or left to people who are certified to work on them",
    trust=Trust.PRACTICE,
    note="The EPA sheet under lead-body advises such a contractor for any work on old paint.",
)
LEAD_BARRED = Source(
    key="lead-barred",
    title="Practices that the rules of EPA and HUD for paid work bar, trainer's page",
    address="https://proactivesafetyservices.com/resources/prohibited-practices/",
    trust=Trust.SECONDARY,
    note="Machines are barred without a shroud and HEPA suction. Dry sanding and scraping are barred by "
    "HUD's rule alone, except within a foot of an outlet. Planing is advised against here even with suction.",
)
LEAD_FUMES = Source(
    key="lead-fumes",
    title="Removing paint from wood by heat, procedure 0640009R of the General Services Administration",
    address="http://gsa.gov/portal/content/113098",
    trust=Trust.READ,
    note="It lets people work at the least heat that will do, if they are certified for lead.",
)
LEAD_HOME = Source(
    key="lead-home",
    title="EPA answer to owners who renovate their own homes: how lead dust is kept down and cleaned up",
    address="https://19january2021snapshot.epa.gov/lead/how-can-homeowners-protect-themselves-and-their-"
    "families-exposure-lead-dust-if-they-plan-doing_.html",
    trust=Trust.READ,
    note="That no water comes near power tools is common practice.",
)
LEAD_BODY = Source(
    key="lead-body",
    title="EPA sheet for people who renovate: respirator, coveralls to throw away, misting",
    address="https://nepis.epa.gov/Exe/ZyPURL.cgi?Dockey=P1018GRA.txt",
    trust=Trust.READ,
    note="That a respirator has to fit the face is common practice.",
)
LEAD_CLOTHES = Source(
    key="lead-clothes",
    title="Working with lead paint, page for contractors in Vermont: no food at work, clothes apart",
    address="http://leadsafevermont.org/html/contract_working.html",
    trust=Trust.READ,
    note="OSHA keeps clothes of paid workers out of the home altogether "
    "(https://webapps.dol.gov/elaws/osha/lead/freqD.asp, read).",
)
LEAD_MILLED = Source(
    key="lead-milled",
    title="Remilling of salvaged siding with lead paint, Forest Products Laboratory, abstract",
    address="https://www.woodweb.com/knowledge_base/Part_1_Remilling_of_Salvaged_Wood_Siding.html",
    trust=Trust.READ,
    note="Less than a tenth of OSHA's limit was met beside machines whose suction was made for it; some lead "
    "was left on the wood.",
)
ASBESTOS = Source(
    key="asbestos",
    title="Asbestos questions and answers of a laboratory, and EPA guidance quoted elsewhere",
    address="https://irislaboratories.com/faq/asbestos-frequently-asked-questions/",
    trust=Trust.READ,
    note="More than 1 % counts as containing it. Vinyl tile, backing, mastic, loose vermiculite, textured "
    "coating and pipe wrap are known for it.",
)
SILICA = Source(
    key="silica",
    title="29 CFR 1926.1153, respirable crystalline silica: limit and action level, university safety office",
    address="http://rms.unlv.edu/occupational/silica/",
    trust=Trust.SECONDARY,
)
WOOD_DUST = Source(
    key="wood-dust",
    title="Wood dust, OSHA: limits over eight hours",
    address="https://www.osha.gov/SLTC/wooddust/evaluation.html",
    trust=Trust.READ,
)
WOOD_DUST_STATE = Source(
    key="wood-dust-state",
    title="California's limit for wood dust since July 2017",
    address="https://www.safeatworkca.com/news/california-toughens-wood-dust-regulation/",
    trust=Trust.READ,
)
ARSENATE_INDOORS = Source(
    key="arsenate-indoors",
    title="Minnesota Pollution Control Agency, w-hhw 4.75 (2009)",
    address="https://docslib.org/doc/1053988",
    trust=Trust.READ,
    note="An older sheet of the EPA allowed it indoors where all dust is cleaned up "
    "(https://rainyside.com/resources/treated_wood.html, read). The stricter is followed.",
)
CREOSOTE_INDOORS = Source(
    key="creosote-indoors",
    title="EPA (2015) as quoted by the trade: no approved use to treat wood for homes",
    address="https://creosotecouncil.org/blog/epa-case-0139-reuse-of-creosote-treated-crossties-not-subject-"
    "to-regulation/",
    trust=Trust.SECONDARY,
)
SAWING_TREATED = Source(
    key="sawing-treated",
    title="Wood Handbook, FPL-GTR-190 (2010), chapter 15, on working treated wood",
    address="https://fliphtml5.com/kbpub/hdrb/Wood_Handbook/329",
    trust=Trust.READ,
)
ARSENATE_UNTIL = Source(
    key="arsenate-until",
    title="CPSC and EPA guidance: most wood for homes is not treated with arsenate after 2003",
    address="https://abcdocz.com/doc/139631",
    trust=Trust.EARLIER,
)
TETANUS = Source(
    key="tetanus",
    title="Merck Manual, tetanus after a wound, table",
    address="https://www.merckmanuals.com/home/multimedia/table/v39247661",
    trust=Trust.READ,
    note="The table of the public health authority itself was not seen.",
)
METAL = Source(
    key="metal",
    title="Eye protection; nails out and a metal detector over the board before any saw or planer",
    trust=Trust.PRACTICE,
)
KICKBACK = Source(
    key="kickback", title="Bowed, split and old boards bind on a blade and kick back", trust=Trust.PRACTICE
)
OVERHEAD = Source(
    key="overhead",
    title="Boards overhead are held by two people or a prop until they are nailed",
    trust=Trust.PRACTICE,
)
FLAME = Source(
    key="flame",
    title="IRC R302.9, wall and ceiling finish: flame spread up to 200, smoke up to 450, study guide",
    address="https://open-exam-prep.com/study-guides/icc-residential/public-safety/public-safety-core-workflows",
    trust=Trust.SECONDARY,
    note="Unfinished boards of 10 mm and more mostly come to 76 to 200 (Wood Handbook, chapter 18, read); a "
    "finish may change that. Editions and places differ.",
)
WHO_DECIDES = Source(key="who-decides", title="Local codes and licensed trades decide", trust=Trust.PRACTICE)

LEAD_UNTIL = Fact(value=1978, source=LEAD_WHO)
"""Housing from before this year falls under the rule. [year]"""

LEAD_CHANCE_PCT = Fact(value=((1940, 87), (1960, 69), (1978, 24)), source=LEAD_CHANCE)
"""Built before which year, and how many of a hundred have lead paint."""

MINOR_INSIDE_FT2 = Fact(value=6, source=LEAD_RULE)
MINOR_OUTSIDE_FT2 = Fact(value=20, source=LEAD_RULE)
"""Up to which painted area work is minor: in a room, and outside over all sides. [ft²]"""

HEAT_GUN_F = Fact(value=1100, source=LEAD_BARRED)
"""Above this no heat gun may be used on lead paint in work for pay. [°F]"""

RESPIRATOR = Fact(value="N100", source=LEAD_BODY)
"""The class of respirator that is named against lead dust."""

ASBESTOS_PCT = Fact(value=1, source=ASBESTOS)
"""More than this counts as containing it. [%]"""

ASBESTOS_WORDS = frozenset(
    {"plaster", "texture", "textured", "tile", "tiles", "vinyl", "linoleum", "mastic", "vermiculite", "wrap"}
    | {"insulation", "insulated", "popcorn", "compound", "cement", "felt", "paper", "board", "fibreboard"}
    | {"wallboard", "drywall"}
)
"""Layers that are known for it or are easily taken for others that are; the source names most of them."""

DUSTY_TASK = re.compile(
    r"\b(?:"
    r"(?:scrap|plan)(?:e[ds]?|ers?|ing)"
    r"|(?:re)?saw(?:n|s|ed|ing)?"
    r"|(?:sand(?:blast|paper)?|heat|grind|mill)(?:s|ed|ers?|ing)?"
    r"|(?:wire)?brush(?:es|ed|ing)?"
    r"|burn(?:s|t|ed|ers?|ing)?"
    r"|joint(?:ed|ers?|ing)?"
    r"|(?:st)?rip(?:s|p(?:ed|ers?|ing))?"
    r"|(?:cross)?cut(?:s|t(?:ers?|ing))?"
    r")\b"
)
"""Tasks that make dust or fumes of what is on a board; common practice, no source."""

SILICA_LIMIT_UG, SILICA_ACTION_UG = Fact(value=50, source=SILICA), Fact(value=25, source=SILICA)
"""Over eight hours. [µg/m³]"""

SILICA_WORDS = frozenset({"plaster", "brick", "masonry", "concrete", "mortar", "stone", "cement", "compound"})
"""Layers whose dust holds silica; common practice, no source."""

DUST_LAW_MG, DUST_ADVISED_MG = Fact(value=15, source=WOOD_DUST), Fact(value=1, source=WOOD_DUST)
DUST_STATE_MG = Fact(value=2, source=WOOD_DUST_STATE)
REDCEDAR_MG = Fact(value=0.5, source=WOOD_DUST)
"""Wood dust over eight hours: total by federal law, as advised, by one state, and of western redcedar.
[mg/m³]"""

BOOSTER_DEEP_YEARS, BOOSTER_CLEAN_YEARS = Fact(value=5, source=TETANUS), Fact(value=10, source=TETANUS)
"""After how long a tetanus booster is due: for deep or dirty wounds, and for clean small ones. [years]"""

REFUSED = MappingProxyType(
    {
        Treatment.ARSENATE: ("Wood treated with chromated copper arsenate", ARSENATE_INDOORS),
        Treatment.CREOSOTE: ("Wood treated with creosote", CREOSOTE_INDOORS),
        Treatment.PENTACHLOROPHENOL: ("Wood treated with pentachlorophenol", ARSENATE_INDOORS),
        Treatment.UNKNOWN: ("Wood treated with nobody knows what", ARSENATE_INDOORS),
    }
)
"""What is kept out of a house, and on whose word."""

"""The lots that boards of `real` and `pile` come from, and the rules and saws of those jobs. Invented."""

from benchmarks.instance import inches
from benchmarks.lumber import Sort
from plankwright.measure import INCH
from plankwright.model import Rules, Saw, SawKind

RULES = Rules()
SAWS = (
    Saw(name="mitre saw", cuts=SawKind.CROSSCUT, capacity_nm=12 * INCH),
    Saw(name="circular saw on a rail", cuts=SawKind.CROSSCUT, capacity_nm=28 * INCH),
    Saw(name="table saw", cuts=SawKind.RIP, capacity_nm=24 * INCH),
)

SORTS = (
    (Sort("hall floor", inches(0.75)), 0.4),
    (Sort("hall floor", inches(0.78125)), 0.2),
    (Sort("stage", inches(0.875)), 0.25),
    (Sort("stage", inches(0.90625)), 0.15),
)
"""Lots with their thicknesses and weights; boards of one lot may butt, those of two may not in sight."""

LOTS = ("hall floor", "stage")

"""How short a piece can be of use: a run that one piece fills may be shorter than what may butt."""

from collections.abc import Iterable
from itertools import pairwise

from plankwright.layout.regions import along_and_across
from plankwright.layout.strips import Strips
from plankwright.measure import MILLIMETRE, Nm
from plankwright.model import Rules

_SHORT: Nm = 10 * MILLIMETRE
"""Nobody looks for a board that is shorter."""


def shortest_of_use(surfaces: Iterable[Strips], rules: Rules) -> Nm:
    """Give the length below which a stretch of a board is of no use on any surface.

    Parameters
    ----------
    surfaces
        Each surface of the job.
    rules
        For the shortest piece that butts another.

    Returns
    -------
    Nm
        The shortest piece, or the shortest run where that is shorter. [nm]
    """
    shortest = min((_shortest_run(strips) for strips in surfaces), default=rules.shortest_piece_nm)
    return min(rules.shortest_piece_nm, max(shortest, _SHORT))


def _shortest_run(strips: Strips) -> Nm:
    """Give the shortest run of any strip between two neighbouring corners and edges of openings. [nm]"""
    corners = (along_and_across(strips.surface, corner)[1] for corner in strips.surface.outline)
    holes = (edge for hole in strips.must_holes for edge in (hole.low, hole.high))
    edges = sorted({strips.start, strips.must_end, *corners, *holes})
    within = [edge for edge in edges if strips.start <= edge <= strips.must_end]
    return min(
        (run.length for low, high in pairwise(within) for run in strips.runs(low, high)),
        default=strips.right - strips.left,
    )

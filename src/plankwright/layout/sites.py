"""Where along the courses a nail goes into something: each framing member, or any place on solid backing."""

from dataclasses import dataclass

from plankwright.layout.regions import extent_in_course
from plankwright.measure import INCH, MILLIMETRE, Nm
from plankwright.model import Rules, Surface

Blocked = tuple[tuple[Nm, Nm], ...]
"""Stretches (low, high) across the courses that no nail may go into, in order. [nm]"""

_SOLID_SPACING: Nm = 4 * INCH
"""On solid backing a joint may fall anywhere; the search looks at places this far apart."""

_NAIL_ROOM: Nm = MILLIMETRE
"""So much room a nail needs."""


@dataclass(frozen=True, slots=True)
class Site:
    """A place along the courses where two pieces may butt.

    Parameters
    ----------
    at
        Where the joint goes. [nm]
    blocked
        Where across the courses no nail may go in.
    """

    at: Nm
    blocked: Blocked


def sites_of(surface: Surface, rules: Rules, left: Nm, right: Nm) -> tuple[Site, ...]:
    """Give the places that framing gives a surface, or the places on solid backing that are looked at.

    Parameters
    ----------
    surface, rules
        The surface, and the rules for bearing and for the clearance of nails.
    left, right
        How far it reaches along the courses. [nm]

    Returns
    -------
    tuple of Site
        In order. A member too narrow to bear both pieces of a joint, and to nail both, is left out. So is one
        no farther from the one before than a gap that counts as none: pieces that end at the two would butt.
    """
    if surface.framing.solid:
        count = (right - left) // _SOLID_SPACING
        return tuple(Site(left + step * _SOLID_SPACING, ()) for step in range(1, count))
    centres: list[Nm] = []
    for member in surface.crossing_members:
        apart = not centres or member.centre_nm - centres[-1] > rules.gap_tolerance_nm
        if apart and member.width_nm >= 2 * max(rules.bearing_nm, rules.nail_end_nm + _NAIL_ROOM):
            centres.append(member.centre_nm)
    return tuple(Site(centre, _blocked_at(surface, rules, centre)) for centre in centres)


def nail_room(blocked: Blocked, low: Nm, high: Nm, rules: Rules) -> tuple[Nm, Nm] | None:
    """Give the widest stretch across a strip that takes a nail.

    Parameters
    ----------
    blocked
        Where no nail may go in.
    low, high
        The strip. [nm]
    rules
        For the distance of a nail from the long edges.

    Returns
    -------
    tuple of int or None
        From where to where; nothing when there is no such stretch. [nm]
    """
    start, end = low + rules.nail_edge_nm, high - rules.nail_edge_nm
    best = None
    for stop, resume in (*blocked, (end, end)):
        room = start, min(stop, end)
        if room[0] < room[1] and (best is None or room[1] - room[0] > best[1] - best[0]):
            best = room
        start = max(start, resume)
    return best


def _blocked_at(surface: Surface, rules: Rules, at: Nm) -> Blocked:
    """Give where a nail at a place along the courses would come near a keep-out, or into a cut-out."""
    clearance = rules.nail_clearance_nm
    # Pieces that butt here are nailed beside the joint.
    reach = max(clearance, rules.nail_end_nm) + rules.bearing_nm
    places = [(keep_out.place, clearance) for keep_out in surface.keep_outs]
    places += [(cut_out.place, 0) for cut_out in surface.cut_outs]
    blocked = []
    for place, clear in places:
        left, right, low, high = extent_in_course(surface, place)
        if left - clear - reach < at < right + clear + reach:
            blocked.append((low - clear, high + clear))
    return tuple(sorted(blocked))

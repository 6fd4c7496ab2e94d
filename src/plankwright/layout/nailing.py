"""Where each piece is nailed: at every member in reach, clear of edges, ends, notches and keep-outs."""

from collections.abc import Iterator

import shapely
from shapely.geometry.base import BaseGeometry

from plankwright.layout.ground import HAIR, Ground, box, crossings, less
from plankwright.layout.strips import Span
from plankwright.measure import INCH, Nm
from plankwright.model import FramingMember, Rules

_TWO_NAILS_FROM: Nm = 4 * INCH
"""From this width on a board takes two nails at a member, else one. Common practice, no source. [nm]"""

_EDGE_SHARE = 4
"""Two nails stand a quarter of the width from either long edge. Common practice, no source."""


def nail_places(ground: Ground, blank: Span) -> tuple[tuple[Nm, Nm], ...]:
    """Give where a piece is nailed to the framing.

    Nails stand on the centre line of a member that the piece crosses, and between the end of the piece and
    the side of the member where it ends on one. They keep as far from notches and slopes as from the long
    edges, unless no such place is left, and move aside for keep-outs. At a member without any allowed place
    there is none.

    Parameters
    ----------
    ground
        What the piece hangs on, and the rules.
    blank
        Of the piece.

    Returns
    -------
    tuple of tuple of int
        Along and across the courses, member by member; none on solid backing. [nm]
    """
    if ground.surface.framing.solid:
        return ()
    rules = ground.rules
    within = Span(
        blank.left + rules.nail_end_nm,
        blank.right - rules.nail_end_nm,
        blank.low + rules.nail_edge_nm,
        blank.high - rules.nail_edge_nm,
    )
    return tuple(
        place
        for member in ground.surface.crossing_members
        if (face := _on_face(within, member)) is not None
        for place in _at_member(ground, blank, face, member.centre_nm)
    )


def _on_face(within: Span, member: FramingMember) -> Span | None:
    """Give what of a rectangle lies on the face of a member."""
    left = max(within.left, member.centre_nm - member.width_nm // 2)
    right = min(within.right, member.centre_nm + member.width_nm // 2)
    return Span(left, right, within.low, within.high) if left < right and within.low < within.high else None


def _at_member(ground: Ground, blank: Span, face: Span, centre: Nm) -> tuple[tuple[Nm, Nm], ...]:
    at = centre if face.left <= centre <= face.right else (face.left + face.right) // 2
    for free in _free(ground, blank, face):
        stretches = _stretches(free, at, blank)
        if not stretches and not free.is_empty and isinstance(free, shapely.Polygon | shapely.MultiPolygon):
            at = round(shapely.maximum_inscribed_circle(free).coords[0][0])
            stretches = _stretches(free, at, blank)
        if stretches:
            return tuple((at, across) for across in _spread(stretches, blank, ground.rules))
    return ()


def _free(ground: Ground, blank: Span, face: Span) -> Iterator[BaseGeometry]:
    """Give where nails would be well placed on a face, then where they may be at all."""
    whole, margin = box(face), ground.rules.nail_edge_nm
    near = box(
        Span(
            max(face.left - margin, blank.left),
            min(face.right + margin, blank.right),
            blank.low,
            blank.high,
        )
    )
    missing = shapely.Polygon() if ground.may.covers(near) else less(near, ground.may)
    holes = [missing, *(cut_out for cut_out in ground.cut_outs if cut_out.intersects(near))]
    barred = [keep_out for keep_out in ground.keep_outs if keep_out.intersects(whole)]
    for distance in (margin, HAIR):
        kept_from = [hole.buffer(distance, join_style="mitre") for hole in holes if not hole.is_empty]
        yield less(whole, *kept_from, *barred) if kept_from or barred else whole


def _stretches(free: BaseGeometry, at: Nm, blank: Span) -> list[tuple[Nm, Nm]]:
    """Give from where to where across the course a region is crossed by a line at a place along it. [nm]"""
    parts = crossings(free, (at, blank.low), (at, blank.high))
    return [(round(part.bounds[1]), round(part.bounds[3])) for part in parts]


def _spread(stretches: list[tuple[Nm, Nm]], blank: Span, rules: Rules) -> tuple[Nm, ...]:
    """Give one or two places across the course, as near as can be to where they should stand. [nm]"""
    width = blank.high - blank.low
    if width < _TWO_NAILS_FROM:
        return (_nearest(stretches, blank.low + width // 2),)
    low, high = (
        _nearest(stretches, place)
        for place in (blank.low + width // _EDGE_SHARE, blank.high - width // _EDGE_SHARE)
    )
    return (low, high) if high - low >= 2 * rules.nail_edge_nm else (low,)


def _nearest(stretches: list[tuple[Nm, Nm]], place: Nm) -> Nm:
    return min((min(max(place, low), high) for low, high in stretches), key=lambda there: abs(there - place))

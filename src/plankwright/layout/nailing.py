"""Where each piece is nailed: at every member in reach, clear of edges, ends, notches and keep-outs."""

import shapely

from plankwright.layout.ground import HAIR, Area, Ground, box, crossings, less
from plankwright.layout.strips import Span
from plankwright.measure import Nm
from plankwright.model import FramingMember, Point
from plankwright.trade.fasteners.facts import TWO_ACROSS_NM

_EDGE_SHARE = 4
"""Two nails stand a quarter of the width from either long edge. Common practice, no source."""

_Stretch = tuple[Nm, Nm]


def nail_places(ground: Ground, blank: Span) -> tuple[Point, ...]:
    """Give where a piece is nailed to the framing.

    Nails stand on the centre line of a member that the piece crosses, and between the end of the piece and
    the side of the member where it ends on one. They move aside for keep-outs, and keep as far from notches
    and slopes as from the long edges; only a piece that would be nailed at too few members takes one nearer.

    Parameters
    ----------
    ground
        What the piece hangs on, and the rules.
    blank
        Of the piece.

    Returns
    -------
    tuple of Point
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
    members = [
        (member.centre_nm, face)
        for member in ground.surface.crossing_members
        if (face := _on_face(within, member)) is not None
    ]
    find = _on_clear_wood if ground.clear(blank) else _well_placed
    places = [find(ground, blank, face, centre) for centre, face in members]
    wanting = rules.nailing_points - sum(1 for at_member in places if at_member)
    for index, (_, face) in enumerate(members):
        if wanting > 0 and not places[index]:
            places[index] = _where_possible(ground, blank, face)
            wanting -= len(places[index])
    return tuple(place for at_member in places for place in at_member)


def _on_face(within: Span, member: FramingMember) -> Span | None:
    """Give what of a rectangle lies on the face of a member."""
    left = max(within.left, member.centre_nm - member.width_nm // 2)
    right = min(within.right, member.centre_nm + member.width_nm // 2)
    return Span(left, right, within.low, within.high) if left < right and within.low < within.high else None


def _on_clear_wood(ground: Ground, blank: Span, face: Span, centre: Nm) -> tuple[Point, ...]:
    """Give one or two places on the face of a member where nothing is in the way."""
    stretches = [(face.low, face.high)]
    at = _along(face, centre)
    return tuple((at, across) for across in _spread(stretches, blank, ground.rules.nail_edge_nm))


def _along(face: Span, centre: Nm) -> Nm:
    """Give the centre line of a member if the piece crosses it, else the middle of what it reaches. [nm]"""
    return centre if face.left <= centre <= face.right else (face.left + face.right) // 2


def _well_placed(ground: Ground, blank: Span, face: Span, centre: Nm) -> tuple[Point, ...]:
    """Give one or two places on the face of a member, one above the other, if there are any."""
    free = _free(ground, blank, face, max(HAIR, ground.rules.nail_edge_nm))
    at = _along(face, centre)
    stretches = _stretches(free, at, blank)
    if not stretches and not free.is_empty:
        at, _ = _roomiest(free)
        stretches = _stretches(free, at, blank)
    return tuple((at, across) for across in _spread(stretches, blank, ground.rules.nail_edge_nm))


def _where_possible(ground: Ground, blank: Span, face: Span) -> tuple[Point, ...]:
    """Give the place on the face of a member that is farthest from all in the way, if there is one."""
    free = _free(ground, blank, face, HAIR)
    return () if free.is_empty else (_roomiest(free),)


def _free(ground: Ground, blank: Span, face: Span, margin: Nm) -> Area:
    """Give what of a face is clear of keep-outs, and by a margin of notches and slopes."""
    whole = box(face)
    near = Span(
        max(face.left - margin, blank.left), min(face.right + margin, blank.right), blank.low, blank.high
    )
    around = box(near)
    holes: list[Area] = [hole for hole in ground.cut_outs if hole.intersects(around)]
    if not ground.may.covers(around):
        holes.append(less(around, ground.may))
    barred = [
        *(hole.buffer(margin, join_style="mitre") for hole in holes if not hole.is_empty),
        *(keep_out for keep_out in ground.keep_outs if keep_out.intersects(whole)),
    ]
    return less(whole, *barred) if barred else whole


def _roomiest(free: Area) -> Point:
    """Give the middle of the largest circle in an area."""
    (x, y), _ = shapely.maximum_inscribed_circle(free).coords
    return round(x), round(y)


def _stretches(free: Area, at: Nm, blank: Span) -> list[_Stretch]:
    """Give from where to where across the course an area is crossed by a line at a place along it. [nm]"""
    parts = crossings(free, (at, blank.low), (at, blank.high))
    return [(round(part.bounds[1]), round(part.bounds[3])) for part in parts]


def _spread(stretches: list[_Stretch], blank: Span, margin: Nm) -> tuple[Nm, ...]:
    """Give one or two places across the course, as near as can be to where they should stand. [nm]"""
    width = blank.high - blank.low
    if not stretches:
        return ()
    if width < TWO_ACROSS_NM.value:
        return (_nearest(stretches, blank.low + width // 2),)
    low = _nearest(stretches, blank.low + width // _EDGE_SHARE)
    high = _nearest(stretches, blank.high - width // _EDGE_SHARE)
    return (low, high) if high - low >= 2 * margin else (low,)


def _nearest(stretches: list[_Stretch], place: Nm) -> Nm:
    return min((min(max(place, low), high) for low, high in stretches), key=lambda there: abs(there - place))

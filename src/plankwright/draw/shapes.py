"""The shapes of a wall map without their lettering: wood, framing, openings, zones, joints, nails."""

from collections.abc import Iterator

import shapely

from plankwright.draw.scene import Circle, Item, Line, Polygon, Rect
from plankwright.draw.styles import Style
from plankwright.draw.subject import Subject
from plankwright.draw.view import View, polygons
from plankwright.layout.done import Done
from plankwright.layout.regions import as_polygon
from plankwright.measure import Nm
from plankwright.model import Direction, FramingMember, Rectangle

JOINT_RING = 0.75
"""Radius of the ring on a concealed joint. [mm]"""

NAIL_RADIUS = 0.35
"""[mm]."""


def wood(subject: Subject, view: View) -> Iterator[Item]:
    """Draw the ground of everything that is covered."""
    for row in subject.rows:
        yield Polygon(rings=(view.ring(row.hung.shape),), style=Style.WOOD)


def done(subject: Subject, view: View, what: Done) -> Iterator[Item]:
    """Shade what hangs already and, otherwise, what is cut already."""
    for row in subject.rows:
        label = row.piece.label
        if label in what.hung or label in what.cut:
            style = Style.HANGING if label in what.hung else Style.CUT_ALREADY
            yield Polygon(rings=(view.ring(row.hung.shape),), style=style)


def framing(subject: Subject, view: View) -> Iterator[Item]:
    """Draw what the nails go into, where it can be seen from the room before the boards hang."""
    standing = subject.standing
    for member in subject.surface.framing.members:
        half = member.width_nm // 2
        face = _face(subject, member, member.centre_nm - half, member.centre_nm + half)
        yield from polygons(view.region(face.intersection(standing)), Style.FRAMING)
        centre = _centre_line(subject, member).intersection(standing)
        for part in shapely.get_parts(view.region(centre)):
            if isinstance(part, shapely.LineString) and not part.is_empty:
                (start_x, start_y), (end_x, end_y) = part.coords
                yield Line(places=((start_x, start_y), (end_x, end_y)), style=Style.FRAMING_CENTRE)


def _face(subject: Subject, member: FramingMember, low: Nm, high: Nm) -> shapely.Polygon:
    """Give the face of a member over the whole box that encloses the surface. [nm]"""
    surface = subject.surface
    if member.runs is Direction.VERTICAL:
        return shapely.box(low, 0, high, surface.height_nm)
    return shapely.box(0, low, surface.width_nm, high)


def _centre_line(subject: Subject, member: FramingMember) -> shapely.LineString:
    surface, centre = subject.surface, member.centre_nm
    if member.runs is Direction.VERTICAL:
        return shapely.LineString([(centre, 0), (centre, surface.height_nm)])
    return shapely.LineString([(0, centre), (surface.width_nm, centre)])


def zones(subject: Subject, view: View) -> Iterator[Item]:
    """Draw what will be hidden, and where no nail may go."""
    for zone in subject.surface.concealed:
        yield _rect(view, zone.place, Style.CONCEALED)
    for keep_out in subject.surface.keep_outs:
        yield _rect(view, keep_out.place, Style.KEEP_OUT)


def holes(subject: Subject, view: View) -> Iterator[Item]:
    """Draw openings as far as they lie on the surface, each crossed from corner to corner."""
    whole = shapely.Polygon(subject.surface.outline)
    for opening in subject.surface.openings:
        region = view.region(as_polygon(opening.place).intersection(whole))
        yield from polygons(region, Style.OPENING)
        left, top, right, bottom = region.bounds
        yield Line(places=((left, top), (right, bottom)), style=Style.OPENING_CROSS)
        yield Line(places=((left, bottom), (right, top)), style=Style.OPENING_CROSS)


def bare(subject: Subject, view: View) -> Iterator[Item]:
    """Draw what no board could be found for."""
    for region in subject.bare:
        yield from polygons(view.region(region), Style.BARE)


def cut_outs(subject: Subject, view: View) -> Iterator[Item]:
    """Draw boxes and pipes."""
    for cut_out in subject.surface.cut_outs:
        yield _rect(view, cut_out.place, Style.CUT_OUT)


def joints(subject: Subject, view: View) -> Iterator[Item]:
    """Draw butt joints: a heavy line in sight, a thin one with a ring where a fixture or trim hides it."""
    for joint in subject.joints:
        start, end = view.place(joint.start), view.place(joint.end)
        if joint.in_sight:
            yield Line(places=(start, end), style=Style.JOINT_IN_SIGHT)
        else:
            x, y = (start[0] + end[0]) / 2, (start[1] + end[1]) / 2
            yield Circle(x=x, y=y, radius=JOINT_RING, style=Style.JOINT_CONCEALED)


def nails(subject: Subject, view: View) -> Iterator[Item]:
    """Draw every nail."""
    for row in subject.rows:
        for nail in row.piece.nails:
            x, y = view.place(nail)
            yield Circle(x=x, y=y, radius=NAIL_RADIUS, style=Style.NAIL)


def outline(subject: Subject, view: View) -> Item:
    """Draw the edge of the surface."""
    return Polygon(rings=(view.ring(subject.surface.outline),), style=Style.OUTLINE)


def _rect(view: View, place: Rectangle, style: Style) -> Rect:
    return Rect(
        x=view.x(place.left),
        y=view.y(place.top),
        width=view.size(place.width_nm),
        height=view.size(place.height_nm),
        style=style,
    )

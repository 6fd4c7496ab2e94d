"""The frame of the courses: along them, and away from the side that they start at."""

from dataclasses import dataclass

from shapely.geometry import Polygon, box

from plankwright.measure import Nm
from plankwright.model import Direction, Edge, Rectangle, Surface


@dataclass(frozen=True, slots=True, kw_only=True)
class Extent:
    """An upright rectangle in the frame of the courses. [nm]"""

    u_from: float
    u_to: float
    v_from: float
    v_to: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """How x and y of a surface become u, along the courses, and v, away from their start side.

    Parameters
    ----------
    upright
        Whether the courses are vertical.
    far_side_nm
        Position of the start side when v runs against x or y; nothing when it runs with it. [nm]
    """

    upright: bool
    far_side_nm: Nm | None

    def point(self, x: float, y: float) -> tuple[float, float]:
        """Give u and v of a point of the surface. [nm]"""
        u, v = (y, x) if self.upright else (x, y)
        return u, (v if self.far_side_nm is None else self.far_side_nm - v)

    def extent(self, left: float, bottom: float, right: float, top: float) -> Extent:
        """Give the extent of an upright rectangle of the surface, also of the bounds of a shape."""
        (u_one, v_one), (u_two, v_two) = self.point(left, bottom), self.point(right, top)
        return Extent(u_from=u_one, u_to=u_two, v_from=min(v_one, v_two), v_to=max(v_one, v_two))

    def box(self, extent: Extent) -> Polygon:
        """Give the upright rectangle on the surface, of more than nothing, that has an extent."""
        (x_one, y_one), (x_two, y_two) = (
            self.surface_point(extent.u_from, extent.v_from),
            self.surface_point(extent.u_to, extent.v_to),
        )
        return box(min(x_one, x_two), min(y_one, y_two), max(x_one, x_two), max(y_one, y_two))

    def surface_point(self, u: float, v: float) -> tuple[float, float]:
        """Give x and y of a point of the courses. [nm]"""
        across = v if self.far_side_nm is None else self.far_side_nm - v
        return (across, u) if self.upright else (u, across)


def frame_of(surface: Surface) -> Frame:
    """Give the frame of the courses of a surface."""
    far_sides = {Edge.TOP: surface.height_nm, Edge.RIGHT: surface.width_nm}
    return Frame(upright=surface.courses_run is Direction.VERTICAL, far_side_nm=far_sides.get(surface.start))


def box_of(place: Rectangle, grown_by: Nm = 0) -> Polygon:
    """Give a rectangle as a shape, grown on all sides. [nm]"""
    return box(place.left - grown_by, place.bottom - grown_by, place.right + grown_by, place.top + grown_by)

"""How long the cut along a sloping side of the surface is, and which slopes no saw at hand cuts."""

from collections.abc import Iterator
from itertools import pairwise
from math import hypot

import shapely
from shapely.geometry.base import BaseGeometry

from plankwright.layout.regions import along_and_across
from plankwright.measure import Nm
from plankwright.model import Surface

_HAIR = 1_000
"""Lengths below a micrometre are rounding of the geometry library, not wood. [nm]"""

_Places = list[tuple[Nm, Nm]]


def highest_sawn(surface: Surface, crosscut: Nm) -> tuple[Nm, ...]:
    """Give for each slope of an outline the highest course whose ends along it can be cut across.

    Parameters
    ----------
    surface
        The surface.
    crosscut
        The widest that is cut across. [nm]

    Returns
    -------
    tuple of int
        In order, each once. [nm]
    """
    corners = [along_and_across(surface, corner) for corner in surface.outline]
    return tuple(
        sorted(
            {
                int(crosscut * across / hypot(along, across))
                for along, across in _legs([*corners, corners[0]])
                if along and across
            }
        )
    )


def too_long_to_saw(
    surface: Surface, shape: BaseGeometry, tolerance: Nm, crosscut: Nm
) -> tuple[tuple[Nm, Nm], ...]:
    """Give where along a strip a slope is too long to be cut across.

    A slope through the whole width of a piece is cut across, and so is a corner steeper than 45 degrees; a
    flatter one is ripped to a taper.

    Parameters
    ----------
    surface
        The surface.
    shape
        What can hang of the strip.
    tolerance
        How much narrower than the strip a piece may be. [nm]
    crosscut
        The widest that is cut across. [nm]

    Returns
    -------
    tuple of (int, int)
        From where to where along the courses. [nm]
    """
    barred = []
    for part in shapely.get_parts(shape):
        if not isinstance(part, shapely.Polygon) or part.is_empty:
            continue
        corners = [along_and_across(surface, (round(x), round(y))) for x, y in part.exterior.coords]
        places = [across for _, across in corners]
        through = max(places) - min(places) - tolerance - _HAIR
        for (start, end), (along, across) in zip(pairwise(corners), _legs(corners), strict=True):
            cut_across = across >= min(through, along)
            if cut_across and min(along, across) > _HAIR and hypot(along, across) > crosscut:
                barred.append((min(start[0], end[0]), max(start[0], end[0])))
    return tuple(sorted(barred))


def _legs(corners: _Places) -> Iterator[tuple[Nm, Nm]]:
    """Give how far each side goes along the courses, and how far across them."""
    for (u, v), (other_u, other_v) in pairwise(corners):
        yield abs(other_u - u), abs(other_v - v)

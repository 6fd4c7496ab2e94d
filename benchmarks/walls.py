"""Walls as they are met with: 16 to 24 ft wide, level or gabled, with openings, fixtures and uneven studs."""

from collections.abc import Sequence
from random import Random

from plankwright.measure import FOOT, INCH, Nm
from plankwright.model import (
    ConcealedZone,
    Framing,
    FramingMember,
    Opening,
    Point,
    Rectangle,
    Surface,
)

_GABLED = 0.5
"""How many of the walls have a gable."""

_LEAST_SLOPE = 0.28
"""Rise over run of a gable, so that the saws at hand cut its ends."""

_APART: Nm = 20 * INCH
"""Between openings, and between an opening and a corner."""

_STUD: Nm = 3 * INCH // 2
_SPACINGS = (12, 14, 15, 16, 16, 16, 17, 18, 20)
_CROWDED: Nm = 4 * INCH
"""A stud that is nearer to one beside an opening is not there."""

_TRIES = 50


def draw_wall(chance: Random, name: str = "wall") -> Surface:
    """Draw a wall.

    Parameters
    ----------
    chance
        The same state gives the same wall.
    name
        Of the surface.
    """
    width, height = chance.randint(16 * 12, 24 * 12) * INCH, chance.randint(8 * 12, 9 * 12) * INCH
    eaves = height
    if chance.random() < _GABLED:
        eaves -= round(chance.uniform(_LEAST_SLOPE, 0.36) * width / 2 / INCH) * INCH
    openings = _openings(chance, width, height, eaves)
    return Surface(
        id=name,
        outline=_outline(width, height, eaves),
        openings=tuple(Opening(id=what, place=place) for what, place in _numbered(openings, "window")),
        concealed=tuple(
            ConcealedZone(id=what, place=place)
            for what, place in _fixtures(chance, width, eaves, [place for _, place in openings])
        ),
        framing=_framing(chance, width, [place for _, place in openings]),
    )


def _outline(width: Nm, height: Nm, eaves: Nm) -> tuple[Point, ...]:
    if eaves == height:
        return (0, 0), (width, 0), (width, height), (0, height)
    return (0, 0), (width, 0), (width, eaves), (width // 2, height), (0, eaves)


def _ceiling(at: Nm, width: Nm, height: Nm, eaves: Nm) -> Nm:
    """Give the height of the wall at a place along it. [nm]"""
    return eaves + (height - eaves) * min(at, width - at) * 2 // width


def _openings(chance: Random, width: Nm, height: Nm, eaves: Nm) -> list[tuple[str, Rectangle]]:
    """Draw a door and one or two windows; fewer only where there is no room."""
    found: list[tuple[str, Rectangle]] = []
    for what in ("door", *("window",) * chance.randint(1, 2)):
        for _ in range(_TRIES):
            place = _place(chance, what, width)
            ceiling = min(_ceiling(at, width, height, eaves) for at in (place.left, place.right))
            clear = all(
                place.right + _APART <= other.left or other.right + _APART <= place.left for _, other in found
            )
            if clear and place.top + 6 * INCH <= ceiling:
                found.append((what, place))
                break
    return found


def _place(chance: Random, what: str, width: Nm) -> Rectangle:
    if what == "door":
        wide, high, low = chance.choice((30, 32, 34, 36)), chance.choice((78, 80, 82)), 0
    else:
        wide, high, low = chance.randint(24, 48), chance.randint(28, 44), chance.randint(28, 38)
    left = chance.randint(_APART // INCH, (width - _APART) // INCH - wide)
    return Rectangle(left=left * INCH, bottom=low * INCH, right=(left + wide) * INCH, top=(low + high) * INCH)


def _numbered(places: Sequence[tuple[str, Rectangle]], several: str) -> list[tuple[str, Rectangle]]:
    """Add numbers to those of which there are several."""
    return [
        (f"{what}-{number}" if what == several else what, place)
        for number, (what, place) in enumerate(places)
    ]


def _fixtures(
    chance: Random, width: Nm, eaves: Nm, openings: Sequence[Rectangle]
) -> list[tuple[str, Rectangle]]:
    """Draw a bench and a shelf where no opening is in the way."""
    found: list[tuple[str, Rectangle]] = []
    for what, wide, high, low in (
        ("bench", chance.randint(42, 72), chance.randint(16, 20), 0),
        ("shelf", chance.randint(36, 60), chance.randint(14, 30), chance.randint(40, 50)),
    ):
        for _ in range(_TRIES):
            left = chance.randint(2, width // INCH - wide - 2)
            place = Rectangle(
                left=left * INCH, bottom=low * INCH, right=(left + wide) * INCH, top=(low + high) * INCH
            )
            free = all(place.right <= other.left or other.right <= place.left for other in openings)
            if free and place.top <= eaves - FOOT:
                found.append((what, place))
                break
    return found


def _framing(chance: Random, width: Nm, openings: Sequence[Rectangle]) -> Framing:
    """Draw studs at uneven distances, one in each corner and one on either side of each opening."""
    half = _STUD // 2
    fixed = [half, width - half]
    fixed += [side for place in openings for side in (place.left - half, place.right + half)]
    centres, at = list(fixed), half
    while (at := at + chance.choice(_SPACINGS) * INCH) < width:
        if all(abs(at - other) >= _CROWDED for other in fixed):
            centres.append(at)
    return Framing(
        members=tuple(FramingMember(centre_nm=centre, width_nm=_STUD) for centre in sorted(centres))
    )

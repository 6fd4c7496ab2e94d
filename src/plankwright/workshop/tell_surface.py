"""A surface in words: how large it is, what it is nailed to, and what stands in, on and behind it."""

from collections.abc import Iterator

from plankwright.draw.bare_wall import Thing, name_of
from plankwright.measure import TapeStyle, write_area, write_inches, write_length
from plankwright.model import Direction, Rectangle, Surface, SurfaceKind
from plankwright.model.surface import twice_signed_area

_PLAIN_CORNERS = 4
_RUN = {Direction.HORIZONTAL: "level", Direction.VERTICAL: "upright"}
_RUN_FLAT = {Direction.HORIZONTAL: "along the width", Direction.VERTICAL: "along the depth"}
_DEEP = {SurfaceKind.WALL: "high", SurfaceKind.CEILING: "deep", SurfaceKind.FLOOR: "deep"}


def tell_surface(surface: Surface, tape: TapeStyle) -> tuple[str, ...]:
    """Say the most important of a surface, in sentences."""
    return (
        _size(surface, tape),
        f"Courses run {_run(surface)}, the first at the {surface.start}.",
        _framing(surface, tape),
        *_standing(surface),
    )


def tell_places(surface: Surface, tape: TapeStyle) -> tuple[str, ...]:
    """Say of everything in, on and behind a surface where it is, as its measures were read."""
    things: tuple[Thing, ...] = (
        *surface.openings,
        *surface.cut_outs,
        *surface.concealed,
        *surface.keep_outs,
    )
    return tuple(f"{name_of(thing)}: {_place(thing.place, tape)}." for thing in things)


def _size(surface: Surface, tape: TapeStyle) -> str:
    width, height = (write_length(nm, tape) for nm in (surface.width_nm, surface.height_nm))
    area_nm2 = twice_signed_area(surface.outline) // 2
    sloping = len(surface.outline) != _PLAIN_CORNERS or area_nm2 != surface.width_nm * surface.height_nm
    upto = "up to " if sloping else ""
    return (
        f"{surface.kind.capitalize()}, {width} wide, {upto}{height} {_DEEP[surface.kind]}: "
        f"{write_area(area_nm2, tape)}."
    )


def _run(surface: Surface) -> str:
    return (_RUN if surface.kind is SurfaceKind.WALL else _RUN_FLAT)[surface.courses_run]


def _framing(surface: Surface, tape: TapeStyle) -> str:
    framing = surface.framing
    if framing.solid:
        return "Solid backing: a nail holds anywhere that nothing runs behind."
    members = sorted(framing.members, key=lambda member: member.centre_nm)
    origin = "left" if members[0].runs is Direction.VERTICAL else "bottom"
    word = "stud" if surface.kind is SurfaceKind.WALL and origin == "left" else "strip or joist"
    first, last = (write_inches(member.centre_nm, tape) for member in (members[0], members[-1]))
    if len(members) == 1:
        return f"One {word}, its centre {first} from the {origin}."
    words = "strips or joists" if word.startswith("strip") else f"{word}s"
    return f"{len(members)} {words}, centres from {first} to {last} from the {origin}."


def _standing(surface: Surface) -> Iterator[str]:
    for what, things in (
        ("Left open", surface.openings),
        ("Notched around", surface.cut_outs),
        ("Hidden later by", surface.concealed),
        ("No nails at", surface.keep_outs),
    ):
        if things:
            # What somebody wrote may hold commas.
            yield f"{what}: {'; '.join(map(name_of, things))}."


def _place(place: Rectangle, tape: TapeStyle) -> str:
    width, height, left, bottom = (
        write_inches(nm, tape) for nm in (place.width_nm, place.height_nm, place.left, place.bottom)
    )
    return f"{width} wide, {height} high, {left} from the left, {bottom} up"

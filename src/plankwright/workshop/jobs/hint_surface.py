"""What is probably missing of a surface, although it can be read: framing at its ends."""

from collections.abc import Iterator

from plankwright.measure import INCH, Nm, TapeStyle, write_inches
from plankwright.model import Direction, Surface, SurfaceKind

_FAR_NM = 8 * INCH
"""A free end of half a usual bay or more: common practice, no source."""


def hint_surface(surface: Surface, tape: TapeStyle) -> tuple[str, ...]:
    """Say where nothing is to nail to near the ends of the boards, as is seldom so.

    Parameters
    ----------
    surface
        As far as it is measured.
    tape
        How lengths are told.
    """
    return tuple(
        f"Nothing is there to nail to within {write_inches(free_nm, tape)} of the {side}: "
        f"{_usually(surface, side)}. Measure it and add it to “Centres as measured”."
        for free_nm, side in _free_ends(surface)
        if free_nm > _FAR_NM
    )


def _free_ends(surface: Surface) -> Iterator[tuple[Nm, str]]:
    """Give how far it is from each end to the face of the first member that boards cross, and which end."""
    upright = surface.courses_run is Direction.HORIZONTAL
    runs = Direction.VERTICAL if upright else Direction.HORIZONTAL
    members = [member for member in surface.framing.members if member.runs is runs]
    if not members:
        return
    reach = surface.width_nm if upright else surface.height_nm
    first, last = ("left end", "right end") if upright else ("lower end", "upper end")
    yield min(member.centre_nm - member.width_nm // 2 for member in members), first
    yield reach - max(member.centre_nm + member.width_nm // 2 for member in members), last


def _usually(surface: Surface, side: str) -> str:
    if surface.kind is not SurfaceKind.WALL:
        return "most have a joist or strip there"
    if side.startswith(("left", "right")):
        return "most walls have a stud in the corner"
    return "most walls have a plate or strip there"

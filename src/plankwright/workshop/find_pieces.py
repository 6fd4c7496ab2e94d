"""Find the pieces that somebody names: by label, or a whole course by its number."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from plankwright.model import Course, Layout, Piece
from plankwright.workshop.wording import listed


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """A piece that was named.

    Parameters
    ----------
    surface_id, course, piece
        The piece, its course and its surface.
    by_label
        Whether it was named by itself, and not with its whole course.
    """

    surface_id: str
    course: Course
    piece: Piece
    by_label: bool

    @property
    def key(self) -> tuple[str, str]:
        """Its surface and its label."""
        return self.surface_id, self.piece.label


def find_pieces(layout: Layout, names: Iterable[str], surface_id: str | None) -> list[Found]:
    """Find pieces of a layout.

    Parameters
    ----------
    layout
        The layout.
    names
        Labels such as "4b"; a number such as "4" names all pieces of that course.
    surface_id
        Where to look; on all surfaces when nothing.

    Returns
    -------
    list of Found
        Each once, in the order named.

    Raises
    ------
    LookupError
        If a name is none, or could be of several surfaces; the message is for people.
    """
    surfaces = [laid.surface_id for laid in layout.surfaces]
    if surface_id is not None and surface_id not in surfaces:
        raise LookupError(f"The layout has no surface {surface_id}, but {listed(surfaces)}.")
    found: dict[tuple[str, str], Found] = {}
    for name in names:
        named = list(_named(layout, name, surface_id))
        where = sorted({one.surface_id for one in named})
        if not named:
            raise LookupError(
                f"There is no {'course' if name.isdecimal() else 'piece'} {name} in the layout"
                f"{'' if surface_id is None else f' of {surface_id}'}."
            )
        if len(where) > 1:
            raise LookupError(f"{name} could be on {listed(where)}: say which with --surface.")
        for one in named:
            found.setdefault(one.key, one)
    return list(found.values())


def _named(layout: Layout, name: str, surface_id: str | None) -> Iterator[Found]:
    for laid in layout.surfaces:
        if surface_id not in {None, laid.surface_id}:
            continue
        for course in laid.courses:
            for piece in course.pieces:
                by_label = piece.label.lower() == name.lower()
                if by_label or name == str(course.number):
                    yield Found(surface_id=laid.surface_id, course=course, piece=piece, by_label=by_label)

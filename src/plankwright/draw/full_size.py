"""The wall map at full size, for a drawing program: a surface with every piece, and nothing of a sheet."""

from collections.abc import Iterator

import shapely

from plankwright.draw import shapes
from plankwright.draw.lettering import text_width
from plankwright.draw.scene import Anchor, Group, Item, Line, Polygon, Scene, Span, Text, slug
from plankwright.draw.styles import Style
from plankwright.draw.subject import HungRow, Subject, subject
from plankwright.draw.view import View
from plankwright.layout.done import NOTHING, Done
from plankwright.layout.hanging import called
from plankwright.measure import INCH, MILLIMETRE
from plankwright.model import Job, Rectangle, SurfaceLayout

_LETTERS = 40.0
"""Font size of labels, where the piece is wide enough. [mm]"""

_LETTERS_SHARE = 0.5
"""Of the width of a piece that letters may take."""


def wall_at_full_size(job: Job, surface_layout: SurfaceLayout, *, done: Done = NOTHING) -> Scene:
    """Draw a surface with its layout at full size.

    Parameters
    ----------
    job
        The job.
    surface_layout
        The layout of one of its surfaces.
    done
        What hangs already and what is cut.

    Returns
    -------
    Scene
        As large as the surface itself, its lower left corner at the bottom left of the scene. [mm]
    """
    what = subject(job, surface_layout)
    height = what.surface.height_nm / MILLIMETRE
    view = View(scale=1.0, left=0.0, bottom=height)
    return Scene(
        width=what.surface.width_nm / MILLIMETRE,
        height=height,
        title=f"{job.name}: {what.surface.id}",
        description="",
        items=tuple(_items(what, view, done)),
    )


def _items(what: Subject, view: View, done: Done) -> Iterator[Item]:
    yield from shapes.done(what, view, done)
    yield from shapes.bare(what, view)
    yield from shapes.framing(what, view)
    yield from shapes.zones(what, view)
    yield from shapes.holes(what, view)
    for row in what.rows:
        yield _piece(what, row, view)
    yield from shapes.cut_outs(what, view)
    yield from _joints(what, view)
    yield from shapes.nails(what, view)
    yield shapes.outline(what, view)
    yield from _names(what, view)


def _piece(what: Subject, row: HungRow, view: View) -> Group:
    shape = shapely.Polygon(row.hung.shape)
    middle = shape.representative_point()
    left, low, right, high = (bound / MILLIMETRE for bound in shape.bounds)
    text = f"{row.piece.label} {row.piece.board_id}"
    size = min(_LETTERS, _LETTERS_SHARE * min(right - left, high - low))
    size = min(size, size * (right - left) / max(text_width([Span(text=text)], size), 1e-9))
    return Group(
        id=f"piece-{slug(what.surface.id)}-{slug(row.piece.label)}",
        title=text,
        items=(
            Polygon(rings=(view.ring(row.hung.shape),), style=Style.PIECE),
            _name(text, view.place((round(middle.x), round(middle.y))), size),
        ),
    )


def _joints(what: Subject, view: View) -> Iterator[Item]:
    for joint in what.joints:
        style = Style.JOINT_IN_SIGHT if joint.in_sight else Style.JOINT_CONCEALED
        yield Line(places=(view.place(joint.start), view.place(joint.end)), style=style)


def _names(what: Subject, view: View) -> Iterator[Item]:
    surface = what.surface
    places: list[tuple[str, Rectangle]] = [
        *((opening.id, opening.place) for opening in surface.openings),
        *((called(cut_out), cut_out.place) for cut_out in surface.cut_outs),
        *((zone.id, zone.place) for zone in surface.concealed),
        *((called(keep_out), keep_out.place) for keep_out in surface.keep_outs),
    ]
    for text, place in places:
        x, y = view.place((place.left + INCH // 4, place.top - INCH // 2))
        yield Text(x=x, y=y, spans=(Span(text=text),), size=_LETTERS / 2, style=Style.NOTE)


def _name(text: str, place: tuple[float, float], size: float) -> Text:
    return Text(x=place[0], y=place[1], spans=(Span(text=text),), size=size, anchor=Anchor.MIDDLE)

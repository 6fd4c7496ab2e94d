"""From the definition of a surface to the surface itself."""

from collections.abc import Sequence
from typing import TypeVar

from plankwright.files.outline import outline_field, outline_of
from plankwright.files.report import Report, Where
from plankwright.files.surface_document import (
    CutOutDocument,
    FramingDocument,
    KeepOutDocument,
    PlacedDocument,
    SurfaceDocument,
)
from plankwright.measure import Nm
from plankwright.model import (
    ConcealedZone,
    CutOut,
    Direction,
    Edge,
    EdgeTrim,
    Framing,
    FramingMember,
    InvalidValueError,
    KeepOut,
    Layer,
    Opening,
    Point,
    Rectangle,
    Surface,
)

_MOST_MEMBERS = 1_000

_Entry = TypeVar("_Entry", bound=PlacedDocument | CutOutDocument | KeepOutDocument)


def surface_of(document: SurfaceDocument, where: Where, report: Report) -> Surface | None:
    """Make the surface that a definition describes.

    Parameters
    ----------
    document
        The definition.
    where
        Its path in the file.
    report
        Where problems go.

    Returns
    -------
    Surface or None
        Nothing when the definition makes no surface; the report says why.
    """
    try:
        outline = outline_of(document)
    except ValueError as trouble:
        field = outline_field(document)
        report.refuse((*where, field), f"{field} {trouble}")
        return None
    try:
        return _surface(document, outline)
    except InvalidValueError as trouble:
        report.refuse((*where, trouble.field), f"{trouble.field} does not fit: {trouble}")
        return None


def _surface(document: SurfaceDocument, outline: tuple[Point, ...]) -> Surface:
    width, height = max(x for x, _ in outline), max(y for _, y in outline)
    return Surface(
        id=document.id,
        kind=document.kind,
        outline=outline,
        courses_run=document.courses,
        start=document.start or _usual_start(document.courses),
        openings=tuple(
            Opening(id=name, place=_corner_box(entry), trim_nm=entry.trim)
            for name, entry in _named("opening", document.openings)
        ),
        cut_outs=tuple(
            CutOut(id=name, place=_cut_out_box(entry), what=entry.what, front_nm=entry.front)
            for name, entry in _named("cut-out", document.cut_outs)
        ),
        concealed=tuple(
            ConcealedZone(id=name, place=_corner_box(entry))
            for name, entry in _named("concealed", document.concealed)
        ),
        framing=_framing(document.framing, width, height),
        keep_outs=tuple(
            KeepOut(id=name, place=_keep_out_box(entry, width, height), what=entry.what)
            for name, entry in _named("keep-out", document.keep_outs)
        ),
        trim=EdgeTrim(
            bottom=document.trim.bottom,
            top=document.trim.top,
            left=document.trim.left,
            right=document.trim.right,
        ),
        between=tuple(Layer(what=layer.what, thickness_nm=layer.thickness) for layer in document.between),
        raised_nm=document.raised,
    )


def _usual_start(courses: Direction) -> Edge:
    return Edge.BOTTOM if courses is Direction.HORIZONTAL else Edge.LEFT


def _named(word: str, entries: Sequence[_Entry]) -> list[tuple[str, _Entry]]:
    return [(entry.id or f"{word}-{number}", entry) for number, entry in enumerate(entries, start=1)]


def _box(left: Nm, bottom: Nm, width: Nm, height: Nm) -> Rectangle:
    return Rectangle(left=left, bottom=bottom, right=left + width, top=bottom + height)


def _corner_box(entry: PlacedDocument) -> Rectangle:
    return _box(entry.left, entry.bottom, entry.width, entry.height)


def _cut_out_box(entry: CutOutDocument) -> Rectangle:
    if entry.centre is None:
        return _box(entry.left or 0, entry.bottom or 0, entry.width, entry.height)
    x, y = entry.centre
    return _box(x - entry.width // 2, y - entry.height // 2, entry.width, entry.height)


def _keep_out_box(entry: KeepOutDocument, width: Nm, height: Nm) -> Rectangle:
    thick = entry.width or 0
    if entry.vertical is not None:
        return _box(entry.vertical - thick // 2, 0, thick, height)
    if entry.horizontal is not None:
        return _box(0, entry.horizontal - thick // 2, width, thick)
    return _box(entry.left or 0, entry.bottom or 0, thick, entry.height or 0)


def _framing(document: FramingDocument, width: Nm, height: Nm) -> Framing:
    if document.solid:
        return Framing(
            solid=True, wood=document.wood, opened=document.opened, thickness_nm=document.thickness
        )
    reach = width if document.runs is Direction.VERTICAL else height
    centres = set(document.centres)
    if document.spacing is not None and document.first_centre is not None:
        spaced = range(document.first_centre, reach + 1, document.spacing)
        if len(spaced) > _MOST_MEMBERS:
            raise InvalidValueError(
                f"the spacing gives more than {_MOST_MEMBERS} of them: check its unit", field="framing"
            )
        if not spaced:
            raise InvalidValueError(
                "the first centre is beyond the surface: check first_centre and its unit", field="framing"
            )
        centres.update(spaced)
    return Framing(
        members=tuple(
            FramingMember(centre_nm=centre, width_nm=document.width, runs=document.runs)
            for centre in sorted(centres)
        ),
        wood=document.wood,
        opened=document.opened,
    )

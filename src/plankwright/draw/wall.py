"""The wall map: a surface with every piece in its place, to scale, on one sheet."""

from collections.abc import Iterator, Mapping

from plankwright.draw import shapes
from plankwright.draw.corners import tell_corners
from plankwright.draw.key import ROW, Entry, draw_key, flow, scale_bar, swatch
from plankwright.draw.lettering import LINE, shortened
from plankwright.draw.naming import Lettering, letter
from plankwright.draw.scene import Circle, Group, Item, Line, Polygon, Scene, Span, Text, slug
from plankwright.draw.sheet import Area, Heading, with_table
from plankwright.draw.sides import extensions, sides
from plankwright.draw.styles import Style
from plankwright.draw.subject import Subject, subject
from plankwright.draw.tones import Tones, boards_alone, set_off_joints, tones_of
from plankwright.draw.view import Page, View
from plankwright.layout.done import NOTHING, Done
from plankwright.layout.result import Verdict, verdict
from plankwright.measure import write_area, write_inches, write_length
from plankwright.model import Job, SurfaceKind, SurfaceLayout

_APART = 3.0
"""Between the parts of the sheet. [mm]"""

CAUTION = (
    "Pipes and wires are drawn only where somebody entered them: find them before you cut or nail. "
    "Local codes and licensed trades decide."
)
"""Stands on every map, whether it shows any keep-out or not."""

_CAUTION_SIZE = 2.3
"""Font size. [mm]"""

_VERDICTS = {
    Verdict.ENOUGH: "Enough",
    Verdict.NOT_ENOUGH: "Not enough",
    Verdict.UNSETTLED: "Not settled whether it is enough",
}


def wall_map(
    job: Job,
    surface_layout: SurfaceLayout,
    page: Page,
    *,
    nails: bool = False,
    links: Mapping[str, str] | None = None,
    done: Done = NOTHING,
    as_boards_look: bool = False,
) -> Scene:
    """Draw a surface with its layout.

    Parameters
    ----------
    job
        The job.
    surface_layout
        The layout of one of its surfaces.
    page
        The sheet to fit it on.
    nails
        Whether to draw the nails.
    links
        For each label where a tap on the piece leads; pieces that are missing here lead nowhere.
    done
        What hangs already and what is cut: each is shaded in its way.
    as_boards_look
        Whether pieces are filled by the tones of their boards and their lots are marked, with nothing shown
        of what is behind them or of what is done.

    Returns
    -------
    Scene
        The map, with what found no room on it in a table beside it.
    """
    what = subject(job, surface_layout)
    tones = tones_of(what) if as_boards_look else None
    if tones is not None:
        what, done = boards_alone(what), NOTHING
    heading, heading_height = _heading(what).drawn(page.margin, page.margin, page.width - 2 * page.margin)
    along_sides = sides(what)
    depths = [side.depth for side in along_sides]
    entries = _entries(what, nails=nails, done=done, tones=tones)
    width = page.width - 2 * page.margin
    # The bar is about as long at any scale; its own is known only once everything else has found its room.
    key_height = ROW * len(flow([*entries, _WIDEST_BAR], width))
    key_top = page.height - page.margin - key_height - _CAUTION_SIZE * LINE
    area = Area(
        left=page.margin,
        top=page.margin + heading_height + _APART,
        right=page.width - page.margin,
        bottom=key_top - _APART,
    )
    size = what.surface.width_nm, what.surface.height_nm
    rows: tuple[tuple[str, str], ...] = ()
    while True:
        view, table = with_table(area, rows, size, (depths[0], depths[1], depths[2], depths[3]))
        marked = () if tones is None else tuple(tones.tabs(what, view))
        margins = [side.margin(what, view) for side in along_sides]
        lettering = letter(what, view, margins, nails=nails, marked=marked)
        # Nobody looks for what hangs already.
        found = tuple(row for row in lettering.table if row[0] not in done.hung)
        if len(found) <= len(rows):
            break
        rows = found
    items = [
        *heading,
        *_surface(what, view, lettering, nails=nails, links=links or {}, done=done, tones=tones),
        *extensions(what, view),
        *(item for side in along_sides for item in side.drawn(what, view)),
        *draw_key([scale_bar(view.scale, what.tape, page.name), *entries], page.margin, key_top, width),
    ]
    items.append(
        Text(
            x=page.margin,
            y=page.height - page.margin - _CAUTION_SIZE * LINE / 2,
            spans=(Span(text=shortened(CAUTION, width, _CAUTION_SIZE)),),
            size=_CAUTION_SIZE,
            style=Style.NOTE,
        )
    )
    if table is not None:
        items += table.drawn("Small pieces", found)
    return Scene(
        width=page.width,
        height=page.height,
        title=f"{job.name}: {what.surface.id}",
        description=_description(what, done),
        items=tuple(items),
    )


def _surface(
    what: Subject,
    view: View,
    lettering: Lettering,
    *,
    nails: bool,
    links: Mapping[str, str],
    done: Done,
    tones: Tones | None,
) -> Iterator[Item]:
    yield from shapes.wood(what, view)
    if tones is not None:
        yield from tones.ground(what, view)
    yield from shapes.done(what, view, done)
    yield from shapes.bare(what, view)
    yield from shapes.framing(what, view)
    yield from shapes.zones(what, view)
    yield from shapes.holes(what, view)
    yield from _pieces(what, view, lettering, links, tones)
    yield from shapes.cut_outs(what, view)
    if tones is not None:
        yield from set_off_joints(what, view)
    yield from shapes.joints(what, view)
    if nails:
        yield from shapes.nails(what, view)
    yield shapes.outline(what, view)
    yield from lettering.names


def _pieces(
    what: Subject, view: View, lettering: Lettering, links: Mapping[str, str], tones: Tones | None
) -> Iterator[Item]:
    for row, words in zip(what.rows, lettering.pieces, strict=True):
        piece = row.piece
        length, width = (
            write_inches(nm, what.tape) for nm in (row.length_nm, piece.across_to_nm - piece.across_from_nm)
        )
        shape = Polygon(rings=(view.ring(row.hung.shape),), style=Style.PIECE)
        looks = "" if tones is None else tones.say(piece.board_id)
        yield Group(
            id=f"piece-{slug(what.surface.id)}-{slug(piece.label)}",
            title=f"{piece.label}: board {piece.board_id}, {length} × {width}{looks and f', {looks}'}",
            href=links.get(piece.label, ""),
            items=(shape, *words),
        )


def _heading(what: Subject) -> Heading:
    surface, layout = what.surface, what.layout
    width, height = (write_length(nm, what.tape) for nm in (surface.width_nm, surface.height_nm))
    boards = len({row.piece.board_id for row in what.rows})
    seen = _SEEN[surface.kind]
    return Heading(
        title=what.job.name,
        of=surface.id,
        answer=_answer(what),
        facts=(
            f"{surface.kind.capitalize()} {width} × {height}, {seen} · "
            f"{_count(len(layout.courses), 'course')}, {surface.courses_run}, from the {surface.start} · "
            f"{_count(len(what.rows), 'piece')} from {_count(boards, 'board')}"
            f"{f' · {corners}' if (corners := tell_corners(what.job, surface.id)) else ''}"
        ),
    )


_SEEN = {
    SurfaceKind.WALL: "seen from inside the room",
    SurfaceKind.CEILING: "seen looking up at it",
    SurfaceKind.FLOOR: "seen looking down on it",
}


def _answer(what: Subject) -> str:
    score = what.layout.score
    bare = f"{write_area(score.bare_nm2, what.tape)} left bare" if what.layout.bare else "nothing left bare"
    in_sight = sum(joint.in_sight for joint in what.joints)
    return f"{_VERDICTS[verdict(what.layout)]}: {bare}, {_count(in_sight, 'joint')} in sight."


def _count(number: int, noun: str) -> str:
    return f"{number or 'no'} {noun}{'' if number == 1 else 's'}"


def _description(what: Subject, done: Done) -> str:
    courses = "; ".join(
        f"course {course.number}: "
        + (", ".join(f"{piece.label} from board {piece.board_id}" for piece in course.pieces) or "bare")
        for course in what.layout.courses
    )
    told = f"{_answer(what)} From the {what.surface.start}: {courses}."
    if corners := tell_corners(what.job, what.surface.id):
        told += f" {corners[:1].upper()}{corners[1:]}."
    pieces = [piece.label for piece in what.layout.pieces]
    for labels, state in ((done.hung, "Hangs already"), (done.cut, "Cut already")):
        if labels:
            told += f" {state}: {', '.join(label for label in pieces if label in labels)}."
    return told


_WIDEST_BAR = Entry(width=62.0, sample=lambda _left, _middle: (), text="1:100 on Letter")


def _entries(what: Subject, *, nails: bool, done: Done, tones: Tones | None) -> list[Entry]:
    """Give the entries of the key, for what there is on the drawing and nothing else."""
    surface = what.surface
    in_sight = any(joint.in_sight for joint in what.joints)
    concealed = any(not joint.in_sight for joint in what.joints)
    any_nails = nails and any(row.piece.nails for row in what.rows)
    sloped = any(row.hung.short_point_nm < row.hung.long_point_nm for row in what.rows)
    said = "label · board · length" + (", LP to the long point" if sloped else "")
    entries = [
        (True, 7.0, swatch(Style.WOOD, Style.PIECE), said),
        (bool(done.hung), 7.0, swatch(Style.WOOD, Style.HANGING, Style.PIECE), "hangs already"),
        (bool(done.cut), 7.0, swatch(Style.WOOD, Style.CUT_ALREADY, Style.PIECE), "cut already"),
        (in_sight, 4.0, _seen_sample, "joint in sight"),
        (concealed, 4.0, _concealed_sample, "joint out of sight"),
        (bool(surface.framing.members), 7.0, _framing_sample, what.member),
        (any_nails, 2.0, _nail_sample, "nail"),
        (bool(surface.openings), 7.0, _opening_sample, "opening"),
        (bool(surface.cut_outs), 4.0, swatch(Style.CUT_OUT, width=4.0), "cut-out"),
        (bool(surface.concealed), 7.0, swatch(Style.WOOD, Style.CONCEALED), "hidden later by a fixture"),
        (bool(surface.keep_outs), 7.0, swatch(Style.WOOD, Style.KEEP_OUT), "keep-out: no nails"),
        (bool(what.layout.bare), 7.0, swatch(Style.BARE), "left bare"),
    ]
    told = [Entry(width=width, sample=sample, text=text) for there, width, sample, text in entries if there]
    return told if tones is None else [told[0], *tones.entries(), *told[1:]]


def _seen_sample(left: float, middle: float) -> tuple[Item, ...]:
    places = ((left + 2.0, middle - 1.6), (left + 2.0, middle + 1.6))
    return (Line(places=places, style=Style.JOINT_IN_SIGHT),)


def _concealed_sample(left: float, middle: float) -> tuple[Item, ...]:
    places = ((left + 2.0, middle - 1.6), (left + 2.0, middle + 1.6))
    ring = Circle(x=left + 2.0, y=middle, radius=shapes.JOINT_RING, style=Style.JOINT_CONCEALED)
    return Line(places=places, style=Style.DIMENSION), ring


def _framing_sample(left: float, middle: float) -> tuple[Item, ...]:
    places = ((left, middle), (left + 7.0, middle))
    return *swatch(Style.WOOD, Style.FRAMING)(left, middle), Line(places=places, style=Style.FRAMING_CENTRE)


def _nail_sample(left: float, middle: float) -> tuple[Item, ...]:
    return (Circle(x=left + 1.0, y=middle, radius=shapes.NAIL_RADIUS, style=Style.NAIL),)


def _opening_sample(left: float, middle: float) -> tuple[Item, ...]:
    low, high, right = middle - 1.6, middle + 1.6, left + 7.0
    return (
        *swatch(Style.OPENING)(left, middle),
        Line(places=((left, low), (right, high)), style=Style.OPENING_CROSS),
        Line(places=((left, high), (right, low)), style=Style.OPENING_CROSS),
    )

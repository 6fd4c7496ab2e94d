"""The printed pack read back and held against the layout, with arithmetic of its own.

Nothing here asks the program how it writes a length, where a notch is or which stud a joint is on: that is
worked out again from the layout and the surface, and must stand on paper once and only once.
"""

import re
from collections import Counter
from dataclasses import replace
from fractions import Fraction
from functools import cache

import pytest
import shapely

from builders import nm, opening, outline, rectangle, socket, studs, wall
from by_eye import filled
from plankwright.draw.view import LETTER
from plankwright.measure import System, TapeStyle
from plankwright.model import (
    CutOut,
    Direction,
    Edge,
    Job,
    KeepOut,
    Layout,
    Piece,
    Rectangle,
    Rules,
    Surface,
    SurfaceKind,
    SurfaceLayout,
)
from plankwright.paper.work_sheets import work_sheets_pdf
from printed import Sheets, words

INCHES = TapeStyle(system=System.IMPERIAL, denominator=16)
METRIC = TapeStyle(system=System.METRIC)
GAP = Rules().expansion_gap_nm

ENTRY = wall(
    144,
    96,
    id="entry",
    openings=(opening("doorway", 20, 0, 52, 80, trim=2.5),),
    cut_outs=(
        CutOut(id="by the door", place=rectangle(57, 44, 59.25, 48), what="switch"),
        CutOut(id="bench-socket", place=rectangle(70, 12, 72.25, 16), what="socket"),
    ),
    keep_outs=(KeepOut(id="riser", place=rectangle(126, 0, 129, 96), what="water pipe"),),
)
GABLE = wall(
    144,
    96,
    id="gable",
    outline=outline((0, 0), (144, 0), (144, 30), (72, 88), (0, 30)),
    framing=studs(1, 17, 32.5, 48, 64.75, 80, 96.25, 112, 128, 143),
    cut_outs=(socket(70, 12, 72.25, 16),),
)
UPRIGHT = wall(
    72,
    96,
    id="upright",
    courses_run=Direction.VERTICAL,
    start=Edge.RIGHT,
    framing=studs(1, 24, 48, 72, 95, runs=Direction.HORIZONTAL),
    openings=(opening("window", 20, 30, 50, 70, trim=2),),
)
CEILING = wall(90, 60, id="ceiling", kind=SurfaceKind.CEILING, start=Edge.TOP)

HEIGHTS = [5.5, 7.25, 5.5, 4.75] * 6
JOINTS: dict[str, dict[int, list[float]]] = {
    "entry": {1: [72, 104], 2: [88], 3: [56, 120], 5: [72], 6: [104]},
    "gable": {1: [32.5, 80, 112], 2: [17, 64.75, 128], 3: [48], 7: [64.75]},
    "upright": {1: [48], 2: [24, 72], 9: [48]},
    "ceiling": {1: [40], 2: [56], 3: [24, 72]},
}


def _laid(surface: Surface) -> tuple[SurfaceLayout, Job]:
    """Fill a surface by eye with boards that bear its name."""
    laid, boards = filled(surface, HEIGHTS, JOINTS[surface.id], nails=True)
    named = {board.id: f"{surface.id[0].upper()}{board.id}" for board in boards}
    courses = tuple(
        replace(
            course,
            pieces=tuple(replace(piece, board_id=named[piece.board_id]) for piece in course.pieces),
        )
        for course in laid.courses
    )
    renamed = tuple(replace(board, id=named[board.id]) for board in boards)
    return replace(laid, courses=courses), Job(
        name="hall", tape=INCHES, surfaces=(surface,), boards=renamed, rules=Rules()
    )


def _joined(name: str, tape: TapeStyle, *surfaces: Surface) -> tuple[Job, Layout]:
    parts = [_laid(surface) for surface in surfaces]
    boards = tuple(board for _, part in parts for board in part.boards)
    whole = Job(name=name, tape=tape, surfaces=surfaces, boards=boards, rules=Rules())
    return whole, Layout(job_name=name, surfaces=tuple(laid for laid, _ in parts))


CASES = {
    "one wall with a doorway and boxes": (INCHES, (ENTRY,)),
    "one gable": (INCHES, (GABLE,)),
    "three surfaces": (INCHES, (ENTRY, UPRIGHT, CEILING)),
    "two in millimetres": (METRIC, (GABLE, CEILING)),
}


@cache
def _printed(name: str) -> tuple[Job, Layout, str, dict[str, str]]:
    """Give a case with the text of its cut list and of each of its hanging sheets, on one line each."""
    tape, surfaces = CASES[name]
    whole, layout = _joined("hall", tape, *surfaces)
    sheets = Sheets(work_sheets_pdf(whole, layout, LETTER))

    def text(head: str) -> str:
        return " ".join(words(page) for page in sheets.headed(head)).replace("\u200b", "")

    return whole, layout, text("Cut list"), {one.id: text(f"Hanging sheet: {one.id}") for one in surfaces}


def _written(length_nm: int, tape: TapeStyle) -> str:
    """Write a length as it is read off a tape of sixteenths, or one of whole millimetres."""
    if tape.system is System.METRIC:
        return f"{int(Fraction(length_nm, 1_000_000) + Fraction(1, 2))} mm"
    sixteenths = int(Fraction(length_nm * 16, 25_400_000) + Fraction(1, 2))
    whole, part = divmod(sixteenths, 16)
    if not part:
        return f'{whole}"'
    return f'{whole}-{Fraction(part, 16)}"' if whole else f'{Fraction(part, 16)}"'


def _body(piece: Piece, surface: Surface) -> shapely.Polygon:
    """Give what of a piece lies on the surface, less its gap and before anything is notched."""
    room = shapely.Polygon(surface.outline).buffer(-GAP, join_style="mitre")
    place = piece.place
    body = shapely.box(place.left, place.bottom, place.right, place.top).intersection(room)
    assert isinstance(body, shapely.Polygon)
    return body


def _size(piece: Piece, surface: Surface, tape: TapeStyle) -> str:
    """Give a pattern for the length of a piece, to its long point where it has a slope, and its width."""
    body = _body(piece, surface)
    left, bottom, right, top = body.bounds
    level = surface.courses_run is Direction.HORIZONTAL
    length = _written(round(right - left if level else top - bottom), tape)
    place = piece.place
    width = _written(place.height_nm if level else place.width_nm, tape)
    sloped = body.area < 0.9999 * (right - left) * (top - bottom)
    points = r" LP, (?:\S+(?: mm)? SP|to a point)" if sloped else ""
    return rf"{re.escape(length)}{points} × {re.escape(width)}"


def _notches(piece: Piece, surface: Surface) -> list[tuple[str, Rectangle]]:
    """Give what a piece is notched for, and where: from its left end and its lower edge."""
    in_the_way = [(one.id, one.place, GAP) for one in surface.openings]
    in_the_way += [(one.id, one.place, 0) for one in surface.cut_outs]
    blank, found = piece.place, []
    for name, place, gap in in_the_way:
        left = max(place.left - gap, blank.left) - blank.left
        bottom = max(place.bottom - gap, blank.bottom) - blank.bottom
        right = min(place.right + gap, blank.right) - blank.left
        top = min(place.top + gap, blank.top) - blank.bottom
        if left < right and bottom < top:
            found.append((name, Rectangle(left=left, bottom=bottom, right=right, top=top)))
    return found


def _along(piece: Piece, surface: Surface) -> tuple[int, int]:
    place = piece.place
    level = surface.courses_run is Direction.HORIZONTAL
    return (place.left, place.right) if level else (place.bottom, place.top)


def _rows(text: str, laid: SurfaceLayout) -> dict[str, str]:
    """Part the text of a hanging sheet into the rows of its pieces, each of which must begin only once."""
    starts = []
    for piece in laid.pieces:
        found = [match.start() for match in re.finditer(rf" {piece.label} {piece.board_id} ", text)]
        assert len(found) == 1, piece.label
        starts.append((found[0], piece.label))
    assert starts == sorted(starts), "pieces stand in the order of hanging"
    ends = [start for start, _ in starts[1:]] + [len(text)]
    return {label: text[start:end] for (start, label), end in zip(starts, ends, strict=True)}


@pytest.mark.parametrize("case", CASES)
def test_every_piece_comes_free_once_at_its_length(case: str) -> None:
    """Each piece of the layout stands once on the cut list, as long and as wide as it hangs."""
    whole, layout, cuts, _ = _printed(case)
    several = len(whole.surfaces) > 1
    for laid in layout.surfaces:
        surface = whole.surface(laid.surface_id)
        for piece in laid.pieces:
            name = f"{laid.surface_id} {piece.label}" if several else piece.label
            assert (
                len(re.findall(rf"[Ff]rees {re.escape(name)} {_size(piece, surface, whole.tape)}", cuts)) == 1
            )
    assert len(re.findall(r"\b[Ff]rees ", cuts)) == len(layout.pieces)


@pytest.mark.parametrize("case", CASES)
def test_every_board_has_one_block_in_the_order_of_hanging(case: str) -> None:
    """Boards come as their first pieces are hung, each with its length in feet or millimetres, and once."""
    whole, layout, cuts, _ = _printed(case)
    used = list(dict.fromkeys(piece.board_id for piece in layout.pieces))
    headed = re.findall(r"\b([A-Z]B\d+) (?=\d\S*(?: mm| \d\S*)? × )", cuts)
    assert headed == used
    assert set(used) <= {board.id for board in whole.boards}


@pytest.mark.parametrize("case", CASES)
def test_every_piece_hangs_once_at_its_place(case: str) -> None:
    """Each piece has one row on the sheet of its surface, with its length and from where to where it goes."""
    whole, layout, _, sheets = _printed(case)
    for laid in layout.surfaces:
        surface = whole.surface(laid.surface_id)
        rows = _rows(sheets[laid.surface_id], laid)
        for piece in laid.pieces:
            start, end = (_written(at, whole.tape) for at in _along(piece, surface))
            assert re.search(_size(piece, surface, whole.tape), rows[piece.label]), piece.label
            assert f"Place: {start} to {end}," in rows[piece.label]


@pytest.mark.parametrize("case", CASES)
def test_every_joint_is_told_once_with_its_stud(case: str) -> None:
    """Where two pieces of a course meet, the row of the first names the second and the member behind both."""
    whole, layout, _, sheets = _printed(case)
    for laid in layout.surfaces:
        surface = whole.surface(laid.surface_id)
        rows = _rows(sheets[laid.surface_id], laid)
        told = {
            label: re.findall(r"end meets (\S+) on \w+ ([SJ]\d+) \(([^)]+)\)", row)
            for label, row in rows.items()
        }
        wanted: dict[str, list[tuple[str, str, str]]] = {label: [] for label in rows}
        members = sorted(
            (one for one in surface.framing.members if one.runs is not surface.courses_run),
            key=lambda member: member.centre_nm,
        )
        for course in laid.courses:
            for one, other in zip(course.pieces, course.pieces[1:], strict=False):
                at, starts = _along(one, surface)[1], _along(other, surface)[0]
                if at != starts:
                    continue
                ((number, member),) = [
                    (number, member)
                    for number, member in enumerate(members, start=1)
                    if abs(member.centre_nm - at) < member.width_nm // 2
                ]
                letter = "S" if surface.kind is SurfaceKind.WALL else "J"
                wanted[one.label] = [
                    (other.label, f"{letter}{number}", _written(member.centre_nm, whole.tape))
                ]
        assert told == wanted
        assert any(wanted.values()), "the case has joints to tell"


@pytest.mark.parametrize("case", CASES)
def test_every_notch_is_told_on_both_lists(case: str) -> None:
    """A notch has its size, and its place from the left end and the lower edge, at saw and wall."""
    whole, layout, cuts, sheets = _printed(case)
    at_saw: Counter[str] = Counter()
    for laid in layout.surfaces:
        surface = whole.surface(laid.surface_id)
        rows = _rows(sheets[laid.surface_id], laid)
        for piece in laid.pieces:
            notches = _notches(piece, surface)
            assert rows[piece.label].count("Notch:") == len(notches), piece.label
            for name, place in notches:
                wide, high, right, up = (
                    _written(one, whole.tape)
                    for one in (place.width_nm, place.height_nm, place.left, place.bottom)
                )
                at_wall = f", {right} from its left and {up} from below; {wide} wide, {high} high."
                (called,) = re.findall(
                    rf"Notch: for ((?:(?!Notch:).)*?){re.escape(at_wall)}", rows[piece.label]
                )
                assert name in called
                at_saw[
                    f"Notch {wide} wide, {high} high {right} from its left, {up} from below, for {called}"
                ] += 1
    for told, times in at_saw.items():
        assert cuts.count(told) == times, told
    assert len(re.findall(r"\bNotch ", cuts)) == at_saw.total()


@pytest.mark.parametrize("case", CASES)
def test_every_nail_is_counted(case: str) -> None:
    """The nails of a piece are as many as the layout gives it."""
    _, layout, _, sheets = _printed(case)
    for laid in layout.surfaces:
        for piece, row in zip(laid.pieces, _rows(sheets[laid.surface_id], laid).values(), strict=True):
            ((none, count),) = re.findall(r"Nails: (none, no|(\d+) in all)", row)
            assert (int(count) if count else 0) == len(piece.nails), none


def test_the_cases_hold_what_they_are_read_for() -> None:
    """There are notches, slopes and courses of several pieces among the cases, or nothing would be shown."""
    notched = sloped = 0
    for tape, surfaces in CASES.values():
        whole, layout = _joined("hall", tape, *surfaces)
        for laid in layout.surfaces:
            surface = whole.surface(laid.surface_id)
            notched += sum(bool(_notches(piece, surface)) for piece in laid.pieces)
            sloped += sum("LP" in _size(piece, surface, tape) for piece in laid.pieces)
    assert notched > 10
    assert sloped > 10


@pytest.mark.parametrize(
    ("inches", "said"),
    [(0.0625, '1/16"'), (0.5, '1/2"'), (39.75, '39-3/4"'), (7, '7"'), (2.9375, '2-15/16"')],
)
def test_fractions_are_those_of_the_tape(inches: float, said: str) -> None:
    """The arithmetic of these tests reads a tape as a carpenter does."""
    assert _written(nm(inches), INCHES) == said

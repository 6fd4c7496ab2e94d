"""Small jobs and layouts made by hand, in inches as a carpenter would say them.

Every length here is in inches; fractions like 5.125 are exact down to the 64th. Further fields of a value are
given as the model names them. Along and across are told in the frame of the courses: along from the left or
the bottom, across from the start side.
"""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from plankwright.measure import INCH, Nm, System, TapeStyle
from plankwright.model import (
    Board,
    Course,
    CutOut,
    Direction,
    Edge,
    Flaw,
    Framing,
    FramingMember,
    Job,
    Layout,
    Opening,
    Piece,
    Point,
    Rectangle,
    Rules,
    Saw,
    SawKind,
    Score,
    Severity,
    Surface,
    SurfaceLayout,
)

TAPE = TapeStyle(system=System.IMPERIAL)
NOTHING_SCORED = Score(bare_nm2=0, joints_in_sight=0, wood_spent_nm2=0, cuts=0)


def nm(inches: float) -> Nm:
    """Give inches as whole nanometres."""
    return round(inches * INCH)


def rectangle(left: float, bottom: float, right: float, top: float) -> Rectangle:
    """Make an upright rectangle."""
    return Rectangle(left=nm(left), bottom=nm(bottom), right=nm(right), top=nm(top))


def box_outline(width: float, height: float) -> tuple[Point, ...]:
    """Give the corners of a rectangular surface."""
    return outline((0, 0), (width, 0), (width, height), (0, height))


def outline(*corners: tuple[float, float]) -> tuple[Point, ...]:
    """Give the corners of a surface."""
    return tuple((nm(x), nm(y)) for x, y in corners)


def studs(*centres: float, width: float = 1.5, runs: Direction = Direction.VERTICAL) -> Framing:
    """Make framing of like members at the given centres."""
    members = (FramingMember(centre_nm=nm(centre), width_nm=nm(width), runs=runs) for centre in centres)
    return Framing(members=tuple(members))


def wall(width: float, height: float, **more: Any) -> Surface:  # noqa: ANN401 - any further field
    """Make a rectangular wall with horizontal courses from the bottom, on studs every 16 inches from 8 on."""
    count = max(1, int((width - 8) // 16) + 1)
    given: dict[str, Any] = {
        "id": "wall",
        "outline": box_outline(width, height),
        "framing": studs(*(8 + 16 * index for index in range(count))),
    }
    return Surface(**(given | more))


def opening(name: str, left: float, bottom: float, right: float, top: float, *, trim: float = 0) -> Opening:
    """Make a door or a window."""
    return Opening(id=name, place=rectangle(left, bottom, right, top), trim_nm=nm(trim))


def socket(left: float, bottom: float, right: float, top: float) -> CutOut:
    """Make an electrical box."""
    return CutOut(id="socket", place=rectangle(left, bottom, right, top), what="socket")


def board(name: str, length: float, width: float, **more: Any) -> Board:  # noqa: ANN401 - any further field
    """Make a square-edged board, 3/4 inch thick."""
    given: dict[str, Any] = {
        "id": name,
        "length_nm": nm(length),
        "width_start_nm": nm(width),
        "width_end_nm": nm(width),
        "thickness_nm": nm(0.75),
    }
    return Board(**(given | more))


def flaw(start: float, end: float, severity: Severity = Severity.LOST, **more: Any) -> Flaw:  # noqa: ANN401 - any further field
    """Make a flaw: rot, or a stain when it is a blemish."""
    what = "rot" if severity is Severity.LOST else "stain"
    return Flaw(start_nm=nm(start), end_nm=nm(end), what=what, severity=severity, **more)


def crosscut_saw(capacity: float) -> Saw:
    """Make a saw that cuts across."""
    return Saw(name="mitre saw", cuts=SawKind.CROSSCUT, capacity_nm=nm(capacity))


def rip_saw(capacity: float) -> Saw:
    """Make a saw that cuts along."""
    return Saw(name="table saw", cuts=SawKind.RIP, capacity_nm=nm(capacity))


def job(
    surfaces: Surface | Sequence[Surface],
    boards: Sequence[Board],
    rules: Rules | None = None,
    saws: Sequence[Saw] = (),
) -> Job:
    """Make a job."""
    return Job(
        name="village hall",
        tape=TAPE,
        surfaces=(surfaces,) if isinstance(surfaces, Surface) else tuple(surfaces),
        boards=tuple(boards),
        rules=Rules() if rules is None else rules,
        saws=tuple(saws),
    )


def on_surface(surface: Surface, along: float, across: float) -> Point:
    """Give the point of a surface at a place along its courses and away from their start side."""
    turned_round = {Edge.TOP: surface.height_nm, Edge.RIGHT: surface.width_nm}.get(surface.start)
    away = nm(across) if turned_round is None else turned_round - nm(across)
    return (away, nm(along)) if surface.courses_run is Direction.VERTICAL else (nm(along), away)


def piece(
    surface: Surface,
    name: str,
    along: tuple[float, float],
    across: tuple[float, float],
    *,
    at: tuple[float, float] = (0.5, 0.125),
    nailed_at: Sequence[float] = (),
    **more: Any,  # noqa: ANN401 - any further field
) -> Piece:
    """Make a piece whose name, such as "4b A17", tells its label and its board.

    `along` and `across` say where it hangs, `at` where its corner lies on the board: past the end trim and
    the straightened edge unless told otherwise. At each place along in `nailed_at` it gets a nail an inch in
    from either long edge.
    """
    label, board_id = name.split()
    (x_one, y_one), (x_two, y_two) = (on_surface(surface, u, v) for u, v in zip(along, across, strict=True))
    given: dict[str, Any] = {
        "label": label,
        "board_id": board_id,
        "place": Rectangle(
            left=min(x_one, x_two), bottom=min(y_one, y_two), right=max(x_one, x_two), top=max(y_one, y_two)
        ),
        "along_from_nm": nm(at[0]),
        "along_to_nm": nm(at[0] + along[1] - along[0]),
        "across_from_nm": nm(at[1]),
        "across_to_nm": nm(at[1] + across[1] - across[0]),
        "nails": tuple(on_surface(surface, u, v) for u in nailed_at for v in (across[0] + 1, across[1] - 1)),
    }
    return Piece(**(given | more))


def course(number: int, across: tuple[float, float], *pieces: Piece) -> Course:
    """Make a course."""
    return Course(number=number, from_nm=nm(across[0]), to_nm=nm(across[1]), pieces=pieces)


def surface_layout(surface: Surface, *courses: Course, bare: Sequence[Rectangle] = ()) -> SurfaceLayout:
    """Make the layout of a surface, not scored yet."""
    return SurfaceLayout(surface_id=surface.id, courses=courses, bare=tuple(bare), score=NOTHING_SCORED)


def layout(*surfaces: SurfaceLayout) -> Layout:
    """Make the layout of a job."""
    return Layout(job_name="village hall", surfaces=surfaces)


def with_piece(whole: SurfaceLayout, which: str, **changes: Any) -> SurfaceLayout:  # noqa: ANN401 - any further field
    """Give a layout with one piece changed."""
    courses = (
        replace(
            row,
            pieces=tuple(replace(each, **changes) if each.label == which else each for each in row.pieces),
        )
        for row in whole.courses
    )
    return replace(whole, courses=tuple(courses))

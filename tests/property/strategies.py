"""Small random jobs with everything that a job can have: any of them could have been read from a job folder.

Lengths are told in inches here, and drawn as whole marks of some tape, so that neat sizes meet odd ones.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import shapely
from hypothesis import strategies as st

from builders import box_outline, nm
from plankwright.measure import INCH, MILLIMETRE, Nm, System, TapeStyle
from plankwright.model import (
    BlemishPolicy,
    Board,
    ConcealedZone,
    CutOut,
    Direction,
    Edge,
    EdgeKind,
    EdgeProfile,
    EdgeTrim,
    Face,
    Flaw,
    Framing,
    FramingMember,
    Job,
    JointPolicy,
    KeepOut,
    Opening,
    Point,
    Rectangle,
    Rules,
    Saw,
    SawKind,
    Severity,
    Surface,
    SurfaceKind,
    corner_heights,
)

_TAPES = (
    (TapeStyle(system=System.IMPERIAL), INCH),
    (TapeStyle(system=System.IMPERIAL), INCH // 4),
    (TapeStyle(system=System.IMPERIAL, denominator=64), INCH // 64),
    (TapeStyle(system=System.METRIC), 5 * MILLIMETRE),
    (TapeStyle(system=System.METRIC), MILLIMETRE),
    (TapeStyle(system=System.METRIC, millimetre_step=MILLIMETRE // 2), 123_457),
)
"""What lengths are written with, and what they are whole numbers of [nm]; the last is from a laser."""


@dataclass(frozen=True, slots=True)
class Marks:
    """The marks that lengths are read off at."""

    step: Nm

    def between(self, low: float, high: float) -> st.SearchStrategy[Nm]:
        """Give lengths between two in inches, both included if they are on a mark."""
        return st.integers(
            -(-nm(low) // self.step), max(-(-nm(low) // self.step), nm(high) // self.step)
        ).map(lambda count: count * self.step)

    def up_to(self, most: Nm) -> st.SearchStrategy[Nm]:
        """Give lengths from nothing to some length, which counts as a mark."""
        return st.one_of(
            st.integers(0, most // self.step).map(lambda count: count * self.step), st.sampled_from([0, most])
        )


@st.composite
def jobs(draw: st.DrawFn, *, surfaces: int | None = None) -> Job:
    """Give a job of one surface or two that share the pile."""
    tape, step = draw(st.sampled_from(_TAPES))
    marks = Marks(step)
    rules = draw(_rules(marks))
    count = surfaces or draw(st.sampled_from([1, 1, 1, 2]))
    return Job(
        name="village hall",
        tape=tape,
        surfaces=tuple(draw(_surfaces(marks, f"wall {number}")) for number in range(1, count + 1)),
        boards=draw(_piles(marks)),
        rules=rules,
        saws=draw(_saws(marks)),
    )


@st.composite
def linked_jobs(draw: st.DrawFn) -> Job:
    """Give a job of walls that meet at some corners, and now and then a surface besides."""
    work = draw(jobs(surfaces=1))
    marks = Marks(draw(st.sampled_from([step for tape, step in _TAPES if tape == work.tape])))
    start = draw(st.sampled_from([Edge.BOTTOM, Edge.BOTTOM, Edge.TOP]))
    walls = []
    for name in ("north", "east", "south") if draw(_rarely(3)) else ("north", "east"):
        wall = draw(_surfaces(marks, name, start))
        walls.append(replace(wall, raised_nm=draw(st.one_of(st.just(0), marks.between(0, 6)))))
    if any(corner_heights(left, right) is None for left, right in pairwise(walls)):
        walls = [replace(wall, outline=_box(wall), raised_nm=0) for wall in walls]
    more = work.surfaces if draw(_rarely(6)) else ()
    link = tuple(wall.id for wall in walls)
    if len(walls) > 2 and corner_heights(walls[-1], walls[0]) is not None and draw(_rarely(2)):
        link = (*link, walls[0].id)
    return replace(work, surfaces=(*draw(st.permutations(walls)), *more), linked=(link,))


def _box(surface: Surface) -> tuple[Point, ...]:
    wide, high = surface.width_nm, surface.height_nm
    return ((0, 0), (wide, 0), (wide, high), (0, high))


@st.composite
def plain_linked_jobs(draw: st.DrawFn) -> Job:
    """Give two rectangular walls that meet at a corner, and long boards enough for both."""
    height, raised = nm(40), st.sampled_from([0, 0, nm(3), nm(11)])
    walls = tuple(
        Surface(
            id=name,
            outline=box_outline(draw(st.integers(20, 60)), draw(st.sampled_from([40, 40, 33, 55.5]))),
            framing=Framing(solid=True),
            raised_nm=draw(raised),
        )
        for name in ("north", "east")
    )
    widths = draw(st.lists(st.sampled_from([4, 5, 5.5, 6.25, 7.75, 9]), min_size=1, max_size=4, unique=True))
    boards = tuple(
        Board(
            id=f"{width}-{number}",
            length_nm=nm(70),
            width_start_nm=nm(width),
            width_end_nm=nm(width),
            thickness_nm=nm(0.75),
        )
        for width in widths
        for number in range(4 * height // nm(width))
    )
    tape, _ = draw(st.sampled_from(_TAPES))
    return Job(name="village hall", tape=tape, surfaces=walls, boards=boards, linked=(("north", "east"),))


@st.composite
def _rules(draw: st.DrawFn, marks: Marks) -> Rules:
    gap = draw(st.sampled_from([0, INCH // 16, INCH // 8, INCH // 4]))
    some = st.sampled_from
    return Rules(
        crosscut_kerf_nm=draw(some([0, INCH // 8, 3 * MILLIMETRE])),
        rip_kerf_nm=draw(some([0, INCH // 8, 2 * MILLIMETRE])),
        straight_edge_loss_nm=draw(some([0, INCH // 8, INCH // 2])),
        end_trim_nm=draw(some([0, INCH // 2, 2 * INCH])),
        width_tolerance_nm=draw(some([0, gap // 2, gap])),
        thickness_tolerance_nm=draw(some([0, INCH // 16, INCH // 8])),
        gap_tolerance_nm=gap,
        joints=draw(some([*JointPolicy, JointPolicy.COUNT, JointPolicy.STAGGER])),
        stagger_nm=draw(some([0, 6 * INCH, 12 * INCH, 30 * INCH])),
        bearing_nm=draw(some([0, INCH // 4, INCH // 2, INCH // 2, INCH])),
        shortest_piece_nm=max(1, draw(marks.between(1, draw(some([6, 12, 20]))))),
        narrowest_course_nm=max(1, draw(marks.between(0.5, draw(some([1, 2, 3]))))),
        expansion_gap_nm=draw(some([0, 0, INCH // 4, 8 * MILLIMETRE])),
        shim_up_to_nm=draw(some([0, INCH // 16, INCH // 4])),
        blemishes=draw(some(BlemishPolicy)),
        hold_back=draw(some([0, 0, 1, 2])),
        nailing_points=draw(some([1, 2, 2, 3])),
        nail_edge_nm=draw(some([0, INCH // 2, INCH])),
        nail_end_nm=draw(some([0, INCH // 4, INCH])),
        nail_clearance_nm=draw(some([0, INCH // 2, INCH, 2 * INCH])),
    )


@st.composite
def _saws(draw: st.DrawFn, marks: Marks) -> tuple[Saw, ...]:
    if draw(st.booleans()):
        return ()
    kinds = draw(
        st.sampled_from([(SawKind.CROSSCUT, SawKind.RIP)] * 8 + [(SawKind.CROSSCUT,), (SawKind.RIP,)])
    )
    return tuple(
        Saw(name=f"{kind} saw", cuts=kind, capacity_nm=max(marks.step, draw(marks.between(3, 14))))
        for kind in kinds
    )


@st.composite
def _piles(draw: st.DrawFn, marks: Marks) -> tuple[Board, ...]:
    """Give boards of a few sorts, as they come out of one house."""
    edges = draw(st.lists(_profiles(), min_size=1, max_size=3))
    thickest = draw(st.sampled_from([1.25, 0.875]))
    thicknesses = draw(st.lists(marks.between(thickest - 0.25, thickest), min_size=1, max_size=3))
    longest = draw(st.sampled_from([130, 90, 60, 40, 10]))
    return tuple(
        board
        for sort in "ABCD"[: draw(st.integers(1, 4))]
        for board in draw(_boards(marks, sort, edges, thicknesses, longest))
    )


@st.composite
def _profiles(draw: st.DrawFn) -> EdgeProfile:
    kind = draw(st.sampled_from([EdgeKind.SQUARE, EdgeKind.SQUARE, *EdgeKind]))
    reach = 0 if kind is EdgeKind.SQUARE else draw(st.sampled_from([INCH // 4, INCH // 4, INCH // 2, 0]))
    return EdgeProfile(kind=kind, reach_nm=reach)


@st.composite
def _boards(
    draw: st.DrawFn,
    marks: Marks,
    sort: str,
    edges: Sequence[EdgeProfile],
    thicknesses: Sequence[Nm],
    longest: float,
) -> list[Board]:
    """Give boards of one width, each of its own length, every other one flawed if any is.

    They are all as thick as each other, or each as thick as it happens to be.
    """
    width = max(marks.step, draw(marks.between(2, 9)))
    other = max(marks.step, width + draw(marks.between(-1, 1))) if draw(_rarely(4)) else width
    few = draw(st.sampled_from([4, 1, 2]))
    lengths = draw(st.lists(marks.between(longest / 3, longest), min_size=few, max_size=2 * few))
    thick = st.sampled_from(thicknesses)
    if draw(st.booleans()):
        thick = st.just(draw(thick))
    profile = draw(st.sampled_from(edges))
    flaws = draw(st.lists(_flaws(marks, max(lengths)), max_size=3)) if draw(st.booleans()) else []
    return [
        Board(
            id=f"{sort}{number}",
            length_nm=max(length, width, other),
            width_start_nm=width,
            width_end_nm=other,
            thickness_nm=max(marks.step, draw(thick)),
            profile=profile,
            flaws=tuple(flaw for flaw in flaws if number % 2 and flaw.end_nm <= max(length, width, other)),
        )
        for number, length in enumerate(lengths, start=1)
    ]


@st.composite
def _flaws(draw: st.DrawFn, marks: Marks, length: Nm) -> Flaw:
    start = draw(st.integers(0, max(0, length - 1) // marks.step)) * marks.step
    severity = draw(st.sampled_from(Severity))
    return Flaw(
        start_nm=start,
        end_nm=start + max(marks.step, draw(marks.between(0, 8))),
        what="rot" if severity is Severity.LOST else "stain",
        severity=severity,
        face=draw(st.sampled_from([None, *Face])),
    )


@st.composite
def _surfaces(draw: st.DrawFn, marks: Marks, name: str, linked_from: Edge | None = None) -> Surface:
    """Give a surface; one that can be linked is a wall whose courses run level from a given side."""
    outline = draw(outlines(marks))
    wide, high = max(x for x, _ in outline), max(y for _, y in outline)
    runs = [Direction.HORIZONTAL, Direction.HORIZONTAL, Direction.VERTICAL]
    run = draw(st.sampled_from(runs if linked_from is None else runs[:1]))
    lying = run is Direction.HORIZONTAL
    openings = _apart(
        outline, draw(st.lists(_places(marks, wide, high), max_size=3)) if draw(_rarely(2)) else []
    )
    openings = draw(_neighbours(marks, outline, openings))
    sockets = draw(st.lists(_places(marks, wide, high, largest=5), max_size=2)) if draw(_rarely(3)) else []
    zones = draw(st.lists(_places(marks, wide, high, beyond=True), max_size=2)) if draw(_rarely(2)) else []
    trim = st.one_of(st.just(0), marks.between(0, 3))
    return Surface(
        id=name,
        kind=draw(st.sampled_from(SurfaceKind)) if linked_from is None else SurfaceKind.WALL,
        outline=outline,
        courses_run=run,
        start=linked_from
        or draw(st.sampled_from((Edge.BOTTOM, Edge.TOP) if lying else (Edge.LEFT, Edge.RIGHT))),
        openings=tuple(
            Opening(id=f"opening {number}", place=place, trim_nm=draw(trim))
            for number, place in enumerate(openings, start=1)
        ),
        cut_outs=tuple(
            CutOut(id=f"socket {number}", place=place, what="socket")
            for number, place in enumerate(_apart(outline, sockets, openings), start=1)
            if not any(_share(place, opening) for opening in openings)
        ),
        concealed=tuple(
            ConcealedZone(id=f"bench {number}", place=place)
            for number, place in enumerate(_on(outline, zones), start=1)
        ),
        framing=draw(_framings(marks, wide if lying else high, run)),
        keep_outs=draw(_keep_outs(marks, outline)),
        trim=draw(
            st.one_of(st.just(EdgeTrim()), st.builds(EdgeTrim, bottom=trim, top=trim, left=trim, right=trim))
        ),
    )


@st.composite
def outlines(draw: st.DrawFn, marks: Marks) -> tuple[Point, ...]:
    """Give rectangles, out-of-level floors and ceilings, gables, stairs and shapes of all those together."""
    wide = max(2 * marks.step, draw(marks.between(*draw(st.sampled_from([(40, 100), (20, 60), (6, 30)])))))
    high = max(2 * marks.step, draw(marks.between(*draw(st.sampled_from([(12, 50), (6, 20)])))))
    kind = draw(st.sampled_from(["plain", "plain", "uneven", "gable", "stairs", "any"]))
    if kind == "plain":
        return ((0, 0), (wide, 0), (wide, high), (0, high))
    if kind == "gable":
        peak = draw(st.integers(0, wide // marks.step)) * marks.step
        rise = max(marks.step, draw(marks.between(1, 30)))
        return _tidy([(0, 0), (wide, 0), (wide, high), (peak, high + rise), (0, high)])
    places = sorted({0, wide, *draw(st.lists(marks.up_to(wide), max_size=3))})
    drop = min(high // 3, nm(4)) if kind == "uneven" else high // 2 - marks.step
    floor, ceiling = (
        [(place, draw(marks.up_to(max(0, drop)))) for place in places]
        if kind == "any" or draw(st.booleans())
        else []
        for _ in range(2)
    )
    if kind == "stairs" or (kind == "any" and draw(st.booleans())):
        floor, ceiling = _stepped(floor), _stepped(ceiling)
    lower = floor or [(0, 0), (wide, 0)]
    upper = [(x, high - down) for x, down in (ceiling or [(0, 0), (wide, 0)])]
    shape = _tidy([*lower, *reversed(upper)])
    return _tidy([(y, x) for x, y in reversed(shape)]) if draw(st.booleans()) else shape


def _stepped(chain: list[Point]) -> list[Point]:
    """Go on level from each place, and up or down at the next."""
    return [point for (x, y), (next_x, _) in pairwise(chain) for point in ((x, y), (next_x, y))]


def _tidy(corners: list[Point]) -> tuple[Point, ...]:
    """Move an outline to its own lower left corner, less corners that are none."""
    left, bottom = min(x for x, _ in corners), min(y for _, y in corners)
    ring = [(x - left, y - bottom) for x, y in corners]
    ring = [corner for corner, before in zip(ring, ring[-1:] + ring, strict=False) if corner != before]
    return tuple(
        (x, y)
        for (px, py), (x, y), (nx, ny) in zip(ring[-1:] + ring, ring, ring[1:] + ring[:1], strict=False)
        if (x - px) * (ny - y) != (y - py) * (nx - x)
    )


@st.composite
def _places(
    draw: st.DrawFn, marks: Marks, wide: Nm, high: Nm, *, largest: float = 40, beyond: bool = False
) -> Rectangle:
    """Give boxes anywhere on a surface, now and then in a corner or right across it."""
    left, bottom = (draw(marks.up_to(side - marks.step)) // marks.step * marks.step for side in (wide, high))
    left, bottom = min(left, wide - 1), min(bottom, high - 1)
    width, height = (max(marks.step, draw(marks.between(0.5, largest))) for _ in range(2))
    right, top = left + width, bottom + height
    return Rectangle(
        left=left,
        bottom=bottom,
        right=right if beyond else min(right, wide),
        top=top if beyond else min(top, high),
    )


@st.composite
def _neighbours(
    draw: st.DrawFn, marks: Marks, outline: tuple[Point, ...], openings: list[Rectangle]
) -> list[Rectangle]:
    """Put another opening right beside or right above one, or a little away from it."""
    if not openings or not draw(st.booleans()):
        return openings
    one, away = openings[0], draw(st.sampled_from([0, marks.step, 2 * INCH]))
    wide, high = max(x for x, _ in outline), max(y for _, y in outline)
    if draw(st.booleans()):
        left, bottom, right, top = one.right + away, one.bottom, one.right + away + one.width_nm, one.top
    else:
        left, bottom, right, top = one.left, one.top + away, one.right, one.top + away + one.height_nm
    right, top = min(right, wide), min(top, high)
    if left >= right or bottom >= top:
        return openings
    return _apart(outline, [*openings, Rectangle(left=left, bottom=bottom, right=right, top=top)])


def _apart(
    outline: tuple[Point, ...], places: Sequence[Rectangle], others: Sequence[Rectangle] = ()
) -> list[Rectangle]:
    """Keep the boxes that touch the surface and share nothing with those kept before."""
    kept: list[Rectangle] = []
    for place in _on(outline, places):
        if not any(_share(place, other) for other in (*kept, *others)):
            kept.append(place)
    return kept


def _on(outline: tuple[Point, ...], places: Sequence[Rectangle]) -> list[Rectangle]:
    surface = shapely.Polygon(outline)
    return [
        place
        for place in places
        if shapely.box(place.left, place.bottom, place.right, place.top).intersection(surface).area > 0
    ]


def _share(one: Rectangle, other: Rectangle) -> bool:
    return (
        one.left < other.right
        and other.left < one.right
        and one.bottom < other.top
        and other.bottom < one.top
    )


@st.composite
def _framings(draw: st.DrawFn, marks: Marks, along: Nm, courses_run: Direction) -> Framing:
    """Give solid backing, even or uneven members, a doubled one, or none near the ends."""
    kind = draw(st.sampled_from(["solid", "even", "even", "uneven", "few"]))
    if kind == "solid":
        return Framing(solid=True)
    across = Direction.VERTICAL if courses_run is Direction.HORIZONTAL else Direction.HORIZONTAL
    if kind == "even":
        spacing = max(marks.step, draw(marks.between(6, 24)))
        first = draw(marks.up_to(spacing))
        centres = {min(first, along), *range(first, along + 1, spacing)}
    elif kind == "uneven":
        centres = {0 if along < marks.step else marks.step, *draw(st.lists(marks.up_to(along), max_size=9))}
        if draw(st.booleans()):
            centres |= {
                centre + draw(st.sampled_from([MILLIMETRE, 3 * INCH // 2])) for centre in list(centres)[:2]
            }
    else:
        centres = {along // 2}
    width = max(
        2, draw(st.sampled_from([3 * INCH // 2, 3 * INCH // 2, INCH, 45 * MILLIMETRE, 7 * INCH // 2]))
    )
    members = tuple(
        FramingMember(centre_nm=centre, width_nm=width, runs=across)
        for centre in sorted(centres)
        if centre - width // 2 < along
    )
    return Framing(members=members)


@st.composite
def _keep_outs(draw: st.DrawFn, marks: Marks, outline: tuple[Point, ...]) -> tuple[KeepOut, ...]:
    if not draw(_rarely(2)):
        return ()
    wide, high = max(x for x, _ in outline), max(y for _, y in outline)
    places = []
    for kind in draw(st.lists(st.sampled_from(["upright", "level", "box"]), max_size=2)):
        thick = max(2, draw(marks.between(0.5, 3)))
        if kind == "upright":
            left = draw(marks.up_to(wide)) - thick // 2
            places.append(Rectangle(left=left, bottom=0, right=left + thick, top=high))
        elif kind == "level":
            bottom = draw(marks.up_to(high)) - thick // 2
            places.append(Rectangle(left=0, bottom=bottom, right=wide, top=bottom + thick))
        else:
            places.append(draw(_places(marks, wide, high, largest=20, beyond=True)))
    return tuple(
        KeepOut(id=f"pipe {number}", place=place, what="water pipe")
        for number, place in enumerate(_on(outline, places), start=1)
    )


def _rarely(one_in: int) -> st.SearchStrategy[bool]:
    return st.integers(1, one_in).map(lambda number: number == one_in)

"""Slopes, tapers, notches and tongues come out where they must be cut on the board."""

import math

import pytest

from plankwright.layout.hanging import hung_pieces
from plankwright.layout.shaping import Workpiece, end_cut, shaping_cuts
from plankwright.measure import INCH, System, TapeStyle
from plankwright.model import (
    Board,
    Course,
    Cut,
    CutKind,
    CutOut,
    Direction,
    Edge,
    EdgeKind,
    EdgeProfile,
    EdgeTreatment,
    Face,
    Framing,
    Job,
    Opening,
    Piece,
    Point,
    Rectangle,
    Rules,
    Score,
    Surface,
    SurfaceLayout,
)

NO_GAP = Rules(expansion_gap_nm=0)
MILLED = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=INCH // 4)
KERF = INCH // 8


def inches(*points: tuple[float, float]) -> tuple[Point, ...]:
    """Give points in nanometres."""
    return tuple((round(x * INCH), round(y * INCH)) for x, y in points)


def place_of(left: float, bottom: float, right: float, top: float) -> Rectangle:
    """Give a rectangle; inches."""
    return Rectangle(
        left=round(left * INCH), bottom=round(bottom * INCH), right=round(right * INCH), top=round(top * INCH)
    )


def wall_of(
    *corners: tuple[float, float],
    run: Direction = Direction.HORIZONTAL,
    start: Edge = Edge.BOTTOM,
    cut_outs: tuple[CutOut, ...] = (),
    openings: tuple[Opening, ...] = (),
) -> Surface:
    """Give a wall; inches."""
    return Surface(
        id="wall",
        outline=inches(*corners),
        courses_run=run,
        start=start,
        framing=Framing(solid=True),
        cut_outs=cut_outs,
        openings=openings,
    )


def at_bench(
    surface: Surface,
    place: Rectangle,
    *,
    turned: bool = False,
    face: Face = Face.FRONT,
    near: EdgeTreatment = EdgeTreatment.AS_FOUND,
    far: EdgeTreatment = EdgeTreatment.AS_FOUND,
) -> Workpiece:
    """Give a piece that is cut from its board 10 in from the marked end and 1 in from the reference edge."""
    level = surface.courses_run is Direction.HORIZONTAL
    length, width = (place.width_nm, place.height_nm) if level else (place.height_nm, place.width_nm)
    piece = Piece(
        label="1a",
        board_id="B",
        place=place,
        along_from_nm=10 * INCH,
        along_to_nm=10 * INCH + length,
        across_from_nm=INCH,
        across_to_nm=INCH + width,
        turned=turned,
        face=face,
        near=near,
        far=far,
    )
    board = Board(
        id="B", length_nm=200 * INCH, width_start_nm=20 * INCH, width_end_nm=20 * INCH, thickness_nm=INCH
    )
    job = Job(
        name="test",
        tape=TapeStyle(system=System.IMPERIAL),
        surfaces=(surface,),
        boards=(board,),
        rules=NO_GAP,
    )
    course = Course(number=1, from_nm=0, to_nm=width, pieces=(piece,))
    score = Score(bare_nm2=0, joints_in_sight=0, wood_spent_nm2=0, cuts=0)
    (hung,) = hung_pieces(job, SurfaceLayout(surface_id="wall", courses=(course,), score=score))
    return Workpiece(label="1a", piece=piece, hung=hung, surface=surface, profile=MILLED)


def line_of(cut: Cut) -> tuple[CutKind, tuple[float, float], tuple[float, float]]:
    """Give a cut as its two marks, each along and across, in inches."""
    marks = (cut.at_nm / INCH, cut.other_at_nm / INCH)
    reach = (cut.from_nm / INCH, cut.to_nm / INCH)
    if cut.kind is CutKind.TAPER_RIP:
        return cut.kind, (reach[0], marks[0]), (reach[1], marks[1])
    return cut.kind, (marks[0], reach[0]), (marks[1], reach[1])


GABLE = ((0, 0), (80, 0), (40, 40))


def test_rectangle_on_a_plain_wall_needs_no_shaping() -> None:
    """A piece that hangs as its blank is done when it is free."""
    work = at_bench(wall_of((0, 0), (96, 0), (96, 48), (0, 48)), place_of(0, 0, 96, 6))
    assert shaping_cuts(work, KERF) == ()


def test_gable_gives_angled_ends_with_long_and_short_point() -> None:
    """Under rafters at 45 degrees both ends lean as much, and the long points lie on the reference edge."""
    work = at_bench(wall_of(*GABLE), place_of(10, 10, 70, 16))
    left, right = shaping_cuts(work, KERF)
    assert line_of(left) == (CutKind.ANGLED, (10, 1), (16, 7))
    assert line_of(right) == (CutKind.ANGLED, (70, 1), (64, 7))
    assert left.angle_mdeg == right.angle_mdeg == 45_000
    assert (end_cut(work, left), end_cut(work, right)) == (Edge.LEFT, Edge.RIGHT)


def test_angle_is_how_far_the_end_leans_from_square() -> None:
    """Rafters that rise 5 in 12 lean atan(12/5) from square to level boards."""
    work = at_bench(wall_of((0, 0), (48, 0), (24, 10)), place_of(2.4, 1, 45.6, 3))
    left, _ = shaping_cuts(work, KERF)
    assert left.angle_mdeg == round(1000 * math.degrees(math.atan2(12, 5)))


def test_turned_piece_is_marked_from_the_other_end_and_edge() -> None:
    """With the marked end to the right and the reference edge up, the long points lie on the far edge."""
    work = at_bench(wall_of(*GABLE), place_of(10, 10, 70, 16), turned=True)
    left, right = shaping_cuts(work, KERF)
    assert line_of(left) == (CutKind.ANGLED, (16, 1), (10, 7))
    assert line_of(right) == (CutKind.ANGLED, (64, 1), (70, 7))


def test_courses_from_the_top_have_their_reference_edge_up() -> None:
    """From the top on, the reference edge of an unturned piece is its upper one."""
    work = at_bench(wall_of(*GABLE, start=Edge.TOP), place_of(10, 10, 70, 16))
    left, _ = shaping_cuts(work, KERF)
    assert line_of(left) == (CutKind.ANGLED, (16, 1), (10, 7))


def test_vertical_boards_stand_on_their_marked_end_or_on_the_other() -> None:
    """With the reference edge left the marked end is up, at the right down; the ceiling cuts the top."""
    wall = wall_of((0, 0), (40, 0), (40, 60), (0, 80), run=Direction.VERTICAL, start=Edge.LEFT)
    work = at_bench(wall, place_of(10, 0, 20, 75))
    (top,) = shaping_cuts(work, KERF)
    assert line_of(top) == (CutKind.ANGLED, (10, 1), (15, 11))
    assert end_cut(work, top) is Edge.LEFT
    mirrored = wall_of((0, 0), (40, 0), (40, 60), (0, 80), run=Direction.VERTICAL, start=Edge.RIGHT)
    (top,) = shaping_cuts(at_bench(mirrored, place_of(10, 0, 20, 75)), KERF)
    assert line_of(top) == (CutKind.ANGLED, (80, 1), (85, 11))


def test_starter_on_an_uneven_floor_is_a_taper_rip_with_both_widths() -> None:
    """A floor that rises an inch over the wall takes a wedge off the near edge of the starter."""
    work = at_bench(wall_of((0, 0), (96, 1), (96, 48), (0, 48)), place_of(0, 0, 96, 6))
    (taper,) = shaping_cuts(work, KERF)
    assert line_of(taper) == (CutKind.TAPER_RIP, (10, 1), (106, 2))
    assert end_cut(work, taper) is None


def test_floor_measured_at_several_places_gives_a_line_for_each_stretch() -> None:
    """A floor with a hump is scribed in two lines that meet at the hump."""
    work = at_bench(wall_of((0, 0), (40, 1), (96, 0.5), (96, 48), (0, 48)), place_of(0, 0, 96, 6))
    assert [line_of(cut) for cut in shaping_cuts(work, KERF)] == [
        (CutKind.TAPER_RIP, (10, 1), (50, 2)),
        (CutKind.TAPER_RIP, (50, 2), (106, 1.5)),
    ]


def test_clipped_corner_is_a_line_from_edge_to_end() -> None:
    """Where a rafter only clips a corner, the cut runs from the long edge to the end."""
    work = at_bench(wall_of((0, 0), (96, 0), (96, 20), (86, 30), (10, 30), (0, 20)), place_of(0, 18, 96, 24))
    left, right = shaping_cuts(work, KERF)
    assert line_of(left) == (CutKind.ANGLED, (10, 3), (14, 7))
    assert line_of(right) == (CutKind.ANGLED, (106, 3), (102, 7))
    assert end_cut(work, left) is end_cut(work, right) is None


def test_low_slope_at_a_corner_is_a_taper_rip() -> None:
    """A slope of less than one in four belongs to the long edge."""
    wall = wall_of((0, 0), (96, 0), (96, 20), (56, 28), (0, 28))
    (line,) = shaping_cuts(at_bench(wall, place_of(0, 18, 96, 24)), KERF)
    assert line_of(line) == (CutKind.TAPER_RIP, (86, 7), (106, 3))


def test_blank_rounded_up_to_the_tape_still_has_its_ends_cut_from_edge_to_edge() -> None:
    """A blank a 16th longer than what hangs is not left with a corner: marks lie where lines would meet."""
    work = at_bench(wall_of(*GABLE), place_of(9.9375, 10, 70.0625, 16))
    left, right = shaping_cuts(work, KERF)
    assert line_of(left) == (CutKind.ANGLED, (10.0625, 1), (16.0625, 7))
    assert (end_cut(work, left), end_cut(work, right)) == (Edge.LEFT, Edge.RIGHT)


def test_point_of_a_gable_is_not_freed_by_one_cut() -> None:
    """A triangle has two sloping sides, each from edge to edge, that meet at its point."""
    work = at_bench(wall_of(*GABLE), place_of(34, 34, 46, 40))
    left, right = shaping_cuts(work, KERF)
    assert line_of(left) == (CutKind.ANGLED, (10, 1), (16, 7))
    assert line_of(right) == (CutKind.ANGLED, (22, 1), (16, 7))


def test_side_from_corner_to_corner_makes_no_end() -> None:
    """A sloping side that takes the whole of a long edge is cut after the blank is free."""
    work = at_bench(wall_of((0, 0), (40, 0), (0, 40)), place_of(0, 34, 6, 40))
    (side,) = shaping_cuts(work, KERF)
    assert line_of(side) == (CutKind.ANGLED, (16, 1), (10, 7))
    assert end_cut(work, side) is None


def test_notch_is_measured_from_the_left_end_and_the_lower_edge() -> None:
    """A socket that reaches into a piece from above is a notch in its upper edge."""
    socket = CutOut(id="left", what="socket", place=place_of(20, 4, 23, 8))
    wall = wall_of((0, 0), (96, 0), (96, 48), (0, 48), cut_outs=(socket,))
    (notch,) = shaping_cuts(at_bench(wall, place_of(0, 0, 96, 6)), KERF)
    assert notch.kind is CutKind.NOTCH
    assert notch.notch == place_of(20, 4, 23, 6)
    assert notch.what == "socket (left)"
    assert (notch.at_nm, notch.other_at_nm, notch.from_nm, notch.to_nm) == (
        30 * INCH,
        33 * INCH,
        5 * INCH,
        7 * INCH,
    )


def test_notch_in_a_turned_piece_is_the_same_as_hung() -> None:
    """The notch as hung does not change, but where it lies on the board does."""
    socket = CutOut(id="left", what="socket", place=place_of(20, 4, 23, 8))
    wall = wall_of((0, 0), (96, 0), (96, 48), (0, 48), cut_outs=(socket,))
    (notch,) = shaping_cuts(at_bench(wall, place_of(0, 0, 96, 6), turned=True), KERF)
    assert notch.notch == place_of(20, 4, 23, 6)
    assert (notch.at_nm, notch.other_at_nm, notch.from_nm, notch.to_nm) == (
        83 * INCH,
        86 * INCH,
        INCH,
        3 * INCH,
    )


def test_slope_that_a_notch_interrupts_is_cut_once() -> None:
    """A taper goes on in one line behind a notch that takes a part of it."""
    pipe = CutOut(id="drain", what="pipe", place=place_of(40, 0, 44, 4))
    wall = wall_of((0, 0), (96, 1), (96, 48), (0, 48), cut_outs=(pipe,))
    cuts = shaping_cuts(at_bench(wall, place_of(0, 0, 96, 6)), KERF)
    assert [cut.kind for cut in cuts] == [CutKind.TAPER_RIP, CutKind.NOTCH]
    assert line_of(cuts[0]) == (CutKind.TAPER_RIP, (10, 1), (106, 2))


def test_steps_of_an_outline_are_notches() -> None:
    """Where the outline itself is stepped, as beside a stair, each step is a notch."""
    wall = wall_of((0, 0), (60, 0), (60, 2), (80, 2), (80, 4), (96, 4), (96, 48), (0, 48))
    notches = shaping_cuts(at_bench(wall, place_of(0, 0, 96, 6)), KERF)
    assert [notch.notch for notch in notches] == [place_of(60, 0, 80, 2), place_of(80, 0, 96, 4)]
    assert {notch.what for notch in notches} == {"the edge of the surface"}


def test_stretch_that_runs_on_level_is_a_step_beside_the_slope() -> None:
    """Where a floor rises and then runs on level, a taper rip ends at a notch, and nothing is told twice."""
    wall = wall_of((0, 0), (50, 1), (96, 1), (96, 48), (0, 48))
    cuts = shaping_cuts(at_bench(wall, place_of(0, 0, 96, 6)), KERF)
    assert [cut.kind for cut in cuts] == [CutKind.TAPER_RIP, CutKind.NOTCH]
    assert cuts[1].notch == place_of(50, 0, 96, 1)


def test_step_behind_a_slope_is_a_notch() -> None:
    """Where a slope ends at an upright edge, what lies beyond that edge is notched out."""
    wall = wall_of((0, 0), (96, 0), (86, 3), (86, 48), (0, 48))
    cuts = shaping_cuts(at_bench(wall, place_of(0, 0, 96, 6)), KERF)
    assert [cut.kind for cut in cuts] == [CutKind.ANGLED, CutKind.NOTCH]
    assert cuts[1].notch == place_of(86, 3, 96, 6)


def test_tongue_is_ripped_off_where_it_hangs() -> None:
    """The far edge has the tongue of a piece as it lies, the near edge that of a turned one."""
    wall = wall_of((0, 0), (96, 0), (96, 48), (0, 48))
    (as_it_lies,) = shaping_cuts(at_bench(wall, place_of(0, 0, 96, 6), far=EdgeTreatment.TONGUE_OFF), KERF)
    assert (as_it_lies.kind, as_it_lies.at_nm) == (CutKind.RIP, 7 * INCH)
    assert as_it_lies.what == "take the tongue off"
    turned = at_bench(wall, place_of(0, 0, 96, 6), turned=True, near=EdgeTreatment.TONGUE_OFF)
    assert shaping_cuts(turned, KERF) == (as_it_lies,)
    (under_lap,) = shaping_cuts(at_bench(wall, place_of(0, 0, 96, 6), near=EdgeTreatment.TONGUE_OFF), KERF)
    assert under_lap.at_nm == INCH - KERF


@pytest.mark.parametrize("start", Edge)
@pytest.mark.parametrize("face", Face)
@pytest.mark.parametrize("turned", [False, True])
def test_no_board_is_hung_as_its_own_mirror_image(start: Edge, face: Face, *, turned: bool) -> None:
    """Seen from its front a board can only be slid and turned about; seen from its back it is mirrored."""
    run = Direction.HORIZONTAL if start in {Edge.BOTTOM, Edge.TOP} else Direction.VERTICAL
    wall = wall_of((0, 0), (96, 0), (96, 96), (0, 96), run=run, start=start)
    place = place_of(20, 30, 80, 36) if run is Direction.HORIZONTAL else place_of(20, 30, 26, 90)
    work = at_bench(wall, place, turned=turned, face=face)
    origin, right, up = (work.on_board(point) for point in inches((22, 32), (23, 32), (22, 33)))
    (ax, ay), (bx, by) = (((end[0] - origin[0]) // INCH, (end[1] - origin[1]) // INCH) for end in (right, up))
    assert ax * by - ay * bx == (1 if face is Face.FRONT else -1)

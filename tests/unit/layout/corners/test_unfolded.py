"""What is laid out together, and how it is folded back to the walls."""

from dataclasses import replace

from builders import board, job, nm, studs, wall
from plankwright.layout.capacity import UNLIMITED
from plankwright.layout.corners import Unfolded, lay_flat, lay_one_flat, moved
from plankwright.layout.plan import PlannedCourse, PlannedPiece, Stick
from plankwright.model import Direction, Edge, EdgeProfile, Face, Job

STICK = Stick(0, 0, nm(50), 0, nm(5), Face.FRONT, False, nm(0.75), EdgeProfile())  # noqa: FBT003


def work(*more: str) -> Job:
    """Give four walls, two of them linked or as many as are named."""
    walls = [wall(96, 90, id=name, framing=studs(8)) for name in ("attic", "north", "porch", "east")]
    linked = (("east", "north", *more),)
    return replace(job(walls, [board("A", 120, 6), board("B", 80, 6)]), linked=linked)


def east_and_north() -> Unfolded:
    """Give the two walls."""
    (_, both, _) = lay_flat(work(), UNLIMITED)
    return both


def test_linked_walls_come_together_where_the_first_of_them_stands() -> None:
    """In the order in which they stand round the room."""
    assert [each.ids for each in lay_flat(work(), UNLIMITED)] == [("attic",), ("east", "north"), ("porch",)]
    assert [lay_one_flat(work(), UNLIMITED, number).ids for number in (0, 1, 2)] == [
        each.ids for each in lay_flat(work(), UNLIMITED)
    ]


def test_no_board_reaches_across_a_corner() -> None:
    """Nor does any pattern that an eye would follow."""
    east, north = east_and_north().walls
    assert north.along - east.end > nm(120) + nm(36)


def test_a_surface_by_itself_lies_where_it_is() -> None:
    """And its plan is its plan."""
    attic = lay_flat(work(), UNLIMITED)[0]
    plan = (PlannedCourse(nm(0.25), nm(5.25), (PlannedPiece(STICK, 0, nm(50)),), ((nm(50), nm(95.75)),)),)
    assert attic.fold(plan) == (plan,)
    assert attic.laid(("attic", 1, 2, 3)) == ("attic", 1, 2, 3)


def test_a_plan_is_folded_back_course_by_course() -> None:
    """Pieces and what is bare go to the wall that they lie on, in its own frame."""
    both = east_and_north()
    along = both.walls[1].along
    on_east, on_north = PlannedPiece(STICK, nm(1), nm(51)), PlannedPiece(STICK, along, along + nm(50))
    bare = (along + nm(50), along + nm(60))
    low, high = (nm(1), nm(6)), (nm(6), nm(11))
    plan = (PlannedCourse(*low, (on_east, on_north), (bare,)), PlannedCourse(*high, (on_east,)))
    east, north = both.fold(plan)
    assert east == (PlannedCourse(*low, (on_east,)), PlannedCourse(*high, (on_east,)))
    assert north == (PlannedCourse(*low, (moved(on_north, -along),), ((nm(50), nm(60)),)),)


def raised() -> Unfolded:
    """Give two walls of which the second is raised by three inches."""
    walls = (wall(96, 90, id="north"), wall(96, 90, id="east", raised_nm=nm(3)))
    (both,) = lay_flat(replace(job(walls, [board("A", 120, 6)]), linked=(("north", "east"),)), UNLIMITED)
    return both


def test_a_course_begins_where_a_raised_wall_does() -> None:
    """What it would have before that stays on its board; wood cut down to what hangs is as it is."""
    both = raised()
    along = both.walls[1].along
    full = PlannedPiece(STICK, along + nm(1), along + nm(51))
    cut = replace(full, stick=replace(STICK, across_from=nm(3)))
    for piece in (full, cut):
        _, (course,) = both.fold((PlannedCourse(nm(0.25), nm(5.25), (piece,)),))
        assert (course.low, course.high) == (nm(0.25), nm(2.25))
        (only,) = course.pieces
        assert (only.stick.across_from, only.stick.across_to) == (nm(3), nm(5))


def test_a_course_over_a_raised_floor_is_never_narrower_than_may_be() -> None:
    """Nor is it ripped where there is no saw for that."""
    both = raised()
    along = both.walls[1].along
    piece = PlannedPiece(STICK, along + nm(1), along + nm(51))
    _, (course,) = both.fold((PlannedCourse(nm(0.25), nm(4.25), (piece,)),))
    assert (course.low, course.high) == (nm(-0.75), nm(1.25))
    whole = replace(piece, stick=replace(STICK, widest_rip=0))
    _, (course,) = both.fold((PlannedCourse(nm(0.25), nm(5.25), (whole,)),))
    assert (course.low, course.high, course.pieces[0].stick) == (nm(-2.75), nm(2.25), whole.stick)


def test_upright_courses_may_be_longer_than_their_surface_is_wide() -> None:
    """The length of a surface is that along its courses."""
    upright = wall(40, 90, courses_run=Direction.VERTICAL, start=Edge.LEFT)
    (surface,) = lay_flat(job(upright, []), UNLIMITED)
    assert surface.walls[0].holds(0, nm(90))


def test_places_are_found_again_on_all_walls_together() -> None:
    """Those elsewhere are left alone."""
    both = east_and_north()
    along = both.walls[1].along
    assert both.laid(("north", 1, 2, 3)) == ("east and north", along + 1, along + 2, 3)
    assert both.laid(("porch", 1, 2, 3)) == ("porch", 1, 2, 3)


def test_a_course_is_left_out_on_a_wall_where_what_hangs_leaves_nothing_of_it() -> None:
    """There the course below came out higher, and the one above hangs already."""
    both = east_and_north()
    along = both.walls[1].along
    below, between, above = (PlannedPiece(STICK, along + nm(at), along + nm(at + 20)) for at in (1, 2, 3))
    plan = (
        PlannedCourse(nm(1), nm(6), (below,)),
        PlannedCourse(nm(6), nm(6.0625), (between,)),
        PlannedCourse(nm(6.0625), nm(11), (above,)),
    )
    begun = {below: (nm(1), nm(6.0625)), above: (nm(6.0625), nm(11))}
    _, north = both.fold(plan, begun)
    assert [(course.low, course.high) for course in north] == [(nm(1), nm(6.0625)), (nm(6.0625), nm(11))]

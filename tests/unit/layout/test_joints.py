"""Butt joints: which there are, which show, on which framing they fall."""

from builders import course, job, nm, opening, outline, piece, rectangle, surface_layout, wall
from plankwright.layout.joints import Joint, butt_joints
from plankwright.model import ConcealedZone, Direction, Edge, EdgeTrim, Rules, Surface


def _joints(surface: Surface, first: tuple[float, float], second: tuple[float, float]) -> tuple[Joint, ...]:
    """Give the joints of one course of two pieces, four to nine inches from the start."""
    row = course(3, (4, 9), piece(surface, "3a A1", first, (4, 9)), piece(surface, "3b A2", second, (4, 9)))
    return butt_joints(job(surface, [], Rules()), surface_layout(surface, row))


def test_pieces_that_meet_make_a_joint_in_sight_on_a_stud() -> None:
    """The second stud of a wall stands 24 inches from the left."""
    (joint,) = _joints(wall(96, 48), (0.25, 24), (24, 95.75))
    assert joint == Joint(
        course=3,
        before="3a",
        after="3b",
        at_nm=nm(24),
        start=(nm(24), nm(4)),
        end=(nm(24), nm(9)),
        in_sight=True,
        member=2,
    )


def test_a_joint_between_studs_is_on_none() -> None:
    """Thirty inches from the left there is no framing behind."""
    (joint,) = _joints(wall(96, 48), (0.25, 30), (30, 95.75))
    assert joint.member is None


def test_pieces_apart_make_no_joint() -> None:
    """The two sides of a door are two runs."""
    surface = wall(96, 48, openings=(opening("door", 24, 0, 56, 40),))
    assert _joints(surface, (0.25, 23.75), (56.25, 95.75)) == ()


def test_a_joint_in_one_concealed_zone_is_out_of_sight() -> None:
    """A bench hides the joint only if it reaches over the whole course."""
    for top, in_sight in ((9, False), (8, True)):
        bench = ConcealedZone(id="bench", place=rectangle(10, 0, 40, top))
        (joint,) = _joints(wall(96, 48, concealed=(bench,)), (0.25, 24), (24, 95.75))
        assert joint.in_sight is in_sight


def test_two_zones_that_share_a_joint_do_not_hide_it() -> None:
    """Between two fixtures the joint shows where they meet, so one of them must hide it all."""
    lower = ConcealedZone(id="bench", place=rectangle(10, 0, 40, 6))
    upper = ConcealedZone(id="shelf", place=rectangle(10, 6, 40, 12))
    (joint,) = _joints(wall(96, 48, concealed=(lower, upper)), (0.25, 24), (24, 95.75))
    assert joint.in_sight


def test_trim_that_hides_the_course_hides_its_joints() -> None:
    """Behind a baseboard of ten inches no joint of the first course shows."""
    (joint,) = _joints(wall(96, 48, trim=EdgeTrim(bottom=nm(10))), (0.25, 24), (24, 95.75))
    assert not joint.in_sight


def test_a_joint_is_as_long_as_it_is_on_the_surface() -> None:
    """Under a rafter at 45 degrees the joint ends at the gap, a quarter inch square to the rafter."""
    gable = wall(96, 48, outline=outline((0, 0), (96, 0), (48, 48)))
    (joint,) = _joints(gable, (4, 8), (8, 92))
    assert joint.start == (nm(8), nm(4))
    assert joint.end == (nm(8), nm(8) - round(nm(0.25) * 2**0.5))


def test_a_joint_wholly_in_an_opening_is_none() -> None:
    """Ends that meet where a window will be cut out touch nothing."""
    surface = wall(96, 48, openings=(opening("window", 20, 0, 60, 20),))
    assert _joints(surface, (0.25, 30), (30, 95.75)) == ()


def test_upright_courses_have_level_joints() -> None:
    """Measured from the bottom, on horizontal framing, from the right."""
    surface = wall(96, 48, courses_run=Direction.VERTICAL, start=Edge.RIGHT)
    (joint,) = _joints(surface, (0.25, 24), (24, 47.75))
    assert (joint.start, joint.end) == ((nm(87), nm(24)), (nm(92), nm(24)))
    assert joint.at_nm == nm(24)

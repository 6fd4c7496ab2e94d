"""The strips of linked walls: on each just what it asks for by itself."""

from dataclasses import replace

import pytest

from builders import nm, opening, outline, rectangle, socket, studs, wall
from plankwright.layout.corners.flat import flat_surface
from plankwright.layout.corners.flat_strips import FlatStrips
from plankwright.layout.runs import Run
from plankwright.layout.strips import Strips
from plankwright.measure import Nm
from plankwright.model import ConcealedZone, Edge, EdgeTrim, Framing, KeepOut, Rules, Surface

APART = nm(100)
RULES = Rules()
DOOR = opening("door", 30, 0, 60, 70, trim=2)
NORTH = wall(96, 90, id="north", openings=(DOOR,), trim=EdgeTrim(bottom=nm(3), right=nm(1)))
EAST = wall(
    60,
    90,
    id="east",
    framing=studs(4, 20, 36, 52),
    concealed=(ConcealedZone(id="bench", place=rectangle(0, 0, 30, 20)),),
    keep_outs=(KeepOut(id="pipe", place=rectangle(20, 30, 22, 90)),),
    trim=EdgeTrim(top=nm(2)),
)


def flat_strips(*walls: Surface) -> FlatStrips:
    """Lay walls flat."""
    flat = flat_surface(walls, APART)
    return FlatStrips(flat.surface, flat.corners, [Strips(each, RULES) for each in walls], RULES)


def farther(run: Run, by: Nm = 0) -> Run:
    """Give a run farther along, and of what is hidden just what lies in it."""
    return Run(
        run.start + by,
        run.end + by,
        tuple(replace(joint, at=joint.at + by) for joint in run.joints),
        tuple(nail + by for nail in run.nails),
        tuple(
            (max(run.start, start) + by, min(end, run.end) + by)
            for start, end in run.concealed
            if start < run.end and run.start < end
        ),
        tuple((start + by, end + by) for start, end in run.barred),
    )


@pytest.mark.parametrize("strip", [(0.25, 6), (10, 18), (15, 25), (66, 75), (80, 89)])
def test_a_strip_asks_of_each_wall_what_it_asks_by_itself(strip: tuple[float, float]) -> None:
    """Runs, places for joints and nails, and what a fixture hides."""
    low, high = map(nm, strip)
    together = [farther(run) for run in flat_strips(NORTH, EAST).runs(low, high)]
    north, east = (Strips(each, RULES).runs(low, high) for each in (NORTH, EAST))
    assert together == [*map(farther, north), *(farther(run, nm(196)) for run in east)]


def test_what_must_be_covered_is_what_each_wall_must() -> None:
    """Trim that one of them has is not the other's."""
    flat = flat_strips(NORTH, EAST)
    alone = [Strips(each, RULES) for each in (NORTH, EAST)]
    assert flat.must.area == sum(each.must.area for each in alone)
    assert flat.may.area == sum(each.may.area for each in alone)
    assert (flat.start, flat.must_end, flat.may_end) == (nm(0.25), nm(89.75), nm(89.75))
    assert flat.level


def test_courses_from_the_top_are_counted_from_the_highest() -> None:
    """A wall that is lower begins farther from the start side."""
    north, east = replace(NORTH, start=Edge.TOP), wall(60, 80, id="east", start=Edge.TOP, raised_nm=nm(3))
    flat = flat_strips(north, east)
    assert [each.across for each in flat.walls] == [0, nm(7)]
    assert len(flat.runs(nm(0.25), nm(5))) == 1
    assert len(flat.runs(nm(8), nm(12))) == 2


def test_backing_is_solid_where_it_is() -> None:
    """On one wall and not on the next."""
    flat = flat_strips(NORTH, replace(EAST, framing=Framing(solid=True)))
    assert [flat.solid_at(nm(at)) for at in (0, 95, 197, 250)] == [False, False, True, True]
    (*_, run) = flat.runs(nm(10), nm(15))
    (own,) = Strips(replace(EAST, framing=Framing(solid=True)), RULES).runs(nm(10), nm(15))
    assert [joint.at - nm(196) for joint in run.joints] == [joint.at for joint in own.joints]


def test_no_course_leaves_a_sliver_of_a_lower_wall() -> None:
    """It is bare rather, so that the search looks for other heights."""
    flat = flat_strips(NORTH, wall(60, 50, id="east"))
    (*_, under) = flat.runs(nm(44), nm(49.75))
    (*_, sliver) = flat.runs(nm(48), nm(54))
    (*_, enough) = flat.runs(nm(47.75), nm(54))
    assert (under.barred, enough.barred) == ((), ())
    assert sliver.barred == ((nm(196.25), nm(255.75)),)


def test_notches_and_sockets_keep_their_places() -> None:
    """No nail goes in where a box is."""
    east = wall(60, 90, id="east", framing=studs(10, 30), cut_outs=(socket(8, 12, 12, 16),))
    (site, _) = flat_strips(NORTH, east).sites[-2:]
    assert (site.at, site.blocked) == (nm(206), ((nm(12), nm(16)),))


def test_a_gable_between_walls_is_sloped_as_it_is_by_itself() -> None:
    """And ends where it ends."""
    gable = wall(96, 1, id="gable", outline=outline((0, 0), (96, 0), (96, 50), (48, 90), (0, 50)))
    flat = flat_strips(gable, wall(60, 50, id="east"))
    assert not flat.level
    assert flat.level_between(nm(1), nm(40))
    low, high = nm(60), nm(66)
    assert flat.runs(low, high) == Strips(gable, RULES).runs(low, high)

"""Whatever walls are linked, their courses run round every corner between them at the same heights."""

from itertools import permutations

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from plankwright.check import check_layout, faults
from plankwright.layout import Effort, Watch, lay_out
from plankwright.layout.again import lay_again
from plankwright.layout.bounds import bound
from plankwright.layout.capacity import capacity_of
from plankwright.layout.corners import lay_flat
from plankwright.layout.strips import Strips
from plankwright.measure import Nm
from plankwright.model import Job, Layout, walls_of
from property.marking import works
from property.strategies import linked_jobs, plain_linked_jobs

MOMENT = Effort(name="moment", seconds=0.2)
AT_ONCE = Watch(stopped=lambda: True)


def seams(job: Job, layout: Layout, name: str) -> list[tuple[Nm, Nm]]:
    """Give the courses of a wall above the level that the walls are raised from, from below."""
    surface = job.surface(name)
    (laid,) = (each for each in layout.surfaces if each.surface_id == name)
    courses = [(course.from_nm, course.to_nm) for course in laid.courses]
    if surface.start == "top":
        courses = [(surface.height_nm - high, surface.height_nm - low) for low, high in courses]
    return sorted((low + surface.raised_nm, high + surface.raised_nm) for low, high in courses)


@settings(max_examples=30)
@given(plain_linked_jobs())
def test_the_courses_of_plain_walls_have_the_same_edges(job: Job) -> None:
    """Each seam of the one that lies between the first edge and the last of the other is one of those."""
    layout = lay_out(job, effort=MOMENT, watch=AT_ONCE).layout
    assume(layout.covers_everything)
    edges = [{edge for seam in seams(job, layout, name) for edge in seam} for name in job.linked[0]]
    assert all(edges)
    for ones, others in permutations(edges, 2):
        between = sorted(ones)[1:-1]
        assert {edge for edge in between if min(others) < edge < max(others)} <= others


@settings(max_examples=25)
@given(linked_jobs())
def test_no_layout_of_linked_walls_breaks_a_rule(job: Job) -> None:
    """The checker finds no error, in the layout nor in the one made with the boards that it asks for."""
    result = lay_out(job, effort=MOMENT)
    assert not faults(check_layout(job, result.layout))
    if result.closing is not None:
        more, closed = result.closing
        assert not faults(check_layout(more, closed))
        assert closed.covers_everything


@settings(max_examples=20)
@given(linked_jobs())
def test_a_search_of_linked_walls_stopped_at_once_breaks_no_rule(job: Job) -> None:
    """The first layout is a layout, and its surfaces come in the order of the job."""
    result = lay_out(job, effort=MOMENT, watch=AT_ONCE)
    assert not faults(check_layout(job, result.layout))
    assert [laid.surface_id for laid in result.layout.surfaces] == [surface.id for surface in job.surfaces]


@settings(max_examples=20)
@given(linked_jobs(), st.data())
def test_what_is_laid_out_again_of_linked_walls_breaks_no_rule(job: Job, data: st.DataObject) -> None:
    """Whatever hangs on them, and at whatever heights."""
    layout = lay_out(job, effort=MOMENT, watch=AT_ONCE).layout
    standing = data.draw(works(job, layout)).standing
    result = lay_again(job, layout, standing, effort=MOMENT)
    assert not faults(check_layout(job, result.layout, standing))
    if result.closing is not None:
        more, closed = result.closing
        assert not faults(check_layout(more, closed, standing))


@settings(max_examples=10)
@given(linked_jobs())
def test_no_bound_of_linked_walls_claims_more_than_a_layout_shows(job: Job) -> None:
    """Neither that of all of them together, nor that of each by itself."""
    result = lay_out(job, effort=MOMENT)
    boards = [board for board in job.boards if board.id not in result.held_back]
    laid = {each.surface_id: each for each in result.layout.surfaces}
    (walls,) = map(walls_of, job.linked)
    together = [laid[name] for name in walls]
    (flat, *_) = (each for each in lay_flat(job, capacity_of(job)) if len(each.walls) == len(walls))
    of_all = bound(flat.strips, boards, job.rules)
    assert of_all.bare_nm2 <= sum(each.score.bare_nm2 for each in together)
    if not any(each.bare for each in together):
        assert of_all.joints_in_sight <= sum(each.score.joints_in_sight for each in together)
    for each in together:
        alone = bound(Strips(job.surface(each.surface_id), job.rules), boards, job.rules)
        assert alone.bare_nm2 <= each.score.bare_nm2
        if not each.bare:
            assert alone.joints_in_sight <= each.score.joints_in_sight
            assert alone.wood_spent_nm2 <= each.score.wood_spent_nm2

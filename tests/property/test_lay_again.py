"""Whatever happens to a job in progress, what is laid out from there on heeds it and breaks no rule."""

from hypothesis import given, settings
from hypothesis import strategies as st

from plankwright.check import check_layout, faults
from plankwright.layout import Effort, Watch, lay_out
from plankwright.layout.again import changes_between, lay_again
from plankwright.layout.again.changes import ChangeKind
from plankwright.layout.sawing import saw_boards
from plankwright.model import NOTHING_DONE, Job
from property.marking import works
from property.strategies import jobs

MOMENT = Effort(name="moment", seconds=0.2)
AT_ONCE = Watch(stopped=lambda: True)


@settings(max_examples=25)
@given(jobs(), st.data())
def test_what_is_laid_out_again_breaks_no_rule(job: Job, data: st.DataObject) -> None:
    """What hangs is where it hangs, nothing is cut from wood that is gone, and the rest is right."""
    layout = lay_out(job, effort=MOMENT, watch=AT_ONCE).layout
    standing = data.draw(works(job, layout)).standing
    result = lay_again(job, layout, standing, effort=MOMENT)
    assert not faults(check_layout(job, result.layout, standing))
    if result.closing is not None:
        more, closed = result.closing
        assert not faults(check_layout(more, closed, standing))
        assert closed.covers_everything
    saw_boards(job, result.layout, standing)
    changes = changes_between(job, layout, result.layout, standing)
    hanging = {(row.surface_id, piece.label) for row in standing.hung for piece in row.course.pieces}
    afterwards = {(laid.surface_id, piece.label) for laid in result.layout.surfaces for piece in laid.pieces}
    told = {(change.surface_id, change.after.label) for change in changes if change.after is not None}
    assert told == afterwards - hanging


@settings(max_examples=10)
@given(jobs())
def test_where_nothing_happened_nothing_changes(job: Job) -> None:
    """But for what is bare: that may be covered by now."""
    layout = lay_out(job, effort=MOMENT, watch=AT_ONCE).layout
    standing = NOTHING_DONE
    result = lay_again(job, layout, standing, effort=MOMENT, watch=AT_ONCE)
    changes = changes_between(job, layout, result.layout, standing)
    assert all(change.kind in {ChangeKind.SAME, ChangeKind.NEW} for change in changes)

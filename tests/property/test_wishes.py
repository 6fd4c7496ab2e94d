"""Whatever is wished of a layout, what is laid out around it breaks no rule, and what was granted holds."""

from hypothesis import given, settings
from hypothesis import strategies as st

from plankwright.check import check_layout, faults
from plankwright.layout import Effort, Watch, lay_out
from plankwright.layout.again import lay_again
from plankwright.layout.parting import PieceKey
from plankwright.layout.sawing import saw_boards
from plankwright.model import Job, Layout, Standing, Work
from plankwright.workshop.jobs.finish_layout import finish_layout
from plankwright.workshop.jobs.fitting_boards import fitting_boards
from plankwright.workshop.jobs.kept import KeptLayout, Made, RefusedError
from plankwright.workshop.jobs.lay_around import lay_around
from plankwright.workshop.jobs.make_wishes import keep_piece, leave_out_board, put_board, still_possible
from plankwright.workshop.jobs.swap_pieces import swap_pieces
from plankwright.workshop.jobs.wishes import NO_WISHES, PieceWish, Wishes
from property.marking import works
from property.strategies import jobs, linked_jobs
from wishing import broken

MOMENT = Effort(name="moment", seconds=0.2)
AT_ONCE = Watch(stopped=lambda: True)


@settings(max_examples=25)
@given(st.one_of(jobs(), jobs(), linked_jobs()), st.data())
def test_what_is_laid_out_around_wishes_breaks_no_rule(job: Job, data: st.DataObject) -> None:
    """Nor is anything that was granted otherwise."""
    layout, work = _begun(job, data)
    wishes = data.draw(_wishes(job, layout, work.standing))
    around = lay_around(job, layout, work, wishes, again=lay_again, effort=MOMENT)
    assert not faults(check_layout(job, around.result.layout, work.standing))
    if faults(check_layout(job, layout, work.standing)):
        # What has happened since it was made comes first: pieces may be ripped to other widths then.
        assert set(around.wishes.without) <= set(wishes.without)
    else:
        assert list(broken(around.wishes, layout, around.result.layout, work.standing)) == []
        assert still_possible(job, layout, work.standing, wishes).wishes == around.wishes
    saw_boards(job, around.result.layout, work.standing)


@settings(max_examples=25)
@given(st.one_of(jobs(), jobs(), linked_jobs()), st.data())
def test_pieces_that_are_swapped_at_once_have_each_others_boards(job: Job, data: st.DataObject) -> None:
    """And nothing else is otherwise."""
    layout, work = _begun(job, data)
    keys = list(_keys(layout))
    if len(keys) < 2:
        return
    one, other = data.draw(st.sampled_from(keys)), data.draw(st.sampled_from(keys))
    kept = KeptLayout(layout=layout, made=Made.SEARCHED)
    try:
        swapped = swap_pieces(job, kept, work, NO_WISHES, (one, other))
    except RefusedError:
        return
    around = lay_around(job, layout, work, swapped.wishes, again=lay_again, effort=MOMENT)
    assert around.wishes == swapped.wishes or faults(check_layout(job, layout, work.standing))
    if swapped.laid is not None:
        laid = swapped.laid.layout
        assert not faults(check_layout(job, laid, work.standing))
        assert list(broken(swapped.wishes, layout, laid, work.standing)) == []
        was, now = ({key: _piece_board(each, key) for key in keys} for each in (layout, laid))
        assert {key for key in keys if was[key] != now[key]} == {one, other}


@settings(max_examples=15)
@given(jobs(), st.data())
def test_whatever_board_fits_can_be_put(job: Job, data: st.DataObject) -> None:
    """And no other can."""
    layout, work = _begun(job, data)
    keys = list(_keys(layout))
    if not keys:
        return
    key = data.draw(st.sampled_from(keys))
    try:
        fitting = {each.board.id for each in fitting_boards(job, layout, work.standing, *key)}
    except RefusedError:
        fitting = set()
    for board in job.boards:
        try:
            put = put_board(job, layout, work.standing, NO_WISHES, key, board.id).put
        except RefusedError:
            put = ()
        assert bool(put) == (board.id in fitting)


@settings(max_examples=25)
@given(st.one_of(jobs(), linked_jobs()), st.data())
def test_what_a_search_has_finished_is_finished_as_it_is(job: Job, data: st.DataObject) -> None:
    """Edges, shims and score come out the same whoever states them, whatever was done by then."""
    layout, work = _begun(job, data)
    again = lay_again(job, layout, work.standing, effort=MOMENT, watch=AT_ONCE, close=False).layout
    assert finish_layout(job, again, work.standing) == again


def _begun(job: Job, data: st.DataObject) -> tuple[Layout, Work]:
    layout = lay_out(job, effort=MOMENT, watch=AT_ONCE).layout
    work = data.draw(works(job, layout))
    again = lay_again(job, layout, work.standing, effort=MOMENT, watch=AT_ONCE, close=False).layout
    return again if data.draw(st.booleans()) else layout, work


def _keys(layout: Layout) -> list[PieceKey]:
    return [(laid.surface_id, piece.label) for laid in layout.surfaces for piece in laid.pieces]


def _piece_board(layout: Layout, key: PieceKey) -> str:
    return next(
        piece.board_id
        for laid in layout.surfaces
        for piece in laid.pieces
        if (laid.surface_id, piece.label) == key
    )


@st.composite
def _wishes(draw: st.DrawFn, job: Job, layout: Layout, standing: Standing) -> Wishes:
    """Draw wishes that were granted when they were made, and now and then some that never were."""
    wishes, keys = NO_WISHES, _keys(layout)
    boards = [board.id for board in job.boards]
    for _ in range(draw(st.integers(0, 6)) if keys else 0):
        what, key = draw(st.sampled_from("kkpppw")), draw(st.sampled_from(keys))
        try:
            match what:
                case "k":
                    wishes = keep_piece(job, layout, standing, wishes, key)
                case "p":
                    fitting = fitting_boards(job, layout, standing, *key, wishes)
                    board_id = draw(st.sampled_from([each.board.id for each in fitting] or boards))
                    wishes = put_board(job, layout, standing, wishes, key, board_id)
                case _:
                    wishes = leave_out_board(job, layout, standing, wishes, draw(st.sampled_from(boards)))
        except RefusedError:
            if draw(st.booleans()):
                board_id = draw(st.sampled_from(boards))
                wishes = wishes.putting(PieceWish(surface_id=key[0], label=key[1], board_id=board_id))
    return wishes

"""What now? As little changes as can be, and what changes is told."""

from dataclasses import replace

import pytest

from builders import board, nm
from in_progress import Measured, begun_job, begun_layout, happened, marked
from plankwright.check import check_layout, faults
from plankwright.layout import Effort, Progress, Result, Watch
from plankwright.layout.again import Change, ChangeKind, changes_between, lay_again
from plankwright.model import Job, JointPolicy, Layout, Rules, Work
from plankwright.workshop.mark_work import Happened

MOMENT = Effort(name="moment", seconds=2)


def again(job: Job, work: Work) -> tuple[Result, dict[str, Change]]:
    """Lay a job out again; give also what becomes of each piece by its label, before or now."""
    standing = work.standing
    result = lay_again(job, begun_layout(), standing, effort=MOMENT)
    assert not faults(check_layout(job, result.layout, standing))
    changes = changes_between(job, begun_layout(), result.layout, standing)
    return result, {(change.after or change.before).label: change for change in changes}  # type: ignore[union-attr]


def kinds(changes: dict[str, Change]) -> dict[str, str]:
    """Give what becomes of each piece in a word."""
    return {label: change.kind.value for label, change in changes.items()}


def test_where_nothing_happened_nothing_changes() -> None:
    """Piece by piece."""
    result, changes = again(begun_job(), marked(happened("hung", "1")))
    before = [(one.label, one.board_id, one.place) for one in begun_layout().pieces]
    assert [(one.label, one.board_id, one.place) for one in result.layout.pieces] == before
    assert set(kinds(changes).values()) == {"same"}


def test_a_board_that_is_lost_is_replaced_by_one_that_nothing_needs() -> None:
    """And by nothing else; what takes the place takes the label."""
    result, changes = again(begun_job(), marked(happened("hung", "1"), happened("lost", "C")))
    assert kinds(changes) == {"2a": "same", "2b": "same", "3a": "other board", "4a": "same", "4b": "same"}
    assert changes["3a"].after is not None
    assert changes["3a"].after.board_id == "wide"
    assert result.layout.covers_everything


def test_a_piece_that_broke_is_cut_from_what_is_left_where_that_will_do() -> None:
    """The long board has more than fifty inches over."""
    _, changes = again(begun_job(), marked(happened("hung", "1"), happened("broke", "2b")))
    assert kinds(changes)["2b"] == "other board"
    assert changes["2b"].after is not None
    assert changes["2b"].after.board_id == "long"
    assert changes["2b"].after.along_from_nm >= nm(96)


def without(job: Job, *names: str) -> Job:
    """Give a job whose pile lacks some boards."""
    return replace(job, boards=tuple(one for one in job.boards if one.id not in names))


def test_boards_that_were_found_fill_a_hole() -> None:
    """Where there is nothing else."""
    poor = without(begun_job(), "wide")
    work = marked(happened("lost", "C", "D"), of=poor)
    result, _ = again(poor, work)
    assert not result.layout.covers_everything
    richer = replace(poor, boards=(*poor.boards, board("found", 97, 6.5)))
    result, _ = again(richer, work)
    assert result.layout.covers_everything
    assert "found" in {one.board_id for one in result.layout.pieces}


def test_where_it_cannot_be_covered_any_more_the_boards_wanted_are_told() -> None:
    """With a layout that they close."""
    poor = without(begun_job(), "wide")
    work = marked(happened("hung", "1"), happened("lost", "C", "D"), of=poor)
    result, _ = again(poor, work)
    assert result.layout.surfaces[0].bare
    assert sum(wanted.count for wanted in result.wanted) == 1
    assert result.closing is not None
    more, closed = result.closing
    assert closed.covers_everything
    assert not faults(check_layout(more, closed, work.standing))


@pytest.mark.parametrize(
    ("off", "edges"),
    [
        (-0.0625, [(0, 5.9375), (6, 12)]),
        (0.125, [(0, 6.125), (6.125, 12)]),
        (0.1875, [(0, 6.1875), (6.1875, 12)]),
    ],
)
def test_a_course_that_came_out_otherwise_is_followed(off: float, edges: list[tuple[float, float]]) -> None:
    """A gap that counts as none stays; else the next course is ripped to what is left, of the same boards."""
    work = marked(happened("hung", "1", measured=Measured(off_nm=nm(off))))
    result, changes = again(begun_job(), work)
    rows = result.layout.surfaces[0].courses
    assert [(row.from_nm, row.to_nm) for row in rows[:2]] == [(nm(low), nm(high)) for low, high in edges]
    assert set(kinds(changes).values()) <= {"same", "other size"}


def test_what_is_in_hand_hangs_as_it_was_cut() -> None:
    """A layout that changes around it leaves it alone."""
    work = marked(happened("cut", "3a", "4a"), happened("lost", "B"))
    result, changes = again(begun_job(), work)
    assert changes["3a"].kind is ChangeKind.SAME
    assert changes["3a"].cut
    assert changes["4a"].kind is ChangeKind.SAME
    assert result.layout.covers_everything


def test_a_piece_cut_too_short_is_used_where_it_fits() -> None:
    """It came out at 40 inches instead of 56, and hangs where 40 are asked for, labelled as it is."""
    job = without(begun_job(), "wide")
    work = marked(happened("miscut", "4b", length_nm=nm(40)), happened("lost", "D"), of=job)
    result, changes = again(job, work)
    assert result.layout.covers_everything
    assert (changes["4b"].kind, changes["4b"].cut) == (ChangeKind.MOVED, True)
    assert changes["4b"].after is not None
    assert changes["4b"].after.place.width_nm == nm(40)
    assert kinds(changes)["4a"] == "gone"


def test_spares_are_what_they_are_held_back_for() -> None:
    """One of two boards held back takes the place of the one that is lost; the other stays whole."""
    rules = replace(begun_job().rules, hold_back=2)
    job = replace(begun_job("E"), rules=rules)
    result, changes = again(job, marked(happened("lost", "C"), of=job))
    assert kinds(changes)["3a"] == "other board"
    assert len(result.held_back) == 1


def test_more_than_one_thing_may_have_happened() -> None:
    """Half hung, one broke, one lost, one cut: all that can stay stays."""
    job = begun_job("E", "F")
    work = marked(
        happened("hung", "1", "2", measured=None),
        happened("cut", "4a"),
        happened("lost", "C"),
        happened("broke", "4b"),
        of=job,
    )
    result, changes = again(job, work)
    assert result.layout.covers_everything
    assert changes["4a"].kind is ChangeKind.SAME
    assert "3a" in changes


def test_the_same_again_gives_the_same() -> None:
    """Byte for byte."""
    work = marked(happened("hung", "1"), happened("lost", "C"))
    first, second = (
        lay_again(begun_job(), begun_layout(), work.standing, effort=MOMENT, seed=3) for _ in range(2)
    )
    assert first == second


def test_whoever_stops_it_gets_what_is_known() -> None:
    """At once, with whatever could stay."""
    work = marked(happened("hung", "1"), happened("lost", "C"))
    result = lay_again(
        begun_job(), begun_layout(), work.standing, effort=MOMENT, watch=Watch(stopped=lambda: True)
    )
    assert result.stopped
    assert not faults(check_layout(begun_job(), result.layout, work.standing))


def test_rules_that_were_changed_meanwhile_are_kept() -> None:
    """No joint may be in sight any more: what does not hang yet is laid out accordingly."""
    job = begun_job("E", "F")
    strict = replace(job, rules=Rules(expansion_gap_nm=0, joints=JointPolicy.NEVER))
    events: list[Happened] = [happened("hung", "1", "2")]
    work = marked(*events, of=strict)
    result, changes = again(strict, work)
    assert result.layout.covers_everything
    assert len(result.layout.surfaces[0].courses[3].pieces) == 1
    assert kinds(changes)["3a"] == "same"


def test_what_is_seen_heeds_what_is_done_and_gets_better() -> None:
    """It could be gone on with at any moment."""
    work = marked(happened("hung", "1"), happened("broke", "2b"), happened("lost", "C"))
    heard: list[Progress] = []
    watch = Watch(report=heard.append, sees=True)
    result = lay_again(begun_job(), begun_layout(), work.standing, effort=MOMENT, watch=watch)
    seen = [Layout(job_name="village hall", surfaces=told.laid) for told in heard if told.laid]
    assert seen
    for layout in seen:
        assert not faults(check_layout(begun_job(), layout, work.standing))
    bare = [sum(box.width_nm * box.height_nm for box in layout.surfaces[0].bare) for layout in seen]
    assert bare == sorted(bare, reverse=True)
    assert result.layout.covers_everything


def test_nobody_is_shown_what_nobody_wants_to_see_of_what_is_left() -> None:
    """Nor is anything else found."""
    work = marked(happened("hung", "1"), happened("lost", "C"))
    heard: list[Progress] = []
    plain = Watch(report=heard.append)
    result = lay_again(begun_job(), begun_layout(), work.standing, effort=MOMENT, watch=plain)
    assert heard
    assert not any(told.laid for told in heard)
    seeing = Watch(sees=True)
    assert result == lay_again(begun_job(), begun_layout(), work.standing, effort=MOMENT, watch=seeing)


def test_a_board_that_is_gone_from_the_tally_is_made_up_for() -> None:
    """Also where it was all that hung in its course."""
    job = begun_job("X")
    fewer = replace(job, boards=tuple(one for one in job.boards if one.id != "C"))
    result = lay_again(fewer, begun_layout(), marked(of=fewer).standing, effort=MOMENT)
    assert not faults(check_layout(fewer, result.layout))
    assert result.layout.covers_everything

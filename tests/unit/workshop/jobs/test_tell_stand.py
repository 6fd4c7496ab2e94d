"""How far a job has come, as a person would say it."""

from dataclasses import replace

import pytest

from plankwright.errors import Problem
from plankwright.layout.result import Verdict
from plankwright.workshop.ask_enough import Answer, ask_enough
from plankwright.workshop.jobs.kept import KeptLayout, KeptSearch, Made, SearchState
from plankwright.workshop.jobs.stand_of_job import StandOfJob
from plankwright.workshop.jobs.tell_stand import looks, next_steps, road, tell_stand
from village import short_result, small_job, small_layout, small_result

ENOUGH: Answer = ask_enough(small_job(), small_result())
NOTHING = StandOfJob(boards=0, surfaces=())
MEASURED = StandOfJob(boards=3, surfaces=("wall",))
LAID = replace(
    MEASURED, pieces=2, layout=KeptLayout(layout=small_layout(), made=Made.SEARCHED, answer=ENOUGH)
)
SHORT = replace(
    LAID,
    layout=KeptLayout(
        layout=short_result().layout, made=Made.SEARCHED, answer=ask_enough(small_job(), short_result())
    ),
)
BEGUN = replace(LAID, begun=True, cut=2, hung=1)
DONE = replace(BEGUN, hung=2)
OUTDATED = replace(
    LAID, faults=("wall, piece 1a: It is cut from board F10, which is not in the tally. [201]",)
)
SEARCH = KeptSearch(job_id="j", made=Made.SEARCHED, effort="steady")


@pytest.mark.parametrize(
    ("stand", "says"),
    [
        (NOTHING, "Nothing is measured yet."),
        (replace(NOTHING, boards=1), "One board is tallied, and it is not measured yet what"),
        (replace(NOTHING, surfaces=("wall",)), "One surface is measured, and no board is tallied yet."),
        (MEASURED, "Three boards are tallied and one surface is measured. Nothing is laid out yet."),
        (LAID, ENOUGH.headline),
        (
            replace(LAID, layout=replace(LAID.layout, answer=None) if LAID.layout else None),
            "A layout came along",
        ),
        (OUTDATED, "What is laid out fits no longer"),
        (DONE, "All two pieces hang."),
    ],
)
def test_it_begins_with_the_answer(stand: StandOfJob, says: str) -> None:
    """In one sentence."""
    assert tell_stand(stand)[0].startswith(says)


def test_once_work_has_begun_it_says_how_much_hangs() -> None:
    """And what is in hand."""
    assert tell_stand(BEGUN)[1:] == ("One of two pieces hangs; one more is cut.",)
    assert tell_stand(LAID)[1:] == ()


@pytest.mark.parametrize(
    ("search", "says"),
    [
        (
            replace(SEARCH, state=SearchState.CUT_OFF, best=small_layout()),
            "the best that it had found is kept",
        ),
        (replace(SEARCH, state=SearchState.CUT_OFF), "begin it again"),
        (
            replace(SEARCH, state=SearchState.FAILED, trouble="It broke down."),
            "came to nothing: It broke down.",
        ),
    ],
)
def test_a_search_that_came_to_nothing_is_owned_up_to(search: KeptSearch, says: str) -> None:
    """With what is left of it."""
    assert says in tell_stand(replace(MEASURED, search=search))[1]


@pytest.mark.parametrize(
    ("stand", "first"),
    [
        (NOTHING, ("tally", "Tally the boards")),
        (replace(NOTHING, boards=1), ("surfaces", "Measure a surface")),
        (replace(NOTHING, surfaces=("wall",)), ("tally", "Tally the boards")),
        (MEASURED, ("layout", "Lay it out")),
        (replace(MEASURED, search=SEARCH), ("search", "See how far the search is")),
        (
            replace(MEASURED, search=replace(SEARCH, state=SearchState.CUT_OFF, best=small_layout())),
            ("search", "See what the search had found"),
        ),
        (LAID, ("cutting", "Cut the first boards")),
        (SHORT, ("layout", "See what is missing")),
        (replace(LAID, begun=True, cut=1), ("hanging", "Hang the first course")),
        (replace(LAID, begun=True, cut=1, hung=1), ("cutting", "Go on cutting")),
        (BEGUN, ("hanging", "Go on hanging")),
        (DONE, ("left", "See what is left over")),
        (OUTDATED, ("layout#anew", "Lay it out anew")),
        (replace(OUTDATED, begun=True), ("layout", "Lay out what is left anew")),
        (
            replace(MEASURED, problems=(Problem(file="the job", place="surface wall", what="too high"),)),
            ("surfaces", "Mend what is wrong"),
        ),
    ],
)
def test_the_next_thing_to_do_comes_first(stand: StandOfJob, first: tuple[str, str]) -> None:
    """One thing, whatever the job has come to."""
    step = next_steps(stand)[0]
    assert (step.screen, step.what) == first


def test_short_of_wood_is_what_the_search_says() -> None:
    """Else the step above would be tested against nothing."""
    assert SHORT.layout is not None
    assert SHORT.layout.answer is not None
    assert SHORT.layout.answer.verdict is Verdict.NOT_ENOUGH


@pytest.mark.parametrize(
    ("stand", "done"),
    [
        (NOTHING, []),
        (MEASURED, ["Tally", "Surfaces"]),
        (LAID, ["Tally", "Surfaces", "Layout"]),
        (BEGUN, ["Tally", "Surfaces", "Layout", "Cutting"]),
        (DONE, ["Tally", "Surfaces", "Layout", "Cutting", "Hanging"]),
        (replace(OUTDATED, cut=2, hung=2), ["Tally", "Surfaces"]),
    ],
)
def test_the_road_shows_what_is_done(stand: StandOfJob, done: list[str]) -> None:
    """Stage by stage, in their order."""
    stages = road(stand)
    assert [stage.what for stage in stages] == ["Tally", "Surfaces", "Layout", "Cutting", "Hanging"]
    assert [stage.what for stage in stages if stage.done] == done


def test_many_surfaces_are_only_counted() -> None:
    """A road is read at a glance."""
    assert road(replace(MEASURED, surfaces=("a", "b")))[1].told == "a and b"
    assert road(replace(MEASURED, surfaces=tuple("abcdef")))[1].told == "six surfaces"


def test_what_is_left_is_laid_out_anew_at_once() -> None:
    """Before work has begun there is more than one way to do it, and one chooses."""
    assert next_steps(replace(OUTDATED, begun=True))[0].search is Made.AGAIN
    assert next_steps(OUTDATED)[0].search is None


def test_what_needs_a_look_leads_to_where_one_looks() -> None:
    """Each thing said once, with its place."""
    remarks = (
        Problem(file="the tally", place="board F25", what="board F25 has no clear run"),
        Problem(file="the job", place="rules", what="the kerf is wide"),
    )
    wrong, doubtful = looks(replace(OUTDATED, remarks=remarks))
    assert [(look.screen, look.told) for look in wrong] == [
        ("layout", "wall, piece 1a: It is cut from board F10, which is not in the tally.")
    ]
    assert [(look.screen, look.told) for look in doubtful] == [
        ("tally", "Board F25 has no clear run"),
        ("rules", "Rules: the kerf is wide"),
    ]

"""Whatever the job: what is done to boards before the cut list takes nothing off them that it counts on."""

import re
from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from plankwright.layout import Effort, Watch, lay_out
from plankwright.layout.sawing import saw_boards
from plankwright.measure import INCH
from plankwright.model import CutKind, Flaw, Job, Layout, Severity
from plankwright.workshop.advice.ready_boards import Readying, Station, ready_boards, readying_leaf
from porch import porch_job, porch_layout, short_porch_layout
from property.strategies import jobs
from trade_jobs import tongued_job, tongued_layout
from village import small_job, small_layout

MOMENT = Effort(name="moment", seconds=0.3)
AT_ONCE = Watch(stopped=lambda: True)
CUTS = re.compile(
    r"\b(rips?|ripped|trim|trimmed|saw|sawn|cut|crosscut|notch|straighten|out|comes off|a side)\b"
)


def cuts_asked_for(readying: Readying) -> list[str]:
    """Give every task that would cut a board before its cut list."""
    tasks = [task for work in readying.boards for task in work.tasks]
    return [task.what for task in tasks if CUTS.search(task.what)]


def check(job: Job, layout: Layout) -> None:
    """Check that no task cuts, and that what the saw does is told as the cut list has it, without boxes."""
    without, readying = ready_boards(job), ready_boards(job, layout)
    assert cuts_asked_for(without) == cuts_asked_for(readying) == []
    for one, cuts in zip(readying.boards, saw_boards(job, layout), strict=True):
        counted: Counter[str] = Counter()
        for number, kind in re.findall(r"(\d+) (rip|crosscut|notch)", one.at_saw):
            counted[kind] += int(number)
        kinds = Counter(cut.kind for cut in cuts.cuts)
        assert (one.board_id, counted["rip"], counted["crosscut"], counted["notch"]) == (
            cuts.board_id,
            kinds[CutKind.RIP] + kinds[CutKind.TAPER_RIP],
            kinds[CutKind.CROSSCUT] + kinds[CutKind.ANGLED],
            kinds[CutKind.NOTCH],
        )
    grid = readying_leaf(job, readying).parts[-1].grid
    if grid is not None:
        assert grid.columns[-1] == "cut list"
        assert [grid.columns[at] for at in grid.ticks] == list(grid.columns[1:-1])
        assert set(grid.columns[1:-1]) <= set(Station)


@pytest.mark.parametrize(
    ("job", "layout"),
    [
        (porch_job(), porch_layout()),
        (porch_job(), short_porch_layout()),
        (tongued_job(), tongued_layout(tongued_job())),
        (small_job(), small_layout()),
    ],
)
def test_no_task_of_the_examples_repeats_a_cut(job: Job, layout: Layout) -> None:
    """Made by hand, with slopes, notches, tongues taken off and lost stretches."""
    check(job, layout)


@settings(max_examples=15)
@given(jobs(), st.booleans())
def test_no_task_repeats_a_cut(job: Job, broken: bool) -> None:  # noqa: FBT001 - drawn
    """Laid out by the search, some with a lost end that was not there."""
    if broken:
        first = job.boards[0]
        end = Flaw(
            start_nm=max(0, first.length_nm - INCH),
            end_nm=first.length_nm,
            what="rot",
            severity=Severity.LOST,
        )
        job = replace(job, boards=(replace(first, flaws=(*first.flaws, end)), *job.boards[1:]))
    check(job, lay_out(job, effort=MOMENT, watch=AT_ONCE).layout)

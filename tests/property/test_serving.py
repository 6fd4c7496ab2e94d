"""Whatever surfaces share a pile, and however it is dealt out: no rule is broken, no wood is cut twice."""

import random
from collections.abc import Sequence
from dataclasses import replace
from importlib import import_module

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from many_walls import Backwards
from plankwright.check import check_layout, faults
from plankwright.layout import Effort, lay_out
from plankwright.layout.plan import Stick
from plankwright.model import Job
from property.strategies import jobs

MOMENT = Effort(name="moment", seconds=0.1)


def yard(job: Job, times: int) -> Job:
    """Give a job with so many of each of its boards."""
    return replace(
        job,
        boards=tuple(
            replace(board, id=f"{board.id} {again}") for again in range(times) for board in job.boards
        ),
    )


def all_to_the_last(
    sticks: Sequence[Stick], needs: Sequence[int], _chance: random.Random
) -> tuple[tuple[Stick, ...], ...]:
    """Deal as no one should."""
    return (*[()] * (len(needs) - 1), tuple(sticks))


@settings(max_examples=12)
@given(jobs(surfaces=3), st.integers(1, 12), st.booleans())
def test_surfaces_that_share_a_pile_break_no_rule(job: Job, times: int, fair: bool) -> None:  # noqa: FBT001 - drawn
    """One at a time, all at once, mended, and laid out anew for those before them."""
    work, crew = yard(job, times), Backwards()
    with pytest.MonkeyPatch.context() as patch:
        if not fair:
            patch.setattr(import_module("plankwright.layout.serving"), "deal", all_to_the_last)
        result = lay_out(work, effort=MOMENT, crew=crew)
    assert not faults(check_layout(work, result.layout))
    assert crew.asked
    assert [laid.surface_id for laid in result.layout.surfaces] == [surface.id for surface in work.surfaces]

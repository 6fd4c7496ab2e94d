"""However a plan is dressed, it keeps every rule and costs no more."""

import random
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from looking import Dresser
from plankwright.check import check_layout, faults
from plankwright.check.score import AREA_TOLERANCE_NM2
from plankwright.layout.first import build
from plankwright.model import Job
from property.strategies import jobs

TONES = st.lists(st.sampled_from(["dark", "light", ""]), min_size=1, max_size=7)
"""Given to the boards by turns."""


@settings(max_examples=40)
@given(jobs(surfaces=1), TONES, st.integers(0, 9))
def test_a_dressed_plan_keeps_every_rule_and_costs_no_more(job: Job, tones: list[str], seed: int) -> None:
    """Measured as the search does, and scored as the layout that comes of it; and it looks no worse."""
    toned = tuple(
        replace(board, tone=tones[place % len(tones)], lot=board.id[0])
        for place, board in enumerate(job.boards)
    )
    dresser = Dresser(replace(job, boards=toned))
    plan = build(dresser.strips, dresser.stock, random.Random(seed))  # noqa: S311 - chance, not secrecy
    dressed = dresser.dressed(plan, seed, work=0.2)
    then, now = dresser.layout(plan), dresser.layout(dressed)
    assert not faults(check_layout(dresser.work, then))
    assert not faults(check_layout(dresser.work, now))
    assert dresser.look(dressed).fault <= dresser.look(plan).fault
    figures = zip(dresser.figure(plan), dresser.figure(dressed), strict=True)
    assert all(after <= before for before, after in figures)
    before, after = then.surfaces[0].score, now.surfaces[0].score
    assert after.bare_nm2 <= before.bare_nm2 + AREA_TOLERANCE_NM2
    assert after.joints_in_sight <= before.joints_in_sight
    assert after.wood_spent_nm2 <= before.wood_spent_nm2

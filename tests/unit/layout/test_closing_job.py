"""A job closed surface by surface."""

import random
from collections.abc import Sequence
from importlib import import_module
from typing import TYPE_CHECKING

import pytest

from builders import board, job, layout, nm, wall
from choosing import plain, sticks_of
from plankwright.layout import Watch
from plankwright.layout.capacity import capacity_of
from plankwright.layout.closing_job import ClosingJob
from plankwright.layout.corners import lay_flat
from plankwright.layout.one_surface import Laid
from plankwright.layout.plan import Stick
from plankwright.layout.together import write_together
from plankwright.model import Bound, Score
from plans import planned_course, planned_piece

if TYPE_CHECKING:
    from plankwright.layout.wanted import Closing

RULES = plain(shortest_piece_nm=nm(16), narrowest_course_nm=nm(2))
WORK = job([wall(50, 12, id="wall-1"), wall(40, 6, id="wall-2")], [board("A", 100, 12)], RULES)


def _laid(*courses: object) -> Laid:
    return Laid(
        plan=tuple(courses),  # type: ignore[arg-type]
        best=Score(bare_nm2=0, joints_in_sight=0, wood_spent_nm2=0, cuts=0),
        bound=Bound(),
        bounds=(Bound(),),
        chance=random.Random(0),  # noqa: S311 - chance, not secrecy
    )


def test_the_wood_for_a_wall_is_not_parted_through_what_hangs_on_it(monkeypatch: pytest.MonkeyPatch) -> None:
    """One board gives 50 x 6 to the first wall and 40 x 6 beside that to the second.

    Parted at 40, where the wood would be largest, its rest could not give the piece of 50 that is there.
    """
    upper = planned_course((6, 12), bare=((0, 50),))
    first = _laid(planned_course((0, 6), planned_piece(WORK, 0, (0, 50), 6, at=(0, 0))), upper)
    second = _laid(planned_course((0, 6), planned_piece(WORK, 0, (0, 40), 6, at=(0, 6))))
    offered: list[Sequence[Stick]] = []

    def close(_search: object, stock: Sequence[Stick], *_rest: object, **_more: object) -> "Closing | None":
        offered.append(stock)
        return None

    monkeypatch.setattr(import_module("plankwright.layout.closing_job"), "close", close)
    surfaces = lay_flat(WORK, capacity_of(WORK))
    closing = ClosingJob(WORK, surfaces, sticks_of(WORK.boards, RULES), Watch(), 0.1)
    closing.close(
        [first, second],
        [
            write_together(WORK, surface, each.plan)
            for surface, each in zip(surfaces, (first, second), strict=True)
        ],
    )
    [stock] = offered
    [piece] = first.plan[0].pieces
    assert any(
        stick.along_from <= piece.stick.along_from
        and piece.stick.along_to <= stick.along_to
        and stick.across_from <= piece.stick.across_from
        and piece.stick.across_to <= stick.across_to
        for stick in stock
    )
    assert closing.closed(layout()) is None

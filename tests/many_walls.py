"""Several small walls and one pile for all of them."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from typing import TypeVar

from builders import board, job, studs, wall
from plankwright.layout.result import Watch
from plankwright.model import Job, JointPolicy, Rules

Common = TypeVar("Common")
Given = TypeVar("Given")
Found = TypeVar("Found")

_WALL = wall(96, 12, framing=studs(0.75, 24, 48, 72, 95.25))


def plenty() -> Job:
    """Give three walls, and boards of four widths for four times as many."""
    boards = [
        board(f"B{n}", length, width)
        for n, (length, width) in enumerate([(100, 6.5), (60, 5), (100, 4.5), (62, 6.5), (98, 5.5)] * 6)
    ]
    return job([replace(_WALL, id=f"wall-{n}") for n in (1, 2, 3)], boards)


def long_boards_for_one() -> Job:
    """Give two walls without joints and boards that are long enough for one, among many that are not."""
    boards = [
        *(board(f"long-{n}", 100, 6.5) for n in (1, 2)),
        *(board(f"short-{n}", 60, 6.5) for n in range(20)),
    ]
    rules = Rules(joints=JointPolicy.NEVER)
    return job([replace(_WALL, id=name) for name in ("first", "second")], boards, rules)


class Backwards:
    """Stands in for a crew: does the last first, and remembers how much it was asked for at a time."""

    def __init__(self) -> None:
        self.asked: list[int] = []

    def share_out(
        self,
        work: Callable[[Common, Given, Watch], Found],
        common: Common,
        given: Sequence[Given],
        *,
        watch: Watch,
    ) -> Iterator[tuple[int, Found]]:
        """Do the work until it is stopped."""
        self.asked.append(len(given))
        for place in reversed(range(len(given))):
            if watch.stopped():
                return
            yield place, work(common, given[place], watch)

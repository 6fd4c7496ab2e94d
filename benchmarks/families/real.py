"""Walls as they are met with, and a pile that is known to cover them, with 4 % to spare.

16 to 24 ft by 8 to 9 ft, level or gabled, with a door, windows and uneven studs. The boards are mostly too
short to reach across; a third have flaws; some are wide enough for two courses or long enough for two
pieces. Trimming, straightening and sawing take their share. The spare boards are drawn like the others.
"""

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import replace
from random import Random

from benchmarks.covering import cover
from benchmarks.instance import TAPE, Instance, PlantingError
from benchmarks.lots import LOTS, RULES, SAWS, SORTS
from benchmarks.lumber import SawnBoard, Sort
from benchmarks.pairing import Pile, Wood
from benchmarks.planting import Row, boards_of, planted_layout, shuffled
from benchmarks.usable import usable_area
from benchmarks.walls import draw_wall
from plankwright.layout.capacity import capacity_of
from plankwright.layout.strips import Strips
from plankwright.measure import FOOT, INCH, Nm
from plankwright.model import Job

FEWEST, MOST = 60, 120
"""Boards in a pile."""

SURPLUS = 0.04
"""Usable area to spare, as a share of what the planted layout takes."""

_EIGHTH: Nm = INCH // 8
_WIDTHS = 6
_NARROWEST, _WIDEST = 26, 54
"""How many widths there are, and of how many eighths of an inch."""


def instance(seed: int) -> Instance:
    """Give a wall with a pile that covers it."""
    chance = Random(f"real {seed}")  # noqa: S311 - chance, not secrecy
    while True:
        drawn = draw(chance, f"real {seed}", SURPLUS)
        if drawn is not None:
            job, rows, pile = drawn
            planted = planted_layout(job, Strips(job.surfaces[0], RULES, capacity_of(job)), rows, pile)
            # A cover that leaves a sliver or asks for blocking somewhere is no perfect one.
            with suppress(PlantingError):
                return Instance(family="real", seed=seed, job=job, planted=planted)


def draw(chance: Random, name: str, surplus: float) -> tuple[Job, tuple[Row, ...], list[SawnBoard]] | None:
    """Draw a wall, a cover and its pile; nothing when chance has led to no cover, or too many boards.

    Parameters
    ----------
    chance
        The same state gives the same.
    name
        Of the job.
    surplus
        Usable area to spare, as a share of what the cover takes.
    """
    surface = draw_wall(chance)
    if len(surface.openings) < 2 or not surface.concealed:  # noqa: PLR2004 - two or three openings
        return None
    job = Job(name=name, tape=TAPE, surfaces=(surface,), boards=(), rules=RULES, saws=SAWS)
    rows = cover(
        Strips(surface, RULES, capacity_of(job)),
        draw_widths(chance),
        chance.randint(7, 11) * FOOT,
        tuple(sum(weight for sort, weight in SORTS if sort.lot == lot) for lot in LOTS),
        chance,
    )
    if rows is None:
        return None
    pile = Pile(RULES, chance)
    boards = pile.saw(_wood(rows, chance))
    needed = sum(usable_area(sawn.board, RULES) for sawn in boards)
    boards = shuffled([*boards, *pile.spare(round(surplus * needed))], chance)
    if not FEWEST <= len(boards) <= MOST:
        return None
    return replace(job, boards=boards_of(boards)), rows, boards


def draw_widths(chance: Random) -> tuple[Nm, ...]:
    """Draw the widths of the boards once they are straightened. [nm]"""
    return tuple(
        eighths * _EIGHTH for eighths in sorted(chance.sample(range(_NARROWEST, _WIDEST + 1), _WIDTHS))
    )


def _wood(rows: Sequence[Row], chance: Random) -> list[Wood]:
    """Give the wood of each piece, of a sort of its lot."""
    return [
        Wood((number, place), end - start, row.width, _sort(LOTS[row.lots[place]], chance))
        for number, row in enumerate(rows)
        for place, (start, end) in enumerate(row.ends)
    ]


def _sort(lot: str, chance: Random) -> Sort:
    sorts = [(sort, weight) for sort, weight in SORTS if sort.lot == lot]
    (sort,) = chance.choices([sort for sort, _ in sorts], [weight for _, weight in sorts])
    return sort

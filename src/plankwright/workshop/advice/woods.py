"""What is known of the wood of a job's boards."""

from typing import NamedTuple

from plankwright.model import Air, Board, Job, Room
from plankwright.trade.lumber.facts import UNKNOWN_GRAVITY
from plankwright.trade.moisture.equilibrium import equilibrium_pct
from plankwright.trade.moisture.facts import INTERIOR_FROM_PCT, INTERIOR_TO_PCT
from plankwright.trade.source import Source
from plankwright.trade.wood.species import Wood, every_species, wood_named


def wood_of(board: Board) -> Wood:
    """Give the wood of a board, as the tally names it."""
    return wood_named(board.species)


def gravity_of(board: Board) -> tuple[float, float]:
    """Give the least and the greatest specific gravity that the wood of a board may have."""
    return wood_of(board).gravity or every_gravity()


def every_gravity() -> tuple[float, float]:
    """Give the least and the greatest specific gravity of all species whose figure is known."""
    known = [one.gravity for one in every_species() if one.gravity is not None]
    return min(least for least, _ in known), max(most for _, most in known)


def gravity_sources_of(board: Board) -> tuple[Source, ...]:
    """Give where the specific gravities of a board's wood come from; the ends where every species may be."""
    wood = wood_of(board)
    if wood.gravity is not None:
        return wood.gravity_sources
    ends = set(every_gravity())
    return (
        UNKNOWN_GRAVITY,
        *dict.fromkeys(
            one.gravity_source
            for one in every_species()
            if one.gravity_source is not None and not ends.isdisjoint(one.gravity or ())
        ),
    )


class Season(NamedTuple):
    """Air at a time of the year, and the moisture that wood comes to in it. [% of dry mass]"""

    air: Air
    moisture_pct: float


def seasons(room: Room) -> tuple[Season, Season]:
    """Give the season in which wood gets driest and the one in which it gets dampest, whichever is which."""
    both = (
        Season(air, equilibrium_pct(air.temperature_c, air.humidity_pct)) for air in (room.dry, room.damp)
    )
    dry, damp = sorted(both, key=lambda season: season.moisture_pct)
    return dry, damp


def service_pct(job: Job) -> tuple[float, float]:
    """Give the moisture that boards come to in the driest and the dampest season. [% of dry mass]"""
    if job.room is None:
        return INTERIOR_FROM_PCT.value, INTERIOR_TO_PCT.value
    dry, damp = seasons(job.room)
    return dry.moisture_pct, damp.moisture_pct


def middle_pct(job: Job) -> float:
    """Give the midpoint of both, near which boards are best hung. [% of dry mass]"""
    dry, damp = service_pct(job)
    return (dry + damp) / 2


def moisture_of(board: Board, job: Job) -> float:
    """Give the moisture of a board: as read, else the middle of its lot's spread, else of the room's. [%]"""
    if board.moisture_pct is not None:
        return board.moisture_pct
    lot = job.lot_of(board)
    if lot is not None and lot.moisture_pct is not None:
        return sum(lot.moisture_pct) / len(lot.moisture_pct)
    return middle_pct(job)

"""What is known of the wood of a job's boards."""

from plankwright.model import Board, Job
from plankwright.trade.moisture.equilibrium import equilibrium_pct
from plankwright.trade.moisture.facts import INTERIOR_FROM_PCT, INTERIOR_TO_PCT
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
    return min(known), max(known)


def service_pct(job: Job) -> tuple[float, float]:
    """Give the moisture that boards come to in the driest and the dampest season. [% of dry mass]"""
    if job.room is None:
        return INTERIOR_FROM_PCT.value, INTERIOR_TO_PCT.value
    seasons = [equilibrium_pct(air.temperature_c, air.humidity_pct) for air in (job.room.dry, job.room.damp)]
    return min(seasons), max(seasons)


def middle_pct(job: Job) -> float:
    """Give the midpoint of both, near which boards are best hung. [% of dry mass]"""
    dry, damp = service_pct(job)
    return (dry + damp) / 2


def moisture_of(board: Board, job: Job) -> float:
    """Give the moisture of a board: as read, else the middle of its lot's spread, else of the room's. [%]"""
    if board.moisture_pct is not None:
        return board.moisture_pct
    lot = job.lot_of(board) if board.lot else None
    if lot is not None and lot.moisture_pct is not None:
        return sum(lot.moisture_pct) / len(lot.moisture_pct)
    return middle_pct(job)

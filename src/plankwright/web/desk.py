"""What the screens work with: the rooms wired together, the book of jobs, and the searches under way."""

from dataclasses import dataclass, field

from plankwright.bootstrap import Bench
from plankwright.web.door import Door
from plankwright.web.searching import SearchesUnderWay
from plankwright.workshop.jobs.ports import Store


@dataclass(frozen=True, slots=True, kw_only=True)
class Desk:
    """What every screen is given.

    Parameters
    ----------
    bench
        The rooms wired together.
    store
        The book of jobs.
    searches
        The searches under way.
    address
        Where a phone on the same network finds the app; empty when it is for this machine alone.
    door
        Who of the phones is let in.
    """

    bench: Bench
    store: Store
    searches: SearchesUnderWay
    address: str = ""
    door: Door = field(default_factory=Door)

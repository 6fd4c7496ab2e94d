"""How much may still be done, counted in deterministic work and told in seconds of a common machine."""

from collections.abc import Callable
from dataclasses import dataclass

from plankwright.layout.packing.kinds import Assortment


@dataclass(slots=True)
class Work:
    """How much may still be done.

    Parameters
    ----------
    left
        Work that is left; it may be overdrawn by one step. [s]
    stopped
        Asked now and then; true once the user wants no more.
    """

    left: float
    stopped: Callable[[], bool]

    def share(self, part: float) -> "Work":
        """Set a part of what is left aside; whoever takes it gives back what is not spent."""
        aside = Work(max(0.0, self.left) * part, self.stopped)
        self.left -= aside.left
        return aside

    def give_back(self, aside: "Work") -> None:
        """Take back what is left of a part."""
        self.left += aside.left
        aside.left = 0.0

    def spend(self, seconds: float) -> None:
        """Count work that was done."""
        self.left -= seconds

    @property
    def over(self) -> bool:
        """Whether there is none left, or no leave."""
        return self.left <= 0 or self.stopped()


def pricing_work(assortment: Assortment, offers: int, *, hasty: bool = False) -> float:
    """Give what a table over room takes, filled with so many kinds of needs, as measured once. [s]"""
    unit = assortment.coarse_unit if hasty else assortment.unit
    cells = max(assortment.rooms, default=0) // unit
    return offers * (8e-6 + 1.5e-9 * cells) + 1e-6 * offers * len(assortment.sticks)


def simplex_work(iterations: int, rows: int) -> float:
    """Give what a linear programme takes, as measured once. [s]"""
    return 4e-4 + 4e-7 * iterations * (rows + 30)

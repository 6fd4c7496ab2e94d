"""What is measured: a job, and what is known of its best layout."""

from dataclasses import dataclass

from plankwright.check import FindingSeverity, check_layout
from plankwright.measure import INCH, Nm, System, TapeStyle
from plankwright.model import Job, Layout, Score

TAPE = TapeStyle(system=System.IMPERIAL)
"""The tape of all instances."""


class PlantingError(Exception):
    """A planted layout that the checker has something against."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Instance:
    """A job of a family.

    Parameters
    ----------
    family
        Its name.
    seed
        The same seed gives the same job.
    job
        The job.
    planted
        A layout of the job that was planted, if one was; bare only where wood was taken away afterwards. The
        checker may have nothing to say about it but that something is bare.
    """

    family: str
    seed: int
    job: Job
    planted: Layout | None = None

    def __post_init__(self) -> None:
        if self.planted is None:
            return
        findings = [
            found
            for found in check_layout(self.job, self.planted)
            if found.severity is not FindingSeverity.NOTE
        ]
        if findings:
            raise PlantingError(f"{self.name}: " + "; ".join(map(str, findings)))

    @property
    def name(self) -> str:
        """Family and seed."""
        return f"{self.family} {self.seed}"

    @property
    def known(self) -> tuple[Score, ...]:
        """What is known to be possible, surface by surface; nothing when no layout was planted."""
        return () if self.planted is None else tuple(surface.score for surface in self.planted.surfaces)


def inches(length: float) -> Nm:
    """Give inches as whole nanometres. [nm]"""
    return round(length * INCH)

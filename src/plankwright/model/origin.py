"""Where boards come from and what they bring along: the age of their building, paint, treatment, nails."""

from dataclasses import dataclass
from enum import StrEnum

from plankwright.model.validity import demand

_OLDEST, _NEWEST = 1500, 2200


class Paint(StrEnum):
    """What is on the boards, as far as anybody knows."""

    UNKNOWN = "unknown"
    NONE = "none"
    LEAD = "lead"
    NO_LEAD_FOUND = "no lead found"


class Treatment(StrEnum):
    """What wood was soaked with against rot; all of these are kept out of a house."""

    NONE = "none"
    ARSENATE = "arsenate"
    CREOSOTE = "creosote"
    PENTACHLOROPHENOL = "pentachlorophenol"
    UNKNOWN = "unknown"


class NailsLeft(StrEnum):
    """How far a board is rid of its nails."""

    IN = "in"
    PULLED = "pulled"
    NIPPED = "nipped"
    CHECKED = "checked"


@dataclass(frozen=True, slots=True, kw_only=True)
class Lot:
    """What is known of the boards from one source.

    Parameters
    ----------
    name
        As in the tally.
    built
        Year in which their building was built, if it is known.
    paint
        What is on them.
    treatment
        What they were soaked with.
    moisture_pct
        The driest and the dampest reading of its boards, where only these were written down. [% of dry mass]
    """

    name: str
    built: int | None = None
    paint: Paint = Paint.UNKNOWN
    treatment: Treatment = Treatment.NONE
    moisture_pct: tuple[float, float] | None = None

    def __post_init__(self) -> None:
        demand(
            self.moisture_pct is None or self.moisture_pct[0] <= self.moisture_pct[1],
            "must begin with the driest reading: write it like [8, 12]",
            field="moisture",
        )
        demand(bool(self.name.strip()), "a lot needs the name that the tally gives it", field="name")
        demand_year(self.built)


def demand_year(built: int | None) -> None:
    """Refuse a year in which no building that anybody takes boards from was built."""
    demand(
        built is None or _OLDEST <= built <= _NEWEST,
        f"is no year in which a building was built: write four figures, from {_OLDEST} to {_NEWEST}",
        field="built",
    )

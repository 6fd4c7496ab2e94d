"""What the user pays and how long the user takes, each by some count of the job."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from plankwright.model.validity import demand


class Per(StrEnum):
    """What a price or a time is reckoned by."""

    BOARD = "board"
    PIECE = "piece"
    CUT = "cut"
    NAIL = "nail"
    COURSE = "course"
    BOARD_FOOT = "board foot"
    SQUARE_FOOT = "square foot"
    SQUARE_METRE = "square metre"
    FOOT = "foot"
    METRE = "metre"
    JOB = "job"


WOOD_UNITS = (Per.BOARD_FOOT, Per.SQUARE_FOOT, Per.SQUARE_METRE, Per.FOOT, Per.METRE)
"""What wood is sold by."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """A task, and how long it takes this user.

    Parameters
    ----------
    name
        What is done, such as "pull nails".
    minutes
        Each time. [min]
    per
        What it is done to.
    """

    name: str
    minutes: Fraction
    per: Per

    def __post_init__(self) -> None:
        demand(self.minutes > 0, "must be more than nothing", field="minutes")


@dataclass(frozen=True, slots=True, kw_only=True)
class Price:
    """Wood that could be bought instead, new or from a yard.

    Parameters
    ----------
    name
        Such as "new pine".
    cost
        Of one, in the user's money.
    per
        What it is sold by.
    waste
        Share of what is bought that is lost, less than 1; nothing where it was not given.
    """

    name: str
    cost: Fraction
    per: Per
    waste: Fraction | None = None

    def __post_init__(self) -> None:
        demand(self.cost > 0, "must be more than nothing", field="cost")
        demand(
            self.per in WOOD_UNITS,
            f"is nothing that wood is sold by: write {', '.join(WOOD_UNITS)}",
            field="per",
        )
        demand(
            self.waste is None or 0 <= self.waste < 1,
            "must be less than 100 %, or nothing would be left",
            field="waste",
        )

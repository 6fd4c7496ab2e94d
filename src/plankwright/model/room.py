"""The air of the room that boards come to live in."""

from dataclasses import dataclass

from plankwright.model.validity import demand

_COLDEST_C, _HOTTEST_C = -30.0, 60.0
_MOST_HUMID = 100.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Air:
    """Air at a time of the year.

    Parameters
    ----------
    temperature_c
        [°C]
    humidity_pct
        Relative humidity. [%]
    """

    temperature_c: float
    humidity_pct: float

    def __post_init__(self) -> None:
        demand(
            _COLDEST_C <= self.temperature_c <= _HOTTEST_C,
            "is no temperature of a room: check the number and its unit, as in 68 F or 20 C",
            field="temperature",
        )
        demand(
            0.0 < self.humidity_pct < _MOST_HUMID,
            "is no humidity of a room: write a number of per cent between 0 and 100",
            field="humidity",
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """The air of a room through the year.

    Parameters
    ----------
    dry, damp
        In the season in which wood gets driest, and in the one in which it gets dampest.
    now
        As measured now, if it was.
    """

    dry: Air
    damp: Air
    now: Air | None = None

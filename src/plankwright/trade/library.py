"""Every source that the rooms of the trade name, room by room."""

from collections.abc import Iterator, Mapping
from types import ModuleType

from plankwright.trade.edges import facts as edges
from plankwright.trade.fasteners import facts as fasteners
from plankwright.trade.hazards import facts as hazards
from plankwright.trade.lumber import facts as lumber
from plankwright.trade.moisture import facts as moisture
from plankwright.trade.readying import facts as readying
from plankwright.trade.source import Source
from plankwright.trade.wood import facts as wood

_ROOMS = {
    "Moisture and movement": moisture,
    "Wood": wood,
    "Fasteners": fasteners,
    "Boxes and edges": edges,
    "Lumber measure": lumber,
    "Getting boards ready": readying,
    "Hazards": hazards,
}


def sources_by_room() -> dict[str, tuple[Source, ...]]:
    """Give the sources of each room, each once, in the order in which they stand there."""
    return {name: tuple(dict.fromkeys(_sources(facts))) for name, facts in _ROOMS.items()}


def _sources(facts: ModuleType) -> Iterator[Source]:
    for value in vars(facts).values():
        if isinstance(value, Source):
            yield value
        elif isinstance(value, Mapping):
            yield from (one for one in value.values() if isinstance(one, Source))

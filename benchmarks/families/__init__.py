"""The families of instances, each a module with `instance(seed)`; a new one is a line here."""

from collections.abc import Callable, Mapping

from benchmarks.families import exact, real
from benchmarks.instance import Instance

INSTANCES: Mapping[str, Callable[[int], Instance]] = {
    "exact": exact.instance,
    "real": real.instance,
}
"""What makes an instance of each family out of a seed."""

"""Where work is done: in this process, on all cores of this machine, or on others by way of Dask."""

from plankwright.crews.crew_at import crew_at

__all__ = ["crew_at"]

"""Choose who does the work."""

from plankwright.crews.cluster import Cluster
from plankwright.crews.cores import Cores
from plankwright.layout.crew import Crew


def crew_at(address: str | None) -> Crew:
    """Give who does the work.

    Parameters
    ----------
    address
        Of a Dask scheduler, such as `tcp://192.0.2.7:8786`; all cores of this machine when left out.
    """
    return Cores() if address is None else Cluster(address)

"""Job folders, tallies and layouts on disk: what people write is read whole or refused with every reason."""

from plankwright.files.job import JobReading, read_job
from plankwright.files.tally import TallyReading, read_tally

__all__ = ["JobReading", "TallyReading", "read_job", "read_tally"]

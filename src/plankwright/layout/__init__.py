"""From a job to a layout: what may be covered, which board goes where, how it is cut, what it looks like."""

from plankwright.layout.lay_out import lay_out
from plankwright.layout.result import (
    EFFORTS,
    Effort,
    Progress,
    Result,
    Verdict,
    Wanted,
    Watch,
    verdict,
)

__all__ = ["EFFORTS", "Effort", "Progress", "Result", "Verdict", "Wanted", "Watch", "lay_out", "verdict"]

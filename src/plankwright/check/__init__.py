"""Is a layout right? Worked out from the job and the layout alone, by code that the search does not share."""

from plankwright.check.finding import Finding, FindingCode, FindingSeverity, faults
from plankwright.check.judging import check_layout
from plankwright.check.score import recount

__all__ = ["Finding", "FindingCode", "FindingSeverity", "check_layout", "faults", "recount"]

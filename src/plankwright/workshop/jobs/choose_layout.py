"""Choose the layout that a job is worked by."""

from dataclasses import replace

from plankwright.workshop.jobs.kept import KeptJob, Made

TAKEN = {
    Made.SEARCHED: "a new layout taken",
    Made.AGAIN: "what is left laid out anew",
    Made.AROUND: "laid out anew around what was asked for",
    Made.SWAPPED: "a layout with boards swapped taken",
    Made.BROUGHT: "a layout brought along taken",
}
"""The step by which a layout is taken, in words, after how it came about."""


def work_by(kept: KeptJob, layout_id: int) -> KeptJob:
    """Give the job as it is worked by another of its layouts."""
    return replace(kept, layout_id=layout_id)

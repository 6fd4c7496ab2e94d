"""Choose the layout that a job is worked by."""

from dataclasses import replace

from plankwright.workshop.jobs.kept import KeptJob


def work_by(kept: KeptJob, layout_id: int) -> KeptJob:
    """Give the job as it is worked by another of its layouts."""
    return replace(kept, layout_id=layout_id)

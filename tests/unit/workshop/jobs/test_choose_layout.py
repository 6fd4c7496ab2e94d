"""A job is worked by one of its layouts."""

from dataclasses import replace

from kept_jobs import whole_job
from plankwright.workshop.jobs.choose_layout import work_by


def test_only_the_layout_is_another() -> None:
    """Nothing else changes with it."""
    job = replace(whole_job(), id="abc")
    assert work_by(job, 7) == replace(job, layout_id=7)
    assert work_by(work_by(job, 7), 8) == work_by(job, 8)

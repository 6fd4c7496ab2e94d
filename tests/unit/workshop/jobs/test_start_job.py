"""A job begins from nothing, or with the measurements of another."""

from dataclasses import replace

import pytest

from kept_jobs import whole_job, work_after
from plankwright import files
from plankwright.errors import BadInputError
from plankwright.measure import Unit
from plankwright.model import MarkKind
from plankwright.workshop.jobs.start_job import copy_of, start_job
from plankwright.workshop.jobs.wishes import Wishes


@pytest.mark.parametrize(
    ("units", "unit"), [("inches", Unit.INCH), ("feet", Unit.FOOT), ("mm", Unit.MILLIMETRE)]
)
def test_a_job_begins_with_a_name_and_a_unit(units: str, unit: Unit) -> None:
    """Without boards and surfaces; it is not kept yet."""
    job = start_job(files, " porch  of the hall ", units)
    assert (job.id, job.name, job.boards, job.layout_id, job.work) == (
        "",
        "porch of the hall",
        (),
        None,
        None,
    )
    assert files.read_definition(job.definition).unit is unit
    assert not job.begun


@pytest.mark.parametrize(
    ("name", "units", "told"),
    [
        ("", "inches", "name is empty: give it a name"),
        (" \u200b ", "inches", "name is empty: give it a name"),
        ("x" * 61, "inches", "name is too long for a name: at most 60 characters"),
        ("porch", "furlongs", "units is “furlongs” but must be"),
        ("porch", "", "units is"),
    ],
)
def test_what_will_not_do_is_told(name: str, units: str, told: str) -> None:
    """As of a file."""
    with pytest.raises(BadInputError) as refused:
        start_job(files, name, units)
    assert [problem.what[: len(told)] for problem in refused.value.problems] == [told]


def test_a_copy_has_the_measurements_and_nothing_that_was_done() -> None:
    """It is another job, and says so."""
    done = replace(
        whole_job(),
        id="abc",
        layout_id=3,
        work=work_after((MarkKind.HUNG, "1")),
        wishes=Wishes(without=("B",)),
    )
    assert done.begun
    copy = copy_of(done)
    assert copy == replace(whole_job(), definition={**done.definition, "name": "village hall (copy)"})
    assert not copy.begun


def test_a_copy_of_a_job_with_a_long_name_can_be_read() -> None:
    """Its name is cut, and does not grow however often it is copied."""
    job = replace(whole_job(), definition={**whole_job().definition, "name": "x" * 60})
    for _ in range(3):
        job = copy_of(job)
        assert files.settled(job.definition) == job.definition
    assert job.name.startswith("x" * 40)

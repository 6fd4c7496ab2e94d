"""A job is called otherwise and written in other units, and every length in it stays what it is."""

from typing import Any

import pytest

from kept_jobs import bare_job, whole_job
from plankwright import files
from plankwright.errors import BadInputError
from plankwright.measure import System
from plankwright.workshop.jobs.change_units import HALF_MILLIMETRES, as_form, change_units, naming
from plankwright.workshop.jobs.kept import KeptJob, StaleError
from plankwright.workshop.jobs.measure_surfaces import put_surface
from plankwright.workshop.jobs.tally_boards import fingerprint

INCHES = {"name": "village hall", "units": "inches"}


def changed(kept: KeptJob, **given: str) -> KeptJob:
    """Give a job with its naming changed."""
    return change_units(kept, files, INCHES | given, fingerprint(naming(kept.definition)))


def wall_of(kept: KeptJob) -> Any:  # noqa: ANN401 - a surface of the model
    """Give the surface as it is read."""
    return files.read_definition(kept.definition).surfaces[0]


def odd_wall() -> KeptJob:
    """Give a wall whose height is no whole number of millimetres, nor of 64ths."""
    table = {"id": "wall", "width": "12 ft", "height": "2403.7 mm", "framing": {"solid": True}}
    return put_surface(bare_job(), files, table, None)


@pytest.mark.parametrize("units", ["feet", "mm", "cm", "m"])
@pytest.mark.parametrize("comma", ["true", ""])
def test_every_length_stays_what_it_is(units: str, comma: str) -> None:
    """There and back again, with a decimal comma and without."""
    kept = odd_wall()
    after = changed(kept, units=units, decimal_comma=comma)
    assert wall_of(after) == wall_of(kept)
    assert wall_of(changed(after)) == wall_of(kept)


def test_lengths_are_written_with_the_decimal_mark_of_the_job() -> None:
    """Else they could not be read any more."""
    after = changed(odd_wall(), units="cm", decimal_comma="true")
    assert after.definition["surface"][0]["height"] == "2403,7 mm"


def test_the_tape_that_no_longer_fits_is_put_aside() -> None:
    """An inch tape has no half millimetres."""
    metric = changed(whole_job(), units="mm", fraction="1/8", millimetre_step=HALF_MILLIMETRES)
    assert "fraction" not in metric.definition
    reading = files.read_definition(metric.definition)
    assert reading.tape.system is System.METRIC
    assert as_form(metric.definition, reading.tape)["millimetre_step"] == HALF_MILLIMETRES
    inches = changed(metric, fraction="1/8", millimetre_step=HALF_MILLIMETRES)
    assert "millimetre_step" not in inches.definition
    assert files.read_definition(inches.definition).tape.denominator == 8


def test_a_job_is_called_otherwise() -> None:
    """And nothing else of it is changed."""
    kept = whole_job()
    after = changed(kept, name="porch")
    assert after.name == "porch"
    assert {**after.definition, "name": kept.name} == kept.definition


@pytest.mark.parametrize(
    ("given", "path"),
    [({"name": ""}, ("name",)), ({"units": "cubits"}, ("units",)), ({"fraction": "1/7"}, ("fraction",))],
)
def test_what_is_wrong_leads_to_its_field(given: dict[str, str], path: tuple[str, ...]) -> None:
    """The job stays as it was."""
    with pytest.raises(BadInputError) as refused:
        changed(whole_job(), **given)
    assert [problem.path for problem in refused.value.problems] == [path]


def test_what_somebody_else_changed_is_not_written_over() -> None:
    """It is shown anew first."""
    with pytest.raises(StaleError):
        change_units(whole_job(), files, INCHES, "another")

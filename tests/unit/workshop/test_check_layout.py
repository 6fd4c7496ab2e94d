"""What is wrong with a layout, by weight."""

import pickle
from dataclasses import replace

import pytest

from in_progress import begun_job, begun_layout, happened, marked
from plankwright.check import FindingSeverity
from plankwright.errors import ExitCode
from plankwright.workshop.check_layout import FaultyLayoutError, check_layout, demand_right
from village import small_job, small_layout, spoilt_layout


def test_a_right_layout_has_no_fault() -> None:
    """And says so."""
    judged = check_layout(small_job(), small_layout())
    assert judged.faults == ()
    assert judged.headline == "The layout breaks no rule."


def test_a_layout_for_another_job_is_warned_of() -> None:
    """A warning is told apart and refuses nothing."""
    other = replace(small_layout(), job_name="school")
    judged = check_layout(small_job(), other)
    assert judged.headline == "The layout breaks no rule; one warning."
    assert [warning.severity for warning in judged.warnings] == [FindingSeverity.WARNING]
    demand_right(small_job(), other)


def test_faults_come_by_themselves() -> None:
    """Each of them an error of the checker."""
    judged = check_layout(small_job(), replace(spoilt_layout(), job_name="school"))
    assert judged.faults
    assert {fault.severity for fault in judged.faults} == {FindingSeverity.ERROR}
    assert judged.headline.startswith("The layout is not right: ")
    assert judged.headline.endswith(" warnings.")


def test_a_faulty_layout_is_not_worked_from() -> None:
    """The refusal names every fault, and is a result of the user's, not a fault of ours."""
    with pytest.raises(FaultyLayoutError, match="nothing is made from it") as caught:
        demand_right(small_job(), spoilt_layout())
    assert caught.value.exit_code == ExitCode.NOT_ENOUGH
    assert len(caught.value.faults) == len(check_layout(small_job(), spoilt_layout()).faults)
    assert str(pickle.loads(pickle.dumps(caught.value))) == str(caught.value)  # noqa: S301 - our own


def test_a_layout_that_something_happened_to_since_is_told_apart() -> None:
    """What now? has to be asked, also when the refusal comes from another process."""
    work = marked(happened("lost", "C"))
    with pytest.raises(FaultyLayoutError, match="does not heed what was marked since") as caught:
        demand_right(begun_job(), begun_layout(), work.standing)
    assert str(pickle.loads(pickle.dumps(caught.value))) == str(caught.value)  # noqa: S301 - our own


def test_a_right_layout_is_let_pass() -> None:
    """Without a word."""
    demand_right(small_job(), small_layout())

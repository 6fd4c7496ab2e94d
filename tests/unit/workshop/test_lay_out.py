"""Laying out: search, check, and hand out nothing that the checker refuses."""

import pickle
from dataclasses import replace

import pytest

from plankwright.errors import ExitCode, LayoutRefusedError
from plankwright.layout.result import Effort, Result, Watch
from plankwright.model import Layout
from plankwright.workshop.lay_out import EffortError, StoppedError, lay_out, read_effort
from village import StandInSearch, short_result, small_job, small_layout, small_result, spoilt_layout

GLANCE = Effort(name="glance", seconds=2.0)


def test_a_layout_that_breaks_no_rule_is_handed_out() -> None:
    """With what the checker remarks about it."""
    laid_out = lay_out(small_job(), search=StandInSearch(small_result()), effort=GLANCE)
    assert laid_out.result == small_result()
    assert laid_out.warnings == ()


def test_the_search_is_told_everything() -> None:
    """Job, effort, seed and who watches go through as they are."""
    search, watch = StandInSearch(small_result()), Watch()
    lay_out(small_job(), search=search, effort=GLANCE, seed=7, watch=watch)
    assert search.called_with == [(small_job(), GLANCE, 7, watch)]


def test_a_layout_that_breaks_a_rule_never_leaves() -> None:
    """It is our fault, and the error says what the checker found."""
    with pytest.raises(LayoutRefusedError, match="our fault") as caught:
        lay_out(small_job(), search=StandInSearch(Result(layout=spoilt_layout())), effort=GLANCE)
    assert caught.value.exit_code == ExitCode.OUR_FAULT
    assert caught.value.findings


def test_a_score_that_is_not_true_never_leaves_either() -> None:
    """The checker counts the joints again."""
    (laid,) = small_layout().surfaces
    boasting = replace(laid, score=replace(laid.score, joints_in_sight=1))
    result = Result(layout=replace(small_layout(), surfaces=(boasting,)))
    with pytest.raises(LayoutRefusedError, match="oints in sight"):
        lay_out(small_job(), search=StandInSearch(result), effort=GLANCE)


def test_a_wanted_list_keeps_its_promise_only_with_a_right_layout() -> None:
    """The layout made with the wanted boards is checked like any other."""
    result = short_result()
    assert lay_out(small_job(), search=StandInSearch(result), effort=GLANCE).result == result
    assert result.closing is not None
    boasting = replace(result, closing=(result.closing[0], spoilt_layout()))
    kept = lay_out(small_job(), search=StandInSearch(boasting), effort=GLANCE).result
    assert kept == replace(result, closing=None)


def test_stopped_without_a_piece_is_no_layout() -> None:
    """There is nothing to hand out."""
    (laid,) = small_layout().surfaces
    nothing = Layout(job_name="village hall", surfaces=(replace(laid, courses=()),))
    with pytest.raises(StoppedError, match="Stopped before any layout"):
        lay_out(small_job(), search=StandInSearch(Result(layout=nothing, stopped=True)), effort=GLANCE)
    assert StoppedError.exit_code == ExitCode.STOPPED


def test_stopped_with_a_layout_keeps_it() -> None:
    """The best so far was checked like any other."""
    stopped = replace(small_result(), stopped=True)
    assert lay_out(small_job(), search=StandInSearch(stopped), effort=GLANCE).result == stopped


@pytest.mark.parametrize("word", ["glance", "steady", "thorough", " Thorough "])
def test_efforts_have_names(word: str) -> None:
    """The names are those of the search."""
    assert read_effort(word).name == word.strip().lower()


@pytest.mark.parametrize(
    ("text", "seconds"), [("45", 45), ("90s", 90), ("2m", 120), ("2 min", 120), ("0.5", 0.5), ("1.5m", 90)]
)
def test_efforts_are_times_too(text: str, seconds: float) -> None:
    """A minute has 60 seconds."""
    assert read_effort(text).seconds == seconds


@pytest.mark.parametrize("text", ["", "quick", "0", "-5", "2h", "1e3", "90 000", "86401", "nan", "٤٥"])
def test_what_is_no_effort_is_refused_with_the_ways_to_write_one(text: str) -> None:
    """Nothing, negative, beyond a day, or not ours."""
    with pytest.raises(EffortError, match="use glance, steady, thorough, or a time") as caught:
        read_effort(text)
    assert caught.value.exit_code == ExitCode.BAD_INPUT
    assert str(pickle.loads(pickle.dumps(caught.value))) == str(caught.value)  # noqa: S301 - our own

"""One answer of the trade, or all."""

import pytest

from plankwright.workshop.ask_trade import QUESTIONS, ask_one, ask_trade
from trade_jobs import tongued_job, tongued_layout

MADE = tongued_job()
LAID = tongued_layout(MADE)


@pytest.mark.parametrize("name", QUESTIONS)
def test_one_answer_is_the_same_as_among_all(name: str) -> None:
    """Headed as the list of questions heads it."""
    leaf = ask_one(name, MADE, LAID)
    assert leaf == ask_trade(MADE, LAID)[name]
    assert leaf is not None
    assert leaf.title == QUESTIONS[name].title


@pytest.mark.parametrize("name", QUESTIONS)
def test_what_is_asked_of_a_layout_is_not_answered_without_one(name: str) -> None:
    """The rest is."""
    assert (ask_one(name, MADE) is None) == QUESTIONS[name].of_layout


def test_a_question_that_is_none_is_refused() -> None:
    """Not answered by another."""
    with pytest.raises(KeyError):
        ask_one("weather", MADE, LAID)

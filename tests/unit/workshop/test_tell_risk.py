"""What a layout survives, in plain words."""

from dataclasses import replace

import pytest

from plankwright.layout.break_proof import Learnt, Needed, Survival
from plankwright.workshop.tell_risk import headline, tell_risk, tell_without
from plankwright.workshop.weigh_risk import Risk

NOTHING = Learnt(needed=(), spared=(), untried=(), survival=None)
RISK = Risk(
    whole=True,
    at_risk=("A", "B", "C", "D"),
    to_cut=("A", "B", "C"),
    learnt=replace(NOTHING, spared=("A", "B", "C")),
    order=(),
    draws=3,
    stopped=False,
)
FOUND, PROVEN = Needed(board_id="A", proven=False), Needed(board_id="B", proven=True)


def risk(**changes: object) -> Risk:
    """Give a risk of which something else was learnt."""
    return replace(RISK, learnt=replace(NOTHING, **changes))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("of", "sentence"),
    [
        (RISK, "Any one board can be lost: a full layout was found without each of them."),
        (risk(needed=(FOUND, PROVEN)), "The layout cannot do without boards A and B, as far as was found."),
        (risk(needed=(PROVEN,)), "The layout cannot do without board B."),
        (risk(untried=("A",), spared=("B",)), "No board was found so far that the layout cannot do without."),
        (risk(untried=("A", "B")), "Stopped before anything was learnt."),
        (replace(RISK, to_cut=()), "Nothing is left to be cut, so no layout hangs on a board any more."),
        (
            replace(RISK, whole=False),
            "The layout leaves something bare as it is, so there is nothing that it could lose.",
        ),
    ],
)
def test_the_heart_of_the_answer_is_one_sentence(of: Risk, sentence: str) -> None:
    """Proven only where all of it is."""
    assert headline(of) == sentence


@pytest.mark.parametrize(
    ("needed", "sentence"),
    [
        ((FOUND,), "That is not proven: a longer search may find a full layout."),
        (
            (FOUND, PROVEN),
            "Proven of board B; of the rest it is not, and a longer search may find a layout.",
        ),
        ((PROVEN,), "That is proven: without it, no layout covers everything."),
    ],
)
def test_it_says_what_is_proven(needed: tuple[Needed, ...], sentence: str) -> None:
    """And that the rest is not."""
    assert tell_risk(risk(needed=needed))[0] == sentence


def test_the_spread_of_the_draws_is_told() -> None:
    """Worst, middle and best, and how often each."""
    told = tell_risk(risk(spared=("A",), survival=Survival(draws=(2, 0, 1, 1))))
    assert told[0].startswith(
        "Random losses, four draws: boards lost one after another, any of the 4 that can"
    )
    assert told[1] == (
        "At least half of the draws survived one loss or more; the worst no loss, the best two losses "
        "(1 survived none, 2 survived one, 1 survived two)."
    )


def test_nothing_is_promised() -> None:
    """Old boards break."""
    assert "no promise" in tell_risk(RISK)[-1]
    assert tell_risk(replace(RISK, to_cut=())) == ()
    assert "plankwright enough" in tell_risk(replace(RISK, whole=False))[0]


def test_what_was_not_tried_is_told() -> None:
    """Many boards are counted."""
    names = tuple(f"F{each}" for each in range(20))
    told = tell_risk(replace(risk(untried=names, spared=("A",)), stopped=True))
    assert told[0].startswith("Not tried: boards F0, F1, ")
    assert told[0].endswith(" and 8 more.")
    assert told[1] == "The trials were stopped early: the rest of them may tell more."


def test_each_board_is_told_by_itself() -> None:
    """In a word or two."""
    of = risk(needed=(FOUND, PROVEN), spared=("C",), untried=("D",))
    told = [tell_without(of, board) for board in "ABCD"]
    assert told == ["none found", "proven impossible", "found", "not tried"]

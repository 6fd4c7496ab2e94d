"""What is different between two states of a job."""

from hypothesis import given
from hypothesis import strategies as st

from plankwright.store.steps import Difference, board_part, difference, mark_part

STATES = st.dictionaries(st.sampled_from("abcde"), st.none() | st.integers(0, 2))


def gone_from(state: dict[str, int | None], told: dict[str, int | None]) -> dict[str, int | None]:
    """Give a state with told parts put into it, less those that are not there."""
    return {name: part for name, part in (state | told).items() if part is not None}


@given(STATES, STATES)
def test_what_is_different_leads_from_one_to_the_other_and_back(
    before: dict[str, int | None], after: dict[str, int | None]
) -> None:
    """Parts that are there in one of them only are told as null in the other."""
    step = difference(before, after)
    assert gone_from(before, step.after) == gone_from(after, {})
    assert gone_from(after, step.before) == gone_from(before, {})
    assert step.none == (gone_from(before, {}) == gone_from(after, {}))


def test_only_what_is_different_is_told() -> None:
    """So that a step with a long tally is short."""
    same = {"definition": {"name": "porch"}, board_part("A"): {"length_nm": 1}}
    step = difference(same, {**same, mark_part(0): "{}"})
    assert step == Difference({mark_part(0): None}, {mark_part(0): "{}"})


def test_a_board_may_be_called_like_a_mark() -> None:
    """The names of parts do not meet."""
    assert board_part("mark 1") != mark_part(1)

"""Numbers and lists as a person says them."""

import pytest

from plankwright.workshop.wording import capital, counted, listed, listed_at_most, number


@pytest.mark.parametrize(("count", "said"), [(0, "no"), (1, "one"), (12, "twelve"), (13, "13")])
def test_numbers_are_words_up_to_twelve(count: int, said: str) -> None:
    """From thirteen on, digits are easier to read."""
    assert number(count) == said


@pytest.mark.parametrize(("count", "said"), [(0, "no boards"), (1, "one board"), (27, "27 boards")])
def test_one_takes_no_plural(count: int, said: str) -> None:
    """Every count but one takes the plural."""
    assert counted(count, "board") == said


@pytest.mark.parametrize(
    ("items", "said"), [(["A"], "A"), (["A", "B"], "A and B"), (["A", "B", "C"], "A, B and C")]
)
def test_the_last_of_a_list_comes_behind_and(items: list[str], said: str) -> None:
    """Commas part the others."""
    assert listed(items) == said


@pytest.mark.parametrize(("most", "said"), [(3, "A, B and C"), (2, "A, B and 1 more"), (1, "A and 2 more")])
def test_of_a_long_list_the_rest_is_counted(most: int, said: str) -> None:
    """As many are said as there is room for."""
    assert listed_at_most(["A", "B", "C"], most) == said


def test_only_the_first_letter_is_made_capital() -> None:
    """Ids keep their case."""
    assert capital("one board of lot HALL") == "One board of lot HALL"

"""Text of a form gets the types of a definition, wherever it stands."""

import pytest

from plankwright.workshop.jobs.definition_types import typed


@pytest.mark.parametrize(
    ("table", "as_defined"),
    [
        ({"framing": {"solid": "true", "opened": "false"}}, {"framing": {"solid": True, "opened": False}}),
        ({"decimal_comma": "true"}, {"decimal_comma": True}),
        ({"lot": [{"built": "1894", "name": "1894"}]}, {"lot": [{"built": 1894, "name": "1894"}]}),
        ({"rules": {"hold_back": "2", "stagger": "12"}}, {"rules": {"hold_back": 2, "stagger": "12"}}),
    ],
)
def test_what_is_true_or_counted_is_no_text(table: object, as_defined: object) -> None:
    """Flags and counts are, lengths and names are not, in tables and in lists."""
    assert typed(table) == as_defined


@pytest.mark.parametrize("text", ["two", "-1", "1.5", "9" * 5_000, "٣", ""])
def test_what_is_no_count_is_left_to_be_refused(text: str) -> None:
    """Whoever reads definitions says what is wrong with it."""
    assert typed({"hold_back": text}) == {"hold_back": text}


def test_what_is_neither_yes_nor_no_is_left_to_be_refused() -> None:
    """Nothing is guessed."""
    assert typed({"solid": "maybe"}) == {"solid": "maybe"}

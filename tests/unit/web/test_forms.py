"""Fields with dotted names become tables and lists, and the other way round, whatever they are called."""

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from plankwright.web.forms import flat, nested

TEXTS = st.text(min_size=1, max_size=9).map(str.strip).filter(bool)
KEYS = st.sampled_from(["id", "left", "opening", "cut_out", "a b", "ü", "x1"])
TABLES = st.recursive(
    TEXTS,
    lambda inner: (
        st.dictionaries(KEYS, inner, min_size=1, max_size=3) | st.lists(inner, min_size=1, max_size=3)
    ),
    max_leaves=12,
)
NAMES = st.text("ab01.-\x00 é²٣", max_size=12) | st.text(max_size=12)


def test_names_with_dots_are_tables_and_numbers_are_places() -> None:
    """As a form of a surface has them."""
    fields = [
        ("id", "wall"),
        ("framing.spacing", "16"),
        ("opening.0.left", "2 ft"),
        ("opening.0.width", "3 ft"),
        ("opening.1.left", "8 ft"),
        ("corners.0.0", "0"),
        ("corners.0.1", "4 in"),
    ]
    tables = {
        "id": "wall",
        "framing": {"spacing": "16"},
        "opening": [{"left": "2 ft", "width": "3 ft"}, {"left": "8 ft"}],
        "corners": [["0", "4 in"]],
    }
    assert nested(fields) == tables
    assert list(flat(tables).items()) == fields


def test_what_is_left_empty_is_left_out() -> None:
    """Fields, entries of which nothing is filled in, and tables of which nothing is."""
    fields = [("a", " "), ("opening.0.left", ""), ("opening.2.left", " 2 "), ("trim.top", "\n")]
    assert nested(fields) == {"opening": [{"left": "2"}]}
    assert nested([]) == {}


def test_entries_stand_in_the_order_of_their_numbers() -> None:
    """And not in that of their letters, nor in that of the form."""
    fields = [(f"saw.{number}.name", str(number)) for number in (10, 9, 2, 11)]
    assert nested(fields) == {"saw": [{"name": name} for name in ("2", "9", "10", "11")]}


def test_of_a_field_that_comes_twice_the_last_counts() -> None:
    """As of a box to tick with its hidden twin."""
    assert nested([("a", "1"), ("a", "2")]) == {"a": "2"}


def test_a_table_is_never_lost_to_a_word() -> None:
    """Whichever comes first."""
    assert nested([("a.b", "1"), ("a", "2")]) == {"a": {"b": "1"}}
    assert nested([("a", "2"), ("a.b", "1")]) == {"a": "2"}


def test_what_is_no_text_is_written_as_a_form_has_it() -> None:
    """Numbers as they are, ticks as ticks; what is not there not at all."""
    tables = {"count": 3, "solid": True, "opened": False, "none": None, "list": [1.5, None]}
    assert flat(tables) == {"count": "3", "solid": "true", "opened": "", "list.0": "1.5"}


@given(st.dictionaries(KEYS, TABLES, max_size=4))
def test_tables_of_text_come_back_as_they_went(tables: dict[str, object]) -> None:
    """However deep."""
    assert nested(flat(tables).items()) == tables


@given(st.lists(st.tuples(NAMES, st.text(max_size=5)), max_size=8))
@example([(".", "x"), ("..", "y"), ("", "z"), ("0", "a"), ("00", "b"), ("-1", "c")])
@example([("a." * 99 + "b", "x")])
@example([("a." * 50_000 + "b", "x")])
@example([("a." + "9" * 190, "x"), ("a.1", "y")])
@example([("a." + "9" * 5_000, "x"), ("a.1", "y")])
@example([("٣.²", "x"), ("a.²", "y"), ("a.1", "z")])
def test_hostile_names_never_raise(fields: list[tuple[str, str]]) -> None:
    """Nor does anything that is made of them."""
    flat(nested(fields))


@pytest.mark.parametrize("fields", [[("x" * 201, "a")], [("a." * 150, "a")]])
def test_names_that_no_form_of_ours_has_are_passed_over(fields: list[tuple[str, str]]) -> None:
    """They are longer than any."""
    assert nested(fields) == {}


def test_no_field_and_no_form_is_longer_than_any_of_ours() -> None:
    """What is beyond is left out."""
    assert nested([("a", "x" * 20_000)]) == {"a": "x" * 10_000}
    assert len(nested([(f"f{number}", "x") for number in range(5_000)])) == 2_000

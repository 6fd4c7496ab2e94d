"""A form as it is shown: its rows, and what is wrong with which field."""

import pytest

from plankwright.web.filled_form import FilledForm, name_at

GIVEN = {
    "width": "12 ft",
    "opening.0.left": "",
    "opening.0.width": "",
    "opening.2.left": "1 ft",
    "opening.2.width": "",
    "opening.7.left": "2 ft",
    "cut_out.0.centre.0": "",
    "cut_out.0.centre.1": "5",
}


def test_rows_are_those_that_have_fields() -> None:
    """Filled in or not, and at least as many as are asked for."""
    form = FilledForm(GIVEN)
    assert form.rows("opening") == ["opening.0", "opening.2", "opening.7"]
    assert form.rows("heights") == []
    assert form.rows("heights", 2) == ["heights.0", "heights.1"]


def test_a_row_comes_behind_the_last_one_and_is_where_one_goes_on() -> None:
    """What is filled in stays."""
    longer = FilledForm(GIVEN).with_row("opening", "left")
    assert longer.rows("opening")[-1] == "opening.8"
    assert longer.focus == "opening.8.left"
    assert longer.value("width") == "12 ft"


def test_a_row_is_taken_out_with_all_its_fields() -> None:
    """And no other one."""
    shorter = FilledForm(GIVEN | {"opening.20.left": "3"}).without_row("opening.2")
    assert shorter.rows("opening") == ["opening.0", "opening.7", "opening.20"]


@pytest.mark.parametrize(
    ("path", "name"),
    [
        (("width",), "width"),
        (("opening", 0, "left"), "opening.2.left"),
        (("opening", 0, "width"), "opening.2.width"),
        (("opening", 1), "opening.7.left"),
        (("opening", 1, "height"), "opening.7.left"),
        (("opening", 5, "left"), "opening.0.left"),
        (("cut_out", 0, "centre"), "cut_out.0.centre.0"),
        (("strange",), ""),
        ((), ""),
    ],
)
def test_a_path_leads_to_its_field(path: tuple[str | int, ...], name: str) -> None:
    """Rows of which nothing is filled in do not count; where there is no such field, the next best is it."""
    assert name_at(GIVEN, path) == name


def test_what_is_wrong_stands_with_its_field_and_in_the_order_of_the_form() -> None:
    """What has no field comes first."""
    form = FilledForm(GIVEN).troubled(
        [(("opening", 0, "width"), "Wide."), (("width",), "Short."), ((), "All of it.")]
    )
    assert form.problems == (("All of it.", ""), ("Short.", "width"), ("Wide.", "opening.2.width"))
    assert form.wrong == {"width": ("Short.",), "opening.2.width": ("Wide.",)}


def test_a_part_is_open_when_anything_of_it_is_filled_in_or_wrong_or_comes_next() -> None:
    """Else it may stay folded."""
    form = FilledForm(GIVEN)
    assert form.any("cut_out.")
    assert not form.any("opening.0.", "trim.")
    assert form.with_row("trim", "left").any("trim.")
    assert form.troubled([(("opening", 0), "Wide.")]).any("opening.2.")


@pytest.mark.parametrize(
    "name", ["opening.٣.left", f"opening.{'9' * 5_000}.left", "opening.x.left", "opening."]
)
def test_names_that_no_form_has_make_no_rows(name: str) -> None:
    """However they are counted."""
    assert FilledForm({name: "1"}).rows("opening") == []

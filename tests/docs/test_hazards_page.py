"""Whatever the hazard note says has its source on the page about hazards."""

from pathlib import Path

import pytest

from plankwright.paper.caution import CAUTIONS, Caution

PAGE = (Path(__file__).parents[2] / "docs" / "hazards.md").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    "caution", [one for one in CAUTIONS if one.what != "Who decides"], ids=lambda one: one.what
)
def test_each_hazard_stands_on_the_page_with_how_far_it_was_followed(caution: Caution) -> None:
    """Each hazard of the note has a row that names a source or says that there is none."""
    rows = [line.split("|") for line in PAGE.splitlines() if line.startswith(f"| {caution.what} |")]
    assert rows
    for row in rows:
        assert "](http" in row[2] or row[3].strip() == "common practice"
        assert row[3].strip().startswith(("read", "secondary", "common practice"))


def test_page_and_note_leave_the_decision_to_others() -> None:
    """Neither the page nor the note says that anything is permitted."""
    (decides,) = [one for one in CAUTIONS if one.what == "Who decides"]
    assert "Local codes and licensed trades" in decides.advice
    assert "local codes and licensed trades decide" in PAGE

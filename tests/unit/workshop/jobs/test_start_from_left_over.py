"""What is left of a job begins another one."""

from dataclasses import replace

import pytest

from plankwright import files
from plankwright.workshop.jobs.kept import RefusedError
from plankwright.workshop.jobs.start_from_left_over import start_from_left_over
from plankwright.workshop.keep_left_over import gather_left_over
from two_walls import walls_job, walls_kept, walls_layout


def test_a_job_begins_with_what_is_left() -> None:
    """Its boards under the same rules, and no surface."""
    left = gather_left_over(walls_job(), walls_layout())
    begun = start_from_left_over(walls_kept(), files, left)
    assert {"E", "F"} <= {board.id for board in begun.boards}
    assert begun.boards == left.boards
    assert begun.name == "village hall (left)"
    assert begun.definition["rules"] == walls_kept().definition["rules"]
    assert (begun.definition["surface"], begun.layout_id, begun.work) == ([], None, None)


def test_a_long_name_is_shortened() -> None:
    """A name has an end."""
    long = replace(walls_kept(), definition={**walls_kept().definition, "name": "h" * 60})
    begun = start_from_left_over(long, files, gather_left_over(walls_job(), walls_layout()))
    assert begun.name.endswith("h (left)")


def test_nothing_begins_no_job() -> None:
    """That is said."""
    left = replace(gather_left_over(walls_job(), walls_layout()), boards=())
    with pytest.raises(RefusedError, match="Nothing worth keeping"):
        start_from_left_over(walls_kept(), files, left)

"""A job that is worked on: whether its layout still fits, and what is worked out only once."""

from dataclasses import replace
from pathlib import Path

import pytest

from builders import board, nm
from plankwright import files
from plankwright.errors import BadInputError
from plankwright.model import MarkKind
from plankwright.store import open_book
from plankwright.workshop.jobs.at_work import AtWork, at_work
from plankwright.workshop.jobs.kept import KeptJob
from plankwright.workshop.jobs.mark_kept import happened_to, mark_kept
from plankwright.workshop.jobs.ports import Store
from two_walls import keep_walls, walls_job


@pytest.fixture
def store(tmp_path: Path) -> Store:
    """Give an empty book of jobs."""
    return open_book(tmp_path / "jobs.db", files)


def worked(store: Store, kept: KeptJob) -> AtWork:
    """Give the job as it is worked on."""
    at = at_work(kept, files, store)
    assert at is not None
    return at


def test_a_layout_that_was_right_still_fits(store: Store) -> None:
    """And tells what is to be cut and hung."""
    at = worked(store, keep_walls(store))
    assert at.faults == ()
    assert [board.id for board in at.boards] == ["A", "B", "L", "D"]
    assert [surface.id for surface in at.surfaces] == ["north", "south"]
    assert (at.hung, at.all_hang) == (0, False)


def test_without_a_layout_there_is_nothing_to_work_by(store: Store) -> None:
    """That is told by whoever shows it."""
    assert at_work(replace(keep_walls(store), layout_id=None), files, store) is None


def test_it_is_worked_out_once(store: Store) -> None:
    """Until anything about the job is another."""
    kept = keep_walls(store)
    first = worked(store, kept)
    assert worked(store, kept) is first
    longer = replace(kept, boards=(replace(kept.boards[0], length_nm=nm(98)), *kept.boards[1:]))
    assert worked(store, longer) is not first
    marked = mark_kept(kept, walls_job(), first.by, happened_to(MarkKind.CUT, [("north", "1a")]))
    assert worked(store, marked) is not first


def test_a_board_that_was_measured_shorter_is_a_fault(store: Store) -> None:
    """What is left can be laid out anew."""
    kept = keep_walls(store)
    shorter = replace(kept, boards=(board("A", 90, 5.25), *kept.boards[1:]))
    at = worked(store, shorter)
    assert any("1a" in fault for fault in at.faults)
    assert at.hindrance == ""


def test_a_surface_that_was_added_cannot_be_laid_out_with_the_rest(store: Store) -> None:
    """The sentence names what there is, and no command."""
    kept = keep_walls(store)
    (north, south) = kept.definition["surface"]
    east = {**north, "id": "east"}
    more = replace(kept, definition={**kept.definition, "surface": [north, south, east]})
    at = worked(store, more)
    assert at.faults
    assert "north, south and east" in at.hindrance
    assert "plankwright" not in at.hindrance


def test_a_board_that_pieces_hang_of_must_be_in_the_tally(store: Store) -> None:
    """Otherwise nobody knows what hangs."""
    kept = keep_walls(store)
    by = worked(store, kept).by
    hung = mark_kept(kept, walls_job(), by, happened_to(MarkKind.HUNG, [("north", "1a")]))
    at = worked(store, replace(hung, boards=kept.boards[1:]))
    assert "board A" in at.hindrance


def test_a_job_that_is_none_any_more_tells_its_problems(store: Store) -> None:
    """Such as two boards of one mark."""
    kept = keep_walls(store)
    with pytest.raises(BadInputError):
        at_work(replace(kept, definition={**kept.definition, "surface": []}), files, store)


def test_all_hangs_once_every_piece_does(store: Store) -> None:
    """On every surface."""
    kept = keep_walls(store)
    by = worked(store, kept).by
    keys = [("north", "1a"), ("north", "2a"), ("north", "2b"), ("south", "1a"), ("south", "2a")]
    at = worked(store, mark_kept(kept, walls_job(), by, happened_to(MarkKind.HUNG, keys)))
    assert at.all_hang
    assert at.hung == 5


def test_boards_that_turned_up_are_named(store: Store) -> None:
    """Those that were not there when work began."""
    kept = keep_walls(store)
    by = worked(store, kept).by
    begun = mark_kept(kept, walls_job(), by, happened_to(MarkKind.CUT, [("north", "1a")]))
    at = worked(store, replace(begun, boards=(*begun.boards, board("G", 97, 5.25))))
    assert at.found == ("G",)

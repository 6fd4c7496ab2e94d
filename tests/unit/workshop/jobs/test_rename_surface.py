"""A surface that is called otherwise keeps its layout."""

from dataclasses import replace
from pathlib import Path

import pytest

from at_desk import keep_small_job, make_desk
from plankwright import files
from plankwright.web.desk import Desk
from plankwright.workshop.jobs.at_work import at_work
from plankwright.workshop.jobs.kept import KeptJob
from plankwright.workshop.jobs.measure_surfaces import put_surface, surface_at
from plankwright.workshop.jobs.rename_surface import carry_layout, renamed
from plankwright.workshop.jobs.tally_boards import fingerprint
from plankwright.workshop.jobs.wishes import PieceWish, Wishes
from village import small_layout


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    """Give a desk on a store of its own."""
    return make_desk(tmp_path)


@pytest.fixture
def small(desk: Desk, tmp_path: Path) -> KeptJob:
    """Keep the small job with its layout."""
    return keep_small_job(desk.store, tmp_path / "village")


def called(kept: KeptJob, name: str) -> KeptJob:
    """Give a job whose first surface is called so."""
    surface = surface_at(kept, 0)
    return put_surface(kept, files, {**surface, "id": name}, 0, fingerprint(surface))


def test_the_layout_fits_the_job_under_the_new_name(desk: Desk, small: KeptJob) -> None:
    """And what is wished of its pieces goes along."""
    wish = PieceWish(surface_id="wall", label="1a", board_id="B1")
    wishing = replace(small, wishes=Wishes(kept=(wish,)))
    after = called(wishing, "north side")
    carried = carry_layout(wishing, after, 0, desk.store)(after)
    assert carried.layout_id not in {None, small.layout_id}
    assert carried.wishes.kept == (replace(wish, surface_id="north side"),)
    at = at_work(carried, files, desk.store)
    assert at is not None
    assert at.faults == ()
    assert at.hindrance == ""
    assert [laid.surface_id for laid in at.by.layout.surfaces] == ["north side"]


def test_nothing_is_kept_where_no_name_was_changed(desk: Desk, small: KeptJob) -> None:
    """A layout more would only be in the way."""
    laid = desk.store.layouts(small.id)
    for place in (0, None):
        assert carry_layout(small, small, place, desk.store)(small) == small
    assert desk.store.layouts(small.id) == laid


def test_a_layout_that_was_chosen_meanwhile_stays(desk: Desk, small: KeptJob) -> None:
    """The one that was carried along is of another."""
    after = called(small, "north side")
    other = replace(after, layout_id=999)
    assert carry_layout(small, after, 0, desk.store)(other) == other


def test_other_surfaces_of_a_layout_are_called_as_before() -> None:
    """Only one was renamed."""
    assert renamed(small_layout(), "attic", "loft") == small_layout()

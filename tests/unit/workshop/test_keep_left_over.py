"""What is left comes out as a tally for the next surface."""

from pathlib import Path

import pytest

from builders import job, wall
from in_progress import begun_job, begun_layout, happened, marked
from plankwright import files
from plankwright.layout import Effort
from plankwright.layout import lay_out as search_layout
from plankwright.model import Rules
from plankwright.workshop.check_layout import FaultyLayoutError
from plankwright.workshop.keep_left_over import gather_left_over, hand_out_left_over
from plankwright.workshop.lay_out import lay_out


def test_offcuts_say_where_they_are_from_and_whole_boards_are_as_they_were() -> None:
    """In order of the tally."""
    left = gather_left_over(begun_job(), begun_layout())
    assert left.headline == "One whole board and three offcuts left, 20' 7\" end to end."
    assert left.whole == ("wide",)
    assert {board.id: board.note for board in left.boards} == {
        "B-1": "left of B, village hall",
        "D-1": "left of D, village hall",
        "long-1": "left of long, village hall",
        "wide": "",
    }


def test_it_is_read_as_the_tally_of_another_job(tmp_path: Path) -> None:
    """Rounded down to the tape."""
    left = gather_left_over(begun_job(), begun_layout())
    (written,) = hand_out_left_over(left, begun_job(), folder=tmp_path, files=files)
    assert written.path == tmp_path / "left-over.csv"
    assert [board.id for board in files.read_tally(written.path, unit=None).boards] == [
        "B-1",
        "D-1",
        "long-1",
        "wide",
    ]


def test_another_surface_is_laid_out_from_it(tmp_path: Path) -> None:
    """With two courses out of offcuts and the whole board."""
    left = gather_left_over(begun_job(), begun_layout())
    (written,) = hand_out_left_over(left, begun_job(), folder=tmp_path, files=files)
    boards = files.read_tally(written.path, unit=None).boards
    side = job(wall(96, 12), boards, Rules(expansion_gap_nm=0))
    laid_out = lay_out(side, search=search_layout, effort=Effort(name="moment", seconds=2))
    assert laid_out.result.layout.covers_everything


def test_where_nothing_is_left_nothing_is_written(tmp_path: Path) -> None:
    """Everything else was lost."""
    work = marked(happened("hung", "1", "2", "3", "4"), happened("lost", "B", "D", "long", "wide"))
    left = gather_left_over(begun_job(), begun_layout(), work.standing)
    assert left.headline == "Nothing worth keeping is left."
    assert hand_out_left_over(left, begun_job(), folder=tmp_path, files=files) == ()
    assert list(tmp_path.iterdir()) == []


def test_of_a_layout_that_does_not_heed_what_is_done_nothing_is_told() -> None:
    """What now? has to be asked first."""
    with pytest.raises(FaultyLayoutError, match="plankwright now"):
        gather_left_over(begun_job(), begun_layout(), marked(happened("lost", "C")).standing)

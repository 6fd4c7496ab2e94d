"""What is printed of a job that is kept, and what other programs take."""

import io
import json
import zipfile
from dataclasses import replace
from pathlib import Path

import pytest

from at_desk import keep_small_job
from kept_jobs import bare_job, work_after
from plankwright import files
from plankwright.model import MarkKind
from plankwright.store import open_book
from plankwright.workshop.check_layout import FaultyLayoutError
from plankwright.workshop.jobs import papers
from plankwright.workshop.jobs.at_work import at_work
from plankwright.workshop.jobs.bring_job import bring_job
from plankwright.workshop.jobs.kept import KeptJob, NotThereError
from plankwright.workshop.jobs.papers import NotLaidOutError, maps_of, paper_of
from plankwright.workshop.jobs.ports import Store
from plankwright.workshop.jobs.take_along import folder_of
from plankwright.workshop.paper_size import PaperSize
from village import small_job


@pytest.fixture
def store(tmp_path: Path) -> Store:
    """Give a book of jobs."""
    return open_book(tmp_path / "jobs.db", files)


@pytest.fixture
def kept(store: Store, tmp_path: Path) -> KeptJob:
    """Give the small job, with its layout to work by."""
    return keep_small_job(store, tmp_path / "village")


def paper(kept: KeptJob, store: Store, name: str, size: PaperSize | None = None) -> bytes:
    """Make a paper."""
    return paper_of(kept, files, store, name, size)


def without_board(kept: KeptJob, store: Store) -> KeptJob:
    """Take a board out of the tally that the layout needs."""
    return store.change(kept.id, "board A taken out", lambda job: replace(job, boards=job.boards[1:]))


@pytest.mark.parametrize(
    ("name", "begins"),
    [
        ("sheets.pdf", b"%PDF-"),
        ("map-wall.svg", b"<svg"),
        ("map-wall.dxf", b"  0\nSECTION"),
        ("cut-list.csv", b"\xef\xbb\xbfboard,lot"),
        ("cut-list.xlsx", b"PK"),
        ("tally.csv", b"\xef\xbb\xbfid,lot"),
        ("tally.xlsx", b"PK"),
        ("layout.json", b"{"),
        ("job.zip", b"PK"),
    ],
)
def test_every_paper_can_be_had(kept: KeptJob, store: Store, name: str, begins: bytes) -> None:
    """Each as the program that takes it knows it; spreadsheets know UTF-8 by its mark."""
    assert paper(kept, store, name).startswith(begins)


def test_a_paper_that_is_none_is_not_there(kept: KeptJob, store: Store) -> None:
    """Nor is the map of a surface that the job has not, nor anything beside the job."""
    for name in ("map-ceiling.svg", "map-wall.pdf", "jobs.db", "../jobs.db", ""):
        with pytest.raises(NotThereError):
            paper(kept, store, name)


def test_without_a_layout_the_tally_can_be_had_and_nothing_else(store: Store) -> None:
    """And it is said what to do."""
    bare = store.add(bare_job("porch", *small_job().boards))
    assert b"\r\nA," in paper(bare, store, "tally.csv")
    for name in ("sheets.pdf", "cut-list.csv", "map-wall.svg", "job.zip", "layout.json"):
        with pytest.raises(NotLaidOutError, match="lay it out first"):
            paper(bare, store, name)


def test_nothing_is_made_of_a_layout_that_fits_no_longer(kept: KeptJob, store: Store) -> None:
    """Not even the layout itself; the tally is its own."""
    spoilt = without_board(kept, store)
    for name in ("sheets.pdf", "cut-list.csv", "cut-list.xlsx", "map-wall.svg", "layout.json", "job.zip"):
        with pytest.raises(FaultyLayoutError):
            paper(spoilt, store, name)
    assert paper(spoilt, store, "tally.csv")


def test_once_work_has_begun_papers_tell_what_is_left(kept: KeptJob, store: Store) -> None:
    """The cut list holds no cut that was made."""
    assert b"\r\nA," in paper(kept, store, "cut-list.csv")
    begun = store.change(
        kept.id, "piece 1a cut", lambda job: replace(job, work=work_after((MarkKind.CUT, "1a")))
    )
    assert b"\r\nA,floor,1,crosscut" not in paper(begun, store, "cut-list.csv")
    assert b"\r\nB," in paper(begun, store, "cut-list.csv")


def test_maps_fit_the_paper(kept: KeptJob, store: Store) -> None:
    """Letter with inches when nothing is said."""
    usual = paper(kept, store, "map-wall.svg")
    assert paper(kept, store, "map-wall.svg", PaperSize.LETTER) == usual
    assert paper(kept, store, "map-wall.svg", PaperSize.A4) != usual


def test_maps_are_named_by_their_surfaces(kept: KeptJob, store: Store) -> None:
    """One to look at, one for drawing programs."""
    at = at_work(kept, files, store)
    assert at is not None
    (made,) = maps_of(at)
    assert (made.surface_id, made.sheet, made.full_size) == ("wall", "map-wall.svg", "map-wall.dxf")


def test_the_pack_is_printed_once_until_something_is_another(
    kept: KeptJob, store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    """For each size of paper; a mark makes it another."""
    printed = []

    def stand_in(*_job: object, **_more: object) -> bytes:
        printed.append(_job)
        return b"%PDF- a pack"

    monkeypatch.setattr(papers, "print_sheets", stand_in)
    for size in (PaperSize.A4, PaperSize.A4, PaperSize.LETTER, PaperSize.A4):
        paper(kept, store, "sheets.pdf", size)
    assert len(printed) == 2
    begun = store.change(
        kept.id, "piece 1a cut", lambda job: replace(job, work=work_after((MarkKind.CUT, "1a")))
    )
    paper(begun, store, "sheets.pdf", PaperSize.A4)
    assert len(printed) == 3


def test_the_pack_tells_the_answer_and_the_news_that_came_with_the_layout(
    kept: KeptJob, store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    """They are kept with it, since nobody can find them out again without a search."""
    told: dict[str, object] = {}
    laid = store.keep_layout(
        kept.id, replace(store.layout(kept.id, kept.layout_id or 0), news=("Piece 1a is new.",))
    )
    other = store.change(kept.id, "another layout taken", lambda job: replace(job, layout_id=laid.id))

    def stand_in(*_job: object, **more: object) -> bytes:
        told.update(more)
        return b""

    monkeypatch.setattr(papers, "print_sheets", stand_in)
    paper(other, store, "sheets.pdf")
    assert (told["news"], told["answer"]) == (("Piece 1a is new.",), laid.answer)


def test_the_whole_job_is_a_folder_that_commands_and_the_app_read(
    kept: KeptJob, store: Store, tmp_path: Path
) -> None:
    """With the results where commands leave them; brought along, it is the same job with its layout."""
    packed = paper(kept, store, "job.zip")
    with zipfile.ZipFile(io.BytesIO(packed)) as archive:
        assert sorted(archive.namelist()) == [
            "job.toml",
            "out/cut-list.csv",
            "out/layout.json",
            "out/map-wall.dxf",
            "out/map-wall.svg",
            "out/sheets.pdf",
            "tally.csv",
        ]
        archive.extractall(tmp_path / "taken")
    assert files.read_job(tmp_path / "taken").job.boards == kept.boards
    laid = store.layout(kept.id, kept.layout_id or 0).layout
    assert files.read_layout(tmp_path / "taken" / "out" / "layout.json") == laid
    brought = bring_job(files, [("job.zip", packed)])
    assert (brought.job.boards, brought.layout) == (kept.boards, laid)
    assert paper(kept, store, "job.zip") == packed


def test_the_layout_is_the_one_that_the_folder_holds(kept: KeptJob, store: Store) -> None:
    """Word for word."""
    text = paper(kept, store, "layout.json").decode()
    assert text == folder_of(kept, files, store)["out/layout.json"]
    assert json.loads(text)["job"] == "village hall"

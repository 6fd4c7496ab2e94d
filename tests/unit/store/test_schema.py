"""Files of every version that was ever in use are brought up to today, with nothing lost.

`saved/version-1.sql` is what a file of version 1 held once `fill` had filled it; a later version gets one of
its own, made in the same way, and those that are here are never made anew.
"""

import sqlite3
from dataclasses import replace
from pathlib import Path

import pytest

from builders import board, flaw, nm
from kept_jobs import bare_job, whole_job, with_boards, work_after
from plankwright import files
from plankwright.model import EdgeKind, EdgeProfile, Face, MarkKind, NailsLeft, Severity
from plankwright.store import Book, open_book
from plankwright.store.database import connected, make_ready
from plankwright.store.schema import MIGRATIONS, VERSION
from plankwright.workshop.ask_enough import ask_enough
from plankwright.workshop.jobs.kept import KeptJob, KeptLayout, KeptSearch, Made, SearchState
from plankwright.workshop.jobs.wishes import PieceWish, Wishes
from village import short_result, small_job, small_layout, small_result

SAVED = Path(__file__).parent / "saved"

ODD = board(
    "Säle 3",
    97,
    5.25,
    width_end_nm=nm(5),
    profile=EdgeProfile(kind=EdgeKind.SHIPLAP, reach_nm=nm(0.25)),
    flaws=(flaw(3, 9), flaw(20, 24, Severity.BLEMISH, face=Face.FRONT)),
    lot="stage",
    species="spruce",
    tone="dark",
    note="left of the door; “old”",
    moisture_pct=11.5,
    nails=NailsLeft.PULLED,
    untreated=True,
)
WORK = work_after((MarkKind.HUNG, "1"), (MarkKind.CUT, "2a"))
WISHES = Wishes(kept=(PieceWish(surface_id="wall", label="2a", board_id="B"),), without=("C",))
FOUND = KeptLayout(
    layout=small_layout(),
    made=Made.SEARCHED,
    answer=ask_enough(small_job(), small_result()),
    minds=("A rip is narrow.",),
)
SHORT = KeptLayout(
    layout=short_result().layout,
    made=Made.AGAIN,
    answer=ask_enough(small_job(), short_result()),
    news=("Piece 2a is gone.",),
)


def fill(book: Book) -> None:
    """Keep a job that is worked on, with all that a file can hold, and one that was put away."""
    job = book.add(replace(whole_job(), id="hall"))
    found, short = book.keep_layout(job.id, FOUND), book.keep_layout(job.id, SHORT)
    book.change(
        job.id, "board Säle 3 added", lambda kept: with_boards(kept, *kept.boards, ODD), key="phone-1"
    )
    book.change(job.id, "laid out", lambda kept: replace(kept, layout_id=found.id))
    book.change(job.id, "wished", lambda kept: replace(kept, wishes=WISHES))
    book.change(job.id, "course 1 hung", lambda kept: replace(kept, work=WORK))
    book.change(job.id, "another layout", lambda kept: replace(kept, layout_id=short.id))
    book.undo(job.id)
    done = book.begin_search(KeptSearch(job_id=job.id, made=Made.SEARCHED, effort="steady", seed=3))
    book.note_search(done.id, stage="by patterns", done=0.5, told="all covered", best=small_layout())
    book.end_search(replace(done, state=SearchState.DONE, layout_id=found.id))
    book.begin_search(KeptSearch(job_id=job.id, made=Made.AROUND, effort="90s", wishes=WISHES.to_json()))
    book.add(replace(bare_job(), id="away"))
    book.put_away("away")
    book.setting("word", lambda: "let-me-in")


def expected() -> KeptJob:
    """Give the job as it must be read."""
    return replace(whole_job(*small_job().boards, ODD), id="hall", layout_id=1, work=WORK, wishes=WISHES)


@pytest.fixture(params=sorted(SAVED.glob("version-*.sql")), ids=lambda path: path.stem)
def saved(request: pytest.FixtureRequest, tmp_path: Path) -> Path:
    """Give a file of some version."""
    path = tmp_path / "jobs.db"
    database = sqlite3.connect(path)
    database.executescript(request.param.read_text(encoding="utf-8"))
    database.close()
    return path


def test_there_is_a_file_of_every_version() -> None:
    """Else it would not be known whether that one can still be read."""
    assert {path.name for path in SAVED.iterdir()} == {
        f"version-{number}.sql" for number in range(1, VERSION + 1)
    }


def test_a_job_is_read_as_it_was(saved: Path) -> None:
    """Every board, every mark, what is wished, and the layout that it is worked by."""
    assert open_book(saved, files).job("hall") == expected()


def test_its_layouts_are_read_as_they_were(saved: Path) -> None:
    """With their answers."""
    short, found = open_book(saved, files).layouts("hall")
    assert replace(found, id=0, at="") == FOUND
    assert replace(short, id=0, at="") == SHORT


def test_its_searches_are_read_as_they_were(saved: Path) -> None:
    """One that was done, and one that was under way."""
    book = open_book(saved, files)
    done, running = book.search(1), book.search(2)
    assert (done.state, done.layout_id, done.effort, done.seed) == (SearchState.DONE, 1, "steady", 3)
    assert (done.best, done.told, done.stage, done.done) == (
        small_layout(),
        "all covered",
        "by patterns",
        0.5,
    )
    assert running.state is SearchState.RUNNING
    assert Wishes.from_json(running.wishes) == WISHES
    assert book.cut_off_searches() == 1


def test_its_steps_can_be_taken_back_and_taken_again(saved: Path) -> None:
    """One by one, down to the job as it was first kept."""
    book = open_book(saved, files)
    names = ["course 1 hung", "wished", "laid out", "board Säle 3 added"]
    assert [step.what for step in book.changes("hall")] == names
    for name in names:
        undone = book.undo("hall")
        assert undone is not None
        assert undone.what == name
    assert book.job("hall") == replace(whole_job(), id="hall")
    for _ in range(5):
        book.redo("hall")
    assert book.job("hall") == replace(expected(), layout_id=2)


def test_a_step_that_a_phone_asks_for_once_more_is_still_known(saved: Path) -> None:
    """Its queue may be older than the program."""
    book = open_book(saved, files)
    again = book.change("hall", "board added", with_boards, key="phone-1")
    assert again == expected()


def test_what_was_put_away_and_what_holds_for_all_jobs_is_there(saved: Path) -> None:
    """A phone that was let in stays so."""
    book = open_book(saved, files)
    cards = {card.id: card for card in book.cards()}
    assert (cards["hall"].boards, cards["hall"].pieces, cards["hall"].hung) == (4, 2, 1)
    assert cards["away"].removed_at is not None
    book.bring_back("away")
    assert book.job("away").name == "porch"
    assert book.setting("word", lambda: "another") == "let-me-in"


def test_it_goes_on_as_a_file_of_today(saved: Path) -> None:
    """With new jobs, steps, layouts and searches."""
    book = open_book(saved, files)
    fill_again = book.add(whole_job())
    assert book.keep_layout(fill_again.id, FOUND).id == 3
    assert book.begin_search(KeptSearch(job_id="hall", made=Made.SEARCHED, effort="glance")).id == 3
    after = book.change("hall", "board out", lambda kept: with_boards(kept, *kept.boards[1:]))
    assert book.job("hall") == after


def test_its_tables_are_those_of_a_file_that_is_made_today(saved: Path, tmp_path: Path) -> None:
    """Whatever it was before."""
    open_book(saved, files)
    new = tmp_path / "new.db"
    make_ready(new)
    assert tables_of(saved) == tables_of(new)


def test_what_made_a_version_is_never_changed_once_it_is_in_use(tmp_path: Path) -> None:
    """Files that it made are there already: what is to be otherwise is another step."""
    for number in range(1, VERSION + 1):
        made, kept = tmp_path / f"made-{number}.db", tmp_path / f"kept-{number}.db"
        make_ready(made, MIGRATIONS[:number])
        database = sqlite3.connect(kept)
        database.executescript((SAVED / f"version-{number}.sql").read_text(encoding="utf-8"))
        database.close()
        assert tables_of(made) == tables_of(kept)


def tables_of(path: Path) -> dict[str, set[tuple[object, ...]]]:
    """Give the columns of each table of a file, in whatever order."""
    with connected(path) as database:
        names = [
            row["name"] for row in database.execute("SELECT name FROM sqlite_schema WHERE type = 'table'")
        ]
        return {
            name: {
                (row["name"], row["type"], row["notnull"], row["dflt_value"], row["pk"])
                for row in database.execute(f"PRAGMA table_info({name})")
            }
            for name in names
            if not name.startswith("sqlite_")
        }

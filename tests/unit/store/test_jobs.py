"""Jobs are kept whole, changed step by step, and each step is taken back exactly."""

import shutil
import tempfile
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, precondition, rule

from any_boards import piles
from builders import board
from kept_jobs import bare_job, plain, whole_job, with_boards, work_after
from plankwright import files
from plankwright.model import Board, MarkKind, Work
from plankwright.store import Book, open_book
from plankwright.workshop.jobs.choose_layout import work_by
from plankwright.workshop.jobs.kept import KeptJob, KeptLayout, Made, NotThereError, RefusedError
from plankwright.workshop.jobs.tally_boards import add_boards
from plankwright.workshop.jobs.wishes import NO_WISHES
from village import small_layout

Edit = Callable[[KeptJob], KeptJob]

BOTH_HUNG = work_after((MarkKind.HUNG, "1"), (MarkKind.HUNG, "2"))
NAMES = st.sampled_from(["A", "B", "D", "D16-2", "Säle 3", "=1+1", "board A", "mark 1"])
BOARDS = st.builds(lambda name, length: board(name, length, 5.25), NAMES, st.integers(10, 99))
LAID = KeptLayout(layout=small_layout(), made=Made.SEARCHED)


def adding(*names: str) -> Edit:
    """Add plain boards."""
    return lambda job: add_boards(job, [plain(name) for name in names])


def marking(work: Work | None) -> Edit:
    """Have something else marked."""
    return lambda job: replace(job, work=work)


def names_of(job: KeptJob) -> str:
    """Give what the boards are called, one after the other."""
    return " ".join(board.id for board in job.boards)


@given(piles(4))
@settings(max_examples=25)
def test_a_job_is_kept_as_it_is(pile: list[Board]) -> None:
    """With every board in its order, whatever it is, and once more when the file is opened again."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "jobs.db"
        kept = open_book(path, files).add(whole_job(*pile))
        assert kept == replace(whole_job(*pile), id=kept.id)
        assert open_book(path, files).job(kept.id) == kept


def test_a_job_gets_an_id_of_its_own(book: Book) -> None:
    """Unless it has one."""
    first, second = book.add(bare_job()), book.add(bare_job())
    assert first.id
    assert second.id not in {"", first.id}
    assert book.add(replace(bare_job(), id="abc")).id == "abc"


def test_a_job_that_is_not_there_is_told(book: Book) -> None:
    """Whatever is asked of it, in one sentence."""
    for ask in (book.job, book.undo, book.redo, book.put_away, book.bring_back, book.forget):
        with pytest.raises(NotThereError, match="There is no such job, or it was put away"):
            ask("nobody")
    with pytest.raises(NotThereError, match="no such job"):
        book.change("nobody", "a board added", adding("A"))


def test_a_step_gives_the_job_after_it(book: Book) -> None:
    """As it is read from the file afterwards."""
    job = book.add(whole_job())
    after = book.change(job.id, "board D added", adding("D"))
    assert names_of(after) == "A B C D"
    assert book.job(job.id) == after
    assert [step.what for step in book.changes(job.id)] == ["board D added"]


def test_a_step_that_fails_leaves_the_job_as_it_was(book: Book) -> None:
    """Nothing of it is kept, and there is nothing to take back."""
    job = book.add(whole_job())
    with pytest.raises(RefusedError):
        book.change(job.id, "boards added", adding("D", "A"))
    assert book.job(job.id) == job
    assert book.changes(job.id) == ()


def test_a_step_that_changes_nothing_is_none(book: Book) -> None:
    """Nobody wants to take back nothing; and what was taken back can still be taken again."""
    job = book.add(whole_job())
    book.change(job.id, "board D added", adding("D"))
    book.undo(job.id)
    assert book.change(job.id, "nothing", lambda kept: kept) == job
    assert book.changes(job.id) == ()
    assert book.redo(job.id) is not None
    assert names_of(book.job(job.id)) == "A B C D"


def test_there_is_nothing_to_take_back_at_first(book: Book) -> None:
    """Nor to take again."""
    job = book.add(whole_job())
    assert book.undo(job.id) is None
    assert book.redo(job.id) is None
    assert book.job(job.id) == job


def test_the_last_steps_come_first_and_no_more_than_asked(book: Book) -> None:
    """So many as a list shows."""
    job = book.add(whole_job())
    for name in "DEFG":
        book.change(job.id, f"board {name} added", adding(name))
    assert [step.what for step in book.changes(job.id, 2)] == ["board G added", "board F added"]
    assert len(book.changes(job.id)) == 4


def test_only_the_step_that_is_meant_is_taken_back_or_again(book: Book) -> None:
    """Whoever taps twice means the one that was shown."""
    job = book.add(whole_job())
    for name in "DE":
        book.change(job.id, f"board {name} added", adding(name))
    last, before = book.changes(job.id)
    assert book.undo(job.id, before.id) is None
    assert book.undo(job.id, last.id) == last
    assert book.undo(job.id, last.id) is None
    assert book.taken_back(job.id) == last
    assert names_of(book.job(job.id)) == "A B C D"
    assert book.redo(job.id, before.id) is None
    assert book.redo(job.id, last.id) == last
    assert book.taken_back(job.id) is None
    assert names_of(book.job(job.id)) == "A B C D E"


def test_a_new_step_after_one_was_taken_back_ends_what_could_be_taken_again(book: Book) -> None:
    """There is one way on."""
    job = book.add(whole_job())
    book.change(job.id, "board D added", adding("D"))
    book.undo(job.id)
    book.change(job.id, "board E added", adding("E"))
    assert book.redo(job.id) is None
    assert names_of(book.job(job.id)) == "A B C E"


def test_the_same_step_asked_for_twice_is_taken_once(book: Book) -> None:
    """The first answer was lost on the way to the phone; it is told how the job is now."""
    job = book.add(whole_job())
    first = book.change(job.id, "board D added", adding("D"), key="phone-1")
    book.change(job.id, "board E added", adding("E"), key="phone-2")
    again = book.change(job.id, "board D added", adding("D"), key="phone-1")
    assert names_of(first) == "A B C D"
    assert names_of(again) == "A B C D E"
    assert len(book.changes(job.id)) == 2


def test_a_step_that_was_taken_back_is_not_taken_again_by_its_key(book: Book) -> None:
    """Whoever took it back saw it."""
    job = book.add(whole_job())
    book.change(job.id, "board D added", adding("D"), key="phone-1")
    book.undo(job.id)
    assert book.change(job.id, "board D added", adding("D"), key="phone-1") == job


def test_keys_of_another_job_do_not_count(book: Book) -> None:
    """A phone may count them from 1 in each."""
    one, other = book.add(whole_job()), book.add(whole_job())
    book.change(one.id, "board D added", adding("D"), key="1")
    assert names_of(book.change(other.id, "board D added", adding("D"), key="1")) == "A B C D"


def test_boards_keep_their_places(book: Book) -> None:
    """One that is changed, called otherwise, taken out or brought back stands where it stood."""
    job = book.add(whole_job())
    book.change(job.id, "renamed", lambda kept: with_boards(kept, plain("A"), plain("X"), plain("C")))
    assert names_of(book.job(job.id)) == "A X C"
    book.change(job.id, "taken out", lambda kept: with_boards(kept, plain("A"), plain("C")))
    book.change(job.id, "added", adding("D"))
    assert names_of(book.job(job.id)) == "A C D"
    book.undo(job.id)
    book.undo(job.id)
    assert names_of(book.job(job.id)) == "A X C"
    book.undo(job.id)
    assert names_of(book.job(job.id)) == "A B C"


@given(st.permutations("ABCDEF"), st.integers(0, 6), st.permutations("ABCDEFGHI"), st.integers(0, 9))
@settings(max_examples=40)
def test_boards_stand_in_the_order_of_the_job(before: str, many: int, after: str, few: int) -> None:
    """Whatever a step does with them, and back again."""
    with tempfile.TemporaryDirectory() as folder:
        book = open_book(Path(folder) / "jobs.db", files)
        job = book.add(bare_job("porch", *map(plain, before[:many])))
        new = tuple(map(plain, after[:few]))
        assert book.change(job.id, "another order", lambda kept: with_boards(kept, *new)).boards == new
        assert book.job(job.id).boards == new
        book.undo(job.id)
        assert book.job(job.id) == job
        book.redo(job.id)
        assert book.job(job.id).boards == new


def test_marks_are_kept_and_taken_back(book: Book) -> None:
    """To the nanometre, with the boards that work began with."""
    job = book.add(whole_job())
    book.change(job.id, "course 1 hung", marking(replace(BOTH_HUNG, marks=BOTH_HUNG.marks[:1])))
    book.change(job.id, "course 2 hung", marking(BOTH_HUNG))
    assert book.job(job.id).work == BOTH_HUNG
    book.undo(job.id)
    assert book.job(job.id).work == replace(BOTH_HUNG, marks=BOTH_HUNG.marks[:1])
    book.undo(job.id)
    assert book.job(job.id).work is None


def test_work_goes_by_the_name_that_the_job_has(book: Book) -> None:
    """It would else not be that of the job any more once somebody calls the job otherwise."""
    job = book.add(whole_job())
    book.change(job.id, "course 1 hung", marking(BOTH_HUNG))
    book.change(
        job.id, "renamed", lambda kept: replace(kept, definition={**kept.definition, "name": "new hall"})
    )
    work = book.job(job.id).work
    assert work == replace(BOTH_HUNG, job_name="new hall")


def test_a_list_shows_how_far_each_job_is(book: Book) -> None:
    """Without reading all of it."""
    empty, whole = book.add(bare_job()), book.add(whole_job())
    laid = book.keep_layout(whole.id, LAID)
    book.change(whole.id, "laid out", lambda kept: work_by(kept, laid.id))
    book.change(whole.id, "course 1 hung", marking(replace(BOTH_HUNG, marks=BOTH_HUNG.marks[:1])))
    cards = {card.id: card for card in book.cards()}
    assert (cards[empty.id].name, cards[empty.id].boards, cards[empty.id].surfaces) == ("porch", 0, 0)
    card = cards[whole.id]
    assert (card.name, card.boards, card.surfaces, card.pieces, card.hung) == ("village hall", 3, 1, 2, 1)
    book.undo(whole.id)
    assert {card.id: card.hung for card in book.cards()}[whole.id] == 0


def test_the_job_that_was_changed_last_comes_first(book: Book, monkeypatch: pytest.MonkeyPatch) -> None:
    """And those that were put away come last."""
    times = iter(f"2026-11-27T08:00:{second:02}+00:00" for second in range(60))
    monkeypatch.setattr("plankwright.store.jobs.now", lambda: next(times))
    one, two, three = (book.add(bare_job(name)) for name in ("one", "two", "three"))
    book.change(one.id, "board A added", adding("A"))
    book.put_away(three.id)
    assert [(card.name, card.removed_at is None) for card in book.cards()] == [
        ("one", True),
        ("two", True),
        ("three", False),
    ]
    book.bring_back(three.id)
    book.undo(one.id)
    assert [card.name for card in book.cards()] == ["one", "three", "two"]
    assert two.id


def test_jobs_that_are_begun_within_a_second_have_an_order(book: Book) -> None:
    """The newest first."""
    names = [f"job {number}" for number in range(5)]
    for name in names:
        book.add(bare_job(name))
    assert [card.name for card in book.cards()] == names[::-1]


def test_a_job_that_was_put_away_comes_back_whole(book: Book) -> None:
    """With its steps; meanwhile it is not there."""
    job = book.add(whole_job())
    after = book.change(job.id, "board D added", adding("D"))
    book.put_away(job.id)
    with pytest.raises(NotThereError):
        book.job(job.id)
    with pytest.raises(NotThereError):
        book.change(job.id, "board E added", adding("E"))
    with pytest.raises(NotThereError):
        book.undo(job.id)
    with pytest.raises(NotThereError):
        book.put_away(job.id)
    book.bring_back(job.id)
    assert book.job(job.id) == after
    book.undo(job.id)
    assert book.job(job.id) == job
    with pytest.raises(NotThereError):
        book.bring_back(job.id)


def test_a_job_is_forgotten_for_good_only_once_it_was_put_away(book: Book) -> None:
    """With all that belongs to it, and nothing of another."""
    other, job = book.add(whole_job()), book.add(whole_job())
    laid = book.keep_layout(job.id, LAID)
    book.change(job.id, "laid out", lambda kept: work_by(kept, laid.id))
    book.change(job.id, "course 1 hung", marking(BOTH_HUNG))
    with pytest.raises(NotThereError):
        book.forget(job.id)
    book.put_away(job.id)
    book.forget(job.id)
    assert [card.id for card in book.cards()] == [other.id]
    with pytest.raises(NotThereError):
        book.bring_back(job.id)
    with book.reading() as database:
        for table in ("board", "mark", "layout", "step", "search"):
            owners = database.execute(f"SELECT DISTINCT job_id FROM {table}").fetchall()  # noqa: S608 - our own names
            assert {row["job_id"] for row in owners} <= {other.id}
    assert book.job(other.id) == other


@pytest.mark.usefixtures("impatient")
def test_who_reads_does_not_wait_for_who_writes(book: Book) -> None:
    """What was there before is read, until the step is whole."""
    job = book.add(whole_job())

    def look(kept: KeptJob) -> KeptJob:
        assert book.job(job.id) == job
        return with_boards(kept, plain("D"))

    assert names_of(book.change(job.id, "another tally", look)) == "D"


class Changing(RuleBasedStateMachine):
    """A job in the book, and beside it what it must be: the states before, the one now, those after."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = Path(tempfile.mkdtemp())
        self.book = open_book(self.folder / "jobs.db", files)
        self.now = self.book.add(whole_job())
        self.layouts = [None, *(self.book.keep_layout(self.now.id, LAID).id for _ in range(2))]
        self.before: list[KeptJob] = []
        self.after: list[KeptJob] = []

    def teardown(self) -> None:
        """Leave nothing behind."""
        shutil.rmtree(self.folder)

    def step(self, edit: Edit) -> None:
        """Take a step with both."""
        new = edit(self.now)
        assert self.book.change(self.now.id, "a step", edit) == new
        if new != self.now:
            self.before.append(self.now)
            self.after.clear()
        self.now = new

    @rule(board=BOARDS)
    def add_board(self, board: Board) -> None:
        """Add a board at the end."""
        if all(board.id != other.id for other in self.now.boards):
            self.step(lambda job: with_boards(job, *job.boards, board))

    @precondition(lambda self: self.now.boards)
    @rule(which=st.integers(0), board=BOARDS, name=NAMES)
    def change_board(self, which: int, board: Board, name: str) -> None:
        """Put a board in place of another; now and then it is called otherwise."""
        place = which % len(self.now.boards)
        taken = {other.id for other in self.now.boards}
        called = self.now.boards[place].id if name in taken else name
        changed = replace(board, id=called)
        self.step(lambda job: with_boards(job, *job.boards[:place], changed, *job.boards[place + 1 :]))

    @precondition(lambda self: self.now.boards)
    @rule(which=st.integers(0))
    def take_out_board(self, which: int) -> None:
        """Take a board out."""
        place = which % len(self.now.boards)
        self.step(lambda job: with_boards(job, *job.boards[:place], *job.boards[place + 1 :]))

    @rule(which=st.integers(0, 2))
    def choose_layout(self, which: int) -> None:
        """Work by another layout, or by none."""
        self.step(lambda job: replace(job, layout_id=self.layouts[which]))

    @rule(marks=st.integers(0, 3))
    def mark(self, marks: int) -> None:
        """Have so many things marked; or nothing at all, not even that work began."""
        self.step(marking(replace(BOTH_HUNG, marks=BOTH_HUNG.marks[: marks - 1]) if marks else None))

    @rule(board_id=st.sampled_from("AB"))
    def wish(self, board_id: str) -> None:
        """Wish that a board is left out, or take that back."""
        wished = NO_WISHES.leaving_out(board_id)
        self.step(lambda job: replace(job, wishes=NO_WISHES if job.wishes == wished else wished))

    @rule(kerf=st.sampled_from(['1/8"', "3 mm"]))
    def change_rules(self, kerf: str) -> None:
        """Say something else of the job."""
        self.step(lambda job: replace(job, definition={**job.definition, "rules": {"rip_kerf": kerf}}))

    @rule()
    def undo(self) -> None:
        """Take the last step back."""
        assert (self.book.undo(self.now.id) is None) == (not self.before)
        if self.before:
            self.after.append(self.now)
            self.now = self.before.pop()

    @rule()
    def redo(self) -> None:
        """Take the step again that was taken back last."""
        assert (self.book.redo(self.now.id) is None) == (not self.after)
        if self.after:
            self.before.append(self.now)
            self.now = self.after.pop()

    @rule()
    def open_again(self) -> None:
        """Close the book and open it."""
        self.book = open_book(self.folder / "jobs.db", files)

    @invariant()
    def it_is_as_it_must_be(self) -> None:
        """The book holds the state now, and so many steps can be taken back."""
        assert self.book.job(self.now.id) == self.now
        assert len(self.book.changes(self.now.id, 1_000)) == len(self.before)
        (card,) = self.book.cards()
        hung = 0 if self.now.work is None else sum(mark.kind is MarkKind.HUNG for mark in self.now.work.marks)
        assert (card.boards, card.hung) == (len(self.now.boards), hung)


TestChanging = Changing.TestCase
TestChanging.settings = settings(max_examples=20, stateful_step_count=25)

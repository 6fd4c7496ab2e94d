"""A job is brought along whole, or refused in sentences: whatever files somebody sends."""

import contextlib
import io
import zipfile
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kept_jobs import DEFINITION, work_after
from plankwright import files
from plankwright.errors import BadInputError, ExitCode, FileTroubleError, PlankwrightError
from plankwright.model import MarkKind
from plankwright.store import open_book
from plankwright.workshop.check_layout import FaultyLayoutError
from plankwright.workshop.go_together import BoardsMissingError, OtherLayoutError, SurfacesMissingError
from plankwright.workshop.jobs.bring_job import Brought, NothingBroughtError, Sent, bring_job, example_job
from plankwright.workshop.jobs.kept import Made
from village import JOB_TOML, TALLY_CSV, small_job, small_layout, spoilt_layout

JOB: Sent = ("job.toml", JOB_TOML.encode())
TALLY: Sent = ("tally.csv", TALLY_CSV.encode())
LAYOUT: Sent = ("layout.json", files.layout_to_json(small_layout()).encode())
WORK: Sent = ("work.json", files.work_to_json(work_after((MarkKind.HUNG, "1"))).encode())


def brought(*sent: Sent, units: str = "inches") -> Brought:
    """Bring files along."""
    return bring_job(files, sent, units=units)


def packed(*sent: Sent, name: str = "village.zip", how: int = zipfile.ZIP_DEFLATED) -> Sent:
    """Pack files into one."""
    content = io.BytesIO()
    with zipfile.ZipFile(content, "w", how) as archive:
        for inner, what in sent:
            archive.writestr(inner, what)
    return name, content.getvalue()


def below(folder: str, *sent: Sent) -> list[Sent]:
    """Put files into a folder."""
    return [(f"{folder}/{name}", content) for name, content in sent]


def refused(*sent: Sent) -> str:
    """Give the sentences with which files are refused; none names a folder of this machine."""
    with pytest.raises(PlankwrightError) as told:
        brought(*sent)
    assert told.value.exit_code != ExitCode.OUR_FAULT
    assert "/tmp" not in str(told.value)  # noqa: S108 - it is looked for, not used
    assert str(told.value)
    return str(told.value)


def test_a_job_and_its_tally_are_a_job() -> None:
    """Lengths get their units; it is not kept yet."""
    job = brought(JOB, TALLY).job
    assert (job.id, job.name, job.definition) == ("", "village hall", DEFINITION)
    assert job.boards == tuple(
        replace(one, lot=lot)
        for one, lot in zip(small_job().boards, ("floor", "floor", "stage"), strict=True)
    )
    assert brought(JOB, TALLY).layout is None


def test_the_example_is_a_job() -> None:
    """All of it is invented."""
    job = example_job(files)
    reading = files.read_definition(job.definition, job.boards)
    assert reading.job == files.read_job(files.example_folder()).job


@pytest.mark.parametrize("order", [(0, 1, 2, 3), (3, 2, 1, 0)])
def test_layout_and_marks_come_along(tmp_path: Path, order: Sequence[int]) -> None:
    """In whatever order they are sent; kept, the job is worked by that layout."""
    sent = [(JOB, TALLY, LAYOUT, WORK)[place] for place in order]
    found = brought(*sent)
    assert found.layout == small_layout()
    assert found.work == work_after((MarkKind.HUNG, "1"))
    book = open_book(tmp_path / "jobs.db", files)
    kept = found.keep(book)
    assert kept == book.job(kept.id)
    assert kept.work == found.work
    assert kept.layout_id is not None
    laid = book.layout(kept.id, kept.layout_id)
    assert (laid.layout, laid.made, laid.answer) == (small_layout(), Made.BROUGHT, None)


def test_a_job_without_a_layout_is_kept_without_a_step(tmp_path: Path) -> None:
    """There is nothing to take back."""
    book = open_book(tmp_path / "jobs.db", files)
    kept = brought(JOB, TALLY).keep(book)
    assert book.job(kept.id) == kept
    assert book.changes(kept.id) == ()


def test_a_layout_without_marks_comes_along() -> None:
    """Nothing was cut yet."""
    found = brought(JOB, TALLY, LAYOUT)
    assert found.layout == small_layout()
    assert found.work is None


def test_a_layout_that_breaks_a_rule_is_refused() -> None:
    """Nobody is to saw by it."""
    faulty = ("layout.json", files.layout_to_json(spoilt_layout()).encode())
    with pytest.raises(FaultyLayoutError):
        brought(JOB, TALLY, faulty)


def test_a_layout_that_does_not_heed_what_was_marked_comes_along() -> None:
    """A board broke just before it was taken along: what is left is laid out anew where it is brought."""
    broken = work_after((MarkKind.HUNG, "1"), (MarkKind.BROKE, "2a"))
    found = brought(JOB, TALLY, LAYOUT, ("work.json", files.work_to_json(broken).encode()))
    assert (found.layout, found.work) == (small_layout(), broken)


def test_marks_of_boards_that_the_tally_lacks_are_refused() -> None:
    """It is the tally of another day."""
    tally = ("tally.csv", TALLY_CSV.replace("A,floor", "X,floor").encode())
    with pytest.raises(BoardsMissingError, match="board A"):
        brought(JOB, tally, LAYOUT, WORK)


def test_a_layout_of_another_job_is_refused() -> None:
    """By the surfaces that it is of."""
    other = ("job.toml", JOB_TOML.replace('id = "wall"', 'id = "ceiling"').encode())
    with pytest.raises((OtherLayoutError, FaultyLayoutError)):
        brought(other, TALLY, LAYOUT)


def test_marks_of_another_job_are_refused() -> None:
    """By the surfaces that pieces hang on."""
    renamed = files.work_to_json(work_after((MarkKind.HUNG, "1"))).replace('"wall"', '"ceiling"')
    with pytest.raises(SurfacesMissingError, match="Pieces hang on surface ceiling"):
        brought(JOB, TALLY, LAYOUT, ("work.json", renamed.encode()))


def test_a_folder_that_is_packed_is_a_job() -> None:
    """However deep it lies in there, and whatever else does."""
    sheets = ("sheets.pdf", b"%PDF")
    for inner in (
        [JOB, TALLY, *below("out", LAYOUT, sheets), WORK],
        below("village", JOB, TALLY, *below("out", LAYOUT, sheets), WORK),
        below("my/jobs/village", JOB, TALLY, LAYOUT, WORK),
        [
            ("village\\JOB.TOML", JOB[1]),
            ("village\\Tally.CSV", TALLY[1]),
            ("village\\out\\layout.json", LAYOUT[1]),
        ],
    ):
        found = brought(packed(*inner))
        assert found.job == brought(JOB, TALLY).job
        assert found.layout == small_layout()


def test_a_folder_packed_without_compression_or_in_another_way_is_a_job() -> None:
    """As other programs pack."""
    for how in (zipfile.ZIP_STORED, zipfile.ZIP_BZIP2, zipfile.ZIP_LZMA):
        assert brought(packed(JOB, TALLY, how=how)).job.name == "village hall"


def test_of_one_name_the_shallowest_counts() -> None:
    """Results and what was before may lie in folders below."""
    before = ("layout.json", files.layout_to_json(spoilt_layout()).encode())
    inner = [*below("village/old", JOB, TALLY, before), *below("village", JOB, TALLY, LAYOUT)]
    for sent in (inner, inner[::-1]):
        assert brought(packed(*sent)).layout == small_layout()


def test_two_jobs_in_one_pack_are_not_mixed() -> None:
    """The boards of one on the wall of the other would be a job that nobody has."""
    other = ("job.toml", JOB_TOML.replace("village hall", "porch").encode())
    assert "several jobs: pack one" in refused(packed(*below("a", JOB, TALLY), *below("b", other, TALLY)))
    assert "without its tally" in refused(packed(*below("a", JOB), *below("a/b", ("tally.xlsx", b"x"))))


def test_what_a_pack_holds_besides_is_not_taken_for_it() -> None:
    """Another system packs notes of its own along."""
    noise = [("__MACOSX/village/._job.toml", b"\x00"), (".DS_Store", b"\x00"), ("notes.csv", b"a,b")]
    assert brought(packed(*below("village", JOB, TALLY), *noise)).job == brought(JOB, TALLY).job


@pytest.mark.parametrize("units", ["inches", "mm"])
def test_a_tally_alone_is_a_job_without_surfaces(units: str) -> None:
    """Called after the file; a number without a unit means what was said."""
    text = TALLY_CSV.replace("97,5-1/4,3/4", "970,130,20") if units == "mm" else TALLY_CSV
    job = brought(("C:\\piles\\Floor of the hall.CSV", text.encode()), units=units).job
    assert job.name == "floor of the hall"
    assert [one.id for one in job.boards] == ["A", "B", "C"]
    assert job.definition["surface"] == []
    assert files.read_definition(job.definition).unit is not None


@pytest.mark.parametrize(
    "name", ["  .csv", ".csv", "a" * 300 + ".csv", "\x00\x01.csv", "..\\..\\.csv", "con:?.csv", "ü\ud800.csv"]
)
def test_a_tally_may_be_called_anything(name: str) -> None:
    """The job has a name all the same."""
    job = brought((name, TALLY[1])).job
    assert 1 <= len(job.name) <= 60
    assert len(job.boards) == 3


def test_a_tally_beside_a_job_may_be_called_otherwise() -> None:
    """There is no other that could be meant."""
    assert brought(JOB, ("boards of the hall.csv", TALLY[1])).job == brought(JOB, TALLY).job
    assert brought(JOB, TALLY, ("prices.csv", b"a,b")).job == brought(JOB, TALLY).job


@pytest.mark.parametrize(
    ("sent", "told"),
    [
        ([], "No job is among these files"),
        ([("film.mov", b"x")], "No job is among these files"),
        ([("", b"x"), ("..", b"x"), ("/", b"x")], "No job is among these files"),
        ([LAYOUT, WORK], "No job is among these files"),
        ([("one.csv", TALLY[1]), ("two.csv", TALLY[1])], "No job is among these files"),
        ([JOB], "job.toml came without its tally: choose tally.csv or tally.xlsx as well"),
        ([JOB, ("a.csv", TALLY[1]), ("b.csv", TALLY[1])], "job.toml came without its tally"),
        ([JOB, TALLY, ("tally.xlsx", b"x")], "they may differ: keep one"),
        ([packed()], "No job is among these files"),
        ([("job.zip", b"PK no")], "job.zip cannot be unpacked: pack the job folder as .zip again"),
        ([("job.zip", b"")], "job.zip cannot be unpacked"),
        ([("job.toml", b"name ="), TALLY], "job.toml, line 1: cannot be read from here on"),
        ([JOB, ("tally.csv", b"id,length\n")], "tally.csv"),
        ([JOB, TALLY, ("layout.json", b"{")], "layout.json"),
        ([JOB, TALLY, LAYOUT, ("work.json", b"[]")], "work.json"),
        ([("tally.xlsx", b"PK\x03\x04 spoilt")], "tally.xlsx"),
    ],
)
def test_what_is_no_job_is_told(sent: list[Sent], told: str) -> None:
    """In sentences with what to do, and as bad input."""
    assert told in refused(*sent)


def test_odd_files_beside_a_job_are_no_matter() -> None:
    """Whatever they are called, they are not written anywhere."""
    odd = [("..", b"x"), ("a\x00b", b"x"), ("n" * 5_000, b"x"), ("con", b"x"), ("layout.json.txt", b"x")]
    assert brought(JOB, *odd, TALLY).job == brought(JOB, TALLY).job


def test_a_pack_that_would_grow_beyond_all_measure_is_not_unpacked() -> None:
    """By what it says of itself."""
    huge = [("tally.csv", b"\x00" * 21_000_000)]
    assert "holds more than a job folder does" in refused(packed(JOB, *huge))
    many = [(f"{number}/out/layout.json", b"") for number in range(300)]
    assert "holds more than a job folder does" in refused(packed(*many))
    assert len(packed(JOB, *huge)[1]) < 100_000


def test_a_pack_that_lies_about_its_size_is_refused() -> None:
    """No more is unpacked than it says."""
    name, content = packed(JOB, ("tally.csv", b"\x00" * 5_000_000))
    true, false = (size.to_bytes(4, "little") for size in (5_000_000, 50))
    assert content.count(true) == 2
    assert "cannot be unpacked" in refused((name, content.replace(true, false)))


def test_a_pack_within_a_pack_is_not_opened() -> None:
    """It is no job folder."""
    assert "No job is among these files" in refused(packed(packed(JOB, TALLY)))


def test_a_pack_with_a_password_is_refused() -> None:
    """It cannot be read."""
    name, content = packed(JOB, TALLY)
    locked = bytearray(content)
    for mark, at in ((b"PK\x03\x04", 6), (b"PK\x01\x02", 8)):
        place = content.find(mark)
        while place >= 0:
            locked[place + at] |= 1
            place = content.find(mark, place + 1)
    assert "cannot be unpacked" in refused((name, bytes(locked)))


PACKS = tuple(
    packed(JOB, TALLY, *below("out", LAYOUT), WORK, how=how)[1]
    for how in (zipfile.ZIP_DEFLATED, zipfile.ZIP_BZIP2, zipfile.ZIP_LZMA)
)


@given(st.sampled_from(PACKS), st.data())
@settings(max_examples=300)
def test_a_pack_that_was_spoilt_is_brought_or_refused(content: bytes, data: st.DataObject) -> None:
    """A byte here and there is another one."""
    spoilt = bytearray(content)
    for _ in range(data.draw(st.integers(1, 4))):
        spoilt[data.draw(st.integers(0, len(spoilt) - 1))] = data.draw(st.integers(0, 255))
    told(("village.zip", bytes(spoilt)))


NAMES = st.sampled_from(["job.toml", "tally.csv", "tally.xlsx", "layout.json", "work.json", "a.zip", "b.csv"])
CONTENTS = st.sampled_from([JOB[1], TALLY[1], LAYOUT[1], WORK[1], *PACKS, b""]) | st.binary(max_size=60)


@given(st.lists(st.tuples(NAMES | st.text(max_size=20), CONTENTS), max_size=5))
@settings(max_examples=200)
def test_any_files_are_brought_or_refused(sent: list[Sent]) -> None:
    """Whatever is sent under whatever name."""
    told(*sent)


def told(*sent: Sent) -> None:
    """Bring files along, and let nothing but errors for users pass, none of which names a folder of ours."""
    with contextlib.suppress(FaultyLayoutError, OtherLayoutError, SurfacesMissingError):
        try:
            assert brought(*sent).job.name
        except (BadInputError, FileTroubleError, NothingBroughtError) as trouble:
            if "/tmp" in str(trouble):  # noqa: S108 - it is looked for, not used
                raise

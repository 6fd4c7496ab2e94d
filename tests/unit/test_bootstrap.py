"""The rooms wired together, as Python sees them."""

from pathlib import Path

import pytest

import plankwright as pw
from builders import nm
from in_progress import begun_job, begun_layout
from plankwright import bootstrap, files
from plankwright.errors import BadInputError
from plankwright.layout import lay_out as search_layout
from plankwright.layout.result import EFFORTS, Effort, Watch
from plankwright.workshop.check_layout import FaultyLayoutError
from plankwright.workshop.lay_out import EffortError
from plankwright.workshop.mark_work import MarkError
from village import (
    StandInSearch,
    small_job,
    small_layout,
    small_result,
    spoilt_layout,
    write_small_job,
)


@pytest.fixture
def search(monkeypatch: pytest.MonkeyPatch) -> StandInSearch:
    """Put a stand-in in the place of the search."""
    stand_in = StandInSearch(small_result())
    monkeypatch.setattr(bootstrap, "search_for", stand_in)
    return stand_in


def test_the_bench_has_the_real_rooms_at_it() -> None:
    """Files and search."""
    bench = bootstrap.set_up_bench()
    assert bench.files is files
    assert bench.search is search_layout


def test_a_job_is_read_from_a_path_of_either_kind(tmp_path: Path) -> None:
    """Text or Path."""
    folder = write_small_job(tmp_path)
    assert pw.read_job(str(folder)).job == pw.read_job(folder).job
    assert {board.id for board in pw.read_job(folder).job.boards} == {"A", "B", "C"}


def test_bad_input_carries_its_problems(tmp_path: Path) -> None:
    """For whoever wants to show them elsewhere."""
    folder = write_small_job(tmp_path)
    (folder / "tally.csv").write_text("id,length,width,thickness\nA,long,5,1\n", encoding="utf-8")
    with pytest.raises(BadInputError) as caught:
        pw.read_job(folder)
    assert [problem.line for problem in caught.value.problems] == [2]


def test_a_tally_is_judged_beside_the_surfaces_of_its_job() -> None:
    """By the rules of the job."""
    judged = pw.judge_tally(small_job())
    assert judged.pile.boards == 3
    assert judged.to_cover_nm2 == 96 * 10 * 25_400_000**2


@pytest.mark.parametrize(
    ("effort", "meant"),
    [
        ("glance", EFFORTS["glance"]),
        ("2m", Effort(name="120 s", seconds=120, searches=2)),
        (EFFORTS["thorough"],) * 2,
    ],
)
def test_effort_may_be_a_word_a_time_or_a_value(
    search: StandInSearch, effort: str | Effort, meant: Effort
) -> None:
    """Each as the search takes it, with seed and watch."""
    watch = Watch()
    laid_out = pw.lay_out(small_job(), effort=effort, seed=3, watch=watch)
    assert laid_out.result == small_result()
    assert search.called_with == [(small_job(), meant, 3, watch)]


def test_an_effort_that_is_none_is_refused(search: StandInSearch) -> None:
    """Before anything is searched."""
    with pytest.raises(EffortError):
        pw.lay_out(small_job(), effort="quick")
    assert search.called_with == []


@pytest.mark.usefixtures("search")
def test_the_answer_reads_as_a_person_would_say_it() -> None:
    """Printed."""
    job = small_job()
    assert str(pw.ask_enough(job, pw.lay_out(job))).startswith("Enough: a layout was found that covers wall.")


def test_what_is_handed_out_can_be_read_again(tmp_path: Path) -> None:
    """The layout among it, on the paper asked for."""
    written = pw.hand_out(small_job(), small_layout(), tmp_path / "out", paper="a4")
    assert [file.name for file in written] == [
        "layout.json",
        "cut-list.csv",
        "map-wall.svg",
        "map-wall.dxf",
        "sheets.pdf",
    ]
    assert pw.read_layout(written[0]) == small_layout()
    assert 'width="297mm"' in written[2].read_text(encoding="utf-8")


def test_a_faulty_layout_is_not_handed_out(tmp_path: Path) -> None:
    """And the folder is not even made."""
    with pytest.raises(FaultyLayoutError):
        pw.hand_out(small_job(), spoilt_layout(), tmp_path / "out")
    assert not (tmp_path / "out").exists()


def test_a_word_that_is_no_mark_is_refused() -> None:
    """With those that are."""
    work = pw.read_work("nowhere", begun_job())
    with pytest.raises(MarkError, match=r"one of cut, hung, .* not “eaten”"):
        pw.mark_work(begun_job(), begun_layout(), work, "eaten", "1")


def test_a_job_in_progress_goes_on(tmp_path: Path) -> None:
    """Marked, laid out again, handed out, and what is left told."""
    job, laid = begun_job(), begun_layout()
    work = pw.read_work(tmp_path, job)
    assert not work.standing.begun
    work = pw.mark_work(job, laid, work, "hung", "1", edge_nm=nm(6.125))
    work = pw.mark_work(job, laid, work, "hung", "1a", off_nm=nm(0.0625))
    work = pw.mark_work(job, laid, work, "miscut", "4a", length_nm=nm(36))
    work = pw.mark_work(job, laid, work, "lost", "C")
    assert work.standing.hung_on("wall")[0].to_nm == nm(6.0625)
    files.write_work(tmp_path, work)
    assert pw.read_work(str(tmp_path), job) == work
    now = pw.what_now(job, laid, work, effort="glance")
    assert now.result.layout.covers_everything
    written = pw.hand_out(job, now.result.layout, tmp_path / "out", work=work)
    assert {path.name for path in written} >= {"layout.json", "sheets.pdf"}
    assert pw.left_over(job, now.result.layout, work).boards
    assert pw.left_over(job, laid).whole == ("wide",)

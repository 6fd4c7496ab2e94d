"""Job folders are read whole, or refused with every problem of both files."""

from itertools import pairwise
from pathlib import Path

import pytest

from job_texts import JOB
from plankwright.check import FindingSeverity, check_layout
from plankwright.errors import BadInputError, FileTroubleError
from plankwright.files import read_job, read_layout
from plankwright.measure import INCH, MILLIMETRE

ROOT = Path(__file__).parents[3]
TALLY = "id,length,width,thickness\nA,96,6,3/4\n"


def folder(path: Path, **files: str) -> Path:
    """Write a job folder; a name is given with an underscore for its dot."""
    for name, text in files.items():
        (path / name.replace("_", ".")).write_text(text, encoding="utf-8")
    return path


def test_a_job_is_both_its_files(tmp_path: Path) -> None:
    """With the boards of the tally, and names in any case."""
    reading = read_job(folder(tmp_path, JOB_TOML=JOB, Tally_CSV=TALLY))
    assert (reading.job.name, reading.remarks) == ("hall", ())
    assert [(board.id, board.length_nm) for board in reading.job.boards] == [("A", 96 * INCH)]


def test_the_tally_follows_the_units_of_the_job(tmp_path: Path) -> None:
    """Bare numbers and decimal commas mean the same in both."""
    job = "decimal_comma = true\n" + JOB.replace('"inches"', '"mm"').replace("= 16", "= 400")
    reading = read_job(
        folder(tmp_path, job_toml=job, tally_csv='id,length,width,thickness\nA,"2400,5",150,19\n')
    )
    assert reading.job.boards[0].length_nm == 2400 * MILLIMETRE + MILLIMETRE // 2


def test_units_that_cannot_be_read_make_no_board_too_large(tmp_path: Path) -> None:
    """Millimetres taken for inches would spoil every row besides."""
    bad = folder(
        tmp_path,
        job_toml=JOB.replace("inches", "millimetres"),
        tally_csv="id,length,width,thickness\nA,2440,140,19\n",
    )
    with pytest.raises(BadInputError) as caught:
        read_job(bad)
    assert [problem.file for problem in caught.value.problems] == ["job.toml"]


def test_problems_of_both_files_come_together(tmp_path: Path) -> None:
    """First those of the job, then those of the tally; unknown units spoil no row of it."""
    bad = folder(tmp_path, job_toml=JOB.replace("inches", "ells"), tally_csv=TALLY + "B,96,,1\n")
    with pytest.raises(BadInputError) as caught:
        read_job(bad)
    assert [(problem.file, problem.line) for problem in caught.value.problems] == [
        ("job.toml", 2),
        ("tally.csv", 3),
    ]


def test_a_job_that_is_no_toml_does_not_hide_the_tally(tmp_path: Path) -> None:
    """The tally is judged all the same."""
    with pytest.raises(BadInputError) as caught:
        read_job(folder(tmp_path, job_toml="name = ", tally_csv=TALLY + "A,96,6,1\n"))
    assert [problem.file for problem in caught.value.problems] == ["job.toml", "tally.csv"]


def test_holding_every_board_back_is_told(tmp_path: Path) -> None:
    """On its line in the job, although it takes both files to see it."""
    job = JOB + "[rules]\nhold_back = 1\n"
    with pytest.raises(
        BadInputError, match=r"line 11: hold_back keeps 1 of 1 boards, so none is left: keep fewer"
    ):
        read_job(folder(tmp_path, job_toml=job, tally_csv=TALLY))
    read_job(folder(tmp_path, job_toml=job, tally_csv=TALLY + "B,96,6,3/4\n"))


def test_two_tallies_are_told(tmp_path: Path) -> None:
    """Nobody guesses which one is right."""
    with pytest.raises(
        BadInputError, match=r"there are both tally\.csv and tally\.xlsx beside it, and they may differ"
    ):
        read_job(folder(tmp_path, job_toml=JOB, tally_csv=TALLY, tally_xlsx="x"))


@pytest.mark.parametrize(
    ("files", "sentence"),
    [
        ({}, "holds no job.toml: name a job folder, or start one from the templates"),
        ({"job_toml": JOB}, "holds no tally: put the boards into tally.csv or tally.xlsx there."),
        ({"job_toml": JOB, "tally_ods": ""}, "there (tally.ods cannot be read: save it as one of these)."),
    ],
)
def test_missing_files_are_told(tmp_path: Path, files: dict[str, str], sentence: str) -> None:
    """They are file trouble, with what to do."""
    with pytest.raises(FileTroubleError) as caught:
        read_job(folder(tmp_path, **files))
    assert sentence in str(caught.value)


def test_a_folder_that_is_none_is_told(tmp_path: Path) -> None:
    """A missing one, and a file."""
    with pytest.raises(
        FileTroubleError, match=r"is not there: name the folder that holds job\.toml and the tally"
    ):
        read_job(tmp_path / "nothing")
    (tmp_path / "file").touch()
    with pytest.raises(FileTroubleError, match="is a file: name the folder that it lies in"):
        read_job(tmp_path / "file")


def test_a_folder_that_may_not_be_looked_into_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """With the reason that the system gives."""

    def refuse(_self: Path) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "iterdir", refuse)
    with pytest.raises(FileTroubleError, match=r"cannot be looked into \(permission denied\)"):
        read_job(tmp_path)


def test_the_village_hall_is_read() -> None:
    """Its gable, three lots, a good third of its boards with flaws, and two that are hardly of use."""
    reading = read_job(ROOT / "examples" / "village-hall")
    (wall,) = reading.job.surfaces
    boards = reading.job.boards
    assert [remark.what.split()[1] for remark in reading.remarks] == ["F25", "F26"]
    assert all("no clear run as long as shortest_piece" in remark.what for remark in reading.remarks)
    assert (wall.width_nm, wall.height_nm, len(wall.outline)) == (192 * INCH, 138 * INCH, 5)
    assert {board.lot for board in boards} == {"hall floor", "dado", "stage front"}
    assert len(boards) / 3 <= sum(bool(board.flaws) for board in boards) <= len(boards) / 2
    assert all(36 * INCH <= board.length_nm <= 144 * INCH for board in boards)
    assert all(4 * INCH <= board.narrowest_width_nm <= 9 * INCH for board in boards)
    centres = [member.centre_nm for member in wall.crossing_members]
    assert len({right - left for left, right in pairwise(centres)}) > 5


def test_the_village_hall_can_be_covered() -> None:
    """Its boards were made up around this layout, and some more: it breaks no rule and covers all."""
    job = read_job(ROOT / "examples" / "village-hall").job
    planted = read_layout(Path(__file__).parent / "village_hall_planted.json")
    assert planted.covers_everything
    assert [
        finding for finding in check_layout(job, planted) if finding.severity is FindingSeverity.ERROR
    ] == []


def test_the_small_ceiling_is_read() -> None:
    """Metric, with a decimal comma, on solid backing."""
    reading = read_job(ROOT / "examples" / "small-ceiling")
    (ceiling,) = reading.job.surfaces
    assert reading.remarks == ()
    assert (ceiling.width_nm, ceiling.height_nm) == (2200 * MILLIMETRE, 1600 * MILLIMETRE)
    assert ceiling.framing.solid
    assert len(reading.job.boards) == 22

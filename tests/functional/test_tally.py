"""`plankwright tally`: what the pile holds."""

import json
from pathlib import Path

import pytest

from commanding import Run


def test_a_folder_is_judged_beside_its_surfaces(run: Run, village: Path) -> None:
    """3 boards of 97 in by 5-1/4 in are 10.6 sq ft; less 1 in of length and 1/4 in of width each, 10.0."""
    ran = run("tally", village)
    assert ran.code == 0
    assert ran.err == ""
    assert ran.out.startswith("Three boards, 24' 3\" end to end, 10.6 sq ft of face.\n")
    assert "10.0 sq ft of it can be hung: a recovery of 94 %." in ran.out
    assert "To be covered: 6.7 sq ft. Whether that is enough, no sum of areas can say" in ran.out
    assert "stage        1" in ran.out


def test_a_file_alone_is_judged_by_the_usual_rules(run: Run, village: Path) -> None:
    """There is nothing to be covered then."""
    ran = run("tally", village / "tally.csv", "--unit", "in")
    assert ran.code == 0
    assert "Three boards" in ran.out
    assert "To be covered" not in ran.out


def test_a_file_without_units_is_asked_about(run: Run, village: Path) -> None:
    """Every length at once, and in the end the way to settle them together."""
    ran = run("tally", village / "tally.csv")
    assert ran.code == 2
    assert ran.out == ""
    assert "tally.csv, line 2: the length" in ran.err
    assert "tally.csv, line 4: the thickness" in ran.err
    assert (
        ran.err.splitlines()[-1]
        == "If all bare numbers are of one unit, name it: --unit in, ft, mm, cm or m."
    )


def test_a_comma_may_be_the_decimal_mark(run: Run, tmp_path: Path) -> None:
    """2,44 m is 2440 mm."""
    file = tmp_path / "tally.csv"
    file.write_text("id;length;width;thickness\nA;2,44 m;140 mm;21 mm\n", encoding="utf-8")
    ran = run("tally", file, "--decimal-comma")
    assert ran.code == 0
    assert "2440 mm end to end" in ran.out


def test_doubtful_rows_are_part_of_the_answer(run: Run, village: Path) -> None:
    """With the line to look at."""
    with (village / "tally.csv").open("a", encoding="utf-8") as tally:
        tally.write("D,stage,97,5-1/4,6,\n")
    ran = run("tally", village)
    assert ran.code == 0
    assert "Look again: tally.csv, line 5: board D" in ran.out


def test_every_bad_row_is_told_at_once(run: Run, village: Path) -> None:
    """In both files, each with its place."""
    (village / "tally.csv").write_text(
        "id,length,width,thickness\nA,long,5,3/4\nB,97,,3/4\nC,97,5,thin\n", encoding="utf-8"
    )
    (village / "job.toml").write_text(
        (village / "job.toml").read_text(encoding="utf-8").replace("width = 96", 'width = "wide"'),
        encoding="utf-8",
    )
    ran = run("tally", village)
    assert ran.code == 2
    assert ran.out == ""
    assert [line.split(":")[0] for line in ran.err.splitlines()] == [
        "job.toml, line 8",
        "tally.csv, line 2",
        "tally.csv, line 3",
        "tally.csv, line 4",
    ]


def test_a_script_gets_the_problems_too(run: Run, village: Path) -> None:
    """On stdout as JSON, with the line as a number."""
    (village / "tally.csv").write_text("id,length,width,thickness\nA,long,5,3/4\n", encoding="utf-8")
    ran = run("tally", village, "--json")
    assert ran.code == 2
    (problem,) = json.loads(ran.out)["problems"]
    assert (problem["file"], problem["line"]) == ("tally.csv", 2)
    assert "long" in problem["what"]


@pytest.mark.parametrize("name", ["nowhere", "nowhere.csv"])
def test_what_is_not_there_is_file_trouble(run: Run, tmp_path: Path, name: str) -> None:
    """Named in one sentence."""
    ran = run("tally", tmp_path / name)
    assert ran.code == 3
    assert name in ran.err
    assert len(ran.err.splitlines()) == 1


def test_an_empty_folder_says_what_it_lacks(run: Run, tmp_path: Path) -> None:
    """A job.toml, first of all."""
    ran = run("tally", tmp_path)
    assert ran.code == 3
    assert "job.toml" in ran.err


def test_a_script_gets_the_sums(run: Run, village: Path) -> None:
    """Lengths in nm, 25 400 000 to the inch; areas in mm², 645.16 to the square inch."""
    answer = json.loads(run("tally", village, "--json").out)
    assert answer["pile"]["boards"] == 3
    assert answer["pile"]["length_nm"] == 3 * 97 * 25_400_000
    assert answer["pile"]["face_mm2"] == round(3 * 97 * 5.25 * 645.16)
    assert [lot["lot"] for lot in answer["lots"]] == ["floor", "stage"]
    assert answer["to_cover_mm2"] == round(96 * 10 * 645.16)
    assert answer["width_classes"][0]["boards"] == 3
    assert answer["longest_clear_runs"][0]["length_nm"] == 96 * 25_400_000


def test_boards_that_give_nothing_are_named(run: Run, village: Path) -> None:
    """They count as pulled all the same."""
    with (village / "tally.csv").open("a", encoding="utf-8") as tally:
        tally.write("D,stage,12,5-1/4,3/4\n")
    ran = run("tally", village)
    assert "Four boards" in ran.out
    assert "Nothing long and wide enough comes out of D." in ran.out


def test_a_bad_row_of_a_file_with_a_unit_gets_no_hint_on_units(run: Run, tmp_path: Path) -> None:
    """It would lead astray."""
    file = tmp_path / "tally.csv"
    file.write_text("id,length,width,thickness\nA,long,5,1\n", encoding="utf-8")
    ran = run("tally", file, "--unit", "in")
    assert ran.code == 2
    assert "--unit" not in ran.err


def test_options_for_a_file_are_refused_for_a_folder(run: Run, village: Path) -> None:
    """Left unsaid, somebody would take the numbers for what the option asked."""
    ran = run("tally", village, "--unit", "mm")
    assert ran.code == 2
    assert "in a FOLDER, job.toml says both" in ran.err


def test_the_unit_is_only_suggested_where_one_is_missing(run: Run, tmp_path: Path) -> None:
    """An empty file lacks something else."""
    file = tmp_path / "tally.csv"
    file.touch()
    assert "--unit" not in run("tally", file).err

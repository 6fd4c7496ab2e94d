"""`plankwright enough`: is the pile enough?"""

import json
from dataclasses import replace
from pathlib import Path

import pytest

from commanding import Run
from plankwright.layout.result import EFFORTS, Result
from plankwright.model import Layout
from village import StandInSearch, short_result, small_result


def test_yes_leaves_code_0_and_says_what_is_spare(run: Run, village: Path) -> None:
    """Nothing but the answer is said when piped."""
    ran = run("enough", village)
    assert ran.code == 0
    assert ran.err == ""
    assert ran.out.splitlines() == [
        "Enough: a layout was found that covers wall.",
        "wall: all 6.7 sq ft covered.",
        "wall: No joint is in sight.",
        "wall: Wood spent: 7.1 sq ft.",
        'Spare: one whole board, C (8\' 0" × 5").',
    ]


def test_no_leaves_code_1_and_says_what_is_wanted(run: Run, village: Path) -> None:
    """Both the cover and the list that closes it."""
    ran = run("enough", village, search=StandInSearch(short_result()))
    assert ran.code == 1
    assert "Not enough: no layout of this pile covers all of wall." in ran.out
    assert "wall: 3.3 sq ft of 6.7 sq ft covered (50 %)." in ran.out
    assert "\nWanted to close what is bare, as they come, before trimming:\n- 1 board of at least" in ran.out
    assert '\n- 1 board of at least 8\' 1" by 5-1/4"\n' in ran.out
    assert "A layout with these boards was made, and it covers everything." in ran.out


def test_nothing_is_written(run: Run, village: Path) -> None:
    """It only answers."""
    before = sorted(village.iterdir())
    run("enough", village)
    assert sorted(village.iterdir()) == before


def test_effort_and_seed_reach_the_search(run: Run, village: Path) -> None:
    """By option."""
    search = StandInSearch(small_result())
    run("enough", village, "--effort", "thorough", "--seed", 7, search=search)
    ((_, effort, seed, _),) = search.called_with
    assert (effort, seed) == (EFFORTS["thorough"], 7)


def test_effort_and_seed_may_be_set_once_for_all(
    run: Run, village: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """By variable; an option on the spot comes before it."""
    monkeypatch.setenv("PLANKWRIGHT_EFFORT", "90s")
    monkeypatch.setenv("PLANKWRIGHT_SEED", "3")
    search = StandInSearch(small_result())
    run("enough", village, "--seed", 4, search=search)
    ((_, effort, seed, _),) = search.called_with
    assert (effort.seconds, seed) == (90, 4)


def test_without_effort_the_search_is_steady(run: Run, village: Path) -> None:
    """As the help says."""
    search = StandInSearch(small_result())
    run("enough", village, search=search)
    assert search.called_with[0][1] == EFFORTS["steady"]


@pytest.mark.parametrize("effort", ["quick", "0", "-3", "3h"])
def test_an_effort_that_is_none_is_refused(run: Run, village: Path, effort: str) -> None:
    """With the ways to write one, and before anything is searched."""
    search = StandInSearch(small_result())
    ran = run("enough", village, f"--effort={effort}", search=search)
    assert ran.code == 2
    assert "use glance, steady, thorough, or a time" in ran.err
    assert search.called_with == []


@pytest.mark.parametrize("seed", ["-1", "x", "2147483648"])
def test_a_seed_that_is_none_is_refused(run: Run, village: Path, seed: str) -> None:
    """With the name of the option."""
    ran = run("enough", village, f"--seed={seed}")
    assert ran.code == 2
    assert "--seed" in ran.err


def test_a_missing_job_is_file_trouble(run: Run, tmp_path: Path) -> None:
    """Named in a sentence."""
    ran = run("enough", tmp_path / "nowhere")
    assert ran.code == 3
    assert "nowhere" in ran.err


def test_stopped_without_any_layout_leaves_code_130(run: Run, village: Path) -> None:
    """There is nothing to answer from."""
    nothing = Result(layout=Layout(job_name="village hall", surfaces=()), stopped=True)
    ran = run("enough", village, search=StandInSearch(nothing))
    assert ran.code == 130
    assert ran.out == ""
    assert "Stopped before any layout was found" in ran.err


def test_remarks_on_the_files_go_to_stderr_unless_quiet(run: Run, village: Path) -> None:
    """So that the answer on stdout stays the answer."""
    with (village / "tally.csv").open("a", encoding="utf-8") as tally:
        tally.write("D,stage,97,5-1/4,6,\n")
    assert "Look again: tally.csv, line 5" in run("enough", village).err
    assert run("enough", village, "--quiet").err == ""


def test_a_script_gets_values(run: Run, village: Path) -> None:
    """The verdict, the wanted list in nanometres, and what no layout beats."""
    ran = run("enough", village, "--json", search=StandInSearch(short_result()))
    answer = json.loads(ran.out)
    assert ran.code == 1
    assert answer["verdict"] == "not enough"
    assert answer["wanted"] == [
        {
            "count": 1,
            "length_nm": 97 * 25_400_000,
            "width_nm": 133_350_000,
            "thickness_nm": None,
            "edge": None,
        }
    ]
    assert answer["wanted_closes"] is True
    (wall,) = answer["surfaces"]
    assert wall["bare_mm2"] == wall["no_layout_beats"]["bare_mm2"] == round(96 * 5 * 645.16)
    assert answer["spare_boards"] == ["B", "C"]
    assert answer["stopped"] is False


def test_what_the_checker_warns_of_is_told(run: Run, village: Path) -> None:
    """A warning stops nothing; somebody should mind it."""
    result = small_result()
    other = replace(result, layout=replace(result.layout, job_name="school"))
    ran = run("enough", village, search=StandInSearch(other))
    assert ran.code == 0
    assert "\nMind: " in ran.out
    assert "school" in ran.out

"""What job.toml says, apart from the file: read as far as it goes, settled, and written back."""

import tempfile
import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from any_boards import boards
from any_definitions import definitions
from builders import board, nm
from job_texts import BOX, JOB
from plankwright.errors import BadInputError, FileTroubleError
from plankwright.files import definition_of, definition_toml, read_definition, read_job, settled
from plankwright.measure import MILLIMETRE, Unit
from plankwright.model import Board

ROOT = Path(__file__).parents[3]
SMALL = tomllib.loads(JOB)
BARE: dict[str, Any] = {"name": "porch", "units": "inches", "surface": []}
PILE = (board("A", 97, 5.25), board("B", 97, 5.25))


def written(folder: Path, definition: dict[str, Any], tally: str) -> Path:
    """Write a job folder."""
    (folder / "job.toml").write_text(definition_toml(definition), encoding="utf-8", newline="\n")
    (folder / "tally.csv").write_text(tally, encoding="utf-8", newline="\n")
    return folder


def told(definition: dict[str, Any]) -> list[tuple[str, str]]:
    """Give the places and the sentences with which a definition is refused."""
    with pytest.raises(BadInputError) as refused:
        settled(definition)
    return [(problem.place, problem.what) for problem in refused.value.problems]


@given(definitions())
@settings(max_examples=60)
def test_what_is_settled_says_the_same(definition: dict[str, Any]) -> None:
    """Every part of it, to the nanometre; and settling it once more changes nothing."""
    once = settled(definition)
    before, after = (read_definition(one, PILE) for one in (definition, once))
    assert after.problems == before.problems == ()
    assert after.job == before.job
    assert settled(once) == once


@given(definitions(), st.sampled_from(["inches", "mm", "m"]))
@settings(max_examples=40)
def test_what_is_settled_does_not_hang_on_the_unit(definition: dict[str, Any], units: str) -> None:
    """Every length in it names its own."""
    once = settled(definition)
    once.pop("fraction", None)
    once.pop("millimetre_step", None)
    other = {**once, "units": units}
    assert read_definition(other, PILE).job.surfaces == read_definition(once, PILE).job.surfaces
    assert read_definition(other, PILE).rules == read_definition(once, PILE).rules


@given(definitions(), st.lists(boards(), min_size=1, max_size=4, unique_by=lambda one: one.id.lower()))
@settings(max_examples=25)
def test_a_job_that_is_written_is_read_as_the_same(definition: dict[str, Any], pile: list[Board]) -> None:
    """The definition as job.toml, the boards as tally.csv."""
    once = settled(definition)
    reading = read_definition(once, pile)
    if reading.problems:  # Nothing of the pile may be left that could hang.
        return
    with tempfile.TemporaryDirectory() as made:
        folder = written(Path(made), once, reading.tally_csv())
        assert read_job(folder).job == reading.job
        assert definition_of(folder) == once


@pytest.mark.parametrize("folder", sorted((ROOT / "examples").iterdir()), ids=lambda path: path.name)
def test_the_examples_are_read_as_from_their_files(folder: Path) -> None:
    """With the tally that lies beside them."""
    job = read_job(folder).job
    reading = read_definition(definition_of(folder), job.boards)
    assert reading.job == job
    assert reading.problems == ()
    assert reading.name == job.name


def test_what_it_says_can_be_asked_one_by_one() -> None:
    """Before there is a board."""
    reading = read_definition(
        {**SMALL, "lot": [{"name": "floor", "paint": "lead"}], "rules": {"rip_kerf": "3 mm"}}
    )
    assert reading.name == "hall"
    assert reading.unit is Unit.INCH
    assert not reading.decimal_comma
    assert [surface.id for surface in reading.surfaces] == ["wall"]
    assert [lot.name for lot in reading.lots] == ["floor"]
    assert reading.rules.rip_kerf_nm == 3 * MILLIMETRE
    assert reading.read_length("8-1/2") == nm(8.5)
    assert reading.write_length(nm(8.5)) == '8-1/2"'
    assert reading.tape.denominator == 16


def test_what_is_not_there_yet_is_told_only_when_a_job_is_wanted() -> None:
    """A job begins without a surface and without a board."""
    reading = read_definition(BARE)
    assert reading.surfaces == ()
    assert [str(problem) for problem in reading.problems] == [
        "the job: no surface is measured yet",
        "the tally: no board is measured yet",
    ]
    with pytest.raises(BadInputError, match="no surface is measured yet"):
        _ = reading.job
    assert [problem.what for problem in read_definition(SMALL).problems] == ["no board is measured yet"]
    assert read_definition(BARE, PILE).problems[0].what == "no surface is measured yet"


@pytest.mark.parametrize("surfaces", [{}, {"surface": []}])
def test_a_definition_without_surfaces_can_be_settled(surfaces: dict[str, Any]) -> None:
    """It is how a job begins."""
    bare = {"name": " porch ", "units": "inches", **surfaces}
    assert settled(settled(bare)) == settled(bare)
    assert settled(bare)["name"] == "porch"


def test_what_is_wrong_beside_missing_surfaces_is_told_alone() -> None:
    """That surfaces are still to come is no news."""
    assert told({**BARE, "units": "furlongs"})[0][1].startswith("units is “furlongs” but must be")
    assert len(told({**BARE, "units": "furlongs"})) == 1
    assert [what for _, what in told({**BARE, "name": ""})] == ["name is empty: give it a name"]


@pytest.mark.parametrize(
    ("change", "place"),
    [
        ({"surface": [{**SMALL["surface"][0], "width": "wide"}]}, "surface wall"),
        ({"surface": [*SMALL["surface"], {"width": 7}]}, "surface 2"),
        ({"surface": [{**SMALL["surface"][0], "framing": {"spacing": "x"}}]}, "surface wall, framing"),
        ({"surface": [{**SMALL["surface"][0], "trim": {"top": "x"}}]}, "surface wall, trim"),
        (
            {"surface": [{**SMALL["surface"][0], "opening": [{"id": "door", "left": "x"}]}]},
            "surface wall, opening door",
        ),
        (
            {"surface": [{**SMALL["surface"][0], "cut_out": [{"what": "socket"}]}]},
            "surface wall, cut-out socket",
        ),
        ({"surface": [{**SMALL["surface"][0], "keep_out": [{}, {}]}]}, "surface wall, keep-out 1"),
        ({"surface": [{**SMALL["surface"][0], "concealed": [{"left": 1}]}]}, "surface wall, fixture 1"),
        ({"rules": {"rip_kerf": "x"}}, "rules"),
        ({"saw": [{"name": "mitre saw", "cuts": "both", "capacity": 8}]}, "saw mitre saw"),
        ({"lot": [{"name": "floor", "paint": "red"}]}, "lot floor"),
        ({"room": {}}, "room"),
        ({"house": {"built": "long ago"}}, "house"),
        ({"nails": {"bite": "x"}}, "nails"),
        ({"task": [{"name": "pull"}]}, "task pull"),
        ({"price": [{"name": "pine", "cost": "x", "per": "board"}]}, "price pine"),
        ({"units": "furlongs"}, ""),
    ],
)
def test_what_is_wrong_is_told_with_its_place_in_words(change: dict[str, Any], place: str) -> None:
    """There are no lines where there is no file."""
    assert place in {where for where, _ in told({**SMALL, **change})}


def test_every_problem_is_told_at_once() -> None:
    """As of a file."""
    places = [where for where, _ in told({**SMALL, "rules": {"rip_kerf": "x"}, "saw": [{"name": "old"}]})]
    assert "rules" in places
    assert "saw old" in places


@pytest.mark.parametrize(
    "odd",
    [
        {"surface": 7},
        {"surface": [7]},
        {"surface": {"0": {}}},
        {"rules": [1]},
        {"saw": {"name": "x"}},
        {"surprise": 1},
        {"name": {"a": "b"}},
        {"linked": [["wall"]]},
        {"surface": [{**SMALL["surface"][0], "opening": "door"}]},
        {"surface": [{**SMALL["surface"][0], "id": "x" * 61}]},
        {"surface": [{**SMALL["surface"][0], "width": True}]},
        {"surface": [{**SMALL["surface"][0], "width": 10**400}]},
        {"surface": [{**SMALL["surface"][0], "width": float("nan")}]},
    ],
)
def test_odd_definitions_are_refused_in_sentences(odd: dict[str, Any]) -> None:
    """Never a traceback."""
    assert told({**SMALL, **odd})


def test_doubts_about_boards_name_the_board() -> None:
    """The tally of a kept job has no lines."""
    thin = board("thin", 97, 5.25, thickness_nm=nm(0.1))
    places = {problem.place for problem in read_definition(SMALL, (*PILE, thin)).remarks}
    assert "board thin" in places


def test_the_tally_is_written_just_as_it_is() -> None:
    """Neither rounded down nor with a formula in it."""
    odd = board("=1+1", 97 + 1 / 128, 5.25, note="@home")
    text = read_definition(BARE, (odd,)).tally_csv()
    assert "'=1+1" in text
    assert "'@home" in text
    assert f"{(nm(97 + 1 / 128)) / MILLIMETRE:.6f}".rstrip("0") + " mm" in text


def test_a_folder_whose_job_is_wrong_is_refused_with_its_lines(tmp_path: Path) -> None:
    """It is a file again."""
    (tmp_path / "job.toml").write_text(JOB.replace('"12 ft"', '"wide"'), encoding="utf-8")
    with pytest.raises(BadInputError, match=r"job\.toml, line 5: width"):
        definition_of(tmp_path)
    with pytest.raises(FileTroubleError, match="is not there"):
        definition_of(tmp_path / "nowhere")


def test_comments_go_and_what_is_said_stays(tmp_path: Path) -> None:
    """Nobody would see them on screen; what is written is settled already."""
    content = JOB + "[[surface.opening]] # a comment\n" + BOX
    (tmp_path / "job.toml").write_text(content, encoding="utf-8")
    text = definition_toml(definition_of(tmp_path))
    assert "comment" not in text
    assert settled(tomllib.loads(text)) == tomllib.loads(text)

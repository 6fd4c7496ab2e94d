"""What the trade knows, asked for on the terminal and as JSON."""

import json
from pathlib import Path

import pytest

from commanding import Run
from plankwright.files.layout_json import layout_to_json
from village import small_layout, spoilt_layout

COMMANDS = ("hazards", "moisture", "prepare", "nails", "edges", "buy", "lumber")
NEED_A_LAYOUT = ("nails", "edges", "buy")


@pytest.fixture
def laid(village: Path) -> Path:
    """Give the folder of the small job with its layout."""
    (village / "out").mkdir()
    (village / "out" / "layout.json").write_text(layout_to_json(small_layout()), encoding="utf-8")
    return village


@pytest.mark.parametrize("command", COMMANDS)
def test_each_answers_in_words(run: Run, laid: Path, command: str) -> None:
    """A headline first, then what stands behind it; no source is mentioned until somebody asks."""
    ran = run(command, laid)
    assert (ran.code, ran.err) == (0, "")
    assert ran.out.splitlines()[0].strip()
    assert "Sources" not in ran.out
    assert "[1]" not in ran.out


@pytest.mark.parametrize("command", COMMANDS)
def test_each_names_its_sources_on_request(run: Run, laid: Path, command: str) -> None:
    """Numbered in the order in which they are met, every number once in the list."""
    out = run(command, laid, "--sources").out
    told, listed = out.split("\nSources\n")
    numbers = [line.split("]")[0].strip(" [") for line in listed.splitlines() if line.startswith("  [")]
    assert numbers == [str(number) for number in range(1, len(numbers) + 1)]
    assert numbers
    assert all(f"[{number}]" in told for number in numbers)


@pytest.mark.parametrize("command", COMMANDS)
def test_each_as_json(run: Run, laid: Path, command: str) -> None:
    """The same words, the values behind them, and the source of each sentence by its key."""
    ran = run(command, laid, "--json")
    document = json.loads(ran.out)
    assert set(document) == {"title", "headline", "parts", "sources", "values", "remarks"}
    keys = set(document["headline"]["sources"])
    for part in document["parts"]:
        assert part["title"]
        keys |= {key for said in part["said"] for key in said["sources"]}
    assert keys == set(document["sources"])
    assert all(
        {"title", "address", "trust", "note"} == set(source) for source in document["sources"].values()
    )
    assert document["headline"]["text"].split()[0] in run(command, laid).out


@pytest.mark.parametrize("command", sorted(set(COMMANDS) - set(NEED_A_LAYOUT)))
def test_some_need_no_layout(run: Run, village: Path, command: str) -> None:
    """They can be asked as soon as there is a tally."""
    assert run(command, village).code == 0


@pytest.mark.parametrize("command", NEED_A_LAYOUT)
def test_the_others_say_that_they_need_one(run: Run, village: Path, command: str) -> None:
    """File trouble, in a sentence."""
    ran = run(command, village)
    assert ran.code == 3
    assert "layout.json" in ran.err


@pytest.mark.parametrize("command", COMMANDS)
def test_nothing_is_told_of_a_layout_that_breaks_a_rule(run: Run, village: Path, command: str) -> None:
    """It would be wrong."""
    file = village / "by-hand.json"
    file.write_text(layout_to_json(spoilt_layout()), encoding="utf-8")
    ran = run(command, village, file)
    assert ran.code == 1
    assert ran.err.startswith("This layout breaks rules")


def test_boards_that_were_sawn_are_not_readied_again(run: Run, laid: Path) -> None:
    """As soon as a piece of A is marked as cut, only B is left to get ready."""
    before = json.loads(run("prepare", laid, "--json").out)
    assert [board["board_id"] for board in before["values"]["boards"]] == ["A", "B"]
    run("mark", laid, "cut", "1a")
    after = json.loads(run("prepare", laid, "--json").out)
    assert [board["board_id"] for board in after["values"]["boards"]] == ["B"]


def test_nobody_reads_safe_or_compliant(run: Run, laid: Path) -> None:
    """Of anything."""
    for command in COMMANDS:
        words = run(command, laid, "--sources").out.lower()
        assert "safe" not in words.replace("safety", "").replace("safeatwork", "")
        assert "complian" not in words


def test_bad_input_is_told_by_each(run: Run, village: Path) -> None:
    """With its line and its mend."""
    job = village / "job.toml"
    job.write_text(job.read_text(encoding="utf-8") + '\n[room]\ndry = "dry"\n', encoding="utf-8")
    ran = run("moisture", village)
    assert ran.code == 2
    assert "job.toml, line" in ran.err


@pytest.mark.parametrize("command", ["cuts", "hanging"])
def test_the_lists_can_be_had_on_the_screen(run: Run, laid: Path, command: str) -> None:
    """Every piece is named, in words and as JSON, and the caution stands below."""
    ran = run(command, laid)
    assert ran.code == 0
    for piece in small_layout().pieces:
        assert piece.label in ran.out
        assert piece.board_id in ran.out
    assert "Before you saw" in ran.out
    document = json.loads(run(command, laid, "--json").out)
    assert all(piece.label in json.dumps(document) for piece in small_layout().pieces)
    assert "<svg" not in json.dumps(document)

"""The whole way of a stranger: a messy workbook and a sketch in, a printable and correct cut list out.

Everything runs through the installed command, and what comes out is read back from its files alone.
"""

import csv
import json
import os
import shutil
import subprocess
import sys
from collections import defaultdict
from collections.abc import Iterable
from fractions import Fraction
from pathlib import Path
from typing import Any, NamedTuple

import pymupdf
import pytest

from messy import Measured, write_messy_tally
from plankwright.measure import INCH, MILLIMETRE

JOB = """
name = "Hall passage"
units = "inches"

[[surface]]
id = "passage"
heights = [
  { at = 0, height = "86-1/2" },
  { at = "4 ft 6", height = "87" },
  { at = "9 ft 2", height = "88-1/4" },
]
level = "floor"

[surface.framing]
centres = ["3/4", 15, "31-1/4", 47, "63-1/2", 79, "95-1/4", "109-1/4"]

[surface.trim]
bottom = "3-1/2"
top = 2
left = "1/2"
right = "1/2"

[[surface.opening]]
id = "hatch"
left = "2 ft 10"
bottom = 36
width = 30
height = 28
trim = "2-1/2"

[[surface.cut_out]]
id = "socket"
what = "socket"
centre = [84, 14]
width = "2-1/4"
height = "3-3/4"

[[surface.concealed]]
id = "bench"
left = 5
bottom = 0
width = 60
height = 18

[[surface.keep_out]]
id = "wire"
what = "wire to the socket"
vertical = 84
width = 1

[[saw]]
name = "mitre saw"
cuts = "crosscut"
capacity = 12

[[saw]]
name = "table saw"
cuts = "rip"
capacity = 24
"""
KERF = Fraction(1, 8)
"""What a blade takes when the job says nothing. [in]"""

NEAR = Fraction(1, 16)
"""Marks are rounded to sixteenths, so two edges of a rectangle may each be off by half of one. [in]"""


class Done(NamedTuple):
    """What came of the job: the pile in truth, the layout, the rows of the cut list, the folder of files."""

    pile: dict[str, Measured]
    layout: dict[str, Any]
    cuts: list[dict[str, str]]
    out: Path


class Part(NamedTuple):
    """A rectangle of a board: from where to where along it, and across it. [in]"""

    left: Fraction
    right: Fraction
    low: Fraction
    high: Fraction


def plankwright(*arguments: str) -> subprocess.CompletedProcess[str]:
    """Run the command that the installation made."""
    command = shutil.which("plankwright", path=str(Path(sys.executable).parent))
    assert command is not None, "plankwright is not installed beside this Python"
    environment = {name: value for name, value in os.environ.items() if not name.startswith("PLANKWRIGHT_")}
    return subprocess.run(
        [command, *arguments], check=False, capture_output=True, text=True, encoding="utf-8", env=environment
    )


@pytest.fixture(scope="module")
def done(tmp_path_factory: pytest.TempPathFactory) -> Done:
    """Start a job, put workbook and sketch in, lay it out."""
    folder = tmp_path_factory.mktemp("Dörfli & Saal") / "hall passage"
    assert plankwright("start", str(folder)).returncode == 0
    (folder / "tally.csv").unlink()
    (folder / "job.toml").write_text(JOB, encoding="utf-8")
    pile = write_messy_tally(folder / "tally.xlsx")
    laid = plankwright("lay", str(folder), "--effort", "glance")
    assert laid.returncode == 0, laid.stderr + laid.stdout
    assert laid.stdout.startswith("Enough: a layout was found that covers passage.")
    out = folder / "out"
    with (out / "cut-list.csv").open(encoding="utf-8-sig", newline="") as file:
        cuts = list(csv.DictReader(file))
    return Done(pile, json.loads((out / "layout.json").read_text(encoding="utf-8")), cuts, out)


def inches(text: str) -> Fraction:
    """Read a mark of the cut list by hand: whole inches, a fraction, or both."""
    whole, _, fraction = text.removesuffix('"').rpartition("-")
    if not whole:
        return Fraction(fraction)
    return int(whole) + Fraction(fraction)


def test_the_messy_pile_is_read_right(done: Done) -> None:
    """Each length as it was measured, and everything doubtful told."""
    told = plankwright("tally", str(done.out.parent), "--json")
    assert told.returncode == 0, told.stderr
    judged = json.loads(told.stdout)
    assert judged["pile"]["boards"] == len(done.pile) == 60
    assert judged["pile"]["length_nm"] == sum(board.length_nm for board in done.pile.values())
    for lot in judged["lots"]:
        lengths = [board.length_nm for board in done.pile.values() if board.lot == lot["lot"]]
        assert (lot["boards"], lot["length_nm"]) == (len(lengths), sum(lengths))
    assert [remark["what"].partition(" ")[0] for remark in judged["remarks"]] == [
        "one",  # sheet is read, and not the hidden one
        "the",  # headings stand below a title
        "these",  # columns are not read
        "this",  # row is the total
    ]


def test_everything_is_there_to_print(done: Done) -> None:
    """Map, sheets, list and layout; the sheets name every piece, and warn."""
    assert sorted(file.name for file in done.out.iterdir()) == [
        "cut-list.csv",
        "layout.json",
        "map-passage.dxf",
        "map-passage.svg",
        "sheets.pdf",
    ]
    with pymupdf.open(done.out / "sheets.pdf") as sheets:
        text = " ".join(page.get_text() for page in sheets).lower()
    drawn = (done.out / "map-passage.svg").read_text(encoding="utf-8")
    for piece in pieces(done.layout):
        assert piece["label"] in text
        assert piece["label"] in drawn
    for word in ("tetanus", "lead", "asbestos", "wires"):
        assert word in text


def test_the_layout_is_right_by_check(done: Done) -> None:
    """Read back from its file, and measured again."""
    checked = plankwright("check", str(done.out.parent), "--json")
    assert checked.returncode == 0, checked.stdout
    assert json.loads(checked.stdout)["right"] is True


def test_sawing_by_the_cut_list_gives_the_pieces_of_the_layout(done: Done) -> None:
    """Step by step from whole boards: each piece comes free once, where the layout has it on its board.

    Crosscuts and rips take their kerf on the far side of the mark; angled cuts, tapered rips and notches
    follow and only take away from a piece, so the rectangle around it stays.
    """
    steps: defaultdict[str, list[dict[str, str]]] = defaultdict(list)
    for row in done.cuts:
        steps[row["board"]].append(row)
    wanted = {piece["label"]: piece for piece in pieces(done.layout)}
    freed: list[str] = []
    for board_id, rows in steps.items():
        board = done.pile[board_id]
        whole = Part(
            Fraction(0), Fraction(board.length_nm, INCH), Fraction(0), Fraction(board.width_nm, INCH)
        )
        parts = {whole}
        for row in rows:
            if row["do"] in {"crosscut", "rip"}:
                parts = sawn(parts, row)
            freed += row["frees"].split(" + ") if row["frees"] else []
        for label in {label for row in rows for label in row["frees"].split(" + ") if label}:
            piece = wanted[label]
            assert piece["board"] == board_id
            assert any(same(part, place_on_board(piece)) for part in parts), f"piece {label}, {parts}"
    assert sorted(freed) == sorted(wanted)


def test_sizes_on_the_cut_list_are_those_of_the_pieces(done: Done) -> None:
    """To the sixteenth, also where one cut frees two pieces."""
    wanted = {piece["label"]: place_on_board(piece) for piece in pieces(done.layout)}
    for row in done.cuts:
        if row["frees"]:
            labels, lengths, widths = (row[key].split(" + ") for key in ("frees", "length", "width"))
            for label, length, width in zip(labels, lengths, widths, strict=True):
                part = wanted[label]
                assert abs(inches(length) - (part.right - part.left)) <= NEAR / 2
                assert abs(inches(width) - (part.high - part.low)) <= NEAR / 2


def test_steps_are_counted_board_by_board(done: Done) -> None:
    """In the order of work, and no board is come back to."""
    seen: dict[str, int] = {}
    last = ""
    for row in done.cuts:
        assert row["board"] == last or row["board"] not in seen
        last = row["board"]
        assert int(row["step"]) == seen.get(last, 0) + 1
        seen[last] = int(row["step"])
        assert row["lot"] == done.pile[last].lot


def pieces(layout: dict[str, Any]) -> list[dict[str, Any]]:
    """Give all pieces of a layout document."""
    return [
        piece for surface in layout["surfaces"] for course in surface["courses"] for piece in course["pieces"]
    ]


def place_on_board(piece: dict[str, Any]) -> Part:
    """Say where a piece lies on its board."""
    written = (*piece["along"], *piece["across"])
    return Part(*(Fraction(str(mm).removesuffix(" mm")) * MILLIMETRE / INCH for mm in written))


def same(one: Part, other: Part) -> bool:
    """Tell whether two rectangles are the same but for the rounding of their marks."""
    return all(abs(a - b) <= NEAR for a, b in zip(one, other, strict=True))


def sawn(parts: Iterable[Part], row: dict[str, str]) -> set[Part]:
    """Saw whatever lies under the blade."""
    mark, start, end = inches(row["mark"]), inches(row["from"]), inches(row["to"])
    left: set[Part] = set()
    for part in parts:
        across, along = (part.low, part.high), (part.left, part.right)
        through, over = (along, across) if row["do"] == "crosscut" else (across, along)
        if min(over[1], end) - max(over[0], start) <= NEAR or not through[0] - NEAR < mark < through[1]:
            left.add(part)
            continue
        for low, high in ((through[0], mark), (mark + KERF, through[1])):
            if high - low > NEAR:
                left.add(Part(low, high, *across) if row["do"] == "crosscut" else Part(*along, low, high))
    return left

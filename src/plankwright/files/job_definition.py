"""What job.toml says about a job, apart from the file: read with or without boards, changed, written back."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TypeAlias

import tomli_w

from plankwright.errors import BadInputError, Problem
from plankwright.files.board_cells import COLUMN_NAMES, cells_of, read_boards
from plankwright.files.disk import read_bytes
from plankwright.files.doubts import remark_board, remark_lots, remark_pile, remark_woods
from plankwright.files.job_document import RulesDocument, Units
from plankwright.files.job_text import JobText
from plankwright.files.notation import Notation
from plankwright.files.report import Report, Where
from plankwright.files.sound_part import Raw
from plankwright.files.tally_book import tally_xlsx
from plankwright.files.tally_csv import rows_csv
from plankwright.files.toml_text import Given, parse_toml
from plankwright.measure import Nm, TapeStyle, Unit
from plankwright.model import Board, Job, Lot, Rules, Surface, Task

Definition: TypeAlias = Mapping[str, Any]
"""What job.toml says, as parsed: tables, lists, numbers and text."""

_NAME = "the job"
_TALLY = "the tally"
_PARTS = {"opening": "opening", "cut_out": "cut-out", "keep_out": "keep-out", "concealed": "fixture"}
_TAPE_KEYS = ("units", "decimal_comma", "fraction", "millimetre_step")
_TABLES = {"saw": "saw", "lot": "lot", "task": "task", "price": "price"}


@dataclass(frozen=True, slots=True, kw_only=True)
class DefinitionReading:
    """What a definition says, as far as it can be read, and what is wrong with it.

    Parameters
    ----------
    text
        All of it.
    boards
        The tally that goes with it.
    """

    text: JobText
    boards: tuple[Board, ...]

    @property
    def name(self) -> str:
        """What the user calls the job."""
        return self.text.name

    @property
    def tape(self) -> TapeStyle:
        """How lengths are written for this user."""
        return self.text.tape

    @property
    def rules(self) -> Rules:
        """What a layout must respect."""
        return self.text.rules

    @property
    def surfaces(self) -> tuple[Surface, ...]:
        """The surfaces that could be read."""
        return self.text.surfaces

    @property
    def lots(self) -> tuple[Lot, ...]:
        """What is known of lots."""
        return self.text.lots

    @property
    def house_built(self) -> int | None:
        """Year of the house whose surfaces are covered, if it is known."""
        return self.text.house_built

    @property
    def tasks(self) -> tuple[Task, ...]:
        """What is to be done, and how long it takes."""
        return self.text.tasks

    @property
    def unit(self) -> Unit | None:
        """Unit of a number that has none."""
        return self.text.notation.unit

    @property
    def decimal_comma(self) -> bool:
        """Whether the comma is the decimal mark."""
        return self.text.notation.decimal_comma

    @property
    def notation(self) -> Notation:
        """How its lengths are written."""
        return self.text.notation

    @property
    def problems(self) -> tuple[Problem, ...]:
        """All that keeps it from being a job: what is wrong, and what is not there yet."""
        bare = () if self.text.document.surfaces else (_missing(_NAME, "no surface is measured yet"),)
        missing = () if self.boards else (_missing(_TALLY, "no board is measured yet"),)
        return (*self.text.report.problems, *bare, *missing)

    @property
    def remarks(self) -> tuple[Problem, ...]:
        """What is doubtful about it and about its boards."""
        tally = Report(_TALLY, self._board_place)
        for number, board in enumerate(self.boards):
            remark_board(board, (number,), tally, rules=self.rules)
        remark_pile(list(enumerate(self.boards)), tally)
        remark_lots(list(enumerate(self.boards)), self.lots, tally)
        remark_woods(list(enumerate(self.boards)), tally)
        return (*self.text.report.remarks, *tally.remarks)

    @property
    def job(self) -> Job:
        """The job.

        Raises
        ------
        BadInputError
            With everything that keeps it from being one.
        """
        if problems := self.problems:
            raise BadInputError(problems)
        return self.text.job(self.boards)

    def read_length(self, text: str) -> Nm:
        """Read a length as it is written for this job. [nm]

        Raises
        ------
        LengthError
            If it is no length.
        """
        return self.notation.read(text)

    def write_length(self, nm: Nm) -> str:
        """Write a length so that it is read as the same one."""
        return self.notation.write(nm)

    def tally_csv(self) -> str:
        """Write the tally as CSV, each board just as it is."""
        rows = [
            [cells.get(column, "") for column in COLUMN_NAMES] for cells in map(self.cells_of, self.boards)
        ]
        return rows_csv(COLUMN_NAMES, rows)

    def tally_xlsx(self) -> bytes:
        """Write the tally as a workbook that is read as the same, with sizes as numbers besides."""
        return tally_xlsx(self.boards, self.notation, self.tape)

    def read_boards(self, cells: Mapping[str, str]) -> tuple[Board, ...]:
        """Read a board, or several that are alike, from the cells of a row of a tally.

        Raises
        ------
        BadInputError
            With every problem of the row.
        """
        return read_boards(cells, self.notation, self.lots)

    def cells_of(self, board: Board) -> dict[str, str]:
        """Give a board as the cells of a row that is read as just that board."""
        return cells_of(board, self.notation)

    def _board_place(self, where: Where) -> tuple[str, None]:
        return (f"board {self.boards[int(where[0])].id}" if where else "", None)


def read_definition(definition: Definition, boards: Sequence[Board] = ()) -> DefinitionReading:
    """Read what a definition says.

    Parameters
    ----------
    definition
        As job.toml has it; it may lack surfaces and boards as long as nobody asks for the job.
    boards
        The tally.
    """
    raw = {"surface": [], **definition}
    given = Given(raw=raw, place=lambda where: (_place(raw, where), None))
    text = JobText(given, _NAME, may_be_bare=True)
    text.demand_some_left(tuple(boards))
    return DefinitionReading(text=text, boards=tuple(boards))


def settled(definition: Definition) -> Raw:
    """Give a definition with a unit at every length, so that it says the same whatever unit is meant.

    Raises
    ------
    BadInputError
        If it has problems other than that it lacks surfaces.
    """
    reading = read_definition(definition)
    if wrong := reading.text.report.problems:
        raise BadInputError(wrong)
    document = reading.text.document
    return document.model_dump(mode="json", by_alias=True, exclude_unset=True, context=reading.notation)


def rewritten(definition: Definition, tape: Mapping[str, Any]) -> Raw:
    """Give a definition in other units, for another tape or decimal mark; every length stays what it is.

    Parameters
    ----------
    definition
        As it was.
    tape
        The keys to take over: units, decimal_comma, fraction, millimetre_step. One that is empty is left out,
        and so is the tape key that does not go with the units.

    Raises
    ------
    BadInputError
        If it has problems, before or after.
    """
    before = read_definition(settled(definition)).text.document
    units = next((units for units in Units if units.value == tape.get("units")), before.units)
    comma = tape.get("decimal_comma") is True
    notation = Notation(unit=units.unit, decimal_comma=comma)
    written = before.model_dump(mode="json", by_alias=True, exclude_unset=True, context=notation)
    unfit = "fraction" if units.unit.is_metric else "millimetre_step"
    kept = {key: value for key, value in written.items() if key not in _TAPE_KEYS}
    taken = {key: tape[key] for key in _TAPE_KEYS if tape.get(key) and key != unfit}
    return settled({**kept, **taken})


def rule_meanings() -> dict[str, str]:
    """Say of each key of the rules what it means."""
    return {name: field.description or "" for name, field in RulesDocument.model_fields.items()}


def definition_of(folder: Path, file: str = "job.toml") -> Raw:
    """Give the definition that stands in the job.toml of a folder, with a unit at every length.

    Raises
    ------
    BadInputError
        With every problem of the file.
    FileTroubleError
        If it is missing or cannot be read.
    """
    given = parse_toml(read_bytes(folder / file))
    text = JobText(given, file)
    if text.report.problems:
        raise BadInputError(text.report.problems)
    return settled(given.raw)


def definition_toml(definition: Definition) -> str:
    """Write a definition as the text of a job.toml."""
    return tomli_w.dumps(dict(definition))


def _missing(file: str, what: str) -> Problem:
    return Problem(file=file, place="", what=what)


def _place(raw: Raw, where: Where) -> str:
    """Say in words where something of a definition is, such as "surface entry-wall, opening door"."""
    match where:
        case ("surface", int(number), *rest):
            surface = _entry(raw.get("surface"), number)
            name = f"surface {_called(surface, number)}"
            match rest:
                case [str(part), int(at), *_] if part in _PARTS:
                    entry = _entry(surface.get(part), at)
                    return f"{name}, {_PARTS[part]} {_called(entry, at)}"
                case ["framing" | "trim" as group, *_]:
                    return f"{name}, {group}"
            return name
        case (str(table), int(number), *_) if table in _TABLES:
            return f"{_TABLES[table]} {_called(_entry(raw.get(table), number), number)}"
        case ("rules" | "room" | "house" | "nails" as table, *_):
            return str(table)
    return ""


def _entry(entries: object, number: int) -> Raw:
    if isinstance(entries, list | tuple) and number < len(entries) and isinstance(entries[number], dict):
        entry: Raw = entries[number]
        return entry
    return {}


def _called(entry: Raw, number: int) -> str:
    """Give what a user calls an entry, or its number."""
    name = entry.get("id") or entry.get("name") or entry.get("what")
    return name if isinstance(name, str) else str(number + 1)

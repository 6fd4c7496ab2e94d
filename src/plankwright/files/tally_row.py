"""From one row of a tally to its boards."""

from collections.abc import Mapping, Sequence
from typing import TypeVar

from plankwright.files.document import one_line
from plankwright.files.flaws import read_flaws
from plankwright.files.formulas import as_meant
from plankwright.files.headings import MEASURED, Headings
from plankwright.files.notation import Notation
from plankwright.files.quantity import read_per_cent
from plankwright.files.report import Report
from plankwright.files.sentences import listed, nearest, quoted
from plankwright.files.slips import LARGEST_NM, likely_slip
from plankwright.files.tally_text import Row
from plankwright.files.tally_words import EDGES, NAILS, TREATMENTS, meaning
from plankwright.measure import LengthError, Nm, Unit
from plankwright.model import Board, EdgeKind, EdgeProfile, Flaw, Lot, NailsLeft, Severity, Treatment
from plankwright.model.board import lot_key

_Meaning = TypeVar("_Meaning", EdgeKind, NailsLeft, Treatment)

_MOST_ALIKE = 500
_ACROSS = frozenset({"width", "width other end", "thickness", "tongue"})
_LONGEST_ID = 30
_WETTEST_PCT = 200
_DITTO = frozenset({'"', "''", "〃", "″", "”", "ditto"})


class RowReader:
    """Reads rows one after the other.

    Parameters
    ----------
    headings
        Which column is which.
    notation
        How lengths are written.
    report
        Where problems and remarks go.
    lots
        What is known of lots: boards of a treated one are treated.
    """

    def __init__(
        self, headings: Headings, notation: Notation, report: Report, lots: Sequence[Lot] = ()
    ) -> None:
        self._treated = {lot_key(lot.name): lot.treatment for lot in lots}
        self._headings = headings
        self._report = report
        self.unnamed: list[int] = []
        """Rows without an id, whose boards are called after them."""
        self._notations = {
            column: Notation(
                unit=headings.units.get(column, _usual_unit(column, notation.unit)),
                decimal_comma=notation.decimal_comma,
                guessed=notation.guessed,
            )
            for column in MEASURED
        }

    def read(self, row: Row) -> list[Board]:
        """Give the boards of a row; none when it has problems, which the report then holds."""
        reading = _RowReading(row, self._headings, self._notations, self._report, self._treated)
        boards = reading.boards()
        if boards and not reading.text("id"):
            self.unnamed.append(row.number)
        return boards


def _usual_unit(column: str, unit: Unit | None) -> Unit | None:
    """Give the unit of a bare number in a column: none where feet would be, but nobody measures in feet."""
    return None if unit is Unit.FOOT and column in _ACROSS else unit


class _RowReading:
    """The reading of one row; holds what every cell needs to tell what is wrong."""

    def __init__(
        self,
        row: Row,
        headings: Headings,
        notations: dict[str, Notation],
        report: Report,
        treated: Mapping[str, Treatment],
    ) -> None:
        self.row = row
        self.treated = treated
        self.headings = headings
        self.notations = notations
        self.report = report
        self.sound = True

    def boards(self) -> list[Board]:
        filled = len(self.row.cells) - next((n for n, cell in enumerate(reversed(self.row.cells)) if cell), 0)
        if filled > self.headings.count:
            self.refuse(
                f"there are {filled} cells but {self.headings.count} headings: "
                "put a cell that holds a comma or a semicolon into quotation marks"
            )
            return []
        first = self.row.cells[0]
        if first.startswith("#") and first != "#":
            self.refuse(
                f"{quoted(first)} begins with #, as a row does that is left out: "
                f"write {first[1:]} for the board, or # {first[1:]} to leave it out"
            )
        length = self.length("length", needed=True)
        width = self.length("width", needed=True)
        other_width = self.length("width other end")
        thickness = self.length("thickness", needed=True)
        profile = self.profile()
        names = self.names()
        treatment = self.treatment()
        flaws = self.flaws(length, treatment)
        moisture = self.moisture()
        nails = self.word("nails", NAILS) if self.text("nails") else None
        if length is not None and width is not None and max(width, other_width or 0) > length:
            self.refuse("the board is wider than it is long: swap the width and the length")
        if not self.sound or length is None or width is None or thickness is None or profile is None:
            return []
        return [
            Board(
                id=name,
                length_nm=length,
                width_start_nm=width,
                width_end_nm=width if other_width is None else other_width,
                thickness_nm=thickness,
                profile=profile,
                flaws=flaws,
                lot=self.text("lot"),
                species=self.text("species"),
                tone=self.text("tone"),
                note=self.text("note"),
                moisture_pct=moisture,
                nails=nails,
                treatment=treatment,
                untreated=treatment is Treatment.NONE and bool(self.text("treatment")),
            )
            for name in names
        ]

    def refuse(self, sentence: str) -> None:
        self.sound = False
        self.report.refuse((self.row.number,), sentence)

    def cell(self, column: str) -> str | None:
        """Give a cell as text, empty where it is missing; nothing when it has a trouble, which is told."""
        position = self.headings.at.get(column, len(self.row.cells))
        if trouble := self.row.troubles.get(position):
            self.refuse(f"the {column} {trouble}")
            return None
        text = self.row.cells[position] if position < len(self.row.cells) else ""
        if text.lower() in _DITTO:
            self.refuse(f"the {column} is a ditto mark: write it out")
            return None
        return text

    def text(self, column: str) -> str:
        return one_line(as_meant(self.cell(column) or ""))

    def length(self, column: str, *, needed: bool = False) -> Nm | None:
        text = self.cell(column)
        if not text:
            if text is not None and needed:
                self.refuse(f"the {column} is missing: measure it and write it here")
            return None
        try:
            nm = self.notations[column].read(text)
        except LengthError as trouble:
            self.refuse(f"the {column} {likely_slip(column, text, self.notations[column]) or trouble}")
            return None
        if nm == 0:
            self.refuse(f"the {column} is 0: measure it and write it here")
            return None
        if nm > LARGEST_NM.get(column, nm) and not self.notations[column].guessed:
            self.refuse(
                f"the {column} {quoted(text)} is more than any board has: check the number and its unit"
            )
            return None
        return nm

    def word(self, column: str, words: Mapping[_Meaning, tuple[str, ...]]) -> _Meaning | None:
        """Read one of several words; nothing when it is none of them, which is told."""
        written = self.text(column)
        meant = meaning(written, words)
        if meant is None:
            known = [one.value for one in words]
            self.refuse(
                f"the {column} is {quoted(written)} but must be {listed(known)}{nearest(written, known)}"
            )
        return meant

    def treatment(self) -> Treatment:
        """Read what the board was soaked with; what its lot was is true of it where it says nothing."""
        if self.text("treatment"):
            return self.word("treatment", TREATMENTS) or Treatment.NONE
        return self.treated.get(lot_key(self.text("lot")), Treatment.NONE)

    def moisture(self) -> float | None:
        """Read what a meter showed."""
        written = self.text("moisture")
        if not written:
            return None
        number = read_per_cent(written, decimal_comma=self.notations["flaws"].decimal_comma)
        if number is None or number > _WETTEST_PCT:
            self.refuse(
                f"the moisture is {quoted(written)} but must be per cent of dry mass as the meter shows it, "
                "like 11.5"
            )
            return None
        return float(number)

    def profile(self) -> EdgeProfile | None:
        """Read how the long edges are milled."""
        kind = self.word("edge", EDGES) if self.text("edge") else EdgeKind.SQUARE
        if kind is None:
            return None
        reach = self.length("tongue")
        if kind is EdgeKind.SQUARE:
            if reach is not None:
                self.refuse(
                    "a square edge has no tongue or lap: "
                    "give the edge as tongue-and-groove or shiplap, or leave the size out"
                )
            return EdgeProfile()
        if reach is None:
            part = "tongue" if kind is EdgeKind.TONGUE_AND_GROOVE else "lap"
            self.refuse(
                f"the size of the {part} is missing: "
                "measure how far it reaches beyond the face, and write it into the column tongue"
            )
            return None
        return EdgeProfile(kind=kind, reach_nm=reach)

    def flaws(self, length: Nm | None, treatment: Treatment) -> tuple[Flaw, ...]:
        if length is None:
            return ()
        all_lost: tuple[Flaw, ...] = ()
        if treatment is not Treatment.NONE:
            # Treated wood is kept out of a house, so that no part of the board may ever hang.
            what = f"treated ({treatment}), not for indoors"
            all_lost = (Flaw(start_nm=0, end_nm=length, what=what, severity=Severity.LOST),)
        text = self.cell("flaws")
        if not text:
            return all_lost
        flaws, problems = read_flaws(text, length, self.notations["flaws"])
        for problem in problems:
            self.refuse(problem)
        return (*all_lost, *flaws)

    def names(self) -> list[str]:
        """Give the id of each board of the row: one, or as many as the quantity says."""
        name = self.text("id")
        self.demand_short(name)
        name = name or f"r{self.row.number}"
        if self.headings.at.get("quantity") in self.row.shared:
            self.refuse("the quantity is in a cell merged over several rows: write it into each row")
        written = self.text("quantity")
        if written in {"", "1"}:
            return [name]
        if not written.isascii() or not written.isdigit() or not 1 <= int(written[:9]) <= _MOST_ALIKE:
            self.refuse(
                f"the quantity is {quoted(written)} but must be a whole number from 1 to {_MOST_ALIKE}"
            )
            return []
        names = [f"{name}-{number}" for number in range(1, int(written) + 1)]
        if len(name) <= _LONGEST_ID:
            self.demand_short(names[-1])
        return names

    def demand_short(self, name: str) -> None:
        if len(name) > _LONGEST_ID:
            self.refuse(
                f"the id {quoted(name)} is no short mark: "
                f"use up to {_LONGEST_ID} letters and digits, as on the board"
            )

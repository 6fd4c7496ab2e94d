"""What is filled in for a board: guessed for the next one, read back while it is written, made a board of."""

import re
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from plankwright.errors import BadInputError, Problem
from plankwright.measure import LengthError, Nm, TapeStyle, round_nearest, write_length
from plankwright.model import Board, EdgeKind, Flaw, NailsLeft, Severity, Treatment
from plankwright.workshop.jobs.kept import KeptJob
from plankwright.workshop.jobs.tally_boards import next_mark
from plankwright.workshop.ports import DefinitionReading

FIELDS = (
    *("id", "lot", "species", "length", "width", "other_width", "thickness", "edge", "tongue", "flaws"),
    *("tone", "note", "moisture", "nails", "treatment", "quantity"),
)
"""What can be filled in, besides a list of flaws."""

_KEPT = ("lot", "species", "width", "thickness", "edge", "tongue", "tone")
"""What one board mostly has in common with the next."""

_COLUMNS = {**{name: name for name in FIELDS}, "other_width": "width other end"}

KINDS = {
    "Not usable": (
        ("lost", "not usable, whatever it is"),
        ("rot lost", "rot"),
        ("split lost", "split"),
        ("broken lost", "broken"),
        ("eaten lost", "eaten"),
        ("nail holes lost", "nail holes, too many"),
    ),
    "Only ugly": (
        ("blemish", "only ugly, whatever it is"),
        ("stain blemish", "stain"),
        ("paint blemish", "paint"),
        ("nail holes blemish", "nail holes"),
        ("dents blemish", "dents or scratches"),
    ),
}
"""What can be wrong with a stretch of a board: as a tally says it, and as a person does."""

EDGES = {
    EdgeKind.SQUARE: "square",
    EdgeKind.TONGUE_AND_GROOVE: "tongue and groove",
    EdgeKind.SHIPLAP: "shiplap",
}
NAILS = {
    NailsLeft.IN: "still in",
    NailsLeft.PULLED: "pulled",
    NailsLeft.NIPPED: "some nipped off",
    NailsLeft.CHECKED: "searched for, none left",
}
TREATMENTS = {
    Treatment.NONE: "nothing",
    Treatment.CREOSOTE: "creosote",
    Treatment.ARSENATE: "copper, arsenic",
    Treatment.PENTACHLOROPHENOL: "pentachlorophenol",
    Treatment.UNKNOWN: "something unknown",
}

_OF_FLAW = re.compile(r"flaw\.(?P<row>[0-9]{1,2})\.(?P<part>start|end|what|face)")

_AMPLE = {"id": "-", "length": "20 m", "width": "1 mm", "thickness": "1 mm"}
"""A board of which any one measurement may be what it is."""

_MEASURED = (
    ("length", "long"),
    ("width", "wide"),
    ("other_width", "wide at the other end"),
    ("thickness", "thick"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class FlawEntry:
    """A flaw as it is filled in.

    Parameters
    ----------
    start, end
        From where to where, from the marked end; the end is empty for a single place.
    what
        What it is and what that does to the wood, such as "rot lost".
    face
        The face that a blemish shows on; empty for both.
    """

    start: str = ""
    end: str = ""
    what: str = "lost"
    face: str = ""

    @property
    def placed(self) -> bool:
        """Whether it is said where it is."""
        return bool(self.start or self.end)


_NO_FLAW = FlawEntry()


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """A board as it is filled in.

    Parameters
    ----------
    fields
        By name, those of `FIELDS`; what is missing is empty.
    flaws
        The list of its flaws.
    """

    fields: Mapping[str, str] = field(default_factory=dict)
    flaws: tuple[FlawEntry, ...] = ()

    def __getitem__(self, name: str) -> str:
        """Give what is filled in for a field."""
        return self.fields.get(name, "")

    @property
    def begun(self) -> bool:
        """Whether something is filled in that no board before had."""
        return bool(self["length"] or self["flaws"] or any(flaw.placed for flaw in self.flaws))

    @property
    def of_one(self) -> "Entry":
        """The same as one board, whatever its quantity."""
        return replace(self, fields={**self.fields, "quantity": ""})


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadBack:
    """What was understood of a board that is still being filled in.

    Parameters
    ----------
    sentence
        Its measurements, as far as they can be read.
    problems
        What cannot be read of what is there, a sentence each.
    board
        To be drawn; nothing before it has a length and a width.
    """

    sentence: str
    problems: tuple[str, ...]
    board: Board | None


def next_entry(kept: KeptJob, reading: DefinitionReading) -> Entry:
    """Guess what the next board is like: called after the last one, and of its sort and section."""
    name = next_mark(kept.boards)
    if not kept.boards:
        return Entry(fields={"id": name})
    last = reading.cells_of(kept.boards[-1])
    return Entry(fields={"id": name, **{column: last[column] for column in _KEPT}})


def same_again(kept: KeptJob, reading: DefinitionReading) -> Entry | None:
    """Give another board of the size and sort of the last one, whose flaws and note are its own."""
    if not kept.boards:
        return None
    last = entry_of(kept.boards[-1], reading)
    own = {"id": next_entry(kept, reading)["id"], "note": "", "moisture": ""}
    return Entry(fields={**last.fields, **own})


def entry_of(board: Board, reading: DefinitionReading) -> Entry:
    """Give a board of the tally as it would be filled in."""
    cells = reading.cells_of(board)
    flaws = [flaw for flaw in board.flaws if not _goes_without_saying(board, flaw)]
    return Entry(
        fields={name: cells[column] for name, column in _COLUMNS.items() if name != "flaws"},
        flaws=tuple(
            FlawEntry(
                start=reading.write_length(flaw.start_nm),
                end=reading.write_length(flaw.end_nm),
                what=flaw.severity if flaw.what == flaw.severity else f"{flaw.what} {flaw.severity}",
                face=flaw.face or "",
            )
            for flaw in flaws
        ),
    )


def entry_given(given: Iterable[tuple[str, str]]) -> Entry:
    """Give a board as it was filled in.

    Parameters
    ----------
    given
        Names and texts of fields: those of `FIELDS`, and of flaws such as "flaw.0.start"; whatever else there
        is does not count.
    """
    texts: dict[str, str] = {}
    rows: defaultdict[int, dict[str, str]] = defaultdict(dict)
    for name, text in dict(pair for pair in given if pair[1].strip()).items():
        of_flaw = _OF_FLAW.fullmatch(name)
        if of_flaw:
            rows[int(of_flaw["row"])][of_flaw["part"]] = text.strip()
        elif name in FIELDS:
            texts[name] = text.strip()
    flaws = [FlawEntry(**rows[row]) for row in range(max(rows, default=-1) + 1)]
    filled = [number for number, flaw in enumerate(flaws, start=1) if flaw != _NO_FLAW]
    return Entry(fields=texts, flaws=tuple(flaws[: max(filled, default=0)]))


def boards_of_entry(entry: Entry, reading: DefinitionReading) -> tuple[Board, ...]:
    """Make a board, or several that are alike, of what was filled in.

    Raises
    ------
    BadInputError
        With every problem of it.
    """
    if not entry["id"]:
        what = "the mark is missing: write one on the board, and here"
        raise BadInputError([Problem(file="this board", place="", what=what)])
    if any(flaw != _NO_FLAW and not flaw.placed for flaw in entry.flaws):
        what = "a flaw has no place: tap the board where it is, or write it down"
        raise BadInputError([Problem(file="this board", place="", what=what)])
    cells = {column: entry[name] for name, column in _COLUMNS.items()}
    if cells["edge"] == EdgeKind.SQUARE and cells["tongue"]:
        # It is kept from a board before that had one; a square edge says plainly that this one has none.
        cells["tongue"] = ""
    cells["flaws"] = "; ".join(_flaw_texts(entry, reading))
    return reading.read_boards(cells)


def tell_added(boards: Sequence[Board]) -> str:
    """Say that boards were added."""
    first, last = boards[0].id, boards[-1].id
    return f"board {first} added" if len(boards) == 1 else f"boards {first} to {last} added"


def read_back(entry: Entry, reading: DefinitionReading) -> ReadBack:
    """Say what was understood of a board that is still being filled in.

    Parameters
    ----------
    entry
        As far as it is filled in.
    reading
        How lengths are written for this job.
    """
    sizes: dict[str, Nm] = {}
    problems: list[str] = []
    for name, _ in _MEASURED:
        if entry[name]:
            try:
                sizes[name] = _size(name, entry[name], reading)
            except BadInputError as trouble:
                problems += [found.what for found in trouble.problems]
    parts = [f"{_as_on_tape(sizes[name], reading.tape)} {word}" for name, word in _MEASURED if name in sizes]
    board, wrong = _drawable(entry, sizes, reading)
    return ReadBack(
        sentence=f"Read as {', '.join(parts)}." if parts else "",
        problems=(*problems, *wrong),
        board=board,
    )


def _goes_without_saying(board: Board, flaw: Flaw) -> bool:
    """Whether a flaw is only that treated wood is lost."""
    whole = (flaw.start_nm, flaw.end_nm) == (0, board.length_nm)
    return board.treatment is not Treatment.NONE and whole and flaw.severity is Severity.LOST


def _flaw_texts(entry: Entry, reading: DefinitionReading) -> list[str]:
    """Give the flaws as a tally has them, those of the list behind those that are written out."""
    written = [entry["flaws"]] if entry["flaws"].strip(" ;") else []
    return [*written, *(_flaw_text(flaw, reading) for flaw in entry.flaws if flaw.placed)]


def _flaw_text(flaw: FlawEntry, reading: DefinitionReading) -> str:
    # A semicolon would end the flaw, and leave the rest of it to be read as another one.
    start, end, what = (part.replace(";", ",") for part in (flaw.start, flaw.end, flaw.what))
    face = f" {flaw.face}" if flaw.face and Severity.BLEMISH in what else ""
    if not (start and end):
        place = start or end
        return f"{'at ' if place[:1].isdigit() else ''}{place} {what}{face}"
    if _reaches_back(start, end, reading):
        start, end = end, start
    return f"{start} to {end} {what}{face}"


def _reaches_back(start: str, end: str, reading: DefinitionReading) -> bool:
    """Whether the end of a flaw was put down first."""
    try:
        return reading.read_length(start) > reading.read_length(end)
    except LengthError:
        return False


def _size(name: str, text: str, reading: DefinitionReading) -> Nm:
    """Read one measurement as the row of a board would be read."""
    (board,) = reading.read_boards({**_AMPLE, _COLUMNS[name]: text})
    sizes = {
        "length": board.length_nm,
        "width": board.width_start_nm,
        "other_width": board.width_end_nm,
        "thickness": board.thickness_nm,
    }
    return sizes[name]


def _as_on_tape(nm: Nm, tape: TapeStyle) -> str:
    rounded = round_nearest(nm, tape.step_nm)
    return f"{'' if rounded == nm else 'about '}{write_length(nm, tape)}"


def _drawable(
    entry: Entry, sizes: Mapping[str, Nm], reading: DefinitionReading
) -> tuple[Board | None, Sequence[str]]:
    """Give the board with those of its flaws that can be read, and what is wrong with the others."""
    if not {"length", "width"} <= sizes.keys():
        return None, ()
    plain = {
        **_AMPLE,
        **{_COLUMNS[name]: entry[name] for name in ("length", "width", "other_width") if name in sizes},
        "id": entry["id"] or "-",
    }
    try:
        (board,) = reading.read_boards(plain)
    except BadInputError as trouble:
        return None, [found.what for found in trouble.problems]
    flaws: list[Flaw] = []
    wrong: list[str] = []
    for text in _flaw_texts(entry, reading):
        try:
            (flawed,) = reading.read_boards({**plain, "flaws": text})
        except BadInputError as trouble:
            wrong += [found.what for found in trouble.problems]
        else:
            flaws += flawed.flaws
    ordered = sorted(flaws, key=lambda flaw: (flaw.start_nm, flaw.end_nm))
    return replace(board, flaws=tuple(ordered)), wrong

"""What is different after a step, so that it can be taken back and taken again.

A state is told by its parts: the definition, the layout that is worked by, the boards that work began with,
what is wished, each board with its place, and each mark with its number. A difference holds those parts that
are not the same, once as they were and once as they are; a part that is not there is null.
"""

import json
import sqlite3
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, TypeAlias

from plankwright.store.board_rows import COLUMNS

Parts: TypeAlias = dict[str, Any]
"""Parts of a job by name: "definition", "layout_id", "begun_with", "wishes", "board F1", "mark 3"."""

_BOARD, _MARK = "board ", "mark "
_OF_THE_JOB = ("definition", "layout_id", "begun_with", "wishes")
_AS_IT_IS = ("layout_id", "wishes")
"""Parts that are written as they are; of the others there is the JSON."""


@dataclass(frozen=True, slots=True)
class Difference:
    """The parts that are not the same, as they were and as they are."""

    before: Parts
    after: Parts

    @property
    def none(self) -> bool:
        """Whether nothing is different."""
        return not self.before and not self.after


def board_part(board_id: str) -> str:
    """Name the part that is a board."""
    return f"{_BOARD}{board_id}"


def mark_part(number: int) -> str:
    """Name the part that is a mark."""
    return f"{_MARK}{number}"


def difference(before: Mapping[str, Any], after: Mapping[str, Any]) -> Difference:
    """Tell what is different between two states."""
    other = [name for name in {**before, **after} if before.get(name) != after.get(name)]
    return Difference({name: before.get(name) for name in other}, {name: after.get(name) for name in other})


def put(database: sqlite3.Connection, job_id: str, parts: Mapping[str, Any]) -> None:
    """Write parts of a job as they are to be; those that are null are taken out."""
    for name, part in parts.items():
        if name.startswith(_BOARD):
            _put_board(database, job_id, name.removeprefix(_BOARD), part)
        elif name.startswith(_MARK):
            _put_mark(database, job_id, int(name.removeprefix(_MARK)), part)
    own = {name: parts[name] for name in _OF_THE_JOB if name in parts}
    for name, part in own.items():
        value = part if name in _AS_IT_IS or part is None else json.dumps(part, ensure_ascii=False)
        database.execute(f"UPDATE job SET {name} = ? WHERE id = ?", (value, job_id))  # noqa: S608 - one of ours


def _put_board(
    database: sqlite3.Connection, job_id: str, board_id: str, row: Mapping[str, Any] | None
) -> None:
    database.execute("DELETE FROM board WHERE job_id = ? AND id = ?", (job_id, board_id))
    if row is None:
        return
    columns = ("job_id", "place", *COLUMNS)
    marks = ", ".join("?" * len(columns))
    database.execute(
        f"INSERT INTO board ({', '.join(columns)}) VALUES ({marks})",  # noqa: S608 - our own names
        (job_id, row["place"], *(row[column] for column in COLUMNS)),
    )


def _put_mark(database: sqlite3.Connection, job_id: str, number: int, text: str | None) -> None:
    database.execute("DELETE FROM mark WHERE job_id = ? AND number = ?", (job_id, number))
    if text is not None:
        database.execute("INSERT INTO mark (job_id, number, text) VALUES (?, ?, ?)", (job_id, number, text))

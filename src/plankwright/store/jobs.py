"""Jobs in the file: their list, one of them, and the steps that are taken with it."""

import json
import secrets
import sqlite3
from collections.abc import Callable
from dataclasses import replace
from itertools import chain, count, pairwise
from typing import Any

from plankwright.model import Work
from plankwright.store.board_rows import board_of, row_of
from plankwright.store.on_file import NO_SUCH_JOB, OnFile, now
from plankwright.store.steps import Difference, Parts, board_part, difference, mark_part, put
from plankwright.workshop.jobs.kept import Change, JobCard, KeptJob, NotThereError
from plankwright.workshop.jobs.wishes import Wishes

_CARDS = """
SELECT
    job.id, job.definition, job.hung, job.changed_at, job.removed_at,
    (SELECT count(*) FROM board WHERE board.job_id = job.id) AS boards,
    coalesce(layout.pieces, 0) AS pieces
FROM job LEFT JOIN layout ON layout.id = job.layout_id
ORDER BY job.removed_at IS NOT NULL, job.changed_at DESC, job.id
"""

_LAST, _NEXT = "NOT taken_back ORDER BY id DESC", "taken_back ORDER BY id"
"""Which step is taken back, and which is taken again."""


class Jobs(OnFile):
    """The jobs of a file; what each does is told in `workshop.jobs.ports.Store`."""

    __slots__ = ()

    def cards(self) -> tuple[JobCard, ...]:
        """Give what a list shows of each job."""
        with self.reading() as database:
            return tuple(map(_card, database.execute(_CARDS).fetchall()))

    def job(self, job_id: str) -> KeptJob:
        """Give a job."""
        with self.reading() as database:
            return self._read(database, job_id)

    def add(self, job: KeptJob) -> KeptJob:
        """Keep a job that is new."""
        kept = replace(job, id=job.id or secrets.token_hex(4))
        with self.writing() as database:
            database.execute(
                "INSERT INTO job (id, definition, changed_at) VALUES (?, '{}', ?)", (kept.id, now())
            )
            empty = KeptJob(id=kept.id, definition={})
            put(
                database, kept.id, difference(self._parts(database, empty), self._parts(database, kept)).after
            )
            _note_hung(database, kept)
        return kept

    def change(self, job_id: str, what: str, edit: Callable[[KeptJob], KeptJob], *, key: str = "") -> KeptJob:
        """Take a step with a job."""
        with self.writing() as database:
            before = self._read(database, job_id)
            if key and _taken(database, job_id, key):
                return before
            after = edit(before)
            step = difference(self._parts(database, before), self._parts(database, after))
            if step.none:
                return before
            put(database, job_id, step.after)
            _note_hung(database, after)
            database.execute("DELETE FROM step WHERE job_id = ? AND taken_back", (job_id,))
            _note_step(database, job_id, what, key, step)
        return after

    def changes(self, job_id: str, most: int = 20) -> tuple[Change, ...]:
        """Give the last steps that can be taken back."""
        with self.reading() as database:
            rows = database.execute(
                "SELECT id, what, at FROM step WHERE job_id = ? AND NOT taken_back ORDER BY id DESC LIMIT ?",
                (job_id, most),
            )
            return tuple(map(_change, rows))

    def undo(self, job_id: str, only: int | None = None) -> Change | None:
        """Take the last step back."""
        return self._go(job_id, "before", _LAST, only)

    def redo(self, job_id: str, only: int | None = None) -> Change | None:
        """Take the step again that was taken back last."""
        return self._go(job_id, "after", _NEXT, only)

    def taken_back(self, job_id: str) -> Change | None:
        """Give the step that would be taken again next."""
        with self.reading() as database:
            row = _step(database, job_id, _NEXT)
            return None if row is None else _change(row)

    def put_away(self, job_id: str) -> None:
        """Put a job away."""
        self._set_removed(job_id, "removed_at IS NULL", now())

    def bring_back(self, job_id: str) -> None:
        """Bring back a job that was put away."""
        self._set_removed(job_id, "removed_at IS NOT NULL", None)

    def forget(self, job_id: str) -> None:
        """Delete a job that was put away, for good."""
        with self.writing() as database:
            # Its layout would keep it: each points at the other.
            database.execute(
                "UPDATE job SET layout_id = NULL WHERE id = ? AND removed_at IS NOT NULL", (job_id,)
            )
            database.execute(
                "DELETE FROM search WHERE job_id IN "
                "(SELECT id FROM job WHERE id = ? AND removed_at IS NOT NULL)",
                (job_id,),
            )
            gone = database.execute("DELETE FROM job WHERE id = ? AND removed_at IS NOT NULL", (job_id,))
            _demand_one(gone)

    def _go(self, job_id: str, to: str, which: str, only: int | None) -> Change | None:
        """Bring a job into the state before or after a step, if it is the one that is meant."""
        with self.writing() as database:
            self._read(database, job_id)
            row = _step(database, job_id, which)
            if row is None or only not in {None, row["id"]}:
                return None
            put(database, job_id, json.loads(row[to]))
            database.execute("UPDATE step SET taken_back = ? WHERE id = ?", (to == "before", row["id"]))
            _note_hung(database, self._read(database, job_id))
        return _change(row)

    def _set_removed(self, job_id: str, which: str, at: str | None) -> None:
        with self.writing() as database:
            _demand_one(
                database.execute(
                    f"UPDATE job SET removed_at = ? WHERE id = ? AND {which}",  # noqa: S608 - our own words
                    (at, job_id),
                )
            )

    def _read(self, database: sqlite3.Connection, job_id: str) -> KeptJob:
        row = database.execute("SELECT * FROM job WHERE id = ? AND removed_at IS NULL", (job_id,)).fetchone()
        if row is None:
            raise NotThereError(NO_SUCH_JOB)
        definition = json.loads(row["definition"])
        boards = database.execute("SELECT * FROM board WHERE job_id = ? ORDER BY place, id", (job_id,))
        return KeptJob(
            id=job_id,
            definition=definition,
            boards=tuple(map(board_of, boards)),
            layout_id=row["layout_id"],
            work=self._work(database, job_id, str(definition.get("name", "")), row["begun_with"]),
            wishes=Wishes.from_json(row["wishes"] or ""),
        )

    def _work(
        self, database: sqlite3.Connection, job_id: str, name: str, begun_with: str | None
    ) -> Work | None:
        if begun_with is None:
            return None
        rows = database.execute("SELECT text FROM mark WHERE job_id = ? ORDER BY number", (job_id,))
        marks = tuple(self.texts.mark_from_json(row["text"]) for row in rows)
        return Work(job_name=name, boards=tuple(json.loads(begun_with)), marks=marks)

    def _parts(self, database: sqlite3.Connection, kept: KeptJob) -> Parts:
        """Give a job by its parts; its boards keep the places that they have in the file."""
        rows = database.execute("SELECT id, place FROM board WHERE job_id = ? ORDER BY place, id", (kept.id,))
        places = {row["id"]: row["place"] for row in rows}
        parts: Parts = {
            "definition": dict(kept.definition),
            "layout_id": kept.layout_id,
            "begun_with": None if kept.work is None else list(kept.work.boards),
            "wishes": kept.wishes.to_json() or None,
        }
        for board, place in zip(kept.boards, _places(kept, places), strict=True):
            parts[board_part(board.id)] = {**row_of(board), "place": place}
        for number, mark in enumerate(() if kept.work is None else kept.work.marks):
            parts[mark_part(number)] = self.texts.mark_to_json(mark)
        return parts


def _places(kept: KeptJob, known: dict[str, int]) -> list[int]:
    """Give the place of each board: its own, or that of the one that it stands for, or one at the end.

    Only where that would put them into another order, all are placed anew.
    """
    ids = {board.id for board in kept.boards}
    free = [place for name, place in known.items() if name not in ids]
    end = max(known.values(), default=-1) + 1
    for stood_for in (free if len(known) == len(kept.boards) else [], []):
        others = chain(stood_for, count(end))
        places = [known[board.id] if board.id in known else next(others) for board in kept.boards]
        if all(before < after for before, after in pairwise(places)):
            return places
    return list(range(len(kept.boards)))


def _card(row: sqlite3.Row) -> JobCard:
    definition: dict[str, Any] = json.loads(row["definition"])
    return JobCard(
        id=row["id"],
        name=str(definition.get("name", "")),
        boards=row["boards"],
        surfaces=len(definition.get("surface", ())),
        pieces=row["pieces"],
        hung=row["hung"],
        changed_at=row["changed_at"],
        removed_at=row["removed_at"],
    )


def _step(database: sqlite3.Connection, job_id: str, which: str) -> sqlite3.Row | None:
    """Give the step that is taken back or taken again next."""
    row: sqlite3.Row | None = database.execute(
        f"SELECT * FROM step WHERE job_id = ? AND {which} LIMIT 1",  # noqa: S608 - our own words
        (job_id,),
    ).fetchone()
    return row


def _change(row: sqlite3.Row) -> Change:
    return Change(id=row["id"], what=row["what"], at=row["at"])


def _taken(database: sqlite3.Connection, job_id: str, key: str) -> bool:
    row = database.execute("SELECT 1 FROM step WHERE job_id = ? AND key = ?", (job_id, key)).fetchone()
    return row is not None


def _note_step(database: sqlite3.Connection, job_id: str, what: str, key: str, step: Difference) -> None:
    before, after = (json.dumps(parts, ensure_ascii=False) for parts in (step.before, step.after))
    database.execute(
        "INSERT INTO step (job_id, at, what, key, before, after) VALUES (?, ?, ?, ?, ?, ?)",
        (job_id, now(), what, key or None, before, after),
    )


def _note_hung(database: sqlite3.Connection, kept: KeptJob) -> None:
    hung = 0 if kept.work is None else sum(len(row.course.pieces) for row in kept.work.standing.hung)
    database.execute("UPDATE job SET hung = ?, changed_at = ? WHERE id = ?", (hung, now(), kept.id))


def _demand_one(cursor: sqlite3.Cursor) -> None:
    if cursor.rowcount != 1:
        raise NotThereError(NO_SUCH_JOB)

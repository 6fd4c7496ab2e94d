"""Layouts in the file, each with the answer that came with it."""

import json
import sqlite3
from dataclasses import replace

from pydantic import TypeAdapter

from plankwright.store.on_file import OnFile, demand_job, now, number_of_row
from plankwright.workshop.ask_enough import Answer
from plankwright.workshop.jobs.kept import KeptLayout, Made, NotThereError

_ANSWERS = TypeAdapter(Answer)
_WITH_NAME = (
    "SELECT layout.*, json_extract(job.definition, '$.name') AS job_name "
    "FROM layout JOIN job ON job.id = layout.job_id"
)


class Layouts(OnFile):
    """The layouts of a file; what each does is told in `workshop.jobs.ports.Store`."""

    __slots__ = ()

    def keep_layout(self, job_id: str, kept: KeptLayout) -> KeptLayout:
        """Keep a layout of a job."""
        at = now()
        with self.writing() as database:
            demand_job(database, job_id)
            row = database.execute(
                "INSERT INTO layout (job_id, at, made, text, pieces, answer, news, minds) "
                "VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
                (
                    job_id,
                    at,
                    kept.made.value,
                    self.texts.layout_to_json(kept.layout),
                    len(kept.layout.pieces),
                    None if kept.answer is None else _ANSWERS.dump_json(kept.answer).decode(),
                    json.dumps(kept.news, ensure_ascii=False),
                    json.dumps(kept.minds, ensure_ascii=False),
                ),
            )
        return replace(kept, id=row.lastrowid or 0, at=at)

    def layouts(self, job_id: str) -> tuple[KeptLayout, ...]:
        """Give the layouts of a job, the newest first."""
        with self.reading() as database:
            rows = database.execute(f"{_WITH_NAME} WHERE job_id = ? ORDER BY layout.id DESC", (job_id,))
            return tuple(map(self._kept, rows))

    def layout(self, job_id: str, layout_id: int) -> KeptLayout:
        """Give a layout."""
        with self.reading() as database:
            row = database.execute(
                f"{_WITH_NAME} WHERE job_id = ? AND layout.id = ?", (job_id, number_of_row(layout_id))
            ).fetchone()
        if row is None:
            raise NotThereError("There is no such layout of this job.")
        return self._kept(row)

    def _kept(self, row: sqlite3.Row) -> KeptLayout:
        return KeptLayout(
            id=row["id"],
            # A job may be called otherwise since; its layouts are still those of this job.
            layout=replace(self._layout_from(row["text"]), job_name=row["job_name"]),
            made=Made(row["made"]),
            at=row["at"],
            answer=None if row["answer"] is None else _ANSWERS.validate_json(row["answer"]),
            news=tuple(json.loads(row["news"])),
            minds=tuple(json.loads(row["minds"])),
        )

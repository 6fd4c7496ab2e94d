"""Searches in the file: how far each has come, so that a restart in the middle of one loses nothing."""

import sqlite3
from dataclasses import replace

from plankwright.model import Layout
from plankwright.store.on_file import OnFile, demand_job, now, number_of_row
from plankwright.workshop.jobs.kept import KeptSearch, Made, NotThereError, SearchState


class Searches(OnFile):
    """The searches of a file; what each does is told in `workshop.jobs.ports.Store`."""

    __slots__ = ()

    def begin_search(self, search: KeptSearch) -> KeptSearch:
        """Keep that a search has begun."""
        begun = replace(search, begun_at=now())
        with self.writing() as database:
            demand_job(database, begun.job_id)
            row = database.execute(
                "INSERT INTO search (job_id, made, effort, seed, state, stage, done, told, trouble, wishes, "
                "begun_at, ended_at) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, '')",
                (
                    begun.job_id,
                    begun.made.value,
                    begun.effort,
                    begun.seed,
                    begun.state.value,
                    begun.stage,
                    begun.done,
                    begun.told,
                    begun.trouble,
                    begun.wishes,
                    begun.begun_at,
                ),
            )
        return replace(begun, id=row.lastrowid or 0)

    def note_search(self, search_id: int, *, stage: str, done: float, told: str, best: Layout | None) -> None:
        """Keep how far a search has come."""
        with self.writing() as database:
            database.execute(
                "UPDATE search SET stage = ?, done = ?, told = ?, best = coalesce(?, best) WHERE id = ?",
                (stage, done, told, None if best is None else self.texts.layout_to_json(best), search_id),
            )

    def end_search(self, search: KeptSearch) -> None:
        """Keep how a search ended."""
        with self.writing() as database:
            database.execute(
                "UPDATE search SET state = ?, layout_id = ?, trouble = ?, ended_at = ? WHERE id = ?",
                (search.state.value, search.layout_id, search.trouble, now(), search.id),
            )

    def search(self, search_id: int) -> KeptSearch:
        """Give a search."""
        with self.reading() as database:
            row = database.execute(
                "SELECT * FROM search WHERE id = ?", (number_of_row(search_id),)
            ).fetchone()
        if row is None:
            raise NotThereError("There is no such search, or no longer.")
        return self._search(row)

    def last_search(self, job_id: str) -> KeptSearch | None:
        """Give the search of a job that was begun last."""
        with self.reading() as database:
            row = database.execute(
                "SELECT * FROM search WHERE job_id = ? ORDER BY id DESC LIMIT 1", (job_id,)
            ).fetchone()
        return None if row is None else self._search(row)

    def cut_off_searches(self) -> int:
        """Note of every search that is kept as running that it was cut off."""
        with self.writing() as database:
            return database.execute(
                "UPDATE search SET state = ?, ended_at = ? WHERE state = ?",
                (SearchState.CUT_OFF.value, now(), SearchState.RUNNING.value),
            ).rowcount

    def _search(self, row: sqlite3.Row) -> KeptSearch:
        return KeptSearch(
            id=row["id"],
            job_id=row["job_id"],
            made=Made(row["made"]),
            effort=row["effort"],
            seed=row["seed"],
            state=SearchState(row["state"]),
            stage=row["stage"],
            done=row["done"],
            told=row["told"],
            best=None if row["best"] is None else self._layout_from(row["best"]),
            layout_id=row["layout_id"],
            trouble=row["trouble"],
            begun_at=row["begun_at"],
            ended_at=row["ended_at"],
            wishes=row["wishes"],
        )

"""Measure instances, each in a process of its own, and keep what came of it."""

import time
import traceback
from collections.abc import Iterable, Iterator
from concurrent.futures import Future, ProcessPoolExecutor, as_completed
from concurrent.futures.process import BrokenProcessPool
from dataclasses import dataclass
from datetime import UTC, datetime
from multiprocessing import get_context
from pathlib import Path

from benchmarks.family import Row
from benchmarks.machine import machine, version
from benchmarks.registry import FAMILIES
from benchmarks.results import FOLDER, keep, kept
from plankwright.workshop.lay_out import read_effort


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """What is to be measured.

    Parameters
    ----------
    family
        The family.
    seeds
        Of its instances.
    effort
        As people give it.
    jobs
        How many instances at a time; more than one disturbs the times.
    resume
        Whether to leave out what was measured before: this version, effort and machine.
    """

    family: str
    seeds: tuple[int, ...]
    effort: str
    jobs: int = 1
    resume: bool = False


def measure_one(family: str, seed: int, effort: str) -> Row:
    """Measure one instance.

    Parameters
    ----------
    family, seed, effort
        Which, and how long to search.

    Returns
    -------
    dict
        What was measured; when something went wrong with it, what as `error`.
    """
    started = time.perf_counter()
    try:
        row = FAMILIES[family].measure(FAMILIES[family].instance(seed), read_effort(effort))
    except Exception as error:  # noqa: BLE001 - one instance that fails must not end a night of measuring
        traceback.print_exc()
        row = {"error": type(error).__name__, "failed": "error"}
    return row | {"seed": seed, "effort": effort, "measured_s": time.perf_counter() - started}


def run(plan: Plan, folder: Path = FOLDER) -> Iterator[Row]:
    """Measure instances, and keep each row as soon as it is there.

    Parameters
    ----------
    plan
        What is to be measured.
    folder
        Of the results.

    Yields
    ------
    dict
        Each row, as it is kept.
    """
    about = {"machine": machine(), "version": version(), "jobs": plan.jobs}
    seeds = list(_left(plan, about, folder)) if plan.resume else list(plan.seeds)
    context = get_context("spawn")
    with ProcessPoolExecutor(plan.jobs, mp_context=context, max_tasks_per_child=1) as pool:
        waiting: dict[Future[Row], int] = {
            pool.submit(measure_one, plan.family, seed, plan.effort): seed for seed in seeds
        }
        for done in as_completed(waiting):
            when = datetime.now(tz=UTC).strftime("%Y-%m-%d %H:%M")
            row = _outcome(done, waiting[done], plan.effort) | about | {"when": when}
            keep(plan.family, row, folder)
            yield row


def _outcome(done: Future[Row], seed: int, effort: str) -> Row:
    try:
        return done.result()
    except BrokenProcessPool:
        return {
            "error": "the process ended before its time",
            "failed": "error",
            "seed": seed,
            "effort": effort,
        }


def _left(plan: Plan, about: Row, folder: Path) -> Iterable[int]:
    """Give the seeds that were not measured yet in just this way."""
    asked = about | {"effort": plan.effort}
    same = {
        row["seed"]
        for row in kept(plan.family, folder)
        if not about["version"].endswith("+") and all(row.get(key) == value for key, value in asked.items())
    }
    return (seed for seed in plan.seeds if seed not in same)

"""Results on disk: a file for each family, a line for each instance; the newest line of a seed stands."""

import json
from pathlib import Path

from benchmarks.family import Row, Rows

FOLDER = Path(__file__).parent / "results"
FRESH_FROM = 1000
"""Seeds from here on were never looked at while the search was tuned."""


def keep(family: str, row: Row, folder: Path = FOLDER) -> None:
    """Add what was measured on an instance.

    Parameters
    ----------
    family
        Its family.
    row
        With its `seed`.
    folder
        Of the results.
    """
    folder.mkdir(parents=True, exist_ok=True)
    with (folder / f"{family}.jsonl").open("a", encoding="utf-8") as file:
        file.write(json.dumps(row, ensure_ascii=False) + "\n")


def kept(family: str, folder: Path = FOLDER) -> Rows:
    """Give the newest row of each seed of a family, in order of the seeds."""
    path = folder / f"{family}.jsonl"
    if not path.exists():
        return ()
    lines = path.read_text(encoding="utf-8").splitlines()
    newest: dict[int, Row] = {row["seed"]: row for row in map(json.loads, filter(None, lines))}
    return [newest[seed] for seed in sorted(newest)]


def looked_at(rows: Rows) -> Rows:
    """Give the rows of seeds that may have been looked at while the search was tuned."""
    return [row for row in rows if row["seed"] < FRESH_FROM]


def fresh(rows: Rows) -> Rows:
    """Give the rows of seeds that were not."""
    return [row for row in rows if row["seed"] >= FRESH_FROM]

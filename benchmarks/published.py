"""Published instances of cutting stock, variable stock and skiving, where somebody has put them.

The files may not be handed on with the project, so they are read from a folder: that of the option or of the
environment variable PLANKWRIGHT_BENCH, else shared/bench beside the project. Where they come from, with
their optima:

- equal boards: BPPLIB (Delorme, Iori, Martello 2018), of the instances of Falkenauer (1996), Scholl, Klein
  and Jürgens (1997), Schoenfield (2002), and Wäscher and Gau (1996);
- several lengths in limited number: instances of Crainic and others (2011), Belov and Scheithauer (2002) and
  Hemmelmayr and others (2012); skiving: some of all of these as pieces to be joined. Their optima are not
  published; they were computed beforehand, bound and value being equal.

`python -m benchmarks.published` measures them and prints a line for each and one for each set.
"""

import argparse
import csv
import os
import sys
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from pathlib import Path
from statistics import median

from benchmarks.cutting_jobs import StockKind
from benchmarks.cutting_lists import Case, ToCut, ToJoin, equal_boards
from benchmarks.family import Row
from benchmarks.questions.cutting import measure
from plankwright.layout import Effort

FOLDER_VARIABLE = "PLANKWRIGHT_BENCH"

EFFORT_S = 25.0
"""Of a search, so that it ends within half a minute. [s]"""

_USUAL = Path(__file__).parents[2] / "shared" / "bench"


def folder() -> Path:
    """Give the folder that the instances are read from, whether it is there or not."""
    return Path(os.environ.get(FOLDER_VARIABLE) or _USUAL)


def cases(where: Path | None = None) -> list[Case]:
    """Read every instance whose optimum is known, in the order of the tables of optima.

    Parameters
    ----------
    where
        The folder; the usual one when left out.

    Returns
    -------
    list of Case
        None where there is no such folder.
    """
    where = where or folder()
    return [*_equal(where), *_several(where), *_skiving(where)]


def _table(where: Path, name: str) -> Iterator[Mapping[str, str]]:
    path = where / f"optima_{name}.csv"
    if path.is_file():
        with path.open(encoding="utf-8", newline="") as file:
            yield from csv.DictReader(file)


def _numbers(path: Path) -> list[int]:
    return [int(word) for word in path.read_text(encoding="ascii").split()]


def _equal(where: Path) -> Iterator[ToCut]:
    for row in _table(where, "bpp"):
        _, length, *pieces = _numbers(where / row["file"])
        yield equal_boards(row["file"].removesuffix(".txt"), pieces, length, int(row["published_optimum"]))


def _several(where: Path) -> Iterator[ToCut]:
    for row in _table(where, "vscsp"):
        kinds, *numbers = _numbers(where / "vscsp" / row["file"])
        stock, (_, *pieces) = numbers[: 3 * kinds], numbers[3 * kinds :]
        yield ToCut(
            name="vscsp/" + row["file"].removesuffix(".txt"),
            pieces=tuple(_repeated(pieces)),
            stock=tuple(map(StockKind, stock[::3], stock[1::3], stock[2::3])),
            optimum=int(row["best_cost"]),
        )


def _skiving(where: Path) -> Iterator[ToJoin]:
    for row in _table(where, "skiving"):
        _, length, *pieces = _numbers(where / "skiving" / row["file"])
        yield ToJoin(
            name="skiving/" + row["file"].removesuffix(".txt"),
            pieces=tuple(_repeated(pieces)),
            length=length,
            optimum=int(row["objects_made"]),
        )


def _repeated(numbers: list[int]) -> Iterator[int]:
    """Give each length as often as there are such pieces."""
    for length, count in zip(numbers[::2], numbers[1::2], strict=True):
        yield from [length] * count


def main(words: Sequence[str] | None = None) -> int:
    """Measure what the command line says, and give the exit code."""
    parser = argparse.ArgumentParser(prog="python -m benchmarks.published")
    parser.add_argument("--folder", type=Path, default=folder(), help="where the instances are")
    parser.add_argument("--seconds", type=float, default=EFFORT_S, help="effort of each search")
    parser.add_argument("names", nargs="*", help="only instances whose names contain one of these")
    given = parser.parse_args(words)
    chosen = [
        case
        for case in cases(given.folder)
        if not given.names or any(name in case.name for name in given.names)
    ]
    if not chosen:
        print(f"no such instance in {given.folder}", file=sys.stderr)
        return 1
    rows: dict[str, list[Row]] = defaultdict(list)
    with ProcessPoolExecutor(1, mp_context=get_context("spawn"), max_tasks_per_child=1) as pool:
        for case in chosen:
            row = pool.submit(measure, case, Effort(name="published", seconds=given.seconds)).result()
            rows[case.name.split("/")[0]].append(row)
            print(_line(row), flush=True)
    rows["all"] = [row for some in rows.values() for row in some]
    for name, some in rows.items():
        print(_summary(name, some))
    return 0


def _line(row: Row) -> str:
    told = "proven" if row["proven"] else "reached" if row["reached"] else row["failed"]
    figures = f"{row['best']} where {row['optimum']} is known, bound {row['bound']}"
    return f"{row['name']}: {figures}, {row['time_s']:.1f} s, {told}"


def _summary(name: str, rows: Sequence[Row]) -> str:
    times = [row["time_s"] for row in rows]
    reached, proven = (sum(row[what] for row in rows) for what in ("reached", "proven"))
    return (
        f"{name}: {len(rows)} instances, {reached} reached, {proven} proven, "
        f"median {median(times):.1f} s, worst {max(times):.1f} s"
    )


if __name__ == "__main__":
    sys.exit(main())

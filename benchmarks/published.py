"""Published instances of cutting stock, variable stock and skiving, where somebody has put them.

The files may not be handed on with the project, so they are read from a folder: that of the environment
variable PLANKWRIGHT_BENCH, else shared/bench beside the project.
"""

import csv
import os
from collections.abc import Iterator, Mapping
from pathlib import Path

from benchmarks.cutting_jobs import StockKind
from benchmarks.cutting_lists import Case, ToCut, ToJoin, equal_boards

FOLDER_VARIABLE = "PLANKWRIGHT_BENCH"

SOURCES = (
    "equal boards from BPPLIB (Delorme, Iori, Martello 2018), of the instances of Falkenauer (1996), "
    "Scholl, Klein and Jürgens (1997), Schoenfield (2002), and Wäscher and Gau (1996), with their "
    "published optima; several lengths in limited number after Crainic and others (2011), Belov and "
    "Scheithauer (2002) and Hemmelmayr and others (2012), and some of all of these as pieces to be "
    "joined, with optima that were computed beforehand, bound and value being equal. The files may not "
    "be handed on; the seed is the place in their tables of optima."
)

_USUAL = Path(__file__).parents[2] / "shared" / "bench"


def folder() -> Path:
    """Give the folder that the instances are read from, whether it is there or not."""
    return Path(os.environ.get(FOLDER_VARIABLE) or _USUAL)


def instance(seed: int) -> Case:
    """Read the instance at some place in the tables of optima.

    Raises
    ------
    FileNotFoundError
        If the files are not there.
    """
    found = cases()
    if seed >= len(found):
        raise FileNotFoundError(f"no published instance {seed} in {folder()}")
    return found[seed]


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

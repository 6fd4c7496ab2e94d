"""What is printed of a job that is kept, and what other programs take: each file by its name.

The pack takes seconds. Who looks at it mostly takes it along as well, so that the last ones are kept.
"""

import threading
from collections import OrderedDict
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import ClassVar

from plankwright.workshop.check_layout import demand_right
from plankwright.workshop.draw_map import draw_full_size, draw_map
from plankwright.workshop.hand_out import CUT_LIST_FILE, LAYOUT_FILE, SHEETS_FILE, make_files, map_files
from plankwright.workshop.jobs.at_work import AtWork, at_work
from plankwright.workshop.jobs.kept import KeptJob, NotThereError, RefusedError
from plankwright.workshop.jobs.leaf_words import answer_for_screen, on_screen, pack_for_screen
from plankwright.workshop.jobs.ports import Store
from plankwright.workshop.jobs.take_along import encoded, folder_of, zipped
from plankwright.workshop.jobs.tally_boards import fingerprint
from plankwright.workshop.paper_size import PaperSize
from plankwright.workshop.ports import DefinitionReading, Files
from plankwright.workshop.print_sheets import print_sheets

CUT_BOOK_FILE = "cut-list.xlsx"
TALLY_FILE, TALLY_BOOK_FILE = "tally.csv", "tally.xlsx"
FOLDER_FILE = "job.zip"

_OUT = "out"
"""Where commands look for results inside a job folder."""


class NotLaidOutError(RefusedError):
    """A paper was asked for that is made from a layout, and there is none."""

    default_message: ClassVar[str] = (
        "Nothing is laid out yet, so there is neither a pack nor a map nor a cut list: lay it out first."
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class MapFiles:
    """The map of a surface, as files.

    Parameters
    ----------
    surface_id
        The surface.
    sheet
        The file to look at and to print.
    full_size
        The file for drawing programs.
    """

    surface_id: str
    sheet: str
    full_size: str


def fit_for_paper(kept: KeptJob, files: Files, store: Store) -> AtWork:
    """Give a job as it is worked on, if papers may be made of it.

    Parameters
    ----------
    kept
        The job.
    files, store
        Who reads its definition, and who keeps its layout.

    Raises
    ------
    NotLaidOutError
        If there is no layout.
    FaultyLayoutError
        If the layout that it is worked by breaks a rule.
    BadInputError, SurfacesMissingError
        As `at_work` has it.
    """
    at = at_work(kept, files, store)
    if at is None:
        raise NotLaidOutError
    if at.faults:
        demand_right(at.job, at.by.layout, at.standing)
    return at


def maps_of(at: AtWork) -> tuple[MapFiles, ...]:
    """Name the files of every map."""
    ids = tuple(laid.surface_id for laid in at.by.layout.surfaces)
    return tuple(
        MapFiles(surface_id=surface_id, sheet=sheet, full_size=full_size)
        for surface_id, sheet, full_size in zip(ids, map_files(ids), map_files(ids, "dxf"), strict=True)
    )


def paper_of(kept: KeptJob, files: Files, store: Store, name: str, paper: PaperSize | None = None) -> bytes:
    """Make a file of a job.

    Parameters
    ----------
    kept
        The job.
    files, store
        Who writes it, and who keeps the layout.
    name
        Of the file: one of those that stand at the end of this module, or as `maps_of` names maps.
    paper
        What is printed on; the size that goes with the job's tape when left out.

    Returns
    -------
    bytes
        What it holds.

    Raises
    ------
    NotThereError
        If there is no file of that name.
    NotLaidOutError, FaultyLayoutError, BadInputError, SurfacesMissingError
        As `fit_for_paper` has it, for all files but the tally.
    """
    asked = _Asked(kept, files, store, paper)
    make = _MAKERS.get(name)
    return encoded(name, _map_named(asked, name) if make is None else make(asked))


def pack_of(kept: KeptJob, at: AtWork, paper: PaperSize | None = None) -> bytes:
    """Print the pack of a job, or give it as it was printed last if nothing is another since.

    Parameters
    ----------
    kept, at
        The job, and the same as it is worked on.
    paper
        What is printed on; the size that goes with the job's tape when left out.
    """
    size = "" if paper is None else paper.value
    key = (kept.id, at.by.id, fingerprint((kept.definition, kept.boards, kept.work)), size)
    return _PACKS.get(
        key,
        lambda: print_sheets(
            at.job,
            at.by.layout,
            paper,
            answer=None if at.by.answer is None else answer_for_screen(at.by.answer),
            standing=at.standing,
            news=tuple(map(on_screen, at.by.news)),
            reword=pack_for_screen,
        ),
    )


@dataclass(frozen=True, slots=True)
class _Asked:
    """What a file is made from."""

    kept: KeptJob
    files: Files
    store: Store
    paper: PaperSize | None

    @property
    def at(self) -> AtWork:
        return fit_for_paper(self.kept, self.files, self.store)

    @property
    def reading(self) -> DefinitionReading:
        return self.files.read_definition(self.kept.definition, self.kept.boards)


def _cut_list(asked: _Asked) -> str:
    at = asked.at
    return asked.files.cut_list_csv(at.job, at.by.layout, at.standing)


def _cut_book(asked: _Asked) -> bytes:
    at = asked.at
    return asked.files.cut_list_xlsx(at.job, at.by.layout, at.standing)


def _whole_folder(asked: _Asked) -> bytes:
    """Pack the job folder with all in it that commands would have left there."""
    at = asked.at
    made = make_files(at.job, at.by.layout, files=asked.files, paper=asked.paper, standing=at.standing) | {
        SHEETS_FILE: pack_of(asked.kept, at, asked.paper)
    }
    results = {f"{_OUT}/{name}": content for name, content in made.items()}
    return zipped(folder_of(asked.kept, asked.files, asked.store) | results)


def _map_named(asked: _Asked, name: str) -> str:
    at = asked.at
    for laid, made in zip(at.by.layout.surfaces, maps_of(at), strict=True):
        if name == made.sheet:
            return draw_map(at.job, laid, asked.paper, standing=at.standing)
        if name == made.full_size:
            return draw_full_size(at.job, laid, standing=at.standing)
    raise NotThereError(f"There is no paper {name} of this job, or no longer.")


_MAKERS: Mapping[str, Callable[[_Asked], str | bytes]] = MappingProxyType(
    {
        TALLY_FILE: lambda asked: asked.reading.tally_csv(),
        TALLY_BOOK_FILE: lambda asked: asked.reading.tally_xlsx(),
        SHEETS_FILE: lambda asked: pack_of(asked.kept, asked.at, asked.paper),
        CUT_LIST_FILE: _cut_list,
        CUT_BOOK_FILE: _cut_book,
        LAYOUT_FILE: lambda asked: asked.files.layout_to_json(asked.at.by.layout),
        FOLDER_FILE: _whole_folder,
    }
)


_Key = tuple[str, int, str, str]


class _LastPacks:
    """Keeps the packs that were printed last, and has no two printed at a time."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._lock = threading.Lock()
        self._kept: OrderedDict[_Key, bytes] = OrderedDict()

    def get(self, key: _Key, make: Callable[[], bytes]) -> bytes:
        """Give a pack; make it if it is none of those that are kept."""
        known = self._kept.get(key)
        if known is not None:
            return known
        with self._lock:
            # Somebody else may have had the same made meanwhile.
            if key not in self._kept:
                self._kept[key] = make()
                while len(self._kept) > self._most:
                    self._kept.popitem(last=False)
            return self._kept[key]


_PACKS = _LastPacks(most=4)

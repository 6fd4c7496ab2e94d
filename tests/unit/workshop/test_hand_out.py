"""The files that a person takes to the saw and to the wall."""

from collections.abc import Callable, Iterable, Mapping
from pathlib import Path

import pytest

from plankwright.measure import TapeStyle, Unit
from plankwright.model import NOTHING_DONE, Board, Job, Layout, Rules, Standing, Work
from plankwright.workshop.check_layout import FaultyLayoutError
from plankwright.workshop.hand_out import hand_out, hand_out_maps, hand_out_sheets, map_files
from plankwright.workshop.ports import JobReading, TallyReading
from village import small_job, small_layout, spoilt_layout

OUT = Path("out")
RULES = Rules()


class FilesInMemory:
    """Keeps what is written, by path."""

    def __init__(self) -> None:
        self.kept: dict[Path, str | bytes] = {}

    def demand_writable(self, path: Path) -> None:
        """Nothing is tried here."""
        raise NotImplementedError(path)

    def write_files(self, files: Mapping[Path, str | bytes]) -> None:
        """Keep them."""
        self.kept |= files

    def layout_to_json(self, layout: Layout) -> str:
        """Say whose layout it is."""
        return f"layout of {layout.job_name}"

    def cut_list_csv(self, job: Job, layout: Layout, standing: Standing = NOTHING_DONE) -> str:
        """Say how many pieces there are."""
        assert not standing.begun
        return f"{len(layout.pieces)} pieces of {job.name}"

    def tally_csv(self, boards: Iterable[Board], tape: TapeStyle) -> str:
        """Nothing is tallied here."""
        raise NotImplementedError(boards, tape)

    def read_job(self, folder: Path) -> JobReading:
        """Nothing is read here."""
        raise NotImplementedError(folder)

    def read_tally(
        self, path: Path, *, unit: Unit | None, decimal_comma: bool = False, rules: Rules = RULES
    ) -> TallyReading:
        """Nothing is read here."""
        raise NotImplementedError(path, unit, decimal_comma, rules)

    def read_layout(self, file: Path) -> Layout:
        """Nothing is read here."""
        raise NotImplementedError(file)

    def read_work(self, folder: Path) -> Work | None:
        """Nothing is read here."""
        raise NotImplementedError(folder)

    def write_work(self, folder: Path, work: Work) -> None:
        """Nothing is marked here."""
        raise NotImplementedError(folder, work)

    def write_template(self, folder: Path) -> tuple[Path, ...]:
        """Nothing is started here."""
        raise NotImplementedError(folder)


def test_everything_is_written_and_named() -> None:
    """The layout, the cut list, a map for each surface and the sheets."""
    memory = FilesInMemory()
    written = hand_out(small_job(), small_layout(), folder=OUT, files=memory)
    assert [file.path for file in written] == list(memory.kept)
    assert [path.name for path in memory.kept] == [
        "layout.json",
        "cut-list.csv",
        "map-wall.svg",
        "map-wall.dxf",
        "sheets.pdf",
    ]
    assert memory.kept[OUT / "layout.json"] == "layout of village hall"
    assert memory.kept[OUT / "cut-list.csv"] == "2 pieces of village hall"
    assert str(memory.kept[OUT / "map-wall.svg"]).startswith("<svg")
    sheets = memory.kept[OUT / "sheets.pdf"]
    assert isinstance(sheets, bytes)
    assert sheets.startswith(b"%PDF-")
    assert all(file.what for file in written)


def test_maps_and_sheets_can_be_had_by_themselves() -> None:
    """As the commands for them do."""
    memory = FilesInMemory()
    drawn, full_size = hand_out_maps(small_job(), small_layout(), folder=OUT, files=memory)
    (printed,) = hand_out_sheets(small_job(), small_layout(), folder=OUT, files=memory)
    assert list(memory.kept) == [drawn.path, full_size.path, printed.path]


@pytest.mark.parametrize("way", [hand_out, hand_out_maps, hand_out_sheets])
def test_nothing_is_written_of_a_layout_that_breaks_a_rule(way: Callable[..., object]) -> None:
    """Whoever made it."""
    memory = FilesInMemory()
    with pytest.raises(FaultyLayoutError):
        way(small_job(), spoilt_layout(), folder=OUT, files=memory)
    assert memory.kept == {}


def test_maps_have_names_that_any_system_takes() -> None:
    """Whatever the surface is called."""
    assert map_files(("entry-wall", "Gable / north", "../../etc", "Küche")) == (
        "map-entry-wall.svg",
        "map-gable-north.svg",
        "map-etc.svg",
        "map-küche.svg",
    )


def test_no_two_maps_have_the_same_name() -> None:
    """Ids that differ in their signs only, or have nothing but signs."""
    assert map_files(("a b", "a-b", "A/B", "!", "?")) == (
        "map-a-b.svg",
        "map-a-b-2.svg",
        "map-a-b-3.svg",
        "map-surface.svg",
        "map-surface-2.svg",
    )

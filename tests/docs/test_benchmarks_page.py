"""The page of benchmarks is what the kept results say, pictures included."""

from pathlib import Path

from benchmarks.registry import FAMILIES
from benchmarks.report import PAGE, PICTURES, TEMPLATE, write
from benchmarks.results import FOLDER


def test_the_page_is_current(tmp_path: Path) -> None:
    """Else: python -m benchmarks report."""
    page, pictures = tmp_path / PAGE.name, tmp_path / PICTURES.name
    write(FOLDER, page, pictures)
    assert PAGE.read_text(encoding="utf-8") == page.read_text(encoding="utf-8")
    written = {path.name: path.read_bytes() for path in pictures.iterdir()}
    assert {path.name: path.read_bytes() for path in PICTURES.glob("*.svg")} == written


def test_every_family_is_told_of() -> None:
    """How its instances are made, in words; the yards together."""
    text = TEMPLATE.read_text(encoding="utf-8")
    for name in FAMILIES:
        assert f"- **{name.split('-')[0]}**." in text


def test_results_are_of_families_that_there_are() -> None:
    """None is left over from one that was renamed."""
    assert {path.stem for path in FOLDER.glob("*.jsonl")} <= FAMILIES.keys()

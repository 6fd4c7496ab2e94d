"""README.md is short and true."""

import re
from pathlib import Path

from plankwright.cli.commands import SUMMARIES

ROOT = Path(__file__).parents[2]
PAGE = (ROOT / "README.md").read_text(encoding="utf-8")


def test_it_is_read_in_a_minute() -> None:
    """At most sixty lines."""
    assert len(PAGE.splitlines()) <= 60


def test_what_it_tells_to_type_is_there() -> None:
    """Commands, targets of make, scripts."""
    assert set(re.findall(r"^plankwright (\w+)", PAGE, re.MULTILINE)) <= set(SUMMARIES)
    makefile = (ROOT / "Makefile").read_text(encoding="utf-8")
    for target in re.findall(r"^make (\w+)", PAGE, re.MULTILINE):
        assert f"\n{target}:" in makefile
    for script in re.findall(r"`python3 (\S+)`", PAGE):
        assert (ROOT / script).is_file()
    for example in re.findall(r"examples/[\w-]+", PAGE):
        assert (ROOT / example / "job.toml").is_file()


def test_every_page_it_names_is_there() -> None:
    """No link leads nowhere, here or on any page of the documentation."""
    for page in (ROOT / "README.md", *(ROOT / "docs").glob("*.md")):
        for link in re.findall(r"\]\(([^)#:]+)(?:#[^)]*)?\)", page.read_text(encoding="utf-8")):
            assert (page.parent / link).exists(), f"{page.name}: {link}"

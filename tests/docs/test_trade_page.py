"""docs/trade.md names every source that the program names, and is what its tool writes."""

import subprocess
import sys
from pathlib import Path

from plankwright.trade.library import sources_by_room

ROOT = Path(__file__).parents[2]
PAGE = (ROOT / "docs" / "trade.md").read_text(encoding="utf-8")


def test_it_is_current() -> None:
    """As with the page of the commands, the tool says."""
    tool = ROOT / "tools" / "document_sources.py"
    subprocess.run([sys.executable, tool, "--check"], check=True)


def test_every_source_stands_there_once() -> None:
    """By its key."""
    for sources in sources_by_room().values():
        assert sources
        for source in sources:
            assert PAGE.count(f"| `{source.key}` |") == 1


def test_it_leaves_the_decision_to_others() -> None:
    """And says so first."""
    assert "Local codes and licensed trades decide" in PAGE
    assert "from memory, not verified" in PAGE

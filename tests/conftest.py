"""How all tests run: examples drawn alike everywhere, and golden files compared or written anew."""

from collections.abc import Callable
from pathlib import Path
from typing import TypeAlias

import pytest
from hypothesis import settings

# Drawn from each test's own text, so that a run that passes here passes everywhere; a search among new
# examples is `pytest --hypothesis-profile=fresh`. No deadline: a busy machine is no fault of the code.
settings.register_profile("repeatable", deadline=None, derandomize=True)
settings.register_profile("fresh", deadline=None, print_blob=True)
settings.load_profile("repeatable")

_GOLDEN = Path(__file__).parent / "golden"

Golden: TypeAlias = Callable[[str, str], None]
"""Compares a text with the golden file of that name: `golden("wall.svg", text)`."""


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add the one option of our own."""
    parser.addoption(
        "--golden-update",
        action="store_true",
        help="write the golden files anew instead of comparing with them; look at them before committing",
    )


@pytest.fixture
def golden(request: pytest.FixtureRequest) -> Golden:
    """Compare with a golden file, or write it when asked to."""

    def compare(name: str, text: str) -> None:
        path = _GOLDEN / name
        if request.config.getoption("--golden-update"):
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8", newline="\n")
        else:
            assert path.is_file(), (
                f"there is no golden file {name}: write it with --golden-update and look at it"
            )
            assert text.splitlines() == path.read_text(encoding="utf-8").splitlines()

    return compare

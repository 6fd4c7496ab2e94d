"""What is said of hazards before each sort of work."""

import re

import pytest

from plankwright.workshop.caution import BEFORE, CAUTION

CLAIMS = re.compile(r"\b(?:safe|compli\w+|permitted|allowed|certified)\b")


@pytest.mark.parametrize(
    ("work", "hazards"),
    [
        ("pulling", ("lead", "asbestos", "wires", "nails", "dust")),
        ("cutting", ("nail", "metal", "kick back", "dust", "lead")),
        ("nailing", ("wires", "pipes", "switch off", "keep-outs", "overhead")),
    ],
)
def test_each_names_what_can_hurt_there(work: str, hazards: tuple[str, ...]) -> None:
    """And what to do about it, in a few lines."""
    assert all(hazard in BEFORE[work].lower() for hazard in hazards)
    assert len(BEFORE[work]) < 300


@pytest.mark.parametrize("said", [CAUTION, *BEFORE.values()])
def test_none_says_that_anything_is_safe_or_permitted(said: str) -> None:
    """Nobody here knows."""
    assert not CLAIMS.search(said)

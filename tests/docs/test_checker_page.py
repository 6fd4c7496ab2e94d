"""The page about the checker tells every code, and none that is not there."""

import re
from pathlib import Path

from plankwright.check import FindingCode
from plankwright.check.finding import severity_of

PAGE = (Path(__file__).parents[2] / "docs" / "checker.md").read_text(encoding="utf-8")
ROW = re.compile(r"^\| (\d+) \| (\w+) \| (\w+) \| ([^|]+) \| ([^|]+) \|$", re.MULTILINE)


def test_every_code_is_told_with_its_name_and_weight() -> None:
    """Each code has one row, in order, that gives its name and weight as the program has them."""
    told = [(int(code), name, weight) for code, name, weight, _, _ in ROW.findall(PAGE)]
    assert told == [(code.value, code.name, severity_of(code).value) for code in FindingCode]


def test_every_code_says_what_is_found_and_how_to_mend_it() -> None:
    """No row is left half empty: both are whole sentences."""
    for _, name, _, meaning, mend in ROW.findall(PAGE):
        assert meaning.endswith("."), name
        assert mend.endswith("."), name


def test_codes_stand_under_their_subject() -> None:
    """Each row stands in the section of its hundred."""
    sections = re.split(r"^## ", PAGE, flags=re.MULTILINE)
    for section in sections:
        hundreds = {int(code) // 100 for code, *_ in ROW.findall(section)}
        if hundreds:
            assert section.startswith(f"{hundreds.pop()}xx: ")
            assert not hundreds

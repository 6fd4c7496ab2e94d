"""The lock and the project's own description agree."""

import re
import tomllib
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

ROOT = Path(__file__).parents[2]
LOCK = (ROOT / "requirements" / "lock.txt").read_text(encoding="utf-8")
PIN = re.compile(r"^(?P<name>[\w.-]+)==(?P<version>[^\s;]+)(?P<rest>.*(?:\n .*)*)", re.MULTILINE)


def declared() -> list[Requirement]:
    """Read what pyproject.toml asks for: at run time, with its extras, and for development."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    groups = [*project["dependency-groups"].values(), *project["project"]["optional-dependencies"].values()]
    besides = [entry for group in groups for entry in group if isinstance(entry, str)]
    return [Requirement(entry) for entry in [*project["project"]["dependencies"], *besides]]


def disagreements(wanted: list[Requirement], lock: str) -> list[str]:
    """Tell where a lock lacks, misses or exceeds what is wanted, or pins without a hash."""
    pins = {canonicalize_name(pin["name"]): pin for pin in PIN.finditer(lock)}
    names = {canonicalize_name(requirement.name) for requirement in wanted}
    faults = [f"{name} is not locked" for name in sorted(names - pins.keys())]
    for requirement in wanted:
        pin = pins.get(canonicalize_name(requirement.name))
        if pin and not requirement.specifier.contains(pin["version"]):
            faults.append(f"{requirement} is locked at {pin['version']}")
    for name, pin in pins.items():
        if "--hash=sha256:" not in pin["rest"]:
            faults.append(f"{name} has no hash")
        if "(pyproject.toml" in pin["rest"] and name not in names:
            faults.append(f"{name} is locked but no longer asked for")
    return faults


def test_lock_holds_what_the_project_asks_for() -> None:
    """Each requirement is locked, hashed, at a version that it allows, and no other is; else: make lock."""
    assert disagreements(declared(), LOCK) == []


HASH = "--hash=sha256:" + "0" * 64


@pytest.mark.parametrize(
    ("lock", "fault"),
    [
        ("", "shapely is not locked"),
        (f"shapely==1.8 \\\n    {HASH}\n", "shapely>=2.1 is locked at 1.8"),
        ("shapely==2.1\n    # via plankwright (pyproject.toml)\n", "shapely has no hash"),
        (
            f"shapely==2.1 \\\n    {HASH}\nrtree==1 \\\n    {HASH}\n    # via plankwright (pyproject.toml)\n",
            "rtree is locked but no longer asked for",
        ),
    ],
)
def test_a_lock_that_disagrees_is_found(lock: str, fault: str) -> None:
    """A missing, a wrong, an unhashed and a left-over pin are each told."""
    assert disagreements([Requirement("shapely>=2.1")], lock) == [fault]

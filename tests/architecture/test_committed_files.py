"""What is committed works anywhere: it names no package registry and no folder of one machine."""

import re
import shutil
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
REGISTRY = re.compile(
    r"pypi\.org|pythonhosted\.org|npmjs\.(?:org|com)|deb\.debian\.org"  # public hosts
    r"|^\s*(?:--(?:extra-)?index-url|--find-links|-i|-f)[ =]",  # and how a requirements file names any other
    re.IGNORECASE | re.MULTILINE,
)
MACHINE_PATH = re.compile(r"(?<![\w.~*-])/(?:home|opt|root|tmp|Users|work)/\w|\b[A-Z]:\\Users\\")


def faults_in(text: str) -> list[str]:
    """Give each mention of a registry and each path of a machine in a text."""
    return [found.group() for pattern in (REGISTRY, MACHINE_PATH) for found in pattern.finditer(text)]


def committed_files() -> list[Path]:
    """List the files that git tracks and that are still there."""
    git = shutil.which("git")
    if git is None or not (ROOT / ".git").exists():
        pytest.skip("not a git clone, so nothing tells what is committed")
    listed = subprocess.run(
        [git, "-C", str(ROOT), "ls-files", "-z"], check=True, capture_output=True, text=True
    )
    return [path for name in listed.stdout.split("\0") if name and (path := ROOT / name).is_file()]


def test_no_registry_and_no_machine_path_is_committed() -> None:
    """No committed text file names a registry or a folder of one machine."""
    faults = {}
    for path in committed_files():
        content = path.read_bytes()
        if b"\0" not in content and path != Path(__file__):
            found = faults_in(content.decode("utf-8", errors="replace"))
            if found:
                faults[str(path.relative_to(ROOT))] = found
    assert faults == {}


@pytest.mark.parametrize(
    "text",
    [
        "https://files.pythonhosted.org/packages/x.whl",
        "numpy==2.0\n--extra-index-url=https://example.org/simple\n",
        "--find-links wheels",
        "see /home/someone/plan.txt",
        "open('/tmp/out.svg')",
        r"C:\Users\someone",
    ],
)
def test_a_registry_or_a_machine_path_is_found(text: str) -> None:
    """Every kind of mention is seen."""
    assert len(faults_in(text)) == 1


@pytest.mark.parametrize(
    "text", ["src/work/plan.py", "~/work/plan.py", "https://example.org/home/page", "1/2 in"]
)
def test_other_slashes_are_let_pass(text: str) -> None:
    """Relative paths, addresses of pages and fractions are no paths of a machine."""
    assert faults_in(text) == []

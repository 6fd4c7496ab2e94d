"""Set up `.venv` with the locked libraries and the project itself, and do nothing when it is up to date.

Needs Python 3.11 or newer with pip, and only the standard library, so that it runs on a fresh machine:

    python3 tools/set_up.py

Debian parts `ensurepip` from Python, so `python3 -m venv` may fail where this does not: the environment is
made without a pip of its own, and the pip that the machine has installs into it.
"""

import hashlib
import os
import shutil
import subprocess
import sys
import venv
from pathlib import Path

OLDEST = (3, 11)
NAMES_TO_TRY = ("python3.13", "python3.12", "python3.11", "python3.14")

ROOT = Path(__file__).resolve().parent.parent
LOCK = ROOT / "requirements" / "lock.txt"
PROJECT = ROOT / "pyproject.toml"
ENVIRONMENT = ROOT / ".venv"
PYTHON = ENVIRONMENT / ("Scripts/python.exe" if os.name == "nt" else "bin/python")


def main() -> None:
    """Bring `.venv` up to date with the lock and with the project's own description."""
    libraries = Stamp("lock", LOCK)
    project = Stamp("project", PROJECT)
    if PYTHON.exists() and libraries.holds() and project.holds():
        return
    use_suitable_python()
    if not (PYTHON.exists() and libraries.holds()):
        print(
            f"Making {ENVIRONMENT.name} and installing the libraries into it; this takes minutes.", flush=True
        )
        venv.EnvBuilder(clear=True, symlinks=os.name != "nt", with_pip=False).create(ENVIRONMENT)
        # The lock names every library. Left to resolve what they ask for, pip 23.2 takes `name[extra]` for
        # one that is not locked, and stops, as soon as a newer version than the locked one is published.
        install("--no-deps", "--require-hashes", "--only-binary=:all:", "--requirement", str(LOCK))
        libraries.set()
    install("--no-deps", "--no-build-isolation", "--editable", str(ROOT))
    project.set()
    print(f"Ready: {PYTHON.parent.relative_to(ROOT) / 'plankwright'} --help")


class Stamp:
    """A note in `.venv` of what a file said when it was last acted on."""

    def __init__(self, name: str, source: Path) -> None:
        self._note = ENVIRONMENT / f"{name}.sha256"
        self._digest = hashlib.sha256(source.read_bytes()).hexdigest()

    def holds(self) -> bool:
        """Tell whether the file still says what it said then."""
        return self._note.exists() and self._note.read_text(encoding="ascii") == self._digest

    def set(self) -> None:
        """Note what the file says now."""
        self._note.write_text(self._digest, encoding="ascii")


def use_suitable_python() -> None:
    """Go on under a Python that is new enough and can install, or stop with a sentence."""
    if Path(sys.prefix).resolve() == ENVIRONMENT:
        sys.exit(
            "The environment is out of date, and this is its own Python: run 'deactivate' and try again."
        )
    if sys.version_info >= OLDEST and has_pip(sys.executable):
        return
    for name in NAMES_TO_TRY:
        found = shutil.which(name)
        if found and has_pip(found):
            sys.exit(subprocess.call([found, __file__]))
    sys.exit(
        "Plankwright needs Python 3.11 or newer with pip (on Debian: the packages python3 and python3-pip). "
        f"This is Python {sys.version_info[0]}.{sys.version_info[1]}; "
        "name another one with 'make PYTHON=/path/to/python3' or run this script with it."
    )


def has_pip(python: str) -> bool:
    """Tell whether a Python starts and has a pip new enough (22.3) to install into another environment."""
    probe = [python, "-m", "pip", "--python", python, "--version"]
    return subprocess.run(probe, check=False, capture_output=True).returncode == 0


def install(*what: str) -> None:
    """Have the machine's pip install something into the environment."""
    pip = [sys.executable, "-m", "pip", "--disable-pip-version-check", "--python", str(PYTHON)]
    done = subprocess.run([*pip, "install", "--quiet", "--no-input", *what], check=False)
    if done.returncode:
        sys.exit("pip could not install the libraries: its own words are above. Mend that and try again.")


if __name__ == "__main__":
    main()

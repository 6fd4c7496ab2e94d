"""Find a browser for `tests/browser`, and bring one to the machine where there is none.

    python tools/find_browser.py

It says nothing where a browser and what steers it start. Otherwise, as root on Debian, it installs them with
apt; elsewhere it has Playwright fetch its own. When neither works the tests in a browser are skipped, unless
`CI` or `PLANKWRIGHT_NEED_BROWSER` is set: then it fails, and so do they.
"""

import os
import platform
import shutil
import subprocess
import sys
from pathlib import Path

from playwright.sync_api import sync_playwright

NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
PLAYWRIGHT = (sys.executable, "-m", "playwright")
PACKAGES = ("chromium", "fonts-dejavu-core", "libatomic1")
"""On Debian: the browser, letters for it, and what the program that steers it is linked against."""

ARGUMENTS = ("--disable-domain-reliability", "--disable-gpu", "--disable-quic", "--disable-sync")
"""What it is launched with besides what Playwright adds: it asks nobody for anything by itself."""

LONGEST_S = 900
"""A registry that does not answer is waited for no longer. [s]"""

_NONE = (
    "No browser was found for the tests in tests/browser: install Chromium (on Debian: the packages "
    f"{', '.join(PACKAGES)}), or name one with the environment variable CHROMIUM."
)


def main() -> None:
    """Bring a browser where there is none, and say so when that does not work."""
    if ready():
        return
    for command in ways_to_bring():
        print(f"No browser is here for the tests; trying: {' '.join(command)}", flush=True)
        if _runs(command, quiet=False) and ready():
            return
    if needed():
        sys.exit(_NONE)
    print(f"{_NONE} Until then they are skipped.")


def ready() -> bool:
    """Tell whether there is a browser, and what steers it starts."""
    return _runs((*PLAYWRIGHT, "--version")) and find_browser() is not None


def find_browser() -> Path | None:
    """Give the program of a browser, if there is one.

    Returns
    -------
    Path or None
        The one that the environment variable `CHROMIUM` names, one that is installed, or Playwright's own.
    """
    named = os.environ.get("CHROMIUM")
    if named:
        found = shutil.which(named)
        return Path(found) if found else None
    for name in NAMES:
        found = shutil.which(name)
        if found:
            return Path(found)
    return _of_playwright()


def needed() -> bool:
    """Tell whether a missing browser is a failure."""
    return any(os.environ.get(name) for name in ("CI", "PLANKWRIGHT_NEED_BROWSER"))


def ways_to_bring() -> list[tuple[str, ...]]:
    """Give commands that may bring a browser, the likeliest first; several may have to follow each other."""
    fetch = (*PLAYWRIGHT, "install")
    if not _is_root():
        return [(*fetch, "chromium")]
    if _is_debian() and shutil.which("apt-get"):
        install = ("apt-get", "install", "-y", "-qq", "--no-install-recommends", *PACKAGES)
        return [("apt-get", "update", "-qq"), install, (*fetch, "chromium")]
    return [(*fetch, "--with-deps", "chromium")]


def _of_playwright() -> Path | None:
    with sync_playwright() as playwright:
        own = Path(playwright.chromium.executable_path)
    return own if own.exists() else None


def _is_root() -> bool:
    return hasattr(os, "geteuid") and os.geteuid() == 0


def _is_debian() -> bool:
    try:
        return platform.freedesktop_os_release().get("ID") == "debian"
    except OSError:
        return False


def _runs(command: tuple[str, ...], *, quiet: bool = True) -> bool:
    """Run a command to its end, and tell whether it did what it was asked to."""
    environment = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    output = subprocess.DEVNULL if quiet else None
    try:
        done = subprocess.run(
            command, check=False, env=environment, stdout=output, stderr=output, timeout=LONGEST_S
        )
    except (OSError, subprocess.TimeoutExpired):
        return False
    return done.returncode == 0


if __name__ == "__main__":
    main()

"""Which machine and which version of the program a measurement is from."""

import os
import platform
import shutil
import subprocess
from pathlib import Path

ROOT = Path(__file__).parents[1]


def machine() -> str:
    """Name the machine: processor, cores, system and Python; nothing that tells whose it is."""
    system = f"{platform.system()} {platform.machine()}, Python {platform.python_version()}"
    return f"{_processor()}, {os.cpu_count()} cores, {system}"


def _processor() -> str:
    """Name the processor, as far as the system tells."""
    told = Path("/proc/cpuinfo")
    if told.exists():
        for row in told.read_text(encoding="utf-8", errors="replace").splitlines():
            if row.startswith("model name"):
                return row.partition(":")[2].strip()
    return platform.processor() or "processor unknown"


def version() -> str:
    """Name the commit that is measured, with a plus behind it when files differ from it; "?" without git."""
    git = shutil.which("git")
    if git is None:
        return "?"
    words = ([git, "rev-parse", "--short", "HEAD"], [git, "status", "--porcelain", "src", "benchmarks/*.py"])
    told = [
        subprocess.run(some, cwd=ROOT, capture_output=True, text=True, check=False).stdout.strip()
        for some in words
    ]
    return f"{told[0] or '?'}{'+' if told[1] else ''}"

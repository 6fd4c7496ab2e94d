"""docs/commands.md says what the commands say."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]


def test_the_page_is_what_help_says() -> None:
    """Written anew, it would be the same."""
    command = [sys.executable, "tools/document_commands.py", "--check"]
    ran = subprocess.run(command, cwd=ROOT, check=False, capture_output=True, text=True)
    assert ran.returncode == 0, ran.stderr

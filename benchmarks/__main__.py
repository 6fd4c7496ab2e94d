"""`python -m benchmarks`: write an instance as a job folder."""

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

from benchmarks.families import INSTANCES
from benchmarks.job_folder import write_job
from plankwright.errors import PlankwrightError


def main(words: Sequence[str] | None = None) -> int:
    """Do what the command line says, and give the exit code."""
    parser = argparse.ArgumentParser(prog="python -m benchmarks", description=__doc__)
    commands = parser.add_subparsers(dest="command", required=True)
    write = commands.add_parser("write", help="write an instance as a job folder")
    write.add_argument("family", choices=INSTANCES)
    write.add_argument("seed", type=int)
    write.add_argument("folder", type=Path)
    given = parser.parse_args(words)
    try:
        for path in write_job(INSTANCES[given.family](given.seed).job, given.folder):
            print(path)
    except PlankwrightError as error:
        print(error, file=sys.stderr)
        return int(error.exit_code)
    return 0


if __name__ == "__main__":
    sys.exit(main())

"""`python -m benchmarks`: write an instance as a job folder, measure instances, report."""

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

from benchmarks import report
from benchmarks.family import Row
from benchmarks.instance import Instance
from benchmarks.job_folder import write_job
from benchmarks.registry import FAMILIES
from benchmarks.results import FRESH_FROM
from benchmarks.run import Plan, run
from plankwright.errors import PlankwrightError
from plankwright.workshop.lay_out import read_effort


def main(words: Sequence[str] | None = None) -> int:
    """Do what the command line says, and give the exit code."""
    given = _parser().parse_args(words)
    try:
        given.do(given)
    except PlankwrightError as error:
        print(error, file=sys.stderr)
        return int(error.exit_code)
    return 0


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="python -m benchmarks", description=__doc__)
    commands = parser.add_subparsers(required=True)
    write = commands.add_parser("write", help="write an instance as a job folder")
    write.add_argument("family", choices=FAMILIES)
    write.add_argument("seed", type=int)
    write.add_argument("folder", type=Path)
    write.set_defaults(do=_write)
    measure = commands.add_parser("run", help="measure instances and keep the results")
    measure.add_argument("families", nargs="*", metavar="FAMILY", help=f"of {', '.join(FAMILIES)}; or all")
    measure.add_argument(
        "--seeds",
        type=_seeds,
        action="append",
        help="such as 0:20; without it as many as a full run has, from 0 and from 1000 on",
    )
    measure.add_argument("--effort", help="as plankwright takes it; without it that of a full run")
    measure.add_argument("--jobs", type=int, default=1, help="instances at a time; it disturbs the times")
    measure.add_argument("--resume", action="store_true", help="leave out what this commit has measured")
    measure.set_defaults(do=_run)
    told = commands.add_parser("report", help="write docs/benchmarks.md and print the table")
    told.set_defaults(do=_report)
    return parser


def _seeds(text: str) -> tuple[int, ...]:
    first, colon, last = text.partition(":")
    try:
        return tuple(range(int(first), int(last))) if colon else (int(first),)
    except ValueError:
        raise argparse.ArgumentTypeError(
            f"“{text}” is neither a seed such as 7 nor a range such as 0:20"
        ) from None


def _write(given: argparse.Namespace) -> None:
    instance = FAMILIES[given.family].instance(given.seed)
    if not isinstance(instance, Instance):
        raise SystemExit(
            f"{given.family} asks for lists of pieces, each as several jobs: there is none to write"
        )
    for path in write_job(instance.job, given.folder):
        print(path)


def _run(given: argparse.Namespace) -> None:
    unknown = [name for name in given.families if name not in FAMILIES]
    if unknown:
        raise SystemExit(f"no family is called {', '.join(unknown)}: there are {', '.join(FAMILIES)}")
    for name in given.families or FAMILIES:
        family = FAMILIES[name]
        ranges = given.seeds or [
            tuple(range(start, start + family.count)) for start in ((0, FRESH_FROM) if family.fresh else (0,))
        ]
        plan = Plan(
            family=name,
            seeds=tuple(dict.fromkeys(seed for some in ranges for seed in some)),
            effort=given.effort or family.effort,
            jobs=given.jobs,
            resume=given.resume,
        )
        read_effort(plan.effort)
        for row in run(plan):
            print(_line(name, row), flush=True)


def _line(family: str, row: Row) -> str:
    told = row.get("error") or row.get("failed") or "well"
    return f"{family} {row['seed']}: {told}, {row.get('measured_s', 0):.0f} s"


def _report(_given: argparse.Namespace) -> None:
    found = report.write()
    print("\n".join(report.summary(found)))
    print(f"Written: {report.PAGE}")


if __name__ == "__main__":
    sys.exit(main())

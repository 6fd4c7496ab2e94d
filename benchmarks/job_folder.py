"""Write an instance as an ordinary job folder, so that the command can be run on it."""

import csv
import io
import json
from collections.abc import Iterable, Iterator
from pathlib import Path

from benchmarks.instance import TAPE
from plankwright.files import write_files
from plankwright.measure import Nm, write_exact
from plankwright.model import Board, Flaw, Job, Rectangle, Rules, Surface

_COLUMNS = ("id", "lot", "length", "width", "width other end", "thickness", "edge", "tongue", "flaws")


def write_job(job: Job, folder: Path) -> tuple[Path, Path]:
    """Write the two files of a job.

    Parameters
    ----------
    job
        The job; what instances do not have, such as cut-outs, is not written.
    folder
        Where to write; it is made when it is not there.

    Returns
    -------
    tuple of Path
        job.toml and tally.csv.

    Raises
    ------
    FileTroubleError
        If a file cannot be written.
    """
    folder.mkdir(parents=True, exist_ok=True)
    paths = folder / "job.toml", folder / "tally.csv"
    write_files(dict(zip(paths, (job_toml(job), tally_csv(job.boards)), strict=True)))
    return paths


def job_toml(job: Job) -> str:
    """Give the job without its boards, in the form of job.toml."""
    lines = [
        "# Made by a generator of instances: docs/benchmarks.md.",
        "",
        f"name = {json.dumps(job.name)}",
        'units = "inches"',
    ]
    for surface in job.surfaces:
        lines += _surface(surface)
    lines += ["", "[rules]", *_rules(job.rules)]
    for saw in job.saws:
        lines += ["", "[[saw]]", f"name = {json.dumps(saw.name)}", f'cuts = "{saw.cuts}"']
        lines.append(f"capacity = {_length(saw.capacity_nm)}")
    return "\n".join(lines) + "\n"


def tally_csv(boards: Iterable[Board]) -> str:
    """Give the boards in the form of tally.csv."""
    text = io.StringIO()
    rows = csv.writer(text, lineterminator="\n")
    rows.writerow(_COLUMNS)
    for board in boards:
        reach = write_exact(board.profile.reach_nm, TAPE) if board.profile.milled else ""
        rows.writerow(
            (
                board.id,
                board.lot,
                write_exact(board.length_nm, TAPE),
                write_exact(board.width_start_nm, TAPE),
                write_exact(board.width_end_nm, TAPE) if board.tapered else "",
                write_exact(board.thickness_nm, TAPE),
                board.profile.kind,
                reach,
                "; ".join(map(_flaw, board.flaws)),
            )
        )
    return text.getvalue()


def _length(nm: Nm) -> str:
    return json.dumps(write_exact(nm, TAPE))


def _flaw(flaw: Flaw) -> str:
    stretch = f"{write_exact(flaw.start_nm, TAPE)} to {write_exact(flaw.end_nm, TAPE)}"
    return " ".join(filter(None, (stretch, flaw.what, flaw.severity, flaw.face)))


def _rules(rules: Rules) -> Iterator[str]:
    for name in Rules.__dataclass_fields__:
        value = getattr(rules, name)
        if name.endswith("_nm"):
            yield f"{name.removesuffix('_nm')} = {_length(value)}"
        else:
            yield f"{name} = {value if isinstance(value, int) else json.dumps(value)}"


def _surface(surface: Surface) -> Iterator[str]:
    corners = ", ".join(f"[{_length(x)}, {_length(y)}]" for x, y in surface.outline)
    trim = surface.trim
    yield from ("", "[[surface]]", f"id = {json.dumps(surface.id)}", f'kind = "{surface.kind}"')
    yield from (f"corners = [{corners}]", f'courses = "{surface.courses_run}"', f'start = "{surface.start}"')
    yield (
        "trim = { "
        + ", ".join(f"{side} = {_length(getattr(trim, side))}" for side in ("bottom", "top", "left", "right"))
        + " }"
    )
    yield from ("", "[surface.framing]")
    if surface.framing.solid:
        yield "solid = true"
    else:
        # Members of a wall are all alike here.
        first = surface.framing.members[0]
        yield f"centres = [{', '.join(_length(member.centre_nm) for member in surface.framing.members)}]"
        yield from (f"width = {_length(first.width_nm)}", f'runs = "{first.runs}"')
    for opening in surface.openings:
        yield from ("", "[[surface.opening]]", *_place(opening.id, opening.place))
        yield f"trim = {_length(opening.trim_nm)}"
    for zone in surface.concealed:
        yield from ("", "[[surface.concealed]]", *_place(zone.id, zone.place))


def _place(name: str, place: Rectangle) -> Iterator[str]:
    yield f"id = {json.dumps(name)}"
    yield f"left = {_length(place.left)}"
    yield f"bottom = {_length(place.bottom)}"
    yield f"width = {_length(place.width_nm)}"
    yield f"height = {_length(place.height_nm)}"

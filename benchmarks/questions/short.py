"""Too little wood: how much is covered, against the bound, and do the boards asked for close it?"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from statistics import median

from benchmarks.area import faces, must_area
from benchmarks.by_eye import lay_by_eye
from benchmarks.families import short
from benchmarks.family import Family, Figure, Picture, Row, Rows
from benchmarks.instance import Instance
from benchmarks.pictures import Marks, dots
from benchmarks.spread import middle, shares
from benchmarks.trials import CORES, baseline, ours
from benchmarks.usable import clear_area
from plankwright.check import check_layout, faults
from plankwright.layout.result import Effort, Result, Wanted
from plankwright.model import Board, EdgeProfile, Job

GAP_PERCENT = 1.5
"""What the figure must reach."""


def measure(instance: Instance, effort: Effort) -> Row:
    """Cover as much as can be, then get the boards that are asked for and lay out again.

    Parameters
    ----------
    instance
        With too little wood.
    effort
        Of each of the two searches.
    """
    job = instance.job
    area = must_area(job)
    found, result = ours(job, effort, cores=CORES)
    boards = bought(job, result.wanted)
    again, _ = ours(replace(job, boards=(*job.boards, *boards)), effort, enough=True, cores=CORES)
    return {
        "must_nm2": area,
        "wanting": 1 - sum(clear_area(board, job.rules) for board in job.boards) / area,
        "ours": found,
        "eye": baseline(job, lay_by_eye),
        "known": {"bare_nm2": sum(score.bare_nm2 for score in instance.known)},
        "wanted_boards": len(boards),
        "wanted_nm2": faces(boards),
        "closed": _closed(result),
        "again_covers": bool(again["covers"]) and not again["faults"],
        "again_s": again["time_s"],
        "failed": "breaks a rule" if found["faults"] else "",
    }


def bought(job: Job, wanted: Sequence[Wanted]) -> tuple[Board, ...]:
    """Give the boards that somebody comes back with who was told what is wanted: no longer, no wider."""
    usual = max((board.thickness_nm for board in job.boards), default=1)
    return tuple(
        Board(
            id=f"bought-{line}-{number}",
            length_nm=asked.length_nm,
            width_start_nm=asked.width_nm,
            width_end_nm=asked.width_nm,
            thickness_nm=usual if asked.thickness_nm is None else asked.thickness_nm,
            profile=EdgeProfile() if asked.profile is None else asked.profile,
        )
        for line, asked in enumerate(wanted, start=1)
        for number in range(1, asked.count + 1)
    )


def _closed(result: Result) -> bool:
    """Whether the layout that came with the list covers everything and breaks no rule."""
    if result.closing is None:
        return False
    job, layout = result.closing
    return layout.covers_everything and not faults(check_layout(job, layout))


def _gap(row: Row, who: str) -> float:
    """Give how much more is bare than must be, of the wall. [%]"""
    return float(100 * (row[who]["bare_nm2"] - row["ours"]["bound_bare_nm2"]) / row["must_nm2"])


def figures(rows: Rows, _others: Mapping[str, Rows]) -> Sequence[Figure]:
    """Give the figures of `short`."""
    gaps = [_gap(row, "ours") for row in rows]
    closed = [row["closed"] for row in rows]
    extra = [row["wanted_nm2"] / (row["wanting"] * row["must_nm2"]) for row in rows if row["wanted_boards"]]
    return (
        Figure(
            name="left bare beyond the bound, share of the wall",
            must=f"≤ {GAP_PERCENT} %, median",
            value=middle(gaps, "{:.2f} %"),
            met=bool(gaps) and median(gaps) <= GAP_PERCENT,
            baselines={
                "by eye": middle([_gap(row, "eye") for row in rows], "{:.2f} %"),
                "known": middle([_gap(row, "known") for row in rows], "{:.2f} %"),
            },
        ),
        Figure(
            name="the added boards close it, by the layout that came with them",
            must="in all",
            value=shares(closed),
            met=bool(closed) and all(closed),
        ),
        Figure(
            name="the same, laid out again from nothing with those boards",
            value=shares(row["again_covers"] for row in rows),
        ),
        Figure(
            name="boards asked for",
            value=middle([row["wanted_boards"] for row in rows], "{:.0f}"),
        ),
        Figure(
            name="face of the boards asked for ÷ area that is wanting",
            value=middle(extra, "{:.2f}"),
        ),
        Figure(
            name="time in all",
            value=middle([row["ours"]["time_s"] for row in rows], "{:.1f} s"),
            baselines={"by eye": middle([row["eye"]["time_s"] for row in rows], "{:.1f} s")},
        ),
    )


def pictures(rows: Rows, _others: Mapping[str, Rows]) -> Sequence[Picture]:
    """Draw how much is left bare beyond the bound."""
    named = {"ours": "ours", "eye": "by eye", "known": "what was left of a cover"}
    marks = [Marks(name, [_gap(row, who) for row in rows]) for who, name in named.items()]
    return (
        Picture(
            name="short-gap",
            title="short: left bare beyond what no layout can beat, share of the wall",
            svg=dots(marks, "% of the wall", limit=GAP_PERCENT),
        ),
    )


SHORT = Family(
    name="short",
    what="As real, with 3 to 10 % too little wood.",
    count=50,
    effort="steady",
    instance=short.instance,
    measure=measure,
    figures=figures,
    pictures=pictures,
)

"""Many walls from one yard: how long it takes, how much memory, and how both grow."""

import math
from collections.abc import Callable, Mapping, Sequence

from benchmarks.area import must_area
from benchmarks.by_eye import lay_by_eye
from benchmarks.families.yard import yard_of
from benchmarks.family import Family, Figure, Picture, Row, Rows
from benchmarks.instance import Instance
from benchmarks.pictures import line
from benchmarks.spread import middle
from benchmarks.trials import CORES, baseline, first_layout_s, ours
from plankwright.layout.result import Effort

SMALL, LARGE = 6, 50
"""Walls; there are a hundred boards to each."""

LIMITS_S: Mapping[int, float] = {SMALL: 180.0, LARGE: 1800.0}
PEAK_MIB = 2048.0
EXPONENT = 1.3
"""What the figures must reach."""


def measure(instance: Instance, effort: Effort) -> Row:
    """Lay all walls out, on two cores; a small yard by eye as well.

    Parameters
    ----------
    instance
        A yard.
    effort
        For each wall.
    """
    job = instance.job
    found, _ = ours(job, effort, cores=CORES)
    row = {
        "walls": len(job.surfaces),
        "boards": len(job.boards),
        "must_nm2": must_area(job),
        "ours": found,
        "first_s": first_layout_s(job, effort),
        "failed": "breaks a rule" if found["faults"] else "" if found["covers"] else "left bare",
    }
    if len(job.surfaces) <= SMALL:
        row["eye"] = baseline(job, lay_by_eye)
    return row


def _figures(walls: int) -> Callable[[Rows, Mapping[str, Rows]], Sequence[Figure]]:
    def figures(rows: Rows, others: Mapping[str, Rows]) -> Sequence[Figure]:
        times = [row["ours"]["time_s"] for row in rows]
        peaks = [row["ours"]["peak_mib"] for row in rows if row["ours"]["peak_mib"] is not None]
        eyes = [row["eye"] for row in rows if "eye" in row]
        bare = [100 * row["ours"]["bare_nm2"] / row["must_nm2"] for row in rows]
        limit = LIMITS_S[walls]
        return (
            Figure(
                name=f"{walls} walls, {100 * walls} boards: time on {CORES} cores",
                must=f"≤ {limit / 60:.0f} min",
                value=middle(times, "{:.0f} s"),
                met=max(times) <= limit,
                baselines={"by eye": middle([eye["time_s"] for eye in eyes], "{:.0f} s")} if eyes else {},
            ),
            Figure(
                name=f"{walls} walls: peak memory",
                must=f"≤ {PEAK_MIB / 1024:.0f} GiB",
                value=middle(peaks, "{:.0f} MiB"),
                met=bool(peaks) and max(peaks) <= PEAK_MIB,
            ),
            Figure(
                name=f"{walls} walls: left bare, of all the area",
                value=middle(bare, "{:.2f} %"),
                baselines={
                    "by eye": middle(
                        [100 * row["eye"]["bare_nm2"] / row["must_nm2"] for row in rows if "eye" in row],
                        "{:.2f} %",
                    )
                }
                if eyes
                else {},
            ),
            *(_growth(others) if walls == LARGE else ()),
        )

    return figures


def _growth(others: Mapping[str, Rows]) -> Sequence[Figure]:
    """Give the exponent between the two sizes, where both were measured."""
    small, large = (others.get(f"yard-{walls}", ()) for walls in (SMALL, LARGE))
    if not small or not large:
        return ()
    (few, quick), (many, slow) = _mean_point(small), _mean_point(large)
    exponent = math.log(slow / quick) / math.log(many / few)
    return (
        Figure(
            name=f"time grows as boards to the power of, from {few:.0f} to {many:.0f}",
            must=f"≤ {EXPONENT}",
            value=f"{exponent:.2f}",
            met=exponent <= EXPONENT,
        ),
    )


def _mean_point(rows: Rows) -> tuple[float, float]:
    """Give the mean number of boards and the mean time. [s]"""
    return (
        sum(row["boards"] for row in rows) / len(rows),
        sum(row["ours"]["time_s"] for row in rows) / len(rows),
    )


def _pictures(rows: Rows, others: Mapping[str, Rows]) -> Sequence[Picture]:
    """Draw time over boards of both sizes; once, with the large one."""
    if rows[0]["walls"] == SMALL:
        return ()
    every = [*others.get(f"yard-{SMALL}", ()), *rows]
    points = [(row["boards"], row["ours"]["time_s"]) for row in every]
    return (
        Picture(
            name="yard-time",
            title="yards: time over boards; a dot is a yard, the line goes through the means",
            svg=line(points, ("boards", "time, s")),
        ),
    )


def _yard(walls: int, count: int) -> Family[Instance]:
    return Family(
        name=f"yard-{walls}",
        what=f"{walls} walls of real out of one yard of {100 * walls} boards, on {CORES} cores.",
        count=count,
        effort="steady",
        instance=yard_of(walls),
        measure=measure,
        figures=_figures(walls),
        pictures=_pictures,
    )


YARDS = (_yard(SMALL, 3), _yard(LARGE, 1))

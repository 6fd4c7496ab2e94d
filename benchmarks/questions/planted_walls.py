"""Walls whose best layout is known, or nearly: is it found, how soon, and at what cost in wood?"""

from collections.abc import Callable, Mapping, Sequence
from statistics import median

from benchmarks.area import enough_by_area, must_area
from benchmarks.by_eye import lay_by_eye
from benchmarks.families import exact, real
from benchmarks.family import Family, Figure, Picture, Row, Rows
from benchmarks.instance import Instance
from benchmarks.pictures import Marks, bars, dots
from benchmarks.plain_model import lay_plainly
from benchmarks.spread import at_least, middle, shares
from benchmarks.trials import CORES, baseline, first_layout_s, ours
from plankwright.layout.result import Effort

EXACT_S, EXACT_SHARE = 20.0, 0.98
REAL_S, FIRST_S, WOOD_RATIO = 30.0, 1.0, 1.02
"""What the figures must reach."""

BASELINES = {"eye": "by eye", "plain": "plain model"}


def measure(instance: Instance, effort: Effort) -> Row:
    """Lay a wall out with the search, by eye and with the plain model.

    Parameters
    ----------
    instance
        With a planted layout.
    effort
        Of the search; the plain model gets as many seconds.
    """
    job, (known,) = instance.job, instance.known
    first_s = first_layout_s(job, effort)
    found, _ = ours(job, effort, cores=CORES)
    return {
        "boards": len(job.boards),
        "must_nm2": must_area(job),
        "known_joints": known.joints_in_sight,
        "known_wood_nm2": known.wood_spent_nm2,
        "first_s": first_s,
        "ours": found,
        "eye": baseline(job, lay_by_eye),
        "plain": baseline(job, lambda given: lay_plainly(given, effort.seconds)),
        "area_sum_says_enough": enough_by_area(job),
        "failed": _fault(found, known.joints_in_sight),
    }


def _fault(found: Row, known_joints: int) -> str:
    """Say in a few words what a layout falls short of; nothing when it does not."""
    if found["faults"]:
        return "breaks a rule"
    if not found["covers"]:
        return "left bare"
    return "more joints than known" if found["joints"] > known_joints else ""


def _reached(row: Row, who: str, limit_s: float | None = None) -> bool:
    """Whether a layout covers everything with no more joints in sight than known, in time."""
    found = row[who]
    in_time = limit_s is None or found["time_s"] <= limit_s
    return in_time and not _fault(found, row["known_joints"])


def _each(of: Callable[[str], str]) -> dict[str, str]:
    return {name: of(who) for who, name in BASELINES.items()}


def _bare(rows: Rows, who: str) -> list[float]:
    """Give the share of each wall that somebody leaves bare. [%]"""
    return [100 * row[who]["bare_nm2"] / row["must_nm2"] for row in rows]


def exact_figures(rows: Rows, _others: Mapping[str, Rows]) -> Sequence[Figure]:
    """Give the figures of `exact`."""
    reached = [_reached(row, "ours", EXACT_S) for row in rows]
    return (
        Figure(
            name=f"full cover, no more joints in sight than known, proven, within {EXACT_S:.0f} s",
            must=f"in ≥ {100 * EXACT_SHARE:.0f} %",
            value=shares(reached),
            met=at_least(reached, EXACT_SHARE),
            baselines=_each(lambda who: shares(_reached(row, who) for row in rows))
            | {"area sum": f"says enough in {shares(row['area_sum_says_enough'] for row in rows)}"},
        ),
        *_common(rows),
    )


def real_figures(rows: Rows, _others: Mapping[str, Rows]) -> Sequence[Figure]:
    """Give the figures of `real`."""
    first = [row["first_s"] for row in rows]
    reached = [_reached(row, "ours", REAL_S) for row in rows]
    whole = [row for row in rows if row["ours"]["covers"]]
    wood = [row["ours"]["wood_nm2"] / row["ours"]["bound_wood_nm2"] for row in whole]
    known = [row["known_wood_nm2"] / row["ours"]["bound_wood_nm2"] for row in rows]
    return (
        Figure(
            name="first checked layout",
            must=f"≤ {FIRST_S:.0f} s, median",
            value=middle(first, "{:.2f} s"),
            met=median(first) <= FIRST_S,
            baselines=_each(lambda who: middle([row[who]["time_s"] for row in rows], "{:.2f} s")),
        ),
        Figure(
            name=f"full cover with no more joints in sight than known, within {REAL_S:.0f} s",
            must="in all",
            value=shares(reached),
            met=all(reached),
            baselines=_each(lambda who: shares(_reached(row, who) for row in rows))
            | {"area sum": f"says enough in {shares(row['area_sum_says_enough'] for row in rows)}"},
        ),
        Figure(
            name="wood spent ÷ bound, where all is covered",
            must=f"≤ {WOOD_RATIO}, median",
            value=middle(wood, "{:.3f}"),
            met=bool(wood) and median(wood) <= WOOD_RATIO,
            baselines={"known": middle(known, "{:.3f}")},
        ),
        Figure(
            name="joints in sight − known, where all is covered",
            value=middle([row["ours"]["joints"] - row["known_joints"] for row in whole], "{:+.0f}"),
            baselines=_each(
                lambda who: middle(
                    [row[who]["joints"] - row["known_joints"] for row in rows if row[who]["covers"]],
                    "{:+.0f}",
                )
            ),
        ),
        *_common(rows),
    )


def _common(rows: Rows) -> Sequence[Figure]:
    return (
        Figure(
            name="full cover, whatever the time and the joints",
            value=shares(row["ours"]["covers"] for row in rows),
            baselines=_each(lambda who: shares(row[who]["covers"] for row in rows)),
        ),
        Figure(
            name="left bare, share of the wall",
            value=middle(_bare(rows, "ours"), "{:.2f} %"),
            baselines=_each(lambda who: middle(_bare(rows, who), "{:.2f} %")),
        ),
        Figure(
            name="time in all",
            value=middle([row["ours"]["time_s"] for row in rows], "{:.1f} s"),
            baselines=_each(lambda who: middle([row[who]["time_s"] for row in rows], "{:.1f} s")),
        ),
        Figure(
            name="time in all ÷ by eye",
            value=middle([row["ours"]["time_s"] / row["eye"]["time_s"] for row in rows], "{:.0f}"),
            baselines={
                "plain model": middle(
                    [row["plain"]["time_s"] / row["eye"]["time_s"] for row in rows], "{:.0f}"
                )
            },
        ),
        Figure(
            name="the best found after",
            value=middle([row["ours"]["best_s"] for row in rows], "{:.1f} s"),
        ),
    )


def pictures(name: str) -> Callable[[Rows, Mapping[str, Rows]], Sequence[Picture]]:
    """Give what draws the pictures of a family of this name."""

    def draw(rows: Rows, _others: Mapping[str, Rows]) -> Sequence[Picture]:
        marks = [Marks("ours", _bare(rows, "ours"))]
        marks += [Marks(told, _bare(rows, who)) for who, told in BASELINES.items()]
        return (
            Picture(
                name=f"{name}-bare",
                title=f"{name}: share of a wall that is left bare; a dot is an instance, the bar the median",
                svg=dots(marks, "left bare, %"),
            ),
            Picture(
                name=f"{name}-time",
                title=f"{name}: where the time of the search goes, on average",
                svg=bars(stage_means(rows), "s"),
            ),
        )

    return draw


def stage_means(rows: Rows) -> Mapping[str, float]:
    """Give how long each stage of the search takes on average. [s]"""
    stages = dict.fromkeys(stage for row in rows for stage in row["ours"]["stages"])
    return {stage: sum(row["ours"]["stages"].get(stage, 0.0) for row in rows) / len(rows) for stage in stages}


EXACT = Family(
    name="exact",
    what="Nothing to spare: 12 × 8 ft, 20 to 30 boards, joints behind fixtures only.",
    count=100,
    effort="18",
    instance=exact.instance,
    measure=measure,
    figures=exact_figures,
    pictures=pictures("exact"),
)
REAL = Family(
    name="real",
    what="16 to 24 × 8 to 9 ft, openings, uneven studs, 60 to 120 boards, 4 % to spare.",
    count=50,
    effort="24",
    instance=real.instance,
    measure=measure,
    figures=real_figures,
    pictures=pictures("real"),
)

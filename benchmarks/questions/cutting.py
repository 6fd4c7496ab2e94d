"""Cutting stock, variable stock and skiving through the whole search: is the optimum reached, and proven?"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from benchmarks import published
from benchmarks.clock import Moment
from benchmarks.cutting_jobs import cutting_job, joining_job, scale_of
from benchmarks.cutting_lists import Case, ToCut, ToJoin, first_fit
from benchmarks.families import cutting
from benchmarks.family import Family, Figure, Picture, Row, Rows
from benchmarks.pictures import Marks, dots
from benchmarks.spread import at_least, middle, shares
from benchmarks.trials import SEED
from plankwright.check import check_layout, faults
from plankwright.layout import Effort, lay_out
from plankwright.layout.result import Progress, Watch
from plankwright.model import Job, SurfaceLayout

LIMIT_S = 30.0
"""An instance may take so long, all questions about it together. [s]"""

REACHED_SHARE, PROVEN_SHARE = 0.98, 0.9
"""What the figures must reach."""


def measure(case: Case, effort: Effort) -> Row:
    """Look for the optimum of a case.

    Parameters
    ----------
    case
        What is asked; its optimum is only compared with.
    effort
        Of the search; of each one where several are made.

    Returns
    -------
    dict
        Best found, what no layout beats, and whether the first is the optimum, both are, within the time.
    """
    start = Moment()
    best, bound, broken = _cut(case, effort) if isinstance(case, ToCut) else _joined(case, effort)
    took = start.since_s()
    reached, proven = best == case.optimum, bound == case.optimum == best
    return {
        "name": case.name,
        "optimum": case.optimum,
        "best": best,
        "first_fit": _by_first_fit(case),
        "bound": bound,
        "time_s": took,
        "faults": broken,
        "reached": reached and not broken and took <= LIMIT_S,
        "proven": proven and not broken and took <= LIMIT_S,
        "failed": _why(reached=reached, broken=bool(broken), took=took),
    }


def _by_first_fit(case: Case) -> int | None:
    """Give what the simplest rule comes to where all boards are equal: the longest piece first."""
    if isinstance(case, ToCut) and len(case.stock) == 1:
        return first_fit(case.pieces, case.stock[0].length) * case.stock[0].cost
    return None


def _why(*, reached: bool, broken: bool, took: float) -> str:
    if broken:
        return "breaks a rule"
    if not reached:
        return "optimum not reached"
    return "" if took <= LIMIT_S else "took too long"


def _cut(case: ToCut, effort: Effort) -> tuple[int | None, int, list[str]]:
    """Spend as little as can be: what it costs, what no layout beats, and what the checker finds wrong."""
    cost = scale_of(case.stock).cost
    found, broken = _laid_out(cutting_job(case.name, case.pieces, case.stock), effort, Watch())
    best = None if found.bare else found.score.wood_spent_nm2 // cost
    return best, -(-found.bound.wood_spent_nm2 // cost), broken


def _joined(case: ToJoin, effort: Effort) -> tuple[int | None, int, list[str]]:
    """Ask for ever fewer courses, from what the lengths add up to, until the boards cover them."""
    start, broken = Moment(), list[str]()
    bound: int | None = None
    for courses in range(sum(case.pieces) // case.length, 0, -1):
        answered = _Answered()
        found, wrong = _laid_out(
            joining_job(case.name, case.pieces, case.length, courses), effort, answered.watch()
        )
        broken += wrong
        if bound is None and not found.bound.bare_nm2:
            bound = courses
        if not found.bare:
            return courses, bound or courses, broken
        if start.since_s() > LIMIT_S:
            break
    return None, bound or 0, broken


class _Answered:
    """Stops a search once it is known whether everything can be covered."""

    def __init__(self) -> None:
        self._known = False

    def watch(self) -> Watch:
        return Watch(report=self._report, stopped=lambda: self._known)

    def _report(self, progress: Progress) -> None:
        covered = progress.best is not None and progress.best.bare_nm2 == 0
        self._known |= covered or progress.bound.bare_nm2 > 0


def _laid_out(job: Job, effort: Effort, watch: Watch) -> tuple[SurfaceLayout, list[str]]:
    """Lay out with one search: another would find the same patterns."""
    layout = lay_out(job, effort=replace(effort, searches=1), seed=SEED, watch=watch).layout
    (surface,) = layout.surfaces
    return surface, [str(fault) for fault in faults(check_layout(job, layout))]


def figures(rows: Rows, _others: Mapping[str, Rows]) -> Sequence[Figure]:
    """Give the figures of lists to cut and to join."""
    reached, proven = ([bool(row[what]) for row in rows] for what in ("reached", "proven"))
    fitted = [row["first_fit"] == row["optimum"] for row in rows if row["first_fit"] is not None]
    return (
        Figure(
            name=f"the known optimum reached, within {LIMIT_S:.0f} s",
            must=f"in ≥ {100 * REACHED_SHARE:.0f} %",
            value=shares(reached),
            met=at_least(reached, REACHED_SHARE),
            baselines={"by eye": f"{shares(fitted)} of those with equal boards, by first fit"},
        ),
        Figure(
            name=f"the known optimum reached and proven, within {LIMIT_S:.0f} s",
            must=f"in ≥ {100 * PROVEN_SHARE:.0f} %",
            value=shares(proven),
            met=at_least(proven, PROVEN_SHARE),
        ),
        Figure(name="time", value=middle([row["time_s"] for row in rows], "{:.1f} s")),
    )


def _pictures(name: str) -> Callable[[Rows, Mapping[str, Rows]], Sequence[Picture]]:
    def draw(rows: Rows, _others: Mapping[str, Rows]) -> Sequence[Picture]:
        sets = dict.fromkeys(_set_of(row) for row in rows)
        marks = [Marks(some, [row["time_s"] for row in rows if _set_of(row) == some]) for some in sets]
        return (
            Picture(
                name=f"{name}-time",
                title=f"{name}: time by set; a dot is an instance, the bar the median",
                svg=dots(marks, "s", limit=LIMIT_S),
            ),
        )

    return draw


def _set_of(row: Row) -> str:
    """Give the set that an instance is of: its folder, or the first word of its name."""
    return str(row["name"]).replace("/", " ").split(" ")[0]


CUTTING = Family(
    name="cutting",
    what="Lists of pieces to cut from equal boards, from boards of several lengths, and to join to courses, "
    "made by cutting boards up with nothing left over.",
    count=30,
    effort="14",
    instance=cutting.instance,
    measure=measure,
    figures=figures,
    pictures=_pictures("cutting"),
)
PUBLISHED = Family(
    name="published",
    what="Published lists of the same three kinds with their known optima: " + published.SOURCES,
    count=len(published.cases()),
    fresh=False,
    effort="14",
    instance=published.instance,
    measure=measure,
    figures=figures,
    pictures=_pictures("published"),
)

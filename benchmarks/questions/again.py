"""A board is lost with half the courses hung: how soon can the work go on, and how little changes?"""

from collections.abc import Mapping, Sequence
from statistics import median

from benchmarks.by_eye import go_on_by_eye
from benchmarks.families import again
from benchmarks.family import Family, Figure, Picture, Row, Rows
from benchmarks.instance import Instance
from benchmarks.pictures import Marks, dots
from benchmarks.spread import middle, shares
from benchmarks.trials import SEED, Follower, timed
from plankwright.check import check_layout, faults
from plankwright.layout.again import ChangeKind, changes_between, lay_again
from plankwright.layout.result import Effort
from plankwright.model import Layout

AGAIN_S, MOVED = 2.0, 1 / 3
"""What the figures must reach."""


def measure(instance: Instance, effort: Effort) -> Row:
    """Lay out what is left with the search and by eye.

    Parameters
    ----------
    instance
        A wall with a planted layout.
    effort
        Of the search, which ends as soon as all is covered.
    """
    way = again.under_way(instance)
    follower = Follower()
    watch = follower.watch()
    result, took = timed(
        lambda: lay_again(way.job, way.layout, way.standing, effort=effort, seed=SEED, watch=watch)
    )
    wrong, checking = timed(lambda: faults(check_layout(way.job, result.layout, way.standing)))
    changes = changes_between(way.job, way.layout, result.layout, way.standing)
    hanging = {piece.label for row in way.standing.hung for piece in row.course.pieces}
    left = [piece for piece in way.layout.pieces if piece.label not in hanging]
    moved = [change for change in changes if change.before is not None and change.kind is not ChangeKind.SAME]
    covers = result.layout.covers_everything
    (courses,) = (surface.courses for surface in way.layout.surfaces)
    eye, eyed = timed(lambda: go_on_by_eye(way.job, way.layout, len(courses) // 2, way.lost))
    return took | {
        "checked_s": follower.best_s + checking["time_s"],
        "faults": [str(fault) for fault in wrong],
        "covers": covers,
        "left": len(left),
        "of_lost": sum(1 for piece in left if piece.board_id == way.lost),
        "moved": len(moved),
        "kinds": {kind.value: sum(1 for change in changes if change.kind is kind) for kind in ChangeKind},
        "eye": eyed | {"covers": eye.covers_everything, "moved": _moved(way.layout, eye, hanging)},
        "failed": "breaks a rule" if wrong else "" if covers else "left bare",
    }


def _moved(before: Layout, after: Layout, hanging: set[str]) -> int:
    """Give how many pieces that do not hang are not the same piece of the same board in the same place."""
    cuts = {
        (piece.board_id, piece.along_from_nm, piece.across_from_nm, piece.place) for piece in after.pieces
    }
    return sum(
        (piece.board_id, piece.along_from_nm, piece.across_from_nm, piece.place) not in cuts
        for piece in before.pieces
        if piece.label not in hanging
    )


def figures(rows: Rows, _others: Mapping[str, Rows]) -> Sequence[Figure]:
    """Give the figures of `again`."""
    times = [row["checked_s"] for row in rows]
    whole = [row for row in rows if row["covers"] and not row["faults"]]
    little = [row["moved"] <= MOVED * row["left"] for row in whole]
    return (
        Figure(
            name="one board lost, half the courses hung: the layout found and checked after",
            must=f"≤ {AGAIN_S:.0f} s, median",
            value=middle(times, "{:.2f} s"),
            met=median(times) <= AGAIN_S,
            baselines={"by eye": middle([row["eye"]["time_s"] for row in rows], "{:.2f} s")},
        ),
        Figure(
            name="at most a third of the remaining pieces changed, where all is covered",
            must="where possible",
            value=shares(little),
            met=bool(little) and all(little),
            baselines={
                "by eye": shares(
                    row["eye"]["moved"] <= MOVED * row["left"] for row in rows if row["eye"]["covers"]
                )
            },
        ),
        Figure(
            name="time in all, looking on for what could cover the rest counted in",
            value=middle([row["time_s"] for row in rows], "{:.2f} s"),
        ),
        Figure(
            name="all covered",
            value=shares(row["covers"] for row in rows),
            baselines={"by eye": shares(row["eye"]["covers"] for row in rows)},
        ),
        Figure(
            name="remaining pieces that are changed, those of the lost board counted in",
            value=middle([100 * row["moved"] / row["left"] for row in rows], "{:.0f} %"),
            baselines={
                "by eye": middle([100 * row["eye"]["moved"] / row["left"] for row in rows], "{:.0f} %")
            },
        ),
    )


def pictures(rows: Rows, _others: Mapping[str, Rows]) -> Sequence[Picture]:
    """Draw how soon, and how much is changed."""
    changed = [
        Marks("ours", [100 * row["moved"] / row["left"] for row in rows]),
        Marks("by eye", [100 * row["eye"]["moved"] / row["left"] for row in rows]),
    ]
    return (
        Picture(
            name="again-time",
            title="again: time to a checked layout",
            svg=dots([Marks("ours", [row["checked_s"] for row in rows])], "s", limit=AGAIN_S),
        ),
        Picture(
            name="again-changed",
            title="again: remaining pieces that are changed",
            svg=dots(changed, "% of the remaining pieces", limit=100 * MOVED),
        ),
    )


AGAIN = Family(
    name="again",
    what="A wall of real, half its courses hung by the planted layout; a board is lost that the rest needs.",
    count=50,
    effort="steady",
    instance=again.instance,
    measure=measure,
    figures=figures,
    pictures=pictures,
)

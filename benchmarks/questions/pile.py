"""How many boards must arrive before a wall can be covered whole: by search, by eye, and by the area sum.

By eye and by the area sum the boards are counted up one by one. The search is asked at counts between that
at which their usable area first reaches that of the wall, below which nothing helps, and the first at which
it succeeds: by halving, as though more boards never made it fail. So the count is one at which a checked
layout was found, and the search found none at the count before.
"""

from collections.abc import Callable, Mapping, Sequence
from itertools import accumulate
from statistics import median

from benchmarks.area import enough_by_area, faces, must_area, plain_area
from benchmarks.by_eye import lay_by_eye
from benchmarks.families import pile
from benchmarks.families.pile import first_boards
from benchmarks.family import Family, Figure, Picture, Row, Rows
from benchmarks.fitting import CAREFUL, HASTY, Care
from benchmarks.instance import Instance
from benchmarks.pictures import Marks, dots
from benchmarks.spread import middle
from benchmarks.trials import CORES, ours, timed
from benchmarks.usable import usable_area, usable_in_all
from plankwright.check import check_layout, faults
from plankwright.layout.result import Effort
from plankwright.model import Job

BOARDS_RATIO, WOOD_RATIO = 0.72, 1.12
"""What the figures must reach."""


def measure(instance: Instance, effort: Effort) -> Row:
    """Count the boards that it takes.

    Parameters
    ----------
    instance
        With all the boards that arrive.
    effort
        Of the search at each count.
    """
    job, most = instance.job, len(instance.job.boards)
    area = must_area(job)
    usable = accumulate(usable_area(board, job.rules) for board in job.boards)
    least = 1 + sum(1 for held in usable if held < area)
    tries: list[Row] = []

    def covered(count: int) -> bool:
        row, _ = ours(first_boards(job, count), effort, enough=True, cores=CORES)
        covers = bool(row["covers"]) and not row["faults"]
        tries.append({"count": count, "covers": covers, "time_s": row["time_s"]})
        return covers

    count = _halving(covered, least, most)
    eye, eyed = timed(lambda: _first(lambda some: _by_eye(some, CAREFUL), job, least))
    hasty = _first(lambda some: _by_eye(some, HASTY), job, least)
    return {
        "least": least,
        "ours": count,
        "eye": eye,
        "hasty": hasty,
        "sum": _first(enough_by_area, job, 1),
        "usable_to_wall": _held(job, count) / area,
        "eye_usable_to_wall": _held(job, eye) / area,
        "faces_to_wall": faces(job.boards[: count or most]) / sum(map(plain_area, job.surfaces)),
        "time_s": sum(found["time_s"] for found in tries),
        "eye_s": eyed["time_s"],
        "tries": tries,
        "failed": "" if count else "not covered by all that arrives",
    }


def _held(job: Job, count: int | None) -> int:
    """Give the usable area of the first boards. [nm²]"""
    return usable_in_all(job.boards[: len(job.boards) if count is None else count], job.rules)


def _by_eye(job: Job, care: Care) -> bool:
    layout = lay_by_eye(job, care)
    return layout.covers_everything and not faults(check_layout(job, layout))


def _first(enough: Callable[[Job], bool], job: Job, least: int) -> int | None:
    """Give the first count from some least one on at which something says that the boards are enough."""
    counts = range(least, len(job.boards) + 1)
    return next((count for count in counts if enough(first_boards(job, count))), None)


def _halving(enough: Callable[[int], bool], least: int, most: int) -> int | None:
    """Give a count that is enough while the one before was not: in ever longer steps, then by halving."""
    failed, step, count = least - 1, 2, least + 2
    while not enough(min(count, most)):
        if count >= most:
            return None
        failed, step = count, 2 * step
        count += step
    count = min(count, most)
    while count - failed > 1:
        middling = (count + failed) // 2
        if enough(middling):
            count = middling
        else:
            failed = middling
    return count


def figures(rows: Rows, _others: Mapping[str, Rows]) -> Sequence[Figure]:
    """Give the figures of `pile`."""
    done = [row for row in rows if row["ours"] and row["eye"]]
    ratio = [row["ours"] / row["eye"] for row in done]
    hasty = [row["ours"] / row["hasty"] for row in done if row["hasty"]]
    least = [row["least"] / row["eye"] for row in done]
    held = [row["usable_to_wall"] for row in done]
    return (
        Figure(
            name="boards needed, ours ÷ by eye",
            must=f"≤ {BOARDS_RATIO} median",
            value=f"{middle(ratio, '{:.2f}')}, best {min(ratio, default=0):.2f}",
            met=bool(ratio) and median(ratio) <= BOARDS_RATIO,
            baselines={
                "by eye": "1",
                "known": f"none below {middle(least, '{:.2f}', worst=False)}",
            },
        ),
        Figure(
            name="usable wood then in hand ÷ wall",
            must=f"≤ {WOOD_RATIO} median",
            value=middle(held, "{:.2f}"),
            met=bool(held) and median(held) <= WOOD_RATIO,
            baselines={"by eye": middle([row["eye_usable_to_wall"] for row in done], "{:.2f}")},
        ),
        Figure(
            name="boards needed, ours ÷ a hasty eye, for which no offcut is waste",
            value=middle(hasty, "{:.2f}"),
        ),
        Figure(
            name="boards needed, ours ÷ the first count at which usable area reaches the wall's",
            value=middle([row["ours"] / row["least"] for row in done], "{:.2f}"),
            baselines={"by eye": middle([row["eye"] / row["least"] for row in done], "{:.2f}")},
        ),
        Figure(
            name="boards at which the area sum says enough ÷ ours",
            value="",
            baselines={"area sum": middle([row["sum"] / row["ours"] for row in done], "{:.2f}", worst=False)},
        ),
        Figure(
            name="time of the search, all counts together",
            value=middle([row["time_s"] for row in done], "{:.0f} s"),
            baselines={"by eye": middle([row["eye_s"] for row in done], "{:.0f} s")},
        ),
    )


def pictures(rows: Rows, _others: Mapping[str, Rows]) -> Sequence[Picture]:
    """Draw how many boards each needs."""
    done = [row for row in rows if row["ours"] and row["eye"]]
    named = {"ours": "ours", "eye": "by eye", "hasty": "a hasty eye", "sum": "area sum"}
    marks = [
        Marks(name, [row[who] / row["least"] for row in done if row[who]]) for who, name in named.items()
    ]
    return (
        Picture(
            name="pile-boards",
            title="pile: boards needed ÷ the first count whose usable area reaches the wall's",
            svg=dots(marks, "÷ least count"),
        ),
    )


PILE = Family(
    name="pile",
    what="Boards drawn at random arrive one by one, until a wall of real can be covered whole.",
    count=30,
    effort="14",
    instance=pile.instance,
    measure=measure,
    figures=figures,
    pictures=pictures,
)

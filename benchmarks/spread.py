"""Many measurements in a few words."""

from collections.abc import Iterable, Sequence
from statistics import median

from benchmarks.family import Row


def middle(values: Sequence[float], form: str, *, worst: bool = True, high_is_bad: bool = True) -> str:
    """Give the median of values and the worst of them, in words.

    Parameters
    ----------
    values
        Any number of them.
    form
        How one is written, such as `{:.2f} s`.
    worst
        Whether the worst is told as well.
    high_is_bad
        Whether the worst is the highest.
    """
    if not values:
        return "–"
    told = form.format(median(values))
    if not worst:
        return told
    return f"{told} (worst {form.format(max(values) if high_is_bad else min(values))})"


def shares(flags: Iterable[bool]) -> str:
    """Give how many of some hold, as a count and in percent."""
    held = list(flags)
    return f"{sum(held)} of {len(held)} ({100 * sum(held) / len(held):.0f} %)" if held else "–"


def at_least(flags: Iterable[bool], share: float) -> bool:
    """Whether at least a share of some hold."""
    held = list(flags)
    return bool(held) and sum(held) >= share * len(held)


def seeds_of(rows: Iterable[Row]) -> str:
    """Give the seeds of rows, those in sequence as a range."""
    seeds = sorted({int(row["seed"]) for row in rows})
    parts: list[list[int]] = []
    for seed in seeds:
        if parts and seed == parts[-1][1] + 1:
            parts[-1][1] = seed
        else:
            parts.append([seed, seed])
    return ", ".join(str(low) if low == high else f"{low}–{high}" for low, high in parts) or "none"

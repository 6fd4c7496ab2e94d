"""What a family of instances is for the runner and the report."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Generic, TypeVar

from plankwright.layout.result import Effort

Asked = TypeVar("Asked")
"""What is measured: an instance with a job, or a list."""

Row = dict[str, Any]
"""What was measured on one instance, as JSON knows it; `failed` says in a few words what fell short."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """A figure of the report, worked out from many rows.

    Parameters
    ----------
    name
        What it is.
    must
        What it must reach, in words; empty when nothing is asked.
    value
        What it is, in words.
    met
        Whether it reaches that; nothing when nothing is asked.
    baselines
        The same figure of each baseline, in words.
    """

    name: str
    value: str
    must: str = ""
    met: bool | None = None
    baselines: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A picture of the report.

    Parameters
    ----------
    name
        Of its file, without the suffix.
    title
        What it shows, in one sentence.
    svg
        The file.
    """

    name: str
    title: str
    svg: str


Rows = Sequence[Row]


@dataclass(frozen=True, slots=True, kw_only=True)
class Family(Generic[Asked]):
    """Instances of one kind, what is measured on each, and what is made of it.

    Parameters
    ----------
    name
        Of the family.
    what
        What it asks, in one sentence for the report.
    count
        How many seeds a full run takes.
    effort
        That a full run searches with, as people give it.
    instance
        Makes an instance out of a seed.
    measure
        Measures it. Run in a process of its own.
    figures
        Gives the figures out of the rows of a range of seeds, and out of those of the other families.
    pictures
        Gives the pictures out of the same.
    fresh
        Whether there are instances that were not looked at while the search was tuned.
    """

    name: str
    what: str
    count: int
    effort: str
    instance: Callable[[int], Asked]
    measure: Callable[[Asked, Effort], Row]
    figures: Callable[[Rows, Mapping[str, Rows]], Sequence[Figure]]
    pictures: Callable[[Rows, Mapping[str, Rows]], Sequence[Picture]] = lambda _rows, _others: ()
    fresh: bool = True

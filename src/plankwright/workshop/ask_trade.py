"""Everything that the trade knows of a job, at one go or an answer at a time."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from plankwright.model import NOTHING_DONE, Job, Layout, Standing
from plankwright.paper.leaf import Leaf
from plankwright.workshop.advice.fit_edges import edges_leaf, fit_edges
from plankwright.workshop.advice.go_shopping import go_shopping, shopping_leaf
from plankwright.workshop.advice.judge_moisture import judge_moisture
from plankwright.workshop.advice.measure_lumber import measure_lumber
from plankwright.workshop.advice.plan_nails import plan_nails
from plankwright.workshop.advice.ready_boards import ready_boards, readying_leaf
from plankwright.workshop.advice.tell_lumber import lumber_leaf
from plankwright.workshop.advice.tell_moisture import moisture_leaf
from plankwright.workshop.advice.tell_nails import nails_leaf
from plankwright.workshop.advice.watch_out import hazards_leaf, watch_out


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """Something that the trade answers.

    Parameters
    ----------
    title
        As the answer is headed.
    about
        What is asked, in a sentence.
    of_layout
        Whether it is asked of a layout, and not of the boards and the surfaces alone.
    """

    title: str
    about: str
    of_layout: bool = False


QUESTIONS: Mapping[str, Question] = MappingProxyType(
    {
        "hazards": Question(
            title="What can hurt you", about="Lead, asbestos, nails, dust, wires: what of it this job has."
        ),
        "moisture": Question(
            title="Moisture and movement",
            about="Are the boards dry enough to hang, and how far will they move?",
        ),
        "prepare": Question(
            title="Getting boards ready", about="What is done to each board before it is cut."
        ),
        "lumber": Question(
            title="Measure, weight and worth",
            about="How much wood it is, what it weighs, and what the like would cost.",
        ),
        "nails": Question(title="Nails", about="Which nails, how many, how deep, and where.", of_layout=True),
        "edges": Question(
            title="Boxes and edges",
            about="What boxes, openings and trim ask for once boards stand before the wall.",
            of_layout=True,
        ),
        "buy": Question(title="To buy", about="What the job takes besides boards.", of_layout=True),
    }
)
"""What can be asked, by the name of the command that tells the same."""


def ask_trade(job: Job, layout: Layout | None = None, standing: Standing = NOTHING_DONE) -> dict[str, Leaf]:
    """Ask what the trade knows of a job: each answer with its sentences, tables and sources.

    Parameters
    ----------
    job
        The job.
    layout
        A layout of it that was checked; without one, what needs none is answered.
    standing
        How far the job has come.

    Returns
    -------
    dict
        By the name of the command that tells the same: hazards, moisture, prepare and lumber; with a layout
        nails, edges and buy as well.
    """
    told = {name: ask(job, layout, standing) for name, ask in _OF_JOB.items()}
    if layout is not None:
        told |= {name: ask(job, layout, standing) for name, ask in _OF_LAYOUT.items()}
    return told


def ask_one(
    name: str, job: Job, layout: Layout | None = None, standing: Standing = NOTHING_DONE
) -> Leaf | None:
    """Ask one of `QUESTIONS` by its name; nothing is answered that is asked of a layout when there is none.

    Parameters
    ----------
    name
        One of `QUESTIONS`.
    job, layout, standing
        As in `ask_trade`.

    Raises
    ------
    KeyError
        If there is no such question.
    """
    if name in _OF_JOB:
        return _OF_JOB[name](job, layout, standing)
    ask = _OF_LAYOUT[name]
    return None if layout is None else ask(job, layout, standing)


_OF_JOB: Mapping[str, Callable[[Job, Layout | None, Standing], Leaf]] = MappingProxyType(
    {
        "hazards": lambda job, _layout, _standing: hazards_leaf(watch_out(job)),
        "moisture": lambda job, layout, standing: moisture_leaf(job, judge_moisture(job, layout, standing)),
        "prepare": lambda job, layout, standing: readying_leaf(job, ready_boards(job, layout, standing)),
        "lumber": lambda job, layout, _standing: lumber_leaf(job, measure_lumber(job, layout)),
    }
)
_OF_LAYOUT: Mapping[str, Callable[[Job, Layout, Standing], Leaf]] = MappingProxyType(
    {
        "nails": lambda job, layout, standing: nails_leaf(job, plan_nails(job, layout, standing)),
        "edges": lambda job, layout, _standing: edges_leaf(job, fit_edges(job, layout)),
        "buy": lambda job, layout, standing: shopping_leaf(go_shopping(job, layout, standing=standing)),
    }
)

"""Ask the trade about a job that is kept, however far it has come: one answer, or what it lacks."""

from dataclasses import dataclass

from plankwright.errors import BadInputError
from plankwright.model import NOTHING_DONE, Job, Layout, Standing
from plankwright.paper.leaf import Leaf
from plankwright.trade.source import Said, Source
from plankwright.workshop.advice.watch_out import hazards_leaf, watch_out
from plankwright.workshop.ask_trade import QUESTIONS, ask_one
from plankwright.workshop.caution import CAUTION
from plankwright.workshop.jobs.at_work import AtWork, SurfacesMissingError, at_work
from plankwright.workshop.jobs.kept import KeptJob
from plankwright.workshop.jobs.leaf_words import for_screen, on_screen
from plankwright.workshop.jobs.ports import Store
from plankwright.workshop.ports import DefinitionReading, Files


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What the trade says of a job.

    Parameters
    ----------
    leaf
        The answer; nothing when the job lacks what it is about.
    lacks
        What is missing for it, in a sentence; with an answer, what it could not heed.
    screen
        Where one goes to mend that; empty when nothing is missing.
    caution
        What goes with every answer; empty with the one that says it all itself.
    """

    leaf: Leaf | None
    lacks: str = ""
    screen: str = ""
    caution: str = CAUTION

    @property
    def sources(self) -> tuple[Source, ...]:
        """Where its figures come from, in the order of their marks."""
        return () if self.leaf is None else self.leaf.sources

    def marks(self, said: Said) -> tuple[int, ...]:
        """Give the marks of a sentence: the places of its sources, counted from 1."""
        return tuple(self.sources.index(source) + 1 for source in said.sources)


def ask_kept(name: str, kept: KeptJob, files: Files, store: Store) -> Told:
    """Ask the trade one question about a job.

    Parameters
    ----------
    name
        One of `QUESTIONS`.
    kept
        The job.
    files, store
        Who reads its definition, and who keeps its layout.

    Raises
    ------
    KeyError
        If there is no such question.
    """
    reading = files.read_definition(kept.definition, kept.boards)
    if name == "hazards":
        # It is asked before anything is measured, and most of all then.
        return Told(leaf=for_screen(hazards_leaf(watch_out(reading))), caution="")
    if reading.problems:
        return _lacking_job(reading)
    try:
        at = at_work(kept, files, store)
    except (BadInputError, SurfacesMissingError) as trouble:
        return Told(leaf=None, lacks=on_screen(str(trouble)), screen="surfaces")
    if at is None:
        return _without_layout(name, reading)
    return _with_layout(name, at)


def _with_layout(name: str, at: AtWork) -> Told:
    if not at.faults:
        return Told(leaf=_ask(name, at.job, at.by.layout, at.standing))
    if QUESTIONS[name].of_layout:
        lacks = "What is laid out fits no longer, so that this cannot be told: lay it out anew."
        return Told(leaf=None, lacks=lacks, screen="layout")
    lacks = "What is laid out fits no longer, so that this is told of the boards and surfaces alone."
    return Told(leaf=_ask(name, at.job, None, at.standing), lacks=lacks, screen="layout")


def _without_layout(name: str, reading: DefinitionReading) -> Told:
    if QUESTIONS[name].of_layout:
        lacks = "This is told of a layout, and nothing is laid out yet."
        return Told(leaf=None, lacks=lacks, screen="layout")
    return Told(leaf=_ask(name, reading.job))


def _ask(name: str, job: Job, layout: Layout | None = None, standing: Standing = NOTHING_DONE) -> Leaf | None:
    leaf = ask_one(name, job, layout, standing)
    return None if leaf is None else for_screen(leaf)


def _lacking_job(reading: DefinitionReading) -> Told:
    """Say what has to be measured, or mended, before the trade can say anything."""
    if not reading.boards:
        return Told(leaf=None, lacks="No board is tallied yet, so that nothing can be told.", screen="tally")
    if not reading.surfaces:
        lacks = "No surface is measured yet, so that nothing can be told."
        return Told(leaf=None, lacks=lacks, screen="surfaces")
    return Told(leaf=None, lacks="Something that was measured has to be mended first.", screen="")

"""Lay a job out around what somebody wishes of it, with as little change as can be.

What stays is taken for hung, and what is left out for lost, while the rest is laid out; none of that is left
in the layout that comes of it.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import partial

from plankwright.check import Finding, FindingCode, FindingSeverity, check_layout, faults
from plankwright.errors import LayoutRefusedError
from plankwright.layout.again import Change, changes_between
from plankwright.layout.result import Effort, Result, Watch
from plankwright.measure import write_area
from plankwright.model import Job, Layout, Standing, Work
from plankwright.workshop.go_together import demand_boards, demand_same_surfaces
from plankwright.workshop.jobs.as_if_done import as_if_done, shimmed_as
from plankwright.workshop.jobs.finish_layout import finish_layout
from plankwright.workshop.jobs.grant_wishes import Granted, grant_wishes
from plankwright.workshop.jobs.kept import RefusedError
from plankwright.workshop.jobs.make_wishes import tell_dropped
from plankwright.workshop.jobs.wishes import Wishes
from plankwright.workshop.lay_out import only_true_promises
from plankwright.workshop.what_now import Again

_OF_THE_WORK = {
    FindingCode.HUNG_MISSING,
    FindingCode.HUNG_CHANGED,
    FindingCode.BOARD_UNKNOWN,
    FindingCode.WOOD_GONE,
    FindingCode.SHAPE_GONE,
    FindingCode.WOOD_SPENT_WRONG,
}
"""What is found of a layout only because something has happened since it was made."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidAround:
    """A job laid out around wishes.

    Parameters
    ----------
    result
        What the search came to; its layout has passed the checker, and all that was granted holds in it.
    findings
        Warnings and notes of the checker; no errors.
    changes
        What becomes of each piece that does not hang yet.
    wishes
        Those that were granted.
    told
        In sentences: what was granted, what could not be, and whether more stays bare than before.
    """

    result: Result
    findings: tuple[Finding, ...]
    changes: tuple[Change, ...]
    wishes: Wishes
    told: tuple[str, ...]

    @property
    def warnings(self) -> tuple[Finding, ...]:
        """What is left to the user's judgement."""
        return tuple(found for found in self.findings if found.severity is FindingSeverity.WARNING)


def lay_around(
    job: Job,
    layout: Layout,
    work: Work,
    wishes: Wishes,
    *,
    again: Again,
    effort: Effort,
    seed: int = 0,
    watch: Watch | None = None,
) -> LaidAround:
    """Lay a job out around what is wished of it, and have it checked.

    Parameters
    ----------
    job, layout, work
        The job, the layout that it is worked by, and what was marked.
    wishes
        What is wished; whatever of it cannot be granted any more is dropped, with a sentence.
    again
        Who lays out what is left.
    effort
        How long to look at most.
    seed
        The same job, layout, work, wishes, effort and seed give the same answer.
    watch
        Who follows the search and may stop it.

    Raises
    ------
    BoardsMissingError
        If the tally lacks a board that pieces hang of.
    OtherLayoutError
        If the layout is not of the surfaces of the job.
    RefusedError
        If the layout breaks a rule by now, since surfaces or rules are not what they were.
    LayoutRefusedError
        If the checker finds an error, or that a wish does not hold: our fault, and nothing is handed out.
    """
    standing = work.standing
    demand_boards(job, standing)
    demand_same_surfaces(job, layout)
    search = partial(again, effort=effort, seed=seed, watch=watch)
    task = _Task(job, layout, work, wishes, search)
    wrong: tuple[Finding, ...] = ()
    for begun in _beginnings(job, layout, standing, search):
        around, wrong = task.done_from(begun)
        if not wrong:
            return around
    raise LayoutRefusedError(dict.fromkeys(map(str, wrong)))


def _beginnings(
    job: Job, layout: Layout, standing: Standing, search: Callable[..., Result]
) -> Iterator[Layout]:
    """Give a layout to begin with: as it is, if it can be, then as it goes on after all that has happened."""
    stale = {found.code for found in faults(check_layout(job, layout, standing))}
    if stale <= _OF_THE_WORK:
        yield layout
    if stale:
        mended = search(job, layout, standing, close=False).layout
        if faults(check_layout(job, mended, standing)):
            raise RefusedError(
                "The layout no longer goes with the surfaces and rules as they are now: lay out anew first."
            )
        yield mended


@dataclass(frozen=True, slots=True)
class _Task:
    """What is to be laid out, around what, and by whom."""

    job: Job
    layout: Layout
    work: Work
    wishes: Wishes
    search: Callable[..., Result]

    def done_from(self, layout: Layout) -> tuple[LaidAround, tuple[Finding, ...]]:
        """Lay out around what can be granted in a layout; give that, and what is wrong with it."""
        job, standing = self.job, self.work.standing
        granted = grant_wishes(job, layout, standing, self.wishes)
        recut = granted.recut
        begun = recut.layout
        as_if = as_if_done(
            job,
            begun,
            self.work,
            staying=recut.staying,
            losing=recut.losing,
            without=granted.wishes.without,
        ).standing
        result = self.search(job, begun, as_if)
        laid = finish_layout(job, result.layout, standing)
        findings = check_layout(job, laid, standing)
        around = LaidAround(
            result=only_true_promises(
                replace(result, layout=laid, closing=_finished(result, standing)), standing
            ),
            findings=findings,
            changes=changes_between(job, self.layout, laid, standing, by_place=True),
            wishes=granted.wishes,
            told=(*_tell(job, self.wishes, granted), *_tell_bare(job, self.layout, laid)),
        )
        held = check_layout(job, laid, shimmed_as(as_if, laid))
        return around, (*faults(findings), *faults(held))


def _finished(result: Result, standing: Standing) -> tuple[Job, Layout] | None:
    """Give the layout that further boards would close, finished like the other."""
    if result.closing is None:
        return None
    job, layout = result.closing
    return job, finish_layout(job, layout, standing)


def _tell(job: Job, wishes: Wishes, granted: Granted) -> Iterator[str]:
    words = [told.words for told in granted.wishes.told(job)]
    if words:
        yield f"As wished: {'; '.join(words)}."
    yield from tell_dropped(job, wishes, granted)


def _tell_bare(job: Job, before: Layout, after: Layout) -> Iterator[str]:
    bare = [sum(laid.score.bare_nm2 for laid in layout.surfaces) for layout in (before, after)]
    none, was, now = (write_area(area, job.tape) for area in (0, *bare))
    if bare[1] > bare[0] and now != was:
        than = "that was covered before" if was == none else f"instead of {was}"
        yield f"So {now} stays bare {than}; the layout from before is kept as well."

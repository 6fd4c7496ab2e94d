"""Live through one trial: lose boards one after another, and lay out anew what each loss takes away.

This is what runs in other processes and on other machines: it takes and gives plain values.
"""

from dataclasses import dataclass

from plankwright.check import check_layout, faults
from plankwright.errors import LayoutRefusedError
from plankwright.layout.break_proof import Outcome, Trial, boards_to_cut, surely_too_little, without
from plankwright.layout.result import Effort, Watch
from plankwright.model import Job, Layout, Standing
from plankwright.workshop.what_now import Again


@dataclass(frozen=True, slots=True, kw_only=True)
class AtStake:
    """What all trials have in common.

    Parameters
    ----------
    job, layout, standing
        The job, the whole layout that it is worked by, and how far it has come.
    again
        Who lays out what is left: a function of a module, as it goes to other processes by its name.
    effort
        How long to look after each loss at most.
    seed
        The same job, layout, standing, effort and seed give the same outcome.
    """

    job: Job
    layout: Layout
    standing: Standing
    again: Again
    effort: Effort
    seed: int = 0


def live_through(at_stake: AtStake, trial: Trial, watch: Watch) -> Outcome:
    """Lose boards one after another until no full layout is found, or all of them are lost.

    Parameters
    ----------
    at_stake
        What all trials have in common.
    trial
        The losses.
    watch
        Asked often whether it is enough; once it answers yes, the trial ends. It is told nothing.

    Returns
    -------
    Outcome
        How many losses were lived through.

    Raises
    ------
    LayoutRefusedError
        If the checker finds an error in what was laid out anew: our fault.
    """
    layout, standing = at_stake.layout, at_stake.standing
    for survived, board in enumerate(trial.lost):
        # A layout of before stays right when nothing was to be cut from what is lost.
        touched = board in boards_to_cut(layout, standing)
        standing = without(standing, board)
        if not touched:
            continue
        found = _laid_again(at_stake, layout, standing, Watch(stopped=watch.stopped))
        if found is None:
            if watch.stopped():
                return Outcome(survived=survived, stopped=True)
            return Outcome(survived=survived, proven=surely_too_little(at_stake.job, standing))
        layout = found
    return Outcome(survived=len(trial.lost))


def _laid_again(at_stake: AtStake, layout: Layout, standing: Standing, watch: Watch) -> Layout | None:
    """Give a layout that leaves nothing bare and that the checker lets pass, if one was found."""
    result = at_stake.again(
        at_stake.job,
        layout,
        standing,
        effort=at_stake.effort,
        seed=at_stake.seed,
        watch=watch,
        close=False,
    )
    if not result.layout.covers_everything:
        return None
    wrong = faults(check_layout(at_stake.job, result.layout, standing))
    if wrong:
        raise LayoutRefusedError(str(finding) for finding in wrong)
    return result.layout

"""Weigh the risk: which boards a layout cannot do without, how many losses it survives, what to cut first."""

from collections.abc import Callable
from dataclasses import dataclass

from plankwright.layout.break_proof import (
    CutFirst,
    Learnt,
    Outcome,
    Trial,
    add_up,
    boards_at_risk,
    boards_to_cut,
    cutting_order,
    one_by_one,
    random_losses,
)
from plankwright.layout.crew import Crew
from plankwright.layout.result import Effort, Watch
from plankwright.model import Job, Layout, Work
from plankwright.workshop.check_layout import demand_right
from plankwright.workshop.go_together import demand_boards, demand_same_surfaces
from plankwright.workshop.live_through import AtStake, live_through
from plankwright.workshop.what_now import Again

DRAWS = 20
"""How often losses are drawn by lot when nothing else is said."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HowMuch:
    """How much is tried.

    Parameters
    ----------
    effort
        How long to look after each loss at most.
    seed
        The same job, layout, work, effort, seed and draws give the same answer, whoever the crew is.
    draws
        How often losses are drawn by lot.
    """

    effort: Effort
    seed: int = 0
    draws: int = DRAWS


@dataclass(frozen=True, slots=True, kw_only=True)
class Tried:
    """How far the trials have come.

    Parameters
    ----------
    boards, of_boards
        How many boards it was tried to do without, and how many there are to be tried.
    draws, of_draws
        How many draws have come to their end, and how many are wanted.
    """

    boards: int
    of_boards: int
    draws: int
    of_draws: int


class RiskWatch:
    """Somebody who follows the trials and may stop them.

    Parameters
    ----------
    report
        Called at the beginning, and with each trial that has come to its end.
    stopped
        Asked often; once it answers yes, what was learnt so far is given.
    """

    def __init__(
        self,
        report: Callable[[Tried], None] = lambda _tried: None,
        stopped: Callable[[], bool] = lambda: False,
    ) -> None:
        self.report = report
        self.stopped = stopped


@dataclass(frozen=True, slots=True, kw_only=True)
class Risk:
    """What a layout survives, as far as was found.

    Parameters
    ----------
    whole
        Whether the layout covers everything; if not, nothing was tried.
    at_risk
        Ids of the boards that can still be lost.
    to_cut
        Ids of those that the layout is still to be cut from.
    learnt
        What the trials came to.
    order
        The boards to be cut, in the order that meets the risk early.
    draws
        How many draws were wanted.
    stopped
        Whether the trials were stopped before all were made.
    """

    whole: bool
    at_risk: tuple[str, ...]
    to_cut: tuple[str, ...]
    learnt: Learnt
    order: tuple[CutFirst, ...]
    draws: int
    stopped: bool


def weigh_risk(
    job: Job,
    layout: Layout,
    work: Work,
    *,
    crew: Crew,
    again: Again,
    how_much: HowMuch,
    watch: RiskWatch | None = None,
) -> Risk:
    """Lose boards, one alone and many by lot, lay out anew after each loss, and say what came of it.

    Parameters
    ----------
    job
        The job, with the boards that were found since.
    layout
        The layout that it is worked by.
    work
        What was marked.
    crew
        Who does all that.
    again
        Who lays out what is left: a function of a module.
    how_much
        How much is tried.
    watch
        Who follows the trials and may stop them.

    Returns
    -------
    Risk
        What was found. That no full layout was found without a board does not mean that there is none, unless
        it says that this is proven.

    Raises
    ------
    BoardsMissingError
        If the tally lacks a board that pieces hang of.
    OtherLayoutError
        If the layout is not of the surfaces of the job.
    FaultyLayoutError
        If the layout breaks a rule, or does not heed what was marked.
    CrewError
        If the crew cannot do it.
    LayoutRefusedError
        If the checker finds an error in what was laid out anew: our fault.
    """
    standing = work.standing
    demand_boards(job, standing)
    demand_same_surfaces(job, layout)
    demand_right(job, layout, standing)
    at_risk, to_cut = boards_at_risk(job, layout, standing), boards_to_cut(layout, standing)
    whole = layout.covers_everything
    # What nothing is cut from can be lost, and the layout stays as it is. The rest is tried in the order that
    # meets the risk early, so that most is learnt when somebody stops it.
    singles = one_by_one(_riskiest_first(job, layout, work)) if whole else ()
    by_lot = random_losses(at_risk, how_much.draws, how_much.seed) if whole and to_cut else ()
    outcomes = dict[int, Outcome]()
    if singles:
        at_stake = AtStake(
            job=job, layout=layout, standing=standing, again=again, effort=how_much.effort, seed=how_much.seed
        )
        outcomes = _try_all(crew, at_stake, singles, by_lot, watch or RiskWatch())
    learnt = add_up(singles, by_lot, outcomes)
    needed = {each.board_id for each in learnt.needed}
    tried = 0 if learnt.survival is None else len(learnt.survival.draws)
    return Risk(
        whole=whole,
        at_risk=at_risk,
        to_cut=to_cut,
        learnt=learnt,
        order=cutting_order(job, layout, standing, needed) if whole else (),
        draws=len(by_lot),
        stopped=bool(learnt.untried) or tried < len(by_lot),
    )


def _riskiest_first(job: Job, layout: Layout, work: Work) -> tuple[str, ...]:
    return tuple(one.board_id for one in cutting_order(job, layout, work.standing, ()))


def _try_all(
    crew: Crew,
    at_stake: AtStake,
    singles: tuple[Trial, ...],
    by_lot: tuple[Trial, ...],
    watch: RiskWatch,
) -> dict[int, Outcome]:
    outcomes: dict[int, Outcome] = {}
    watch.report(Tried(boards=0, of_boards=len(singles), draws=0, of_draws=len(by_lot)))
    overseer = Watch(stopped=watch.stopped)
    for place, outcome in crew.share_out(live_through, at_stake, (*singles, *by_lot), watch=overseer):
        outcomes[place] = outcome
        alone = sum(each < len(singles) for each in outcomes)
        watch.report(
            Tried(
                boards=alone,
                of_boards=len(singles),
                draws=len(outcomes) - alone,
                of_draws=len(by_lot),
            )
        )
    return outcomes

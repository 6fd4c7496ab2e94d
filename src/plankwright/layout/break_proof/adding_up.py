"""What trials add up to: the boards that cannot be done without, and how many losses are survived."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from statistics import median_low

from plankwright.layout.break_proof.trials import Outcome, Trial


@dataclass(frozen=True, slots=True, kw_only=True)
class Needed:
    """A board without which no full layout was found.

    Parameters
    ----------
    board_id
        The board.
    proven
        Whether a bound proves that there is none.
    """

    board_id: str
    proven: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Survival:
    """How many losses were survived.

    Parameters
    ----------
    draws
        In each draw that came to its end, in their order. [boards]
    """

    draws: tuple[int, ...]

    @property
    def least(self) -> int:
        """In the worst draw. [boards]"""
        return min(self.draws)

    @property
    def middle(self) -> int:
        """At least half of the draws survived so many. [boards]"""
        return median_low(self.draws)

    @property
    def most(self) -> int:
        """In the best draw. [boards]"""
        return max(self.draws)


@dataclass(frozen=True, slots=True, kw_only=True)
class Learnt:
    """What the trials so far come to.

    Parameters
    ----------
    needed
        Boards that cannot be done without, in the order in which they were asked about.
    spared
        Boards without which a full layout was found.
    untried
        Boards of which nothing was learnt.
    survival
        How many random losses were survived; nothing before a draw came to its end.
    """

    needed: tuple[Needed, ...]
    spared: tuple[str, ...]
    untried: tuple[str, ...]
    survival: Survival | None


def add_up(singles: Sequence[Trial], draws: Sequence[Trial], outcomes: Mapping[int, Outcome]) -> Learnt:
    """Add up what trials came to, in whatever order they did.

    Parameters
    ----------
    singles
        Trials of one board each.
    draws
        Trials of many.
    outcomes
        What they came to, by their place among both, singles first; those that are missing were not tried.

    Returns
    -------
    Learnt
        Trials that were stopped count as not tried, but for those that survived all of their losses.
    """
    ended = {
        place: outcome
        for place, outcome in outcomes.items()
        if not outcome.stopped or outcome.survived == len((*singles, *draws)[place].lost)
    }
    by_board = {trial.lost[0]: ended.get(place) for place, trial in enumerate(singles)}
    survived = tuple(
        ended[place].survived for place in range(len(singles), len(singles) + len(draws)) if place in ended
    )
    return Learnt(
        needed=tuple(
            Needed(board_id=board, proven=outcome.proven)
            for board, outcome in by_board.items()
            if outcome is not None and not outcome.survived
        ),
        spared=tuple(
            board for board, outcome in by_board.items() if outcome is not None and outcome.survived
        ),
        untried=tuple(board for board, outcome in by_board.items() if outcome is None),
        survival=Survival(draws=survived) if survived else None,
    )

"""What is tried: a board is lost, or one after another by lot, until no full layout is found any more."""

import random
from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """Losses to be lived through.

    Parameters
    ----------
    lost
        Ids of boards, lost one after another; after each the rest is laid out anew.
    """

    lost: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What a trial came to.

    Parameters
    ----------
    survived
        After so many of its losses, one by one, a full layout was found. [boards]
    proven
        Whether a bound proves that there is none after the next one.
    stopped
        Whether somebody stopped it before it came to its end; nothing is learnt then.
    """

    survived: int
    proven: bool = False
    stopped: bool = False


def one_by_one(boards: Sequence[str]) -> tuple[Trial, ...]:
    """Give for each board the trial in which just that one is lost."""
    return tuple(Trial(lost=(board,)) for board in boards)


def random_losses(boards: Sequence[str], count: int, seed: int) -> tuple[Trial, ...]:
    """Draw orders in which boards are lost, each as likely as any other.

    Parameters
    ----------
    boards
        Those that can be lost.
    count
        How many draws. [draws]
    seed
        The same boards and seed give the same draws, and further draws leave the first ones as they are.
    """
    trials = []
    for draw in range(count):
        order = list(boards)
        random.Random(f"{seed} draw {draw}").shuffle(order)  # noqa: S311 - chance, not secrecy
        trials.append(Trial(lost=tuple(order)))
    return tuple(trials)

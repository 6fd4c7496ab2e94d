"""Say in plain words what a layout survives, and what is best cut first."""

from collections import Counter
from collections.abc import Iterator, Sequence

from plankwright.layout.break_proof import Survival
from plankwright.workshop.ask_enough import MOST_NAMED
from plankwright.workshop.weigh_risk import Risk
from plankwright.workshop.wording import capital, counted, listed, number


def headline(risk: Risk) -> str:
    """Give the heart of the answer in one sentence.

    Parameters
    ----------
    risk
        What came of the trials.
    """
    if not risk.whole:
        return "The layout leaves something bare as it is, so there is nothing that it could lose."
    if not risk.to_cut:
        return "Nothing is left to be cut, so no layout hangs on a board any more."
    needed = risk.learnt.needed
    if needed:
        far = "" if all(each.proven for each in needed) else ", as far as was found"
        return f"The layout cannot do without {_boards([each.board_id for each in needed])}{far}."
    if not risk.learnt.spared:
        return "Stopped before anything was learnt."
    if risk.learnt.untried:
        return "No board was found so far that the layout cannot do without."
    return "Any one board can be lost: a full layout was found without each of them."


def tell_risk(risk: Risk) -> tuple[str, ...]:
    """Say what the layout survives, and how sure that is.

    Parameters
    ----------
    risk
        What came of the trials.

    Returns
    -------
    tuple of str
        Sentences; none when nothing was tried.
    """
    if not risk.whole:
        return (
            "Ask “plankwright enough” which boards would close it, or “plankwright now” once work has begun.",
        )
    if not risk.to_cut:
        return ()
    return (
        *_tell_needed(risk),
        *_tell_spared(risk),
        *_tell_survival(risk),
        *(_STOPPED if risk.stopped else ()),
        _NO_PROMISE,
    )


def tell_without(risk: Risk, board_id: str) -> str:
    """Say in a word or two what was found without a board that is to be cut.

    Parameters
    ----------
    risk
        What came of the trials.
    board_id
        The board.
    """
    proven = {each.board_id: each.proven for each in risk.learnt.needed}
    if board_id in proven:
        return "proven impossible" if proven[board_id] else "none found"
    return "not tried" if board_id in risk.learnt.untried else "found"


_NO_PROMISE = (
    "That is what was found, and no promise: old boards break as they please. Keep every spare until all "
    "hangs, and ask again when one is gone."
)
_STOPPED = ("The trials were stopped early: the rest of them may tell more.",)


def _tell_needed(risk: Risk) -> Iterator[str]:
    needed = risk.learnt.needed
    if not needed:
        return
    proven = [each.board_id for each in needed if each.proven]
    if len(proven) == len(needed):
        what = "it" if len(needed) == 1 else "any of them"
        yield f"That is proven: without {what}, no layout covers everything."
    elif proven:
        yield f"Proven of {_boards(proven)}; of the rest it is not, and a longer search may find a layout."
    else:
        yield "That is not proven: a longer search may find a full layout."


def _tell_spared(risk: Risk) -> Iterator[str]:
    spared, untried = risk.learnt.spared, risk.learnt.untried
    if risk.learnt.needed and spared:
        verb = "is" if len(spared) == 1 else "are"
        yield (
            f"{capital(counted(len(spared), 'other board'))} that {verb} to be cut can be lost, one alone: a "
            "full layout was found without."
        )
    if untried:
        yield f"Not tried: {_boards(untried)}."


def _tell_survival(risk: Risk) -> Iterator[str]:
    survival = risk.learnt.survival
    if survival is None:
        return
    yield (
        f"Random losses, {counted(len(survival.draws), 'draw')}: boards lost one after another, any of the "
        f"{len(risk.at_risk)} that can be as likely as any other, until no full layout was found."
    )
    if survival.least == survival.most:
        yield f"Each draw survived {_losses(survival.least)}."
    else:
        yield (
            f"At least half of the draws survived {_losses(survival.middle)} or more; the worst "
            f"{_losses(survival.least)}, the best {_losses(survival.most)} ({_spread(survival)})."
        )


def _losses(count: int) -> str:
    return f"{number(count)} loss{'' if count <= 1 else 'es'}"


def _spread(survival: Survival) -> str:
    times = Counter(survival.draws)
    return ", ".join(
        f"{times[losses]} survived {number(losses) if losses else 'none'}" for losses in sorted(times)
    )


def _boards(names: Sequence[str]) -> str:
    if len(names) == 1:
        return f"board {names[0]}"
    if len(names) <= MOST_NAMED:
        return f"boards {listed(names)}"
    return f"boards {', '.join(names[:MOST_NAMED])} and {len(names) - MOST_NAMED} more"

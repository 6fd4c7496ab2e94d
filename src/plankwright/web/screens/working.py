"""What cutting, hanging and left over have in common: whether one may work by the layout, and marking."""

import re
from collections.abc import Sequence
from typing import Any
from urllib.parse import urlencode

from starlette.responses import Response

from plankwright.errors import BadInputError, ExitCode, PlankwrightError
from plankwright.web.mishaps import sentences_of
from plankwright.web.screens import search
from plankwright.web.visit import Visit, job_url
from plankwright.workshop.go_together import SurfacesMissingError
from plankwright.workshop.jobs.at_work import AtWork, at_work
from plankwright.workshop.jobs.kept import (
    KeptJob,
    KeptLayout,
    Made,
    NotThereError,
    RefusedError,
    SearchState,
    StaleError,
)
from plankwright.workshop.jobs.mark_kept import mark_kept, tell_happened
from plankwright.workshop.jobs.pieces_at_hand import PieceAtHand
from plankwright.workshop.mark_work import Happened
from plankwright.workshop.wording import listed

_TITLES = {"cutting": "Cutting", "hanging": "Hanging", "left": "Left over"}
_READ = "plankwright-read"
_A_YEAR_S = 365 * 24 * 60 * 60
_LONGEST_NUMBER = 15
_OF_A_PIECE = "- "
"""Begins a sentence of the news that is about one piece."""
_OF_THE_PILE = ("Lost: ", "Found since ")
"""Begin the sentences of the news that tell of what happened to the pile."""
_SHIFTED = " the start side than before."
"""Ends those that tell of courses that hang elsewhere now."""
_NOTHING_HANGS = re.compile(r": none of .* hangs\.$")
"""Where nothing of a surface hangs, which changes nothing."""


def screen_of(visit: Visit) -> str:
    """Give the screen that an address belongs to: cutting or hanging, or left over."""
    return visit.request.url.path.split("/")[3]


def to_work_by(visit: Visit) -> AtWork | Response:
    """Give the job as it is worked on, or the page that says why it cannot be."""
    if visit.job.layout_id is not None and laid_anew(visit):
        return _stop(visit, "waiting", "What is left is being laid out anew.")
    try:
        at = at_work(visit.job, visit.desk.bench.files, visit.desk.store)
    except SurfacesMissingError as trouble:
        missing = listed(trouble.missing)
        return _stop(visit, "stuck", f"Pieces hang on {missing} or are cut for it, and the job lacks it now.")
    except BadInputError as trouble:
        told = "What is measured is no longer all right, so there is nothing to work by."
        return _stop(visit, "unread", told, sentences_of(trouble))
    if at is None:
        return _stop(visit, "none", "There is no layout to work by yet.")
    if not at.faults:
        return at
    told = at.hindrance or "The layout does not fit any more what is tallied, measured and done."
    return _stop(visit, "stuck" if at.hindrance else "outdated", told, at.faults)


def to_mark_on(visit: Visit) -> AtWork:
    """Give the job as something is marked on it, even while what is left of it is being laid out anew.

    What happened has happened, whether the layout still fits or not: cuts and courses are not to be asked for
    where it does not.

    Raises
    ------
    RefusedError
        If there is no layout that anything could happen by.
    """
    at = at_work(visit.job, visit.desk.bench.files, visit.desk.store)
    if at is None:
        raise RefusedError("There is no layout to work by yet, so nothing was marked.")
    return at


def laid_anew(visit: Visit) -> bool:
    """Tell whether what is left is being laid out anew at this moment."""
    last = visit.desk.store.last_search(visit.job_id)
    return last is not None and last.made is Made.AGAIN and last.state is SearchState.RUNNING


def lay_anew(visit: Visit) -> Response:
    """Have what is left laid out anew."""
    screen = screen_of(visit)
    return search.begin(visit, Made.AGAIN, effort="glance", then=screen)


def told_first(visit: Visit, at: AtWork) -> dict[str, Any]:
    """Give what stands at the head of each screen that one works by."""
    screen = screen_of(visit)
    return {
        "at": at,
        "screen": screen,
        "news": _news(at.by) if _is_news(visit, at.by) else None,
        "short": None if at.by.layout.covers_everything else _missing(at.by),
        # Whoever has cut may still never have nailed.
        "first": not (at.hung if screen == "hanging" else at.standing.begun),
    }


def mark(visit: Visit, happened: Sequence[Happened], **go_on: str) -> Response:
    """Mark what happened, and go on; where the rest does not fit any more, have it laid out anew.

    Parameters
    ----------
    visit
        With the number of the layout that was shown, as the field "layout".
    happened
        What happened.
    go_on
        What stands behind the question mark of the page that one goes on at.
    """
    files, store = visit.desk.bench.files, visit.desk.store
    shown = visit.text("layout")
    by = store.layout(visit.job_id, int(shown) if _is_number(shown) else 0)
    busy = laid_anew(visit)

    def marked(kept: KeptJob) -> KeptJob:
        return mark_kept(kept, files.read_definition(kept.definition, kept.boards).job, by, happened)

    try:
        kept = visit.change(tell_happened(happened, several=len(by.layout.surfaces) > 1), marked)
    except StaleError as trouble:
        return _stop(visit, "stale", str(trouble), status=409)
    at = at_work(kept, files, store)
    if at is not None and not at.hindrance and (busy or at.faults):
        return lay_anew(visit)
    return _read(visit, visit.go(address(visit, **go_on)))


def told_of(at: AtWork, trouble: PlankwrightError) -> list[str]:
    """Give the sentences that a screen shows again with what was refused.

    Raises
    ------
    PlankwrightError
        The same, where there is no such screen: what was asked for is not there, the layout does not fit, or
        it is no refusal.
    """
    if at.faults or isinstance(trouble, NotThereError) or trouble.exit_code != ExitCode.BAD_INPUT:
        raise trouble
    return sentences_of(trouble)


def address(visit: Visit, **behind: str) -> str:
    """Give the address of the screen that one works at."""
    query = urlencode({name: word for name, word in behind.items() if word})
    return job_url(visit.job_id, screen_of(visit)) + (f"?{query}" if query else "")


def pieces_named(visit: Visit, at: AtWork, names: Sequence[str]) -> list[PieceAtHand]:
    """Give the pieces that a form names.

    Raises
    ------
    RefusedError
        If one of them is no piece of the layout that is worked by, nor in hand.
    """
    wanted = [value for name, value in visit.fields() if name in names and value]
    unknown = [word for word in wanted if word not in at.pieces]
    if unknown:
        raise RefusedError(f"There is no piece {unknown[0].partition('@')[0]} in the layout, or no longer.")
    return [at.pieces[word] for word in dict.fromkeys(wanted)]


def put_news_aside(visit: Visit) -> Response:
    """Take it that what changed was read on this phone."""
    return _read(visit, visit.go(address(visit)))


def _read(visit: Visit, answer: Response) -> Response:
    """Note on this phone that what changed with the layout that is worked by was read here."""
    answer.set_cookie(
        _READ,
        str(visit.job.layout_id),
        max_age=_A_YEAR_S,
        path=job_url(visit.job_id),
        httponly=True,
        samesite="lax",
    )
    return answer


def _missing(by: KeptLayout) -> dict[str, Any]:
    """Give what is missing, where something stays bare."""
    if by.answer is None:
        return {"headline": "This layout leaves something bare.", "pile": ()}
    return {"headline": by.answer.headline, "pile": by.answer.pile}


def _news(by: KeptLayout) -> dict[str, list[str]]:
    """Give what changed: in the pile and for whole courses, then piece by piece; last how all stands."""
    return {
        "all": [line for line in by.news if _tells_of_change(line)],
        "pieces": [line.removeprefix(_OF_A_PIECE) for line in by.news if line.startswith(_OF_A_PIECE)],
        "same": [
            line
            for line in by.news
            if not (_tells_of_change(line) or line.startswith(_OF_A_PIECE))
            and not _NOTHING_HANGS.search(line)
        ],
    }


def _tells_of_change(line: str) -> bool:
    return line.startswith(_OF_THE_PILE) or line.endswith(_SHIFTED)


def _is_news(visit: Visit, by: KeptLayout) -> bool:
    """Tell whether what changed is still to be read here: each phone has to, whoever marked it."""
    read = visit.request.cookies.get(_READ, "")
    return by.made is Made.AGAIN and not (_is_number(read) and int(read) >= by.id)


def _is_number(text: str) -> bool:
    return text.isascii() and text.isdecimal() and len(text) <= _LONGEST_NUMBER


def _stop(visit: Visit, why: str, told: str, sentences: Sequence[str] = (), *, status: int = 200) -> Response:
    """Show why one cannot work now, and what to do about it."""
    last = visit.desk.store.last_search(visit.job_id)
    failed = last is not None and last.state in {SearchState.FAILED, SearchState.CUT_OFF}
    return visit.show(
        "work_stop.html",
        status=status,
        screen=screen_of(visit),
        title=_TITLES[screen_of(visit)],
        why=why,
        told=told,
        sentences=sentences,
        trouble=last.trouble or "It was cut off." if last is not None and failed else "",
    )

"""A search under way: how far it is, the best so far, and how to stop it; and one that came to nothing."""

import asyncio
from collections.abc import AsyncIterator
from dataclasses import replace
from datetime import UTC, datetime
from time import monotonic
from typing import Any

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response, StreamingResponse
from starlette.routing import Route

from plankwright.errors import BadInputError
from plankwright.web.mishaps import sentences_of
from plankwright.web.pages import render
from plankwright.web.screens.layout_compare import picture
from plankwright.web.screens.layout_page import asking, layout_page, number_of
from plankwright.web.visit import Visit, job_url, page
from plankwright.workshop.go_together import MissingError
from plankwright.workshop.jobs.ask_for_layout import USUAL, errand_for, read_seed
from plankwright.workshop.jobs.choose_layout import work_by
from plankwright.workshop.jobs.kept import (
    KeptSearch,
    Made,
    NotThereError,
    RefusedError,
    SearchState,
)
from plankwright.workshop.jobs.ports import Store
from plankwright.workshop.jobs.see_layout import draw_surface, standing_of
from plankwright.workshop.jobs.see_search import best_of, running_for
from plankwright.workshop.jobs.tally_boards import fingerprint
from plankwright.workshop.lay_out import EffortError

_EVERY_S = 0.5
"""So often a page that shows a search is told how far it is. [s]"""

_LONGEST_S = 60.0
"""After so long a page has to ask again, so that nothing is told for ever to nobody. [s]"""

_GO_ON = frozenset({"layout", "cutting", "hanging", "left"})
"""Screens on which one goes on when a search is over."""

_REFUSALS = (BadInputError, RefusedError, EffortError, MissingError)


def begin(visit: Visit, made: Made, *, effort: str, seed: int = 0, then: str = "layout") -> Response:
    """Begin a search for the job, and show it.

    Parameters
    ----------
    visit
        Of whoever wants it.
    made
        From scratch, what is left of the job, or around what is wished.
    effort, seed
        How long to look, in the user's word, and the seed.
    then
        The screen on which to go on when it is over.

    Raises
    ------
    BadInputError
        If what was measured is no job yet.
    RefusedError, MissingError, EffortError
        As `errand_for` has it.
    """
    kept, store = visit.job, visit.desk.store
    before = None if kept.layout_id is None else store.layout(kept.id, kept.layout_id).layout
    errand = errand_for(kept, visit.reading.job, before, made, effort, seed)
    visit.desk.searches.begin(kept.id, errand, wishes=errand.wishes.to_json())
    return visit.go_to_job(f"search?then={then}")


def ask(visit: Visit) -> Response:
    """Begin a search as a form asks for it."""
    try:
        seed = read_seed(visit.text("seed"))
        return begin(visit, _made(visit), effort=visit.text("effort") or USUAL, seed=seed, then=_then(visit))
    except _REFUSALS as trouble:
        given = dict(visit.fields())
        return layout_page(visit, status=422, problems=sentences_of(trouble), given=given)


def show_search(visit: Visit) -> Response:
    """Show the search that was begun last, or go on where it is over."""
    search = visit.desk.store.last_search(visit.job_id)
    if search is None or search.state in {SearchState.DONE, SearchState.STOPPED}:
        return visit.go_to_job(_then(visit))
    if search.state is SearchState.RUNNING:
        stopping = bool(visit.asked("stopping"))
        return visit.show("search.html", then=_then(visit), stopping=stopping, **_seen(search))
    return _show_ended(visit, search)


def stop(visit: Visit) -> Response:
    """Have the search come to its end, with the best so far."""
    visit.desk.searches.stop(visit.job_id)
    return visit.go_to_job(f"search?then={_then(visit)}&stopping=1")


def use_best(visit: Visit) -> Response:
    """Work by the best layout of a search that ended early."""
    search = _search_named(visit, visit.text("search"))
    try:
        found = best_of(visit.reading.job, search, standing_of(visit.job))
    except (BadInputError, RefusedError) as trouble:
        return _show_ended(visit, search, status=422, problems=sentences_of(trouble))
    laid = visit.desk.store.keep_layout(visit.job_id, found)
    visit.change("the best of a search that ended early taken", lambda kept: work_by(kept, laid.id))
    visit.desk.store.end_search(replace(search, state=SearchState.STOPPED, layout_id=laid.id))
    return visit.go_to_job(_then(visit))


def show_best(visit: Visit) -> Response:
    """Give the best so far as a picture, a surface each."""
    search = _search_named(visit, str(visit.request.path_params["number"]))
    place = number_of(str(visit.request.path_params["place"]))
    surfaces = () if search.best is None else search.best.surfaces
    if not 0 <= place < len(surfaces):
        raise NotThereError("Nothing of this surface is laid out yet.")
    return picture(draw_surface(visit.reading.job, surfaces[place], standing_of(visit.job)))


async def follow(request: Request) -> Response:
    """Tell a page how far the search is, until it is over."""
    store: Store = request.app.state.desk.store
    job_id = str(request.path_params["job_id"])
    await run_in_threadpool(store.job, job_id)
    search = await run_in_threadpool(store.last_search, job_id)
    told = _tell(request, store, 0 if search is None else search.id)
    return StreamingResponse(told, media_type="text/event-stream", headers={"cache-control": "no-store"})


async def _tell(request: Request, store: Store, search_id: int) -> AsyncIterator[str]:
    yield f"retry: {int(1000 * _EVERY_S)}\n\n"
    said: dict[str, str] = {}
    until = monotonic() + _LONGEST_S
    while monotonic() < until:
        news = await run_in_threadpool(_news, request, store, search_id)
        for name, text in news.items():
            if said.get(name) != text:
                yield _event(name, text)
        if "over" in news:
            return
        said |= news
        await asyncio.sleep(_EVERY_S)


def _news(request: Request, store: Store, search_id: int) -> dict[str, str]:
    """Give what there is to tell of a search, by the part of the page that shows it."""
    try:
        search = store.search(search_id)
        if search.state is not SearchState.RUNNING:
            return {"over": search.state.value}
        _draw_ahead(request, search)
    except (NotThereError, BadInputError):
        return {"over": "gone"}
    seen = _seen(search)
    return {
        name: bytes(render(request, f"search_{name}.html", seen).body).decode()
        for name in ("progress", "told", "best")
    }


def _draw_ahead(request: Request, search: KeptSearch) -> None:
    """Draw the best so far before a page is told of it, so that it need not wait for the picture."""
    if search.best is not None:
        visit = Visit(request, request.app.state.desk)
        for laid in search.best.surfaces:
            draw_surface(visit.reading.job, laid, standing_of(visit.job))


def _event(name: str, text: str) -> str:
    """Write a server-sent event."""
    lines = "".join(f"data: {line}\n" for line in text.splitlines() or [""])
    return f"event: {name}\n{lines}\n"


def _seen(search: KeptSearch) -> dict[str, Any]:
    """Give what a page shows of a search."""
    mark = "" if search.best is None else fingerprint(search.best)
    surfaces = () if search.best is None else search.best.surfaces
    return {
        "search": search,
        "running": running_for(search, datetime.now(UTC)),
        "best": [
            (laid.surface_id, f"{job_url(search.job_id, 'search')}/{search.id}/best/{place}.svg?of={mark}")
            for place, laid in enumerate(surfaces)
        ],
    }


def _show_ended(
    visit: Visit, search: KeptSearch, *, status: int = 200, problems: list[str] | None = None
) -> Response:
    """Show a search that came to nothing, why, and what can be done."""
    return visit.show(
        "search_ended.html",
        status=status,
        then=_then(visit),
        problems=problems or [],
        why=search.trouble.splitlines(),
        usable=_usable(visit, search),
        **_seen(search),
        **asking({"effort": search.effort, "seed": str(search.seed or ""), "made": search.made.value}),
    )


def _usable(visit: Visit, search: KeptSearch) -> bool:
    """Tell whether the best of a search can be worked by."""
    try:
        best_of(visit.reading.job, search, standing_of(visit.job))
    except (BadInputError, RefusedError):
        return False
    return True


def _search_named(visit: Visit, number: str) -> KeptSearch:
    search = visit.desk.store.search(number_of(number))
    if search.job_id != visit.job.id:
        raise NotThereError("There is no such search for this job.")
    return search


def _made(visit: Visit) -> Made:
    """Read what is to be laid out."""
    word = visit.text("made") or (Made.AGAIN if visit.job.begun else Made.SEARCHED)
    if word not in {Made.SEARCHED, Made.AGAIN, Made.AROUND}:
        raise RefusedError("Choose what is to be laid out: all of it, or what is left.")
    return Made(word)


def _then(visit: Visit) -> str:
    """Read on which screen to go on."""
    word = visit.text("then") or visit.asked("then")
    return word if word in _GO_ON else "layout"


ROUTES: list[Route] = [
    page("/jobs/{job_id}/search", show_search),
    page("/jobs/{job_id}/search", ask, "POST"),
    page("/jobs/{job_id}/search/stop", stop, "POST"),
    page("/jobs/{job_id}/search/use", use_best, "POST"),
    page("/jobs/{job_id}/search/{number}/best/{place}.svg", show_best),
    Route("/jobs/{job_id}/search/events", follow),
]

"""One surface as a form: numbers, and a drawing of them beside it that changes as one types."""

import secrets
from collections.abc import Iterator
from dataclasses import dataclass

from starlette.responses import Response
from starlette.routing import Route

from plankwright.errors import BadInputError, PlankwrightError
from plankwright.measure import System
from plankwright.web.filled_form import FilledForm
from plankwright.web.forms import flat, nested
from plankwright.web.mishaps import sentences_of, status_of
from plankwright.web.visit import Visit, page
from plankwright.workshop.jobs.fill_in_surface import Backing, FilledIn, OutlineWay, as_form, filled_in
from plankwright.workshop.jobs.kept import KeptJob, NotThereError, StaleError
from plankwright.workshop.jobs.measure_surfaces import ANOTHER_JOB, surface_at, surfaces_of
from plankwright.workshop.jobs.preview_surface import preview_surface, put_filled_surface, surfaces_seen
from plankwright.workshop.jobs.rename_surface import carry_layout
from plankwright.workshop.jobs.tally_boards import fingerprint
from plankwright.workshop.tell_surface import tell_places, tell_surface

NEW = "new"
_BESIDES = frozenset({"seen", "key", "add", "remove", "draw", "over", "next"})
"""Fields that say what to do with the form."""

_ROWS = frozenset(
    {
        *("heights.at", "corners.0", "opening.left", "cut_out.centre.0", "cut_out.left", "concealed.left"),
        *("keep_out.vertical", "keep_out.horizontal", "keep_out.left", "between.what"),
    }
)
"""The rows that can be added: the list, and the first field of the row."""

_MOST_DIGITS = 6


@dataclass(frozen=True, slots=True)
class Tapping:
    """What a tap on the drawing fills in next.

    Parameters
    ----------
    row
        What is placed, by how the names of its fields begin.
    x, y
        The fields; empty for one that is not asked.
    what
        In words, for whoever taps.
    at_edges
        Whether it mostly begins at the very edge of the surface, as a door does at the floor.
    """

    row: str
    x: str
    y: str
    what: str
    at_edges: bool = False


_TAPPED = (
    ("opening", "left", "bottom", "the lower left corner of the opening is"),
    ("cut_out", "centre.0", "centre.1", "the centre of the socket, switch or pipe is"),
    ("cut_out", "left", "bottom", "the lower left corner of the socket, switch or pipe is"),
    ("concealed", "left", "bottom", "the lower left corner of the fixture is"),
    ("keep_out", "vertical", "", "the pipe or wire runs up"),
    ("keep_out", "horizontal", "", "the pipe or wire runs across"),
    ("keep_out", "left", "bottom", "the lower left corner of what is to be kept free is"),
)


def show_form(visit: Visit) -> Response:
    """Show a surface, or an empty form for a new one."""
    place = _place(visit)
    if place is None:
        return _show(visit, place, FilledForm(), key=secrets.token_urlsafe(12))
    surface = surface_at(visit.job, place)
    return _show(
        visit, place, FilledForm(flat(as_form(surface, visit.reading.read_length))), seen=fingerprint(surface)
    )


def fill_in(visit: Visit) -> Response:
    """Keep a surface, or show its form again: with a row more, with a row less, or with what will not do."""
    place, form = _place(visit), _filled_form(visit)
    if visit.form.get("draw") is not None:
        return _show_again(visit, place, form)
    if added := visit.text("add"):
        return _show_again(visit, place, form.with_row(*added.split(".", 1)) if added in _ROWS else form)
    if removed := visit.text("remove"):
        return _show_again(visit, place, form.without_row(removed))
    return _keep(visit, place, form)


def preview(visit: Visit) -> Response:
    """Show what can be drawn of a surface while it is being filled in."""
    form, place = _filled_form(visit), _place(visit)
    sight = preview_surface(visit.job, visit.desk.bench.files, _filled_in(visit, form, place), place)
    return visit.show(
        "surface.html", block="sight", form=form, sight=sight, tapping=tapping(form, visit.text("next"))
    )


def tapping(form: FilledForm, before: str = "") -> Tapping | None:
    """Say what a tap on the drawing fills in.

    Parameters
    ----------
    form
        The form.
    before
        The row that was placed last, if any.

    Returns
    -------
    Tapping | None
        The place of what was added just now, else of what was placed before, else of the first that has none.
    """
    asked = list(_tappings(form))
    for row in (form.focus.rpartition(".")[0], form.focus.rpartition(".")[0].removesuffix(".centre"), before):
        for one in asked:
            if one.row == row:
                return one
    return next(iter(asked), None)


def _tappings(form: FilledForm) -> Iterator[Tapping]:
    """Give everything whose place is still to be filled in."""
    for key, x, y, what in _TAPPED:
        for row in form.rows(key):
            names = [f"{row}.{name}" for name in (x, y) if name]
            if form.has(names[0]) and not any(form.value(name).strip() for name in names):
                sideways = key == "keep_out" and x == "horizontal"
                first, second = names[0], names[1] if len(names) > 1 else ""
                places = ("", first) if sideways else (first, second)
                yield Tapping(row, *places, what, at_edges=x == "left" and key != "cut_out")


def _keep(visit: Visit, place: int | None, form: FilledForm) -> Response:
    filled = _filled_in(visit, form, place)
    name = filled.table.get("id")
    seen = visit.text("over") or visit.text("seen")
    files = visit.desk.bench.files

    def edit(kept: KeptJob) -> KeptJob:
        return put_filled_surface(kept, files, filled, place, seen)

    try:
        carry = carry_layout(visit.job, edit(visit.job), place, visit.desk.store)
        visit.change(
            f"surface {name} {'added' if place is None else 'changed'}", lambda kept: carry(edit(kept))
        )
    except BadInputError as trouble:
        wrong = form.troubled((problem.path, problem.what) for problem in trouble.problems)
        return _show_again(visit, place, wrong, status=422)
    except StaleError as trouble:
        return _show_again(visit, place, _told(form, trouble), status=status_of(trouble), stale=True)
    except NotThereError:
        gone = "This surface was taken out meanwhile, perhaps on another phone: save it to add it again."
        return _show_again(visit, None, form.troubled([((), gone)]), status=404)
    except PlankwrightError as trouble:
        return _show_again(visit, place, _told(form, trouble), status=status_of(trouble))
    return visit.go_to_job("surfaces")


def _told(form: FilledForm, trouble: PlankwrightError) -> FilledForm:
    return form.troubled(((), sentence) for sentence in sentences_of(trouble))


def _show_again(
    visit: Visit, place: int | None, form: FilledForm, *, status: int = 200, stale: bool = False
) -> Response:
    key = visit.text("key") or secrets.token_urlsafe(12)
    return _show(visit, place, form, status=status, seen=visit.text("seen"), key=key, stale=stale)


def _show(
    visit: Visit,
    place: int | None,
    form: FilledForm,
    *,
    status: int = 200,
    seen: str = "",
    key: str = "",
    stale: bool = False,
) -> Response:
    defaults = {"outline": OutlineWay.PLAIN.value, "backing": Backing.STUDS.value}
    form = FilledForm({**defaults, **form.given}, form.wrong, form.problems, form.focus)
    sight = preview_surface(visit.job, visit.desk.bench.files, _filled_in(visit, form, place), place)
    return visit.show(
        "surface.html",
        status=status,
        form=form,
        place=NEW if place is None else str(place),
        sight=sight,
        tapping=tapping(form, visit.text("next")),
        seen=seen,
        key="" if place is not None else key,
        another_job=ANOTHER_JOB,
        again=visit.request.method == "POST",
        unit=str(visit.job.definition["units"]),
        metric=visit.reading.tape.system is System.METRIC,
        as_it_is=_as_it_is(visit, place) if stale else None,
    )


def _as_it_is(visit: Visit, place: int | None) -> tuple[str, tuple[str, ...]]:
    """Give a surface as somebody else left it: its fingerprint, and what there is to say of it."""
    job = visit.desk.store.job(visit.job_id)
    at = place or 0
    surface, tape = surfaces_seen(job, visit.desk.bench.files)[at]
    told = (*tell_surface(surface, tape), *tell_places(surface, tape))
    return fingerprint(surface_at(job, at)), told


def _filled_form(visit: Visit) -> FilledForm:
    return FilledForm({name: text for name, text in visit.fields() if name not in _BESIDES})


def _filled_in(visit: Visit, form: FilledForm, place: int | None) -> FilledIn:
    definition = visit.job.definition
    return filled_in(
        nested(form.given.items()),
        decimal_comma=definition.get("decimal_comma") is True,
        taken=[str(other.get("id")) for at, other in enumerate(surfaces_of(definition)) if at != place],
    )


def _place(visit: Visit) -> int | None:
    """Give which surface the address names; nothing for a new one."""
    word = str(visit.request.path_params["place"])
    return None if word == NEW else place_of(word)


def place_of(word: str) -> int:
    """Read the place of a surface in an address.

    Raises
    ------
    NotThereError
        If it is none.
    """
    if not (word.isascii() and word.isdigit() and len(word) <= _MOST_DIGITS):
        raise NotThereError("There is no such surface in this job, or no longer.")
    return int(word)


ROUTES: list[Route] = [
    page("/jobs/{job_id}/surfaces/{place}", show_form),
    page("/jobs/{job_id}/surfaces/{place}", fill_in, "POST"),
    page("/jobs/{job_id}/surfaces/{place}/preview", preview, "POST"),
]

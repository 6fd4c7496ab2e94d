"""The rules of a job, the tools at hand, and what else is known of it; its name, units and tape apart."""

from collections.abc import Callable

from starlette.responses import Response
from starlette.routing import Route

from plankwright.errors import BadInputError, PlankwrightError
from plankwright.model import Paint, Per, Treatment
from plankwright.model.means import WOOD_UNITS
from plankwright.trade.fasteners.nails import USUAL_KIND, nail_kinds
from plankwright.web.filled_form import FilledForm
from plankwright.web.forms import flat, nested
from plankwright.web.mishaps import sentences_of, status_of
from plankwright.web.visit import Visit, page
from plankwright.workshop.jobs.change_rules import lots_unsaid, put_rules, rule_groups, rule_tables
from plankwright.workshop.jobs.change_units import HALF_MILLIMETRES, as_form, change_units, naming
from plankwright.workshop.jobs.kept import KeptJob, NotThereError
from plankwright.workshop.jobs.tally_boards import fingerprint

_BESIDES = frozenset({"seen", "key", "add", "remove", "draw", "lot_of_tally"})
"""Fields that say what to do with the form."""

_ROWS = frozenset({"saw.name", "lot.name", "task.name", "price.name"})
"""The rows that can be added: the list, and the first field of the row."""

_CHOICES = {
    "cuts": (("", "choose"), ("crosscut", "Across"), ("rip", "Along")),
    "paint": (("", "not said"), *((paint.value, paint.value) for paint in Paint)),
    "treatment": (("", "not said"), *((one.value, one.value) for one in Treatment)),
    "task_per": (("", "choose"), *((per.value, per.value) for per in Per)),
    "price_per": (("", "choose"), *((per.value, per.value) for per in WOOD_UNITS)),
    "nails": (("", f"as usual: {USUAL_KIND}"), *((kind, kind) for kind in nail_kinds())),
}

_UNITS = (
    ("inches", "inches"),
    ("feet", "feet"),
    ("mm", "millimetres"),
    ("cm", "centimetres"),
    ("m", "metres"),
)
_FRACTIONS = (
    ("", "as usual: 1/16"),
    *((f"1/{part}" if part > 1 else "1",) * 2 for part in (1, 2, 4, 8, 16, 32, 64)),
)
_STEPS = (("", "as usual: 1 mm"), (HALF_MILLIMETRES, "half a millimetre"))


def show_rules(visit: Visit) -> Response:
    """Show the rules."""
    tables = rule_tables(visit.job.definition)
    return _show_rules(visit, FilledForm(flat(tables)), fingerprint(tables))


def change(visit: Visit) -> Response:
    """Keep the rules, or show the form again: with a row more, with a row less, or with what will not do."""
    form, seen = _filled_form(visit), visit.text("seen")
    if visit.form.get("draw") is not None:
        return _show_rules(visit, form, seen)
    if added := visit.text("add"):
        return _show_rules(visit, form.with_row(*added.split(".", 1)) if added in _ROWS else form, seen)
    if lot := visit.text("lot_of_tally"):
        longer = form.with_row("lot", "name")
        return _show_rules(visit, longer.filled(longer.focus, lot), seen)
    if removed := visit.text("remove"):
        return _show_rules(visit, form.without_row(removed), seen)
    given, files = nested(form.given.items()), visit.desk.bench.files
    return _keep(
        visit,
        "rules changed",
        lambda kept: put_rules(kept, files, given, seen),
        lambda wrong, status: _show_rules(visit, wrong, seen, status=status),
    )


def show_units(visit: Visit) -> Response:
    """Show what the job is called, its units and its tape."""
    definition = visit.job.definition
    return _show_units(
        visit, FilledForm(flat(as_form(definition, visit.reading.tape))), fingerprint(naming(definition))
    )


def rename(visit: Visit) -> Response:
    """Call the job otherwise, or write it in other units."""
    form, seen = _filled_form(visit), visit.text("seen")
    given, files = nested(form.given.items()), visit.desk.bench.files
    return _keep(
        visit,
        "name, units or tape changed",
        lambda kept: change_units(kept, files, given, seen),
        lambda wrong, status: _show_units(visit, wrong, seen, status=status),
    )


def _keep(
    visit: Visit,
    what: str,
    edit: Callable[[KeptJob], KeptJob],
    again: Callable[[FilledForm, int], Response],
) -> Response:
    """Take a step and go back to the rules, or show the form again with what will not do."""
    form = _filled_form(visit)
    try:
        visit.change(what, edit)
    except NotThereError:
        raise
    except BadInputError as trouble:
        wrong = form.troubled((problem.path, problem.what) for problem in trouble.problems)
        return again(wrong, status_of(trouble))
    except PlankwrightError as trouble:
        return again(form.troubled(((), told) for told in sentences_of(trouble)), status_of(trouble))
    return visit.go_to_job("rules")


def _show_rules(visit: Visit, form: FilledForm, seen: str, *, status: int = 200) -> Response:
    reading = visit.reading
    said = [form.value(f"{row}.name") for row in form.rows("lot")]
    return visit.show(
        "rules.html",
        status=status,
        form=form,
        seen=seen,
        again=visit.request.method == "POST",
        groups=rule_groups(reading.tape, visit.desk.bench.files.rule_meanings()),
        choices=_CHOICES,
        unsaid=lots_unsaid(visit.job.boards, said),
        lots=lots_unsaid(visit.job.boards, ()),
        unit=str(visit.job.definition["units"]),
        metric=reading.unit is not None and reading.unit.is_metric,
    )


def _show_units(visit: Visit, form: FilledForm, seen: str, *, status: int = 200) -> Response:
    return visit.show(
        "rules_units.html",
        status=status,
        form=form,
        seen=seen,
        units=_UNITS,
        fractions=_FRACTIONS,
        steps=_STEPS,
    )


def _filled_form(visit: Visit) -> FilledForm:
    return FilledForm({name: text for name, text in visit.fields() if name not in _BESIDES})


ROUTES: list[Route] = [
    page("/jobs/{job_id}/rules", show_rules),
    page("/jobs/{job_id}/rules", change, "POST"),
    page("/jobs/{job_id}/rules/units", show_units),
    page("/jobs/{job_id}/rules/units", rename, "POST"),
]

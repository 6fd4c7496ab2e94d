"""The list of jobs: begin one, bring one along, copy, export, put away and bring back."""

from collections.abc import Sequence

from starlette.responses import Response
from starlette.routing import Route

from plankwright.errors import PlankwrightError
from plankwright.web.mishaps import sentences_of
from plankwright.web.visit import Visit, job_url, page
from plankwright.workshop.jobs.bring_job import bring_job, example_job
from plankwright.workshop.jobs.start_job import copy_of, start_job
from plankwright.workshop.jobs.take_along import folder_of, zipped


def show_jobs(visit: Visit) -> Response:
    """Show every job, and the ways to begin one."""
    return _list(visit)


def start(visit: Visit) -> Response:
    """Begin a job from nothing."""
    try:
        job = visit.desk.store.add(
            start_job(visit.desk.bench.files, visit.text("name"), visit.text("units", "inches"))
        )
    except PlankwrightError as trouble:
        return _again(visit, trouble)
    return visit.go(job_url(job.id))


def start_from_example(visit: Visit) -> Response:
    """Begin a job that is a copy of the example."""
    return visit.go(job_url(visit.desk.store.add(example_job(visit.desk.bench.files)).id))


def bring(visit: Visit) -> Response:
    """Begin a job from the files of a job folder, or from a tally alone."""
    sent = visit.files.get("files", [])
    try:
        brought = bring_job(visit.desk.bench.files, sent, units=visit.text("units", "inches"))
    except PlankwrightError as trouble:
        return _again(visit, trouble)
    job = brought.keep(visit.desk.store)
    return visit.go(job_url(job.id))


def copy(visit: Visit) -> Response:
    """Begin a job with the measurements of another."""
    return visit.go(job_url(visit.desk.store.add(copy_of(visit.job)).id))


def export(visit: Visit) -> Response:
    """Hand out a job as a folder, packed into one file."""
    folder = folder_of(visit.job, visit.desk.bench.files, visit.desk.store)
    return visit.download(zipped(folder), f"{visit.job.name}.zip", "application/zip")


def put_away(visit: Visit) -> Response:
    """Put a job away, and show the list with the way to bring it back on top."""
    visit.desk.store.put_away(visit.job_id)
    visit.desk.searches.give_up(visit.job_id)
    return visit.go(f"/?away={visit.job_id}")


def bring_back(visit: Visit) -> Response:
    """Bring back a job that was put away."""
    visit.desk.store.bring_back(visit.job_id)
    return visit.go("/")


def forget(visit: Visit) -> Response:
    """Delete a job that was put away, for good."""
    visit.desk.store.forget(visit.job_id)
    return visit.go("/")


def _again(visit: Visit, trouble: PlankwrightError) -> Response:
    """Show the list again, with what was filled in and why it will not do."""
    return _list(visit, status=422, problems=sentences_of(trouble))


def _list(visit: Visit, *, status: int = 200, problems: Sequence[str] = ()) -> Response:
    cards = visit.desk.store.cards()
    put_away = [card for card in cards if card.removed_at is not None]
    return visit.show(
        "jobs.html",
        status=status,
        jobs=[card for card in cards if card.removed_at is None],
        put_away=put_away,
        gone=next((card for card in put_away if card.id == visit.asked("away")), None),
        problems=problems,
        given=dict(visit.fields()),
    )


ROUTES: list[Route] = [
    page("/", show_jobs),
    page("/jobs", start, "POST"),
    page("/jobs/example", start_from_example, "POST"),
    page("/jobs/brought", bring, "POST"),
    page("/jobs/{job_id}/copy", copy, "POST"),
    page("/jobs/{job_id}/export", export),
    page("/jobs/{job_id}/put-away", put_away, "POST"),
    page("/jobs/{job_id}/bring-back", bring_back, "POST"),
    page("/jobs/{job_id}/forget", forget, "POST"),
]

"""One job at a glance: how far it has come, and what to do next."""

from starlette.responses import Response
from starlette.routing import Route

from plankwright.web.visit import Visit, page
from plankwright.workshop.jobs.stand_of_job import stand_of_job
from plankwright.workshop.jobs.tell_stand import looks, next_steps, road, tell_stand


def show_job(visit: Visit) -> Response:
    """Show how far the job has come."""
    stand = stand_of_job(visit.job, visit.desk.bench.files, visit.desk.store)
    wrong, doubtful = looks(stand)
    return visit.show(
        "job.html",
        told=tell_stand(stand),
        steps=next_steps(stand),
        road=road(stand),
        wrong=wrong,
        doubtful=doubtful,
        searching=stand.searching,
    )


ROUTES: list[Route] = [page("/jobs/{job_id}", show_job)]

"""One job at a glance: how far it has come, and what to do next."""

from starlette.responses import Response
from starlette.routing import Route

from plankwright.web.visit import Visit, page
from plankwright.workshop.jobs.stand_of_job import stand_of_job


def show_job(visit: Visit) -> Response:
    """Show how far the job has come."""
    stand = stand_of_job(visit.job, visit.reading, visit.desk.store)
    return visit.show("job.html", stand=stand)


ROUTES: list[Route] = [page("/jobs/{job_id}", show_job)]

"""Take the last step with a job back, and take it again."""

from starlette.responses import Response
from starlette.routing import Route

from plankwright.web.visit import Visit, page


def undo(visit: Visit) -> Response:
    """Take the last step back, and go on where one was."""
    visit.desk.store.undo(visit.job_id)
    return visit.go_to_job(_screen(visit))


def redo(visit: Visit) -> Response:
    """Take the step again that was taken back last."""
    visit.desk.store.redo(visit.job_id)
    return visit.go_to_job(_screen(visit))


def show_steps(visit: Visit) -> Response:
    """Show the last steps."""
    return visit.show("steps.html", steps=visit.desk.store.changes(visit.job_id, 100))


def _screen(visit: Visit) -> str:
    """Give the screen that a step was taken back on, if it is one."""
    screen = visit.text("screen")
    return screen if screen in _SCREENS else ""


_SCREENS = frozenset({"tally", "surfaces", "layout", "cutting", "hanging", "paper", "rules", "left", "steps"})

ROUTES: list[Route] = [
    page("/jobs/{job_id}/undo", undo, "POST"),
    page("/jobs/{job_id}/redo", redo, "POST"),
    page("/jobs/{job_id}/steps", show_steps),
]

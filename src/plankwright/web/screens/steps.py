"""Take the last step with a job back, and take it again."""

from starlette.responses import Response
from starlette.routing import Route

from plankwright.web.screens.layout_page import number_of
from plankwright.web.visit import Visit, job_url, page


def undo(visit: Visit) -> Response:
    """Take back the step that was shown, if it is still the last one, and go on where one was."""
    step = visit.desk.store.undo(visit.job_id, number_of(visit.text("step")))
    return _go_on(visit, "none" if step is None else f"back-{step.id}")


def redo(visit: Visit) -> Response:
    """Take the step again that was shown, if it is still the one that was taken back last."""
    step = visit.desk.store.redo(visit.job_id, number_of(visit.text("step")))
    return _go_on(visit, "not-again" if step is None else f"again-{step.id}")


def show_steps(visit: Visit) -> Response:
    """Show the last steps."""
    return visit.show("steps.html", steps=visit.desk.store.changes(visit.job_id, 100))


def _go_on(visit: Visit, moved: str) -> Response:
    """Send the browser on to the screen that a step was taken back on, to say there what was done."""
    screen = visit.text("screen")
    return visit.go(f"{job_url(visit.job_id, screen if screen in _SCREENS else '')}?moved={moved}")


_SCREENS = frozenset({"tally", "surfaces", "layout", "cutting", "hanging", "paper", "rules", "left", "steps"})

ROUTES: list[Route] = [
    page("/jobs/{job_id}/undo", undo, "POST"),
    page("/jobs/{job_id}/redo", redo, "POST"),
    page("/jobs/{job_id}/steps", show_steps),
]

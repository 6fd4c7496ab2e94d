"""What the trade knows of a job: hazards, moisture, nails, edges, what to buy."""

from starlette.routing import Route

ROUTES: list[Route] = []

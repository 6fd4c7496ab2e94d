"""The rules of a job, the tools at hand, and what else is known of it."""

from starlette.routing import Route

ROUTES: list[Route] = []

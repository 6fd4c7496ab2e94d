"""The papers, and the files for other programs."""

from starlette.routing import Route

ROUTES: list[Route] = []

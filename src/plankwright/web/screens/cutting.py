"""Cutting, a board at a time."""

from starlette.routing import Route

ROUTES: list[Route] = []

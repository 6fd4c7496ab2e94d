"""Hanging, a course at a time, and what to say when something goes wrong."""

from starlette.routing import Route

ROUTES: list[Route] = []

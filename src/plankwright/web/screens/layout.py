"""The layout: the answer in words, the drawing, and what one would have otherwise."""

from starlette.routing import Route

ROUTES: list[Route] = []

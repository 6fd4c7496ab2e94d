"""A search under way: how far it is, the best so far, and how to stop it."""

from starlette.routing import Route

ROUTES: list[Route] = []

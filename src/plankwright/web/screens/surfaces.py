"""The surfaces: what is to be covered, in numbers, with a drawing beside them."""

from starlette.routing import Route

ROUTES: list[Route] = []

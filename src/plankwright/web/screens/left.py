"""What is left over, as a tally for the next surface."""

from starlette.routing import Route

ROUTES: list[Route] = []

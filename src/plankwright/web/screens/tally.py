"""The tally: boards measured one after the other, with thumbs and gloves."""

from starlette.routing import Route

ROUTES: list[Route] = []

"""The app put together: its screens, what stands before them, and what is said when something goes wrong."""

import contextlib
from collections.abc import AsyncIterator, Iterable
from importlib.resources import files

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.middleware import Middleware
from starlette.middleware.gzip import GZipMiddleware
from starlette.requests import ClientDisconnect
from starlette.routing import Mount
from starlette.staticfiles import StaticFiles

from plankwright.errors import PlankwrightError
from plankwright.web import open_already
from plankwright.web.desk import Desk
from plankwright.web.guard import Guard
from plankwright.web.mishaps import tell_fault, tell_http, tell_refusal
from plankwright.web.screens import ROUTES

_STATIC = files("plankwright.web") / "static"
HERE = ("localhost", "127.0.0.1", "::1", "[::1]")
"""What this machine calls itself."""


def make_app(desk: Desk, hosts: Iterable[str] = ()) -> Starlette:
    """Put the app together.

    Parameters
    ----------
    desk
        What the screens work with.
    hosts
        Under which names and addresses it may be asked for, besides those of this machine.
    """

    @contextlib.asynccontextmanager
    async def while_open(_app: Starlette) -> AsyncIterator[None]:
        desk.store.cut_off_searches()
        yield
        desk.searches.give_up_all()
        desk.store.cut_off_searches()

    app = Starlette(
        routes=[
            *ROUTES,
            *open_already.ROUTES,
            Mount("/static", StaticFiles(directory=str(_STATIC)), name="static"),
        ],
        middleware=[
            Middleware(Guard, hosts=(*HERE, *hosts), door=desk.door),
            Middleware(GZipMiddleware, minimum_size=1_000),
        ],
        exception_handlers={
            HTTPException: tell_http,
            ClientDisconnect: tell_http,  # The connection was lost in the middle of a form: nobody's fault.
            PlankwrightError: tell_refusal,
            Exception: tell_fault,
        },
        lifespan=while_open,
    )
    app.state.desk = desk
    return app

"""Pages out of templates; whole, or one block of them for a page that is already there."""

from collections.abc import Mapping
from importlib.resources import files
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup
from starlette.requests import Request
from starlette.responses import HTMLResponse, Response

from plankwright.workshop.caution import BEFORE
from plankwright.workshop.jobs.tally_boards import fingerprint

_TEMPLATES = files("plankwright.web") / "templates"


def _environment() -> Environment:
    environment = Environment(
        loader=FileSystemLoader(str(_TEMPLATES)),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.filters["drawing"] = Markup
    environment.filters["fingerprint"] = fingerprint
    environment.globals["caution_before"] = BEFORE
    return environment


_ENVIRONMENT = _environment()


def render(
    request: Request, template: str, values: Mapping[str, Any], *, status: int = 200, block: str = ""
) -> Response:
    """Show a page, or one block of its template."""
    page = _ENVIRONMENT.get_template(template)
    context = page.new_context({"request": request, "path": request.url.path, **values})
    parts = page.blocks[block](context) if block else page.root_render_func(context)
    return HTMLResponse("".join(parts), status_code=status)

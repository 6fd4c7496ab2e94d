"""docs/app.md names every screen of the app, and none that is not there."""

import re
from pathlib import Path

from starlette.routing import Route

from plankwright.cli.commands import SUMMARIES
from plankwright.web.screens import ROUTES
from plankwright.web.serving import PORT

PAGE = (Path(__file__).parents[2] / "docs" / "app.md").read_text(encoding="utf-8")
SCREENS = PAGE.split("\n## The screens\n")[1].split("\n## ")[0]
NAMED = re.findall(r"^- \*\*[^*]+\*\* \(`(/[^`]*)`\): ", SCREENS, re.MULTILINE)


def is_screen(route: Route) -> bool:
    """Tell whether a route is a page that one goes to, and no part, file or step of one."""
    return "GET" in (route.methods or ()) and bool(
        re.fullmatch(r"/(phone|jobs/\{job_id\}(/\w+)?)?", route.path)
    )


def test_each_screen_is_told_of_once() -> None:
    """Every page that a job has, and no other."""
    no_pages = {"/jobs/{job_id}/export"}
    there = {route.path for route in ROUTES if is_screen(route)} - no_pages
    named = [address.replace("ID", "{job_id}") for address in NAMED]
    assert len(named) == len(set(named))
    assert set(named) == there


def test_commands_and_settings_on_the_page_are_there() -> None:
    """What it tells to type can be typed."""
    assert set(re.findall(r"^plankwright (\w+)", PAGE, re.MULTILINE)) <= set(SUMMARIES)
    assert set(re.findall(r"`plankwright (\w+)", PAGE)) <= set(SUMMARIES)
    assert f"from {PORT} on" in PAGE

"""Find every screen of the app by following its links, for pictures of them and for tests of each."""

import re
from collections.abc import Iterator
from html.parser import HTMLParser
from http.client import HTTPConnection
from urllib.parse import urljoin, urlsplit

from starlette.routing import Match

from plankwright.web.screens import ROUTES

_NEW = "/new"
"""Ends the address of a screen that is one of its own, though a route takes it for one like others."""


def walk_screens(url: str, *starts: str) -> dict[str, str]:
    """Follow the links of the app, and give an address for each of its screens.

    Parameters
    ----------
    url
        Where the app is asked.
    starts
        Paths from which every screen can be reached.

    Returns
    -------
    dict
        By the path of its route, such as "/jobs/{job_id}/tally", the path of one page of that screen.
    """
    screens: dict[str, str] = {}
    ahead, tried = list(starts), set[str]()
    for path in _each(ahead):
        route = route_of(path)
        if route is not None and path.endswith(_NEW):
            route = re.sub(r"\{\w+\}$", _NEW[1:], route)
        if route is None or route in tried:
            continue
        tried.add(route)
        page = _page(url, path)
        if page:
            screens[route] = path
            ahead += links_of(page, path)
    return screens


def route_of(path: str) -> str | None:
    """Give the path of the route that answers a path, if one does."""
    scope = {"type": "http", "method": "GET", "path": urlsplit(path).path, "root_path": "", "headers": []}
    return next((route.path for route in ROUTES if route.matches(scope)[0] is Match.FULL), None)


def links_of(page: str, path: str) -> list[str]:
    """Give the paths within the app that a page leads to."""
    links = (urlsplit(urljoin(path, link)) for link in _Links(page).found)
    return [link._replace(fragment="").geturl() for link in links if not link.netloc]


def _each(ahead: list[str]) -> Iterator[str]:
    """Give one path after the other, those that are added meanwhile too."""
    yield from ahead


def _page(url: str, path: str) -> str:
    """Ask for a path; nothing is given when it is no page."""
    asking = HTTPConnection(urlsplit(url).netloc)
    try:
        asking.request("GET", path)
        answer = asking.getresponse()
        content = answer.read()
    finally:
        asking.close()
    is_page = (answer.getheader("content-type") or "").startswith("text/html")
    return content.decode() if is_page else ""


class _Links(HTMLParser):
    def __init__(self, page: str) -> None:
        super().__init__()
        self.found: list[str] = []
        self.feed(page)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Keep where a link leads."""
        href = dict(attrs).get("href")
        if tag == "a" and href:
            self.found.append(href)

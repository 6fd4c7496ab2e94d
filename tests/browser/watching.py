"""What a page does besides what one sees: errors in its console, and requests to anywhere but the app."""

import re
from dataclasses import dataclass, field

from playwright.sync_api import BrowserContext, ConsoleMessage, Request, Response, WebError

LOST = r"ERR_INTERNET_DISCONNECTED|htmx:(?:afterRequest|sendError)"
"""What is told in the console when a request could not be sent."""

_OUR_FAULT = 500
_OWN = ("data:", "blob:", "about:")


@dataclass  # Without slots: Playwright keeps its wrappers on whom it calls.
class Watch:
    """Keeps what the pages of a context do that they must not.

    Parameters
    ----------
    url
        Of the app, which alone may be asked.
    """

    url: str
    _amiss: list[str] = field(default_factory=list)
    _expected: list[re.Pattern[str]] = field(default_factory=list)

    def over(self, context: BrowserContext) -> None:
        """Watch all pages of a context."""
        context.on("request", self._asked)
        context.on("response", self._answered)
        context.on("console", self._told)
        context.on("weberror", self._failed)

    def expect(self, *patterns: str) -> None:
        """Let errors pass that a test brings about: a refusal, or a lost connection."""
        self._expected += map(re.compile, patterns)

    @property
    def amiss(self) -> list[str]:
        """Whatever was amiss and not expected."""
        return [told for told in self._amiss if not any(one.search(told) for one in self._expected)]

    def _asked(self, request: Request) -> None:
        if not request.url.startswith((f"{self.url}/", *_OWN)):
            self._amiss.append(f"asked for {request.url}")

    def _answered(self, response: Response) -> None:
        if response.status >= _OUR_FAULT:
            self._amiss.append(f"answered {response.status}: {response.request.method} {response.url}")

    def _told(self, message: ConsoleMessage) -> None:
        if message.type == "error":
            self._amiss.append(f"console: {message.text} at {message.location['url']}")

    def _failed(self, error: WebError) -> None:
        self._amiss.append(f"page: {error.error}")

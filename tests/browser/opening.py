"""How pages are opened: on a phone, on a laptop, and under which name the app is asked from afar."""

from collections.abc import Callable
from typing import Any, TypeAlias

from playwright.sync_api import Page

PHONE: dict[str, Any] = {"viewport": {"width": 390, "height": 844}, "has_touch": True, "is_mobile": True}
DESKTOP: dict[str, Any] = {"viewport": {"width": 1280, "height": 900}}

FAR = "home.test"
"""A name that leads to this machine, and that no browser takes for a safe one as it does localhost."""

OpenPage: TypeAlias = Callable[..., Page]
"""Opens a page of its own, with options of a browser context; what it does amiss fails the test."""

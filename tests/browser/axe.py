"""Whether everybody can use a page, as far as axe can tell."""

from typing import Any

from axe_playwright_python.sync_playwright import Axe  # type: ignore[import-untyped]
from playwright.sync_api import Page

GRAVE = frozenset({"serious", "critical"})


def grave_faults(page: Page, *rules: str) -> list[str]:
    """Give each serious or critical fault of a page, with the piece of the page that has it.

    Parameters
    ----------
    page
        The page as it is shown.
    rules
        What is looked for; everything when left out.
    """
    options = {"resultTypes": ["violations"]} | ({"runOnly": list(rules)} if rules else {})
    found: dict[str, Any] = Axe().run(page, options=options).response
    return [
        f"{fault['id']} ({fault['impact']}): {' '.join(map(str, node['target']))}: {node['failureSummary']}"
        for fault in found["violations"]
        if fault["impact"] in GRAVE
        for node in fault["nodes"]
    ]

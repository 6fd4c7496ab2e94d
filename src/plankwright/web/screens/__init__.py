"""The screens, a module each: what they show and what can be done there."""

from plankwright.web.screens import (
    cutting,
    hanging,
    job,
    jobs,
    layout,
    left,
    paper,
    phone,
    rules,
    search,
    steps,
    surfaces,
    tally,
    trade,
)

ROUTES = [
    *jobs.ROUTES,
    *job.ROUTES,
    *steps.ROUTES,
    *phone.ROUTES,
    *tally.ROUTES,
    *surfaces.ROUTES,
    *rules.ROUTES,
    *search.ROUTES,
    *layout.ROUTES,
    *cutting.ROUTES,
    *hanging.ROUTES,
    *left.ROUTES,
    *paper.ROUTES,
    *trade.ROUTES,
]
"""Every address of the app."""

"""Why a layout is not worked from, as it is said to somebody who can lay it out anew at once."""

import re
from collections.abc import Iterable

from plankwright.workshop.check_layout import FaultyLayoutError
from plankwright.workshop.jobs.leaf_words import on_screen

_CODE = re.compile(r" \[\d+\]$")
"""Ends a finding, for whoever looks it up."""

_STATED = re.compile(r", score: ")
"""Marks that a sum is stated otherwise than it comes to, which follows from any other fault."""


def tell_faults(error: FaultyLayoutError) -> tuple[str, ...]:
    """Say why nothing is made from a layout, what to do, and what fits no longer."""
    why = (
        "What is laid out does not heed what was marked since, so nothing is made from it: lay out what is "
        "left anew."
        if error.outdated
        else "What is laid out fits no longer what is measured, so nothing is made from it: lay it out anew, "
        "or take the last change back."
    )
    return (why, *plain_faults(error.faults))


def plain_faults(faults: Iterable[str]) -> tuple[str, ...]:
    """Give faults without their codes, and without wrong sums where there is more than those."""
    told = tuple(on_screen(_CODE.sub("", fault)) for fault in faults)
    return tuple(fault for fault in told if not _STATED.search(fault)) or told

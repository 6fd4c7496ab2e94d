"""The checker passes what is right, and of one thing broken it finds that one thing."""

from dataclasses import replace

import pytest

from plankwright.check import FindingCode, check_layout, faults, recount
from plankwright.check.finding import severity_of
from plankwright.model import Edge
from spoil.spoils import SPOILS, Spoil
from spoil.walls import (
    Hanging,
    corner,
    entry,
    gable,
    interlocked,
    one_wide_board,
    pinwheel,
    plain,
    uneven_floor,
    upright,
)
from spoil.work_done import WRONG

SCORE_CODES = range(900, 1000)


def _scored_again(hanging: Hanging) -> Hanging:
    """Let the layout state the score that it has now, so that only the damage itself is found."""
    names = {surface.id for surface in hanging.job.surfaces}
    surfaces = tuple(
        replace(each, score=recount(hanging.job, each)) if each.surface_id in names else each
        for each in hanging.layout.surfaces
    )
    return hanging._replace(layout=replace(hanging.layout, surfaces=surfaces))


@pytest.mark.parametrize(
    "hanging",
    [
        pytest.param(plain(), id="plain"),
        pytest.param(entry(), id="entry"),
        pytest.param(gable(), id="gable"),
        pytest.param(upright(), id="upright"),
        pytest.param(upright(Edge.RIGHT), id="upright from the right"),
        pytest.param(uneven_floor(), id="uneven floor"),
        pytest.param(corner(), id="corner"),
        pytest.param(interlocked(), id="interlocked"),
        pytest.param(one_wide_board(), id="one wide board"),
        pytest.param(pinwheel(), id="pinwheel without saws"),
    ],
)
def test_a_right_layout_passes(hanging: Hanging) -> None:
    """Nothing is found in a layout that is right, not so much as a note."""
    assert check_layout(*hanging) == ()


@pytest.mark.parametrize("spoil", SPOILS, ids=lambda spoil: f"{spoil.code.name.lower()}: {spoil.what}")
def test_one_thing_broken_is_found_and_nothing_else(spoil: Spoil) -> None:
    """One thing broken gives findings of exactly one code, told on the surface where it is."""
    spoiled = spoil.damage(spoil.make())
    if spoil.code not in SCORE_CODES and spoil.code is not FindingCode.BEYOND_MEASURE:
        spoiled = _scored_again(spoiled)
    findings = check_layout(*spoiled)
    assert {finding.code for finding in findings} == {spoil.code}
    assert {finding.severity for finding in findings} == {severity_of(spoil.code)}
    assert bool(faults(findings)) is (severity_of(spoil.code) == "error")


def test_every_code_has_its_spoil() -> None:
    """No code is left that no damage shows."""
    assert {spoil.code for spoil in SPOILS} | {code for code, *_ in WRONG} == set(FindingCode)

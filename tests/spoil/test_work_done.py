"""What is done is a fact: it is not judged, and what does not heed it is found."""

from dataclasses import replace

import pytest

from builders import nm
from plankwright.check import FindingCode, check_layout, faults
from plankwright.model import Standing
from spoil.spoils import BOARDS, COURSES, COVER, JOINTS, NAILS, SAWS, Spoil
from spoil.walls import plain, scored
from spoil.work_done import RIGHT, WRONG, Going, all_hung, hung

ALWAYS_JUDGED = {
    *(FindingCode.SURFACE_UNKNOWN, FindingCode.SURFACE_MISSING, FindingCode.SURFACE_TWICE),
    *(FindingCode.BEYOND_MEASURE, FindingCode.OTHER_JOB, FindingCode.LEFT_BARE),
    *(FindingCode.BARE_BUT_COVERED, FindingCode.BOARD_UNKNOWN, FindingCode.SPARES_SHORT),
    *(FindingCode.OUT_OF_ORDER, FindingCode.LABEL_TWICE),
    FindingCode.GAP,  # Where a piece would fit: tested apart.
}
"""What the document says, and what can still be helped."""

FACTS = [
    spoil for spoil in (*COVER, *BOARDS, *COURSES, *JOINTS, *SAWS, *NAILS) if spoil.code not in ALWAYS_JUDGED
]


@pytest.mark.parametrize("spoil", FACTS, ids=lambda spoil: f"{spoil.code.name.lower()}: {spoil.what}")
def test_what_hangs_is_not_judged(spoil: Spoil) -> None:
    """Of a layout that hangs already, whatever is wrong with it cannot be helped."""
    spoiled = spoil.damage(spoil.make())
    before = {finding.code for finding in check_layout(*spoiled)}
    assert spoil.code in before
    after = {finding.code for finding in check_layout(*spoiled, all_hung(spoiled))}
    assert spoil.code not in after
    assert after <= before


@pytest.mark.parametrize("going", RIGHT.values(), ids=RIGHT)
def test_a_layout_that_heeds_what_is_done_passes(going: Going) -> None:
    """Nothing is found in it."""
    assert check_layout(*going) == ()


@pytest.mark.parametrize(
    ("code", "going"), [(code, going) for code, _, going in WRONG], ids=[what for _, what, _ in WRONG]
)
def test_what_is_not_heeded_is_found(code: FindingCode, going: Going) -> None:
    """That alone, and it is an error."""
    findings = check_layout(*going)
    assert code in {finding.code for finding in faults(findings)}
    assert {finding.code for finding in faults(findings)} == {code}
    assert not faults(check_layout(going.job, going.layout, Standing()))


@pytest.mark.parametrize(
    ("hanging", "codes"),
    [("12", set()), ("1", {FindingCode.GAP}), ("2", {FindingCode.GAP}), ("", {FindingCode.GAP})],
)
def test_a_gap_counts_only_where_something_beside_it_can_still_be_moved(
    hanging: str, codes: set[FindingCode]
) -> None:
    """The lower course ends an eighth of an inch below the upper one."""
    work, laid = plain()
    (surface,) = laid.surfaces
    lower = surface.courses[0]
    pieces = tuple(
        replace(
            one,
            place=replace(one.place, top=one.place.top - nm(0.125)),
            across_to_nm=one.across_to_nm - nm(0.125),
        )
        for one in lower.pieces
    )
    low = replace(lower, to_nm=lower.to_nm - nm(0.125), pieces=pieces)
    gapped = scored(work, replace(surface, courses=(low, surface.courses[1])))
    standing = hung(gapped.layout, lambda one: one.label[0] in hanging)
    assert {finding.code for finding in faults(check_layout(*gapped, standing))} == codes


def test_a_gap_that_takes_a_piece_counts_whatever_hangs_beside_it() -> None:
    """All hangs but the last piece, which is forgotten."""
    work, laid = plain()
    (surface,) = laid.surfaces
    upper = surface.courses[1]
    short = replace(surface, courses=(surface.courses[0], replace(upper, pieces=upper.pieces[:1])))
    forgotten = scored(work, short)
    findings = faults(check_layout(*forgotten, all_hung(forgotten)))
    assert {finding.code for finding in findings} == {FindingCode.GAP}

"""Findings as values."""

from plankwright.check import Finding, FindingCode, FindingSeverity, faults
from plankwright.check.finding import found, severity_of

PLACE = ("entry wall", "course 4, piece 4b")


def test_a_finding_weighs_what_its_code_weighs() -> None:
    """A gap is an error, an avoidable waste a warning, what is declared bare a note."""
    assert severity_of(FindingCode.GAP) is FindingSeverity.ERROR
    assert severity_of(FindingCode.BLANK_TOO_LARGE) is FindingSeverity.WARNING
    assert severity_of(FindingCode.LEFT_BARE) is FindingSeverity.NOTE
    assert found(FindingCode.LEFT_BARE, PLACE, "Bare.").severity is FindingSeverity.NOTE


def test_measures_are_whole_and_may_be_missing() -> None:
    """Measures from the geometry are rounded; where there is none, none is given."""
    finding = found(FindingCode.GAP, PLACE, "A gap.", measured=2.6, allowed=None)
    assert (finding.measured, finding.allowed) == (3, None)


def test_a_finding_reads_as_place_sentence_and_code() -> None:
    """On one line a finding tells where, what and its code; a place that is not there is left out."""
    assert str(found(FindingCode.GAP, PLACE, "A gap.")) == "entry wall, course 4, piece 4b: A gap. [111]"
    assert str(found(FindingCode.SPARES_SHORT, ("", "pile"), "Short.")) == "pile: Short. [209]"


def test_faults_are_errors_only() -> None:
    """Warnings and notes do not make a layout wrong."""
    findings: list[Finding] = [
        found(code, PLACE, "So it is.")
        for code in (FindingCode.LEFT_BARE, FindingCode.GAP, FindingCode.SLIVER, FindingCode.SHIM)
    ]
    assert [finding.code for finding in faults(findings)] == [FindingCode.GAP, FindingCode.SHIM]


def test_codes_are_numbered_by_subject() -> None:
    """Every code has its hundred: cover, boards, courses, saws, nails, score."""
    assert {code // 100 for code in FindingCode} == {1, 2, 3, 4, 5, 9}

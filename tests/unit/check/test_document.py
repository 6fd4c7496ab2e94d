"""Whether a layout is one of this job at all."""

from dataclasses import replace

from plankwright.check import FindingCode, check_layout, faults
from spoil.walls import plain


def test_each_trouble_is_told_where_it_is() -> None:
    """Another job's layout with a foreign surface and ours missing: three findings, each at its place."""
    work, good = plain()
    (surface,) = good.surfaces
    foreign = replace(good, job_name="barn", surfaces=(replace(surface, surface_id="loft"),))
    found = {finding.code: finding for finding in check_layout(work, foreign)}
    assert set(found) == {FindingCode.OTHER_JOB, FindingCode.SURFACE_UNKNOWN, FindingCode.SURFACE_MISSING}
    assert found[FindingCode.SURFACE_UNKNOWN].surface_id == "loft"
    assert found[FindingCode.SURFACE_MISSING].surface_id == "wall"
    assert "barn" in found[FindingCode.OTHER_JOB].message


def test_another_jobs_name_alone_is_no_error() -> None:
    """A job may be renamed after it was laid out."""
    work, good = plain()
    assert faults(check_layout(work, replace(good, job_name="barn"))) == ()


def test_of_a_surface_given_twice_the_first_is_judged() -> None:
    """What is wrong with the second of two is not told besides."""
    work, good = plain()
    (surface,) = good.surfaces
    twice = replace(good, surfaces=(surface, replace(surface, courses=())))
    assert {finding.code for finding in check_layout(work, twice)} == {FindingCode.SURFACE_TWICE}


def test_a_number_too_long_to_print_is_found() -> None:
    """A course number or a score of thousands of digits is beyond measure, and no reason to break down."""
    work, good = plain()
    (surface,) = good.surfaces
    huge = 10**5000
    for damaged in (
        replace(surface, score=replace(surface.score, bare_nm2=huge)),
        replace(surface, courses=(replace(surface.courses[0], number=huge),)),
    ):
        codes = {finding.code for finding in check_layout(work, replace(good, surfaces=(damaged,)))}
        assert codes == {FindingCode.BEYOND_MEASURE}

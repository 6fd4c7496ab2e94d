"""Why a layout is not worked from, in words for somebody at a screen."""

from plankwright.workshop.check_layout import FaultyLayoutError
from plankwright.workshop.jobs.tell_faults import plain_faults, tell_faults

MISSING = "wall, course 1, piece 1a: It is cut from board F10, which is not in the tally. [201]"
SCORE = "wall, score: The wood spent is stated as 2 sq ft; counted again it is 1 sq ft. [903]"


def test_it_says_what_to_do_and_names_no_command() -> None:
    """Laid out anew from here, or what is left once something was marked."""
    for outdated, to_do in ((False, "lay it out anew"), (True, "lay out what is left anew")):
        why, *faults = tell_faults(FaultyLayoutError([MISSING], outdated=outdated))
        assert to_do in why
        assert "plankwright" not in why
        assert faults == ["wall, course 1, piece 1a: It is cut from board F10, which is not in the tally."]


def test_sums_that_follow_from_a_fault_are_not_told_besides() -> None:
    """They would only bury it."""
    assert plain_faults([MISSING, SCORE]) == (MISSING.removesuffix(" [201]"),)


def test_a_wrong_sum_alone_is_told() -> None:
    """Somebody has written it."""
    assert plain_faults([SCORE]) == (SCORE.removesuffix(" [903]"),)

"""Linked walls as job.toml names them, and what is said when they cannot be linked."""

import pytest

from job_texts import HEAD, SURFACE, problems, read
from plankwright.measure import INCH

SIDE = SURFACE.replace('"wall"', '"side"')


def linking(linked: str, more: str = "") -> str:
    """Give a job of two walls with a line that links them, and something more on the second one."""
    return (
        HEAD
        + f"linked = {linked}\n"
        + SURFACE
        + SIDE.replace("[surface.framing]", f"{more}\n[surface.framing]")
    )


def test_linked_walls_are_read() -> None:
    """And how much they are raised."""
    text = read(linking('[["side", "wall"]]', 'raised = "1-1/2"'))
    assert text.linked == (("side", "wall"),)
    assert [surface.raised_nm for surface in text.surfaces] == [0, 3 * INCH // 2]
    assert not text.report.problems


def test_nothing_is_linked_unless_it_is_said() -> None:
    """As before."""
    assert read(HEAD + SURFACE).linked == ()


@pytest.mark.parametrize(
    ("linked", "more", "line", "sentence"),
    [
        (
            '[["wall", "sde"]]',
            "",
            3,
            "linked does not fit: sde is no surface of this job: write its id as it stands",
        ),
        (
            '[["wall"]]',
            "",
            3,
            "linked does not fit: a group needs two walls or more, from left to right",
        ),
        (
            '[["wall", "side"]]',
            'start = "top"',
            3,
            "linked does not fit: wall starts at the bottom and side at the top",
        ),
        ('["wall", "side"]', "", 3, "linked 1 must be a list in square brackets"),
        ('[["wall", "side"]]', 'raised = "-1"', 15, "raised “-1” is negative"),
    ],
)
def test_what_cannot_be_linked_is_told_on_its_line(linked: str, more: str, line: int, sentence: str) -> None:
    """In one sentence."""
    (first, *_) = problems(linking(linked, more))
    assert first[0] == line
    assert first[1].startswith(sentence)


def test_links_are_not_judged_while_a_surface_cannot_be_read() -> None:
    """It may well be the one that seems to be missing."""
    text = linking('[["wall", "side"]]').replace('width = "12 ft"', 'width = "12 fet"', 1)
    assert len(problems(text)) == 1

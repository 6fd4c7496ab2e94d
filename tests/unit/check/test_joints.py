"""What two pieces that meet end to end must have in common, and where they may meet."""

from dataclasses import replace
from typing import Any

import pytest

from builders import layout, nm, rectangle, studs, with_piece
from plankwright.check import Finding, FindingCode, check_layout
from plankwright.model import Direction, EdgeKind, EdgeProfile, Framing, JointPolicy
from spoil.walls import Hanging, entry, plain


def found(code: FindingCode, hanging: Hanging) -> list[Finding]:
    """Give the findings of one code."""
    return [finding for finding in check_layout(*hanging) if finding.code is code]


def with_rules(hanging: Hanging, **rules: Any) -> Hanging:  # noqa: ANN401 - any rule
    """Give the same under other rules."""
    changed = replace(hanging.job.rules, **rules)
    return Hanging(replace(hanging.job, rules=changed), hanging.layout)


def with_board(hanging: Hanging, name: str, **changes: Any) -> Hanging:  # noqa: ANN401 - any field
    """Give the same with one board changed."""
    boards = (replace(each, **changes) if each.id == name else each for each in hanging.job.boards)
    return Hanging(replace(hanging.job, boards=tuple(boards)), hanging.layout)


def with_framing(hanging: Hanging, framing: Framing) -> Hanging:
    """Give the same on other framing."""
    surface = replace(hanging.job.surfaces[0], framing=framing)
    return Hanging(replace(hanging.job, surfaces=(surface,)), hanging.layout)


@pytest.mark.parametrize(
    ("thickness", "shim", "count"),
    [
        (0.75, 0, 0),
        (0.8125, 0, 0),
        (0.6875, 0, 0),
        (0.828125, 0, 1),
        (0.625, 0, 1),
        (0.625, 0.125, 0),
        (0.625, 0.0625, 0),
        (0.75, 0.125, 1),
    ],
)
def test_faces_step_by_no_more_than_the_tolerance(thickness: float, shim: float, count: int) -> None:
    """Against 3/4 inch a board may be 1/16 thicker or thinner, and a shim behind it counts."""
    hanging = with_board(plain(), "B", thickness_nm=nm(thickness))
    shimmed = layout(with_piece(hanging.layout.surfaces[0], "1b", shim_nm=nm(shim)))
    assert len(found(FindingCode.JOINT_THICKNESS, Hanging(hanging.job, shimmed))) == count


def test_a_shim_may_be_as_thick_as_the_rules_say() -> None:
    """1/8 inch is allowed when the rules allow 1/8, a hundredth of a millimetre more is not."""
    hanging = with_rules(plain(), shim_up_to_nm=nm(0.125))
    for extra, count in ((0, 0), (10_000, 1)):
        shimmed = with_piece(hanging.layout.surfaces[0], "1b", shim_nm=nm(0.125) + extra)
        assert len(found(FindingCode.SHIM, Hanging(hanging.job, layout(shimmed)))) == count


def test_behind_a_fixture_boards_need_not_match() -> None:
    """The entry's bench hides a step of 1/4 inch, a thick shim and two kinds of milling."""
    hanging = with_board(entry(), "C", profile=EdgeProfile(kind=EdgeKind.SHIPLAP, reach_nm=nm(0.5)))
    shimmed = layout(with_piece(hanging.layout.surfaces[0], "1b", shim_nm=nm(0.5)))
    for code in (FindingCode.JOINT_PROFILE, FindingCode.JOINT_THICKNESS, FindingCode.SHIM):
        assert found(code, Hanging(hanging.job, shimmed)) == []


def test_tongues_of_other_length_are_another_milling() -> None:
    """Boards of one kind of milling butt in sight only when their tongues reach as far."""
    tongue = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))
    like = with_board(with_board(plain(), "A", profile=tongue), "B", profile=tongue)
    assert found(FindingCode.JOINT_PROFILE, like) == []
    unlike = with_board(like, "B", profile=replace(tongue, reach_nm=nm(0.3)))
    assert len(found(FindingCode.JOINT_PROFILE, unlike)) == 1


@pytest.mark.parametrize(
    ("centre", "count"), [(40, 0), (40.25, 0), (39.75, 0), (40.265625, 1), (39.734375, 1), (44, 1)]
)
def test_each_piece_has_its_bearing(centre: float, count: int) -> None:
    """On a stud of 1-1/2 inches with 1/2 inch of bearing a joint lies within 1/4 inch of the middle."""
    hanging = with_framing(plain(), studs(8, 24, centre, 56, 72, 88))
    assert len(found(FindingCode.JOINT_OFF_FRAMING, hanging)) == count


def test_an_open_joint_takes_from_the_bearing() -> None:
    """With ends 1/16 inch apart each has less on the stud: the bearing counts, not the joint's middle."""
    hanging = with_framing(plain(), studs(8, 24, 40.25, 56, 72, 88))
    parted = with_piece(hanging.layout.surfaces[0], "1a", place=rectangle(0.25, 0.25, 39.9375, 5.25))
    (finding,) = found(FindingCode.JOINT_OFF_FRAMING, Hanging(hanging.job, layout(parted)))
    assert (finding.measured, finding.allowed) == (nm(0.4375), nm(0.5))


def test_solid_backing_bears_anywhere_and_framing_along_the_courses_nowhere() -> None:
    """Sheathing bears every joint; members that run with the courses are not crossed, so they bear none."""
    assert found(FindingCode.JOINT_OFF_FRAMING, with_framing(plain(), Framing(solid=True))) == []
    along = with_framing(plain(), studs(2, 8, runs=Direction.HORIZONTAL))
    findings = found(FindingCode.JOINT_OFF_FRAMING, along)
    assert [finding.measured for finding in findings] == [None, None]


def test_a_hidden_joint_still_needs_framing() -> None:
    """What a bench hides must hold all the same."""
    members = [each.centre_nm / nm(1) for each in entry().job.surfaces[0].framing.members]
    moved = with_framing(entry(), studs(*(89 if centre == 88 else centre for centre in members)))
    assert [finding.where for finding in found(FindingCode.JOINT_OFF_FRAMING, moved)] == [
        "course 1, joint of 1b and 1c"
    ]


def test_joints_in_sight_are_forbidden_counted_or_staggered() -> None:
    """The plain wall's joints stand 32 inches apart: each policy in turn."""
    codes = (FindingCode.JOINT_IN_SIGHT, FindingCode.JOINT_STAGGER)
    for policy, stagger, counts in (
        (JointPolicy.NEVER, nm(40), (2, 0)),
        (JointPolicy.COUNT, nm(40), (0, 0)),
        (JointPolicy.STAGGER, nm(40), (0, 1)),
        (JointPolicy.STAGGER, nm(32), (0, 0)),
    ):
        hanging = with_rules(plain(), joints=policy, stagger_nm=stagger)
        assert tuple(len(found(code, hanging)) for code in codes) == counts


def test_a_stagger_is_told_of_the_upper_joint() -> None:
    """The finding names both joints and their distance."""
    (finding,) = found(FindingCode.JOINT_STAGGER, with_rules(plain(), stagger_nm=nm(40)))
    assert (finding.where, finding.measured, finding.allowed) == (
        "course 2, joint of 2a and 2b",
        nm(32),
        nm(40),
    )
    assert "joint of 1a and 1b in course 1" in finding.message


def test_hidden_joints_need_no_stagger_and_are_never_forbidden() -> None:
    """The entry's joint behind the bench is free; the one in the top course is not."""
    forbidden = found(FindingCode.JOINT_IN_SIGHT, with_rules(entry(), joints=JointPolicy.NEVER))
    assert [finding.where for finding in forbidden] == ["course 4, joint of 4a and 4b"]

"""A surface as its boards look: tones in the users' own words, lots by hatch and in words."""

from dataclasses import replace

import pytest

from builders import board, course, job, layout, piece, surface_layout, wall
from plankwright.draw import LETTER, Scene, wall_map
from plankwright.draw.scene import Group, Item, Line, Polygon, Text
from plankwright.draw.styles import LOOKS, Style
from plankwright.draw.tones import shade
from plankwright.model import Board, Job, Layout, Rules

WALL = wall(96, 15)
LOTS = (Style.LOT_1, Style.LOT_2, Style.LOT_3, Style.LOT_4, Style.LOT_5, Style.LOT_6)


def _leaves(items: tuple[Item, ...]) -> list[Item]:
    found: list[Item] = []
    for item in items:
        found += _leaves(item.items) if isinstance(item, Group) else [item]
    return found


def _said(scene: Scene) -> set[str]:
    return {item.said for item in _leaves(scene.items) if isinstance(item, Text)}


def _styles(scene: Scene) -> list[Style]:
    return [item.style for item in _leaves(scene.items) if isinstance(item, Polygon)]


def _three(*boards: Board) -> tuple[Job, Layout]:
    courses = [
        course(
            number,
            (5 * (number - 1), 5 * number),
            piece(WALL, f"{number}a {one.id}", (0, 96), (5 * (number - 1), 5 * number)),
        )
        for number, one in enumerate(boards, start=1)
    ]
    return job(WALL, boards, Rules(expansion_gap_nm=0)), layout(surface_layout(WALL, *courses))


def _drawn(*boards: Board, as_boards_look: bool = True) -> Scene:
    whole, laid = _three(*boards)
    return wall_map(whole, laid.surfaces[0], LETTER, as_boards_look=as_boards_look)


HALL = (
    replace(board("A", 97, 5.25), lot="Hall floor", tone="Dark"),
    replace(board("B", 97, 5.25), lot="hall  floor", tone="dark"),
    replace(board("C", 97, 5.25), lot="stage", tone="fox-coloured"),
)


@pytest.mark.parametrize(
    ("tone", "style"),
    [
        ("Dark", Style.TONE_DARK),
        ("mid brown", Style.TONE_MID),
        ("dark-red", Style.TONE_DARK),
        ("honey", Style.TONE_MID),
        ("charred", Style.TONE_BLACK),
        ("fox-coloured", None),
        ("", None),
    ],
)
def test_a_tone_is_ranked_by_words_that_most_people_use(tone: str, style: Style | None) -> None:
    """How bright a board is counts before its colour; what tells nothing gets no fill."""
    assert shade(tone) is style


def test_pieces_are_filled_by_the_tones_of_their_boards() -> None:
    """Two are dark; of the third nobody can tell, so it keeps the ground of all wood."""
    styles = _styles(_drawn(*HALL))
    assert styles.count(Style.TONE_DARK) == 2
    assert not {Style.TONE_PALE, Style.TONE_LIGHT, Style.TONE_MID, Style.TONE_BLACK} & set(styles)


def test_lots_are_marked_and_named_and_not_told_by_colour_alone() -> None:
    """A lot is one lot however it is spelled; each has a mark of its own and stands in the key."""
    scene = _drawn(*HALL)
    assert [style for style in _styles(scene) if style in LOTS].count(Style.LOT_1) == 2
    assert {"lot Hall floor", "lot stage", "dark", "fox-coloured"} <= _said(scene)


def test_no_two_lots_are_marked_alike() -> None:
    """In black and white each mark is still told from each other one."""
    hatches = [LOOKS[style].hatch for style in LOTS]
    assert len({(one.angle, one.crossed) for one in hatches if one is not None}) == len(LOTS)


def test_a_seventh_lot_is_one_of_the_others() -> None:
    """There are six marks, and the key says so of what shares one."""
    boards = [replace(board(f"B{number}", 97, 2.25), lot=f"lot {number}") for number in range(8)]
    high = wall(96, 16)
    courses = [
        course(
            number + 1,
            (2 * number, 2 * number + 2),
            piece(high, f"{number + 1}a {one.id}", (0, 96), (2 * number, 2 * number + 2)),
        )
        for number, one in enumerate(boards)
    ]
    whole = job(high, boards, Rules(expansion_gap_nm=0))
    scene = wall_map(whole, surface_layout(high, *courses), LETTER, as_boards_look=True)
    assert "other lots" in _said(scene)


def test_a_piece_says_how_its_board_looks() -> None:
    """For whoever points at it, or hears it."""
    groups = [item for item in _drawn(*HALL).items if isinstance(item, Group)]
    assert groups[0].title.endswith("lot Hall floor, Dark")


def test_what_is_behind_the_boards_is_left_out() -> None:
    """Studs are drawn as it is built, and not as it looks."""
    framed = replace(HALL[0], lot="")
    built, looks = (_drawn(framed, as_boards_look=looks) for looks in (False, True))
    assert "stud" in _said(built)
    assert "stud" not in _said(looks)


def test_a_joint_in_sight_stands_out_from_dark_boards() -> None:
    """It lies on a wider line of paper."""
    boards = [replace(board(name, 60, 5.25), tone="black") for name in ("A", "B")]
    low = wall(96, 5)
    laid = surface_layout(
        low,
        course(1, (0, 5), piece(low, "1a A", (0, 48), (0, 5)), piece(low, "1b B", (48, 96), (0, 5))),
    )
    scene = wall_map(job(low, boards, Rules(expansion_gap_nm=0)), laid, LETTER, as_boards_look=True)
    lines = [item.style for item in _leaves(scene.items) if isinstance(item, Line)]
    assert lines.index(Style.JOINT_GROUND) < lines.index(Style.JOINT_IN_SIGHT)
    assert LOOKS[Style.JOINT_GROUND].width > LOOKS[Style.JOINT_IN_SIGHT].width

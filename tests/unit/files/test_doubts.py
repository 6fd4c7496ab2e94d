"""Doubtful boards are remarked on, right ones are not."""

import pytest

from builders import board, flaw, nm
from plankwright.files.doubts import longest_clear_nm, remark_board, remark_pile, remark_woods
from plankwright.files.report import Report
from plankwright.model import Board, EdgeKind, EdgeProfile, Rules, Severity


def told(*boards: Board) -> list[str]:
    """Give what is remarked on a pile, each board in its row."""
    report = Report("tally.csv", lambda where: (f"line {where[0]}" if where else "", None))
    for number, one in enumerate(boards, start=2):
        remark_board(one, (number,), report, rules=Rules())
    remark_pile(list(enumerate(boards, start=2)), report)
    assert report.problems == ()
    return [str(remark).removeprefix("tally.csv, ").removeprefix("tally.csv: ") for remark in report.remarks]


@pytest.mark.parametrize(
    ("doubtful", "remark"),
    [
        (board("A", 96, 14.5), "line 2: board A is wider than 14 in: check the measurement and its unit"),
        (board("A", 241, 6), "line 2: board A is longer than 20 ft: check the measurement and its unit"),
        (
            board("A", 96, 6, thickness_nm=nm(2.25)),
            "line 2: board A is thicker than 2 in: check the measurement and its unit",
        ),
        (
            board("A", 96, 2.5, thickness_nm=nm(2.75)),
            "line 2: board A is thicker than it is wide: check the measurement and its unit",
        ),
        (
            board("A", 96, 6, width_end_nm=nm(4)),
            "line 2: board A loses a third of its width or more from end to end: is that so?",
        ),
        (
            board("A", 96, 6, flaws=(flaw(3, 9), flaw(8, 12))),
            "line 2: board A has flaws that overlap: check their positions",
        ),
        (
            board("A", 96, 2),
            "line 2: board A is too narrow for any course: narrowest_course is more than it gives",
        ),
        (
            board("A", 32, 6, flaws=(flaw(14, 18),)),
            "line 2: board A has no clear run as long as shortest_piece: it gives short pieces only",
        ),
    ],
)
def test_doubtful_boards_are_remarked(doubtful: Board, remark: str) -> None:
    """Each with what to look at."""
    assert remark in told(doubtful)


def test_usual_boards_are_not_remarked() -> None:
    """Nor such with a blemish over a split, or a narrow one whose edges are milled."""
    milled = EdgeProfile(kind=EdgeKind.SHIPLAP, reach_nm=nm(0.25))
    assert (
        told(
            board("A", 96, 14),
            board("B", 240, 6),
            board("C", 96, 6, flaws=(flaw(3, 9), flaw(8, 12, Severity.BLEMISH))),
            board("D", 96, 2, profile=milled),
            board("E", 96, 6, width_end_nm=nm(4.5)),
        )
        == []
    )


def test_one_thickness_far_from_its_lot_is_remarked() -> None:
    """The middle one of the lot is the measure; other lots may be thicker."""
    floor = [board(name, 96, 6, lot="floor") for name in "ABC"]
    odd = board("D", 96, 6, lot="floor", thickness_nm=nm(1.5))
    (remark,) = told(*floor, odd, board("E", 96, 6, lot="beams", thickness_nm=nm(2)))
    assert remark.startswith("line 5: board D is 2 times thicker or thinner than lot floor mostly is: check")
    alone = [board(name, 96, 6) for name in "ABC"]
    (remark,) = told(*alone, board("D", 96, 6, thickness_nm=nm(0.375)))
    assert "than the pile mostly is" in remark


def test_a_lot_is_the_same_however_it_is_written() -> None:
    """Its boards are measured against each other."""
    floor = [board(str(number), 96, 6, lot=lot) for number, lot in enumerate(("Floor", "floor", "FLOOR"))]
    (remark,) = told(*floor, board("D", 96, 6, lot="floor ", thickness_nm=nm(1.5)))
    assert "board D is 2 times thicker" in remark


def test_a_species_without_figures_is_remarked_once() -> None:
    """With how many boards it is of, and the word that may be meant."""
    report = Report("tally.csv", lambda _: ("", None))
    species = ("unobtainium", "Unobtainium", "wallnut", "pine", "")
    remark_woods([(n, board(f"B{n}", 96, 6, species=one)) for n, one in enumerate(species)], report)
    then = ": the range of all species is used for what it weighs and how it moves"
    assert [remark.what.removesuffix(then) for remark in report.remarks] == [
        "no figures are known of “unobtainium” (2 boards)",
        "no figures are known of “wallnut” (1 board) (did you mean walnut?)",
    ]


def test_a_pile_of_nominal_sizes_is_remarked() -> None:
    """Where every size is one that boards are sold under, they may not have been measured."""
    pile = [board(str(width), 96, width, thickness_nm=nm(1)) for width in (4, 5, 6, 8, 10)]
    (remark,) = told(*pile)
    assert remark == (
        "every width and thickness is a size that boards are sold under: measure a few, "
        "since a dressed 1 by 6 measures 3/4 by 5-1/2 in"
    )
    assert told(*pile[:4]) == []
    assert told(*pile, board("measured", 96, 5.5, thickness_nm=nm(1))) == []


@pytest.mark.parametrize(
    ("flaws", "clear"),
    [
        ((), 95),
        ((flaw(40, 50),), 45.5),
        ((flaw(0, 10), flaw(90, 96)), 80),
        ((flaw(40, 50), flaw(42, 44), flaw(60, 70)), 39.5),
        ((flaw(40, 50, Severity.BLEMISH),), 95),
        ((flaw(0, 96),), 0),
    ],
)
def test_the_longest_clear_run_lies_between_lost_wood_and_end_trims(
    flaws: tuple[object, ...], clear: float
) -> None:
    """With half an inch of trim at each end of a board of 96 in."""
    assert longest_clear_nm(board("A", 96, 6, flaws=flaws), Rules()) == nm(clear)

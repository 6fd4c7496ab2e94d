"""Is the pile enough, in words."""

from dataclasses import replace

from plankwright.layout.result import Result, Verdict, Wanted
from plankwright.measure import FOOT, INCH, System, TapeStyle
from plankwright.model import (
    Board,
    Bound,
    Course,
    EdgeKind,
    EdgeProfile,
    Flaw,
    Framing,
    Job,
    Layout,
    Piece,
    Rectangle,
    Rules,
    Score,
    Severity,
    Surface,
    SurfaceLayout,
    Treatment,
)
from plankwright.workshop.ask_enough import ask_enough, describe_wanted

IMPERIAL = TapeStyle(system=System.IMPERIAL)
SQUARE_FOOT = FOOT * FOOT
RULES = Rules(expansion_gap_nm=0, end_trim_nm=0)
WALL = Surface(
    id="wall",
    outline=((0, 0), (8 * FOOT, 0), (8 * FOOT, FOOT), (0, FOOT)),
    framing=Framing(solid=True),
)


def board(name: str) -> Board:
    """Give a board of 8 ft by 6 in with a tongue: one whole course of the wall."""
    return Board(
        id=name,
        length_nm=8 * FOOT,
        width_start_nm=6 * INCH,
        width_end_nm=6 * INCH,
        thickness_nm=INCH,
        profile=EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=INCH // 4),
    )


def job(*boards: str, rules: Rules = RULES) -> Job:
    """Give a job of one wall, two courses high."""
    return Job(
        name="test",
        tape=IMPERIAL,
        surfaces=(WALL,),
        boards=tuple(board(name) for name in boards),
        rules=rules,
    )


def course(number: int, board_id: str) -> Course:
    """Give a course of one whole board."""
    low, high = (number - 1) * 6 * INCH, number * 6 * INCH
    piece = Piece(
        label=f"{number}a",
        board_id=board_id,
        place=Rectangle(left=0, bottom=low, right=8 * FOOT, top=high),
        along_from_nm=0,
        along_to_nm=8 * FOOT,
        across_from_nm=0,
        across_to_nm=6 * INCH,
    )
    return Course(number=number, from_nm=low, to_nm=high, pieces=(piece,))


def result(*boards: str, bound: Bound = Bound()) -> Result:  # noqa: B008 - a frozen value
    """Give a result that covers a course with each board and leaves the other courses of the wall bare."""
    bare = tuple(
        Rectangle(left=0, bottom=number * 6 * INCH, right=8 * FOOT, top=(number + 1) * 6 * INCH)
        for number in range(len(boards), 2)
    )
    score = Score(
        bare_nm2=len(bare) * 4 * SQUARE_FOOT,
        joints_in_sight=0,
        wood_spent_nm2=len(boards) * 4 * SQUARE_FOOT,
        cuts=0,
    )
    surface = SurfaceLayout(
        surface_id="wall",
        courses=tuple(course(number, name) for number, name in enumerate(boards, start=1)),
        bare=bare,
        score=score,
        bound=bound,
    )
    return Result(layout=Layout(job_name="test", surfaces=(surface,)))


SHORT = Bound(bare_nm2=4 * SQUARE_FOOT)
ONE_MORE = Wanted(count=1, length_nm=8 * FOOT, width_nm=6 * INCH)


def test_yes_names_what_is_covered_and_what_is_spare() -> None:
    """The answer comes first, then what is left over."""
    answer = ask_enough(job("A", "B", "C", "D"), result("A", "B"))
    assert answer.verdict is Verdict.ENOUGH
    assert str(answer).splitlines() == [
        "Enough: a layout was found that covers wall.",
        "wall: all 8.0 sq ft covered.",
        "wall: No joint is in sight.",
        "wall: Wood spent: 8.0 sq ft.",
        "wall: Two milled pieces with the whole face width; they interlock along 8' 0\" of seam.",
        'Spare: two whole boards, C (8\' 0" × 6") and D (8\' 0" × 6").',
    ]


def test_yes_with_every_board_used_says_so() -> None:
    """Nobody should look for a spare board that is not there."""
    answer = ask_enough(job("A", "B"), result("A", "B"))
    assert answer.pile == ("Nothing is left over: every board is cut into, and no offcut is worth keeping.",)
    assert answer.untouched == ()


def test_offcuts_worth_keeping_are_counted() -> None:
    """Half of a board that is cut to 4 ft is long enough to keep."""
    laid = result("A", "B")
    surface = laid.layout.surfaces[0]
    first = surface.courses[0].pieces[0]
    shorter = replace(first, place=replace(first.place, right=4 * FOOT), along_to_nm=4 * FOOT)
    courses = (replace(surface.courses[0], pieces=(shorter,)), surface.courses[1])
    cut = replace(laid, layout=replace(laid.layout, surfaces=(replace(surface, courses=courses),)))
    assert ask_enough(job("A", "B"), cut).pile == (
        "No whole board is left over, but one offcut worth keeping.",
    )
    assert ask_enough(job("A", "B", "C"), cut).pile == (
        'Spare: one whole board, C (8\' 0" × 6"); besides, one offcut worth keeping.',
    )


def test_boards_held_back_are_not_called_spare() -> None:
    """They are told apart, since the rules ask for them."""
    laid = replace(result("A", "B"), held_back=("D",))
    answer = ask_enough(job("A", "B", "C", "D", rules=replace(RULES, hold_back=1)), laid)
    assert answer.untouched == ("C",)
    assert answer.held_back == ("D",)
    assert answer.pile == (
        'Spare: one whole board, C (8\' 0" × 6").',
        "Held back as spares, as the rules ask: D.",
    )


def test_many_spare_boards_are_named_in_part_and_counted() -> None:
    """A sentence stays a sentence; the values hold them all."""
    names = [f"B{number}" for number in range(1, 17)]
    answer = ask_enough(job(*names), result("B1", "B2"))
    assert answer.pile == (
        "Spare: 14 whole boards, B3, B4, B5, B6, B7, B8, B9, B10, B11, B12, B13, B14 and 2 more.",
    )
    assert len(answer.untouched) == 14


def test_only_what_gives_a_piece_is_spare() -> None:
    """Neither a board whose clear runs are too short, nor one with insects that were not heated."""
    asked = job("A", "B", "C", "D", "E", "F")
    rot = Flaw(start_nm=FOOT, end_nm=7 * FOOT, what="rot", severity=Severity.LOST)
    short = Flaw(start_nm=0, end_nm=3 * FOOT + INCH // 32, what="split", severity=Severity.LOST)
    marred = {
        "C": {"flaws": (rot,)},
        "D": {"note": "worm holes"},
        "E": {"note": "worm holes, heated"},
        "F": {"flaws": (short,)},
    }
    boards = tuple(replace(one, **marred.get(one.id, {})) for one in asked.boards)  # type: ignore[arg-type]
    told = ask_enough(replace(asked, boards=boards), result("A", "B"))
    assert told.pile == (
        'Spare: two whole boards, E (8\' 0" × 6") and F (4\' 11-15/16" × 6").',
        "Not spare, with no clear run that is long and wide enough: C.",
        "Not spare until heated, with signs of insects: D.",
    )
    assert told.untouched == ("C", "D", "E", "F")


def test_where_nothing_left_over_can_hang_nothing_is_spare() -> None:
    """It is said, and why."""
    asked = job("A", "B", "C")
    short = Flaw(start_nm=0, end_nm=7 * FOOT, what="split", severity=Severity.LOST)
    useless = replace(asked, boards=(*asked.boards[:2], replace(asked.boards[2], flaws=(short,))))
    assert ask_enough(useless, result("A", "B")).pile == (
        "Nothing is spare: no offcut is worth keeping, and no board left over can hang as it is.",
        "Not spare, with no clear run that is long and wide enough: C.",
    )


def test_no_says_how_much_is_covered_and_what_would_close_it() -> None:
    """Proven by the bound, with the boards that a layout was made with."""
    laid = replace(
        result("A", bound=SHORT), wanted=(ONE_MORE,), closing=(job("A", "Z"), result("A", "Z").layout)
    )
    answer = ask_enough(job("A"), laid)
    assert answer.verdict is Verdict.NOT_ENOUGH
    assert str(answer).splitlines()[:3] == [
        "Not enough: no layout of this pile covers all of wall.",
        "wall: 4.0 sq ft of 8.0 sq ft covered (50 %).",
        "wall: 4.0 sq ft stays bare, and no layout can leave less: proven best.",
    ]
    assert answer.pile[:3] == (
        "Wanted to close what is bare, as they come, before trimming:",
        '- 1 board of at least 8\' 0" by 6"',
        "A layout with these boards was made, and it covers everything.",
    )


def test_a_wanted_list_without_a_layout_is_called_a_guess() -> None:
    """Nobody should buy on it without knowing."""
    answer = ask_enough(job("A"), replace(result("A", bound=SHORT), wanted=(ONE_MORE,)))
    assert answer.pile[2] == "No layout with these boards was made: take the list as a guess."


def test_boards_not_used_on_a_bare_wall_are_not_called_spare() -> None:
    """They do not fit; that is not the same as being to spare."""
    answer = ask_enough(job("A", "Z"), result("A", bound=SHORT))
    assert answer.pile == ("Not used: one whole board, Z.",)


def test_boards_held_back_while_wall_is_bare_are_pointed_to() -> None:
    """The user may prefer a whole wall to a spare board."""
    laid = replace(result("A", bound=SHORT), held_back=("B",))
    answer = ask_enough(job("A", "B", rules=replace(RULES, hold_back=1)), laid)
    assert answer.headline == (
        "Not enough: no layout of this pile less the one board held back covers all of wall."
    )
    assert answer.pile[-1] == "Hanging them too may close what is bare, and leaves nothing to fall back on."


def test_bare_without_a_bound_is_not_settled() -> None:
    """Neither yes nor no may be said when neither is proven."""
    answer = ask_enough(job("A", "B"), result("A"))
    assert answer.verdict is Verdict.UNSETTLED
    assert answer.headline == (
        "Not settled: no layout of this pile was found that covers all of wall, "
        "and none was proven impossible. A longer search may tell."
    )


def test_one_surface_short_makes_the_whole_pile_not_enough() -> None:
    """The headline names the surface that cannot be covered."""
    gable = replace(WALL, id="gable")
    both = replace(job("A", "B", "C"), surfaces=(WALL, gable))
    (first,), (second,) = result("A", "B").layout.surfaces, result("C", bound=SHORT).layout.surfaces
    layout = Layout(job_name="test", surfaces=(first, replace(second, surface_id="gable")))
    answer = ask_enough(both, Result(layout=layout))
    assert answer.verdict is Verdict.NOT_ENOUGH
    assert answer.headline == "Not enough: no layout of this pile covers all of gable."
    assert [surface.verdict for surface in answer.surfaces] == [Verdict.ENOUGH, Verdict.NOT_ENOUGH]


def test_a_board_cut_for_two_surfaces_is_spent_once_in_all() -> None:
    """Half of it on either wall, and nothing left: four square feet, though each wall counts more."""
    (surface,) = result("A").layout.surfaces
    (whole,) = surface.courses[0].pieces
    halves = (
        replace(whole, place=replace(whole.place, right=4 * FOOT), along_to_nm=4 * FOOT),
        replace(whole, place=replace(whole.place, left=4 * FOOT), along_from_nm=4 * FOOT + INCH // 4),
    )
    laid = tuple(
        replace(surface, surface_id=name, courses=(replace(surface.courses[0], pieces=(half,)),))
        for name, half in zip(("wall", "gable"), halves, strict=True)
    )
    both = replace(job("A"), surfaces=(WALL, replace(WALL, id="gable")))
    answer = ask_enough(both, Result(layout=Layout(job_name="test", surfaces=laid)))
    assert answer.pile[0] == (
        "Wood spent in all: 4.0 sq ft; above, a board cut for several surfaces counts on each of them."
    )


def test_a_search_that_was_stopped_says_so() -> None:
    """What was cut short may get better."""
    answer = ask_enough(job("A", "B"), replace(result("A", "B"), stopped=True))
    assert answer.pile[-1] == "The search was stopped early: a longer one may find better."


def test_wanted_boards_are_described_in_the_words_of_a_shopping_list() -> None:
    """Count, clear length and width, and what they must match."""
    wanted = Wanted(
        count=2,
        length_nm=88 * INCH,
        width_nm=5 * INCH,
        thickness_nm=3 * INCH // 4,
        profile=EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=INCH // 4),
    )
    assert describe_wanted(wanted, IMPERIAL) == (
        '2 boards of at least 7\' 4" by 5", 3/4" thick, tongue-and-groove with a tongue of 1/4"'
    )


def test_what_is_wanted_is_rounded_up() -> None:
    """A board a hair shorter than told would not do: 1 nm over 88 in is 88-1/16 in on this tape."""
    wanted = Wanted(count=1, length_nm=88 * INCH + 1, width_nm=5 * INCH)
    assert describe_wanted(wanted, IMPERIAL) == '1 board of at least 7\' 4-1/16" by 5"'
    metric = TapeStyle(system=System.METRIC)
    assert describe_wanted(wanted, metric) == "1 board of at least 2236 mm by 127 mm"


def test_wanted_square_and_shiplap_edges_are_named() -> None:
    """Whoever goes shopping must know the edge."""
    square = Wanted(count=1, length_nm=FOOT, width_nm=INCH, profile=EdgeProfile())
    assert describe_wanted(square, IMPERIAL).endswith(", square-edged")
    lap = EdgeProfile(kind=EdgeKind.SHIPLAP, reach_nm=3 * INCH // 8)
    assert describe_wanted(replace(square, profile=lap), IMPERIAL).endswith('shiplap with a lap of 3/8"')


def test_treated_boards_are_told_as_kept_out() -> None:
    """Neither as too short nor as not used: nobody should look for a stretch of them that would do."""
    lost = Flaw(start_nm=0, end_nm=8 * FOOT, what="treated", severity=Severity.LOST)
    asked = job("A", "B", "C", "T")
    boards = tuple(
        replace(one, treatment=Treatment.CREOSOTE, flaws=(lost,)) if one.id == "T" else one
        for one in asked.boards
    )
    assert ask_enough(replace(asked, boards=boards), result("A", "B")).pile == (
        'Spare: one whole board, C (8\' 0" × 6").',
        "Treated, kept out: T.",
    )
    assert ask_enough(replace(asked, boards=boards), result("A", bound=SHORT)).pile == (
        "Not used: two whole boards, B and C.",
        "Treated, kept out: T.",
    )

"""The cut list tells every cut so that nobody has to work anything out at the saw."""

from dataclasses import replace

from builders import board, course, job, layout, nm, outline, piece, surface_layout, wall
from plankwright.layout.sawing import saw_boards
from plankwright.measure import MILLIMETRE
from plankwright.model import (
    EdgeKind,
    EdgeProfile,
    EdgeTreatment,
    Framing,
    Job,
    Layout,
    Lot,
    Paint,
    Piece,
    Rules,
)
from plankwright.paper.cut_list import BoardBlock, Step, cut_list
from porch import porch_job, porch_layout, short_porch_layout

WIDTH = 180.0
RULES = Rules(expansion_gap_nm=0)
SOLID = Framing(solid=True)


def porch_blocks() -> dict[str, BoardBlock]:
    """Give the blocks of the porch by board."""
    return {block.id: block for block in cut_list(porch_job(), porch_layout(), WIDTH)}


def told(step: Step) -> tuple[str, str, str, tuple[str, ...]]:
    """Give a step as kind, mark, text and labels freed."""
    text = step.text.replace("\N{NO-BREAK SPACE}", " ")
    return (
        step.kind,
        step.mark.replace("\N{NO-BREAK SPACE}", " "),
        text,
        tuple(freed.label for freed in step.frees),
    )


def test_boards_come_in_the_order_of_the_cuts() -> None:
    """The list has a block for each board that is cut into, in their order; the spare one is left out."""
    blocks = cut_list(porch_job(), porch_layout(), WIDTH)
    assert [block.id for block in blocks] == [
        cuts.board_id for cuts in saw_boards(porch_job(), porch_layout())
    ]
    assert "H08" not in {block.id for block in blocks}


def test_rips_tell_mark_and_fence() -> None:
    """The fence stands at the width of the strip: along it runs the edge that was straightened before."""
    assert [told(step) for step in porch_blocks()["H02"].steps] == [
        ("Crosscut", 'at 3/8"', "Trim the marked end", ()),
        ("Crosscut", 'at 56-1/2"', "Part 3b, 1b from an offcut", ()),
        ("Rip", 'take off 1/8"', "Straighten the reference edge", ()),
        ("Rip", 'at 6-1/8"', 'Fence at 6"', ("1b",)),
        ("Crosscut", 'at 40-1/2"', "Cut off what lies behind 3b", ()),
        ("Rip", 'at 12-1/4"', 'Fence at 6"', ("3b",)),
    ]


def test_what_is_less_than_a_kerf_is_taken_off() -> None:
    """A loss of 1/8 inch with a 3 mm blade leaves no mark to saw to and no strip for a fence."""
    flat = wall(96, 6, framing=SOLID)
    rules = replace(RULES, rip_kerf_nm=3 * MILLIMETRE)
    one = piece(flat, "1a B", (0, 96), (0, 6), at=(0.5, 0.125))
    (block,) = cut_list(job(flat, [board("B", 97, 6.5)], rules), of_one(one), WIDTH)
    assert [told(step)[:3] for step in block.steps if step.kind == "Rip"] == [
        ("Rip", 'take off 1/8"', "Straighten the reference edge"),
        ("Rip", 'at 6-1/8"', 'Fence at 6"'),
    ]


def test_an_angle_within_reach_of_a_mitre_saw_is_told_from_square_alone() -> None:
    """Under a slope of 45 degrees nobody has to turn the angle round."""
    steep = wall(96, 6, framing=SOLID, outline=outline((0, 0), (96, 0), (90, 6), (0, 6)))
    whole = job(steep, [board("B", 97, 6.25)], RULES)
    (block,) = cut_list(whole, of_one(piece(steep, "1a B", (0, 96), (0, 6))), WIDTH)
    (angled,) = [step for step in block.steps if step.kind == "Angled"]
    assert told(angled)[1:3] == (
        'near 96-1/2",\nfar 90-1/2"',
        "45.0° from square; 1a: marked end to the left, near edge lower",
    )


def test_a_piece_that_comes_to_a_point_says_so() -> None:
    """A triangle under the ridge has no short edge to measure."""
    ridge = wall(20, 6, framing=SOLID, outline=outline((0, 0), (20, 0), (10, 6)))
    whole = job(ridge, [board("B", 22, 6.25)], RULES)
    (block,) = cut_list(whole, of_one(piece(ridge, "1a B", (0, 20), (0, 6))), WIDTH)
    sizes = [freed.size for step in block.steps for freed in step.frees]
    assert [size.replace("\N{NO-BREAK SPACE}", " ") for size in sizes] == ['20" LP, to a point × 6"']


def test_board_tells_what_is_known_of_it() -> None:
    """Size, thickness, milling, species, lot and note stand at its head, and its flaws below."""
    blocks = porch_blocks()
    assert (blocks["H01"].size, blocks["H01"].about) == (
        '5\' 0" × 7"',
        '3/4" thick, square, fir, old paint on the back',
    )
    assert blocks["H03"].size == '8\' 1" × 6-1/2" to 7"'
    assert blocks["H05"].about == '3/4" thick, tongue-and-groove, lot stage'
    assert blocks["H06"].flaws == '1 rot 100" to 104" (lost); 2 stain 20" to 21" (blemish, front face)'


def test_paint_is_told_at_the_head_of_a_board() -> None:
    """What holds lead and what is painted and untested is marked, each board by itself, and nothing else."""
    flat = wall(96, 24, framing=SOLID)
    lots = (
        Lot(name="dado", paint=Paint.UNKNOWN),
        Lot(name="doors", paint=Paint.LEAD),
        Lot(name="floor", paint=Paint.NONE),
        Lot(name="stage", paint=Paint.NO_LEAD_FOUND),
    )
    marks = {
        "A": ("dado", "", "test its paint first"),
        "B": ("doors", "", "lead paint: see What can hurt you"),
        "C": ("floor", "", ""),
        "D": ("floor", "white paint on the back", "test its paint first"),
        "E": ("stage", "old paint", ""),
        "F": ("", "", ""),
        "G": ("", "painted", "test its paint first"),
    }
    boards = [board(name, 97, 6, lot=lot, note=note) for name, (lot, note, _) in marks.items()]
    for name, (_, _, mark) in marks.items():
        whole = replace(job(flat, boards, RULES), lots=lots)
        one = piece(flat, f"1a {name}", (0, 96), (0, 6), at=(0.5, 0))
        (block,) = cut_list(whole, of_one(one), WIDTH)
        assert (block.id, block.paint) == (name, mark)


def test_starter_on_an_uneven_floor_tells_both_widths() -> None:
    """The taper of the starter is told by its widths at both ends and by its line."""
    (bench,) = porch_blocks()["H01"].bench
    assert (bench.label, bench.how) == ("1a", "marked end to the left")
    assert [told(step) for step in bench.steps] == [
        (
            "Taper rip",
            '6" to 5-13/16"',
            'wide, left end to right end: line from 0" right and 0" up to 40" right and 3/16" up',
            (),
        )
    ]


def test_angled_end_on_the_board_tells_angle_and_both_marks() -> None:
    """An angled end that is cut from the board tells where it meets each edge, and how the piece hangs."""
    assert told(porch_blocks()["H06"].steps[2]) == (
        "Angled",
        'near 1/2",\nfar 12-1/2"',
        (
            "63.4° from square (26.6° off the edge); 5a: marked end to the right, back face showing, "
            "near edge lower"
        ),
        (),
    )


def test_angled_end_of_a_free_piece_tells_its_line() -> None:
    """With an offcut behind it the piece is cut square first, and the slope is marked on the piece."""
    (bench,) = porch_blocks()["H07"].bench
    assert [told(step) for step in bench.steps] == [
        (
            "Angled",
            "63.4°",
            'from square (26.6° off the edge): line from 72" right and 6" up to 84" right and 0" up',
            (),
        )
    ]


def test_sizes_tell_long_and_short_point() -> None:
    """The size of a piece with an angled end is told to both points."""
    sizes = {
        freed.label: freed.size.replace("\N{NO-BREAK SPACE}", " ")
        for block in porch_blocks().values()
        for step in block.steps
        for freed in step.frees
    }
    assert sizes["6a"] == '84" LP, 72" SP × 6"'
    assert sizes["2a"] == '96" × 6"'


def test_notch_tells_size_place_and_what_comes_through() -> None:
    """A notch is told from the left and from below, as the piece hangs."""
    (bench,) = porch_blocks()["H03"].bench
    assert [told(step) for step in bench.steps] == [
        ("Notch", '2-1/4" wide,\n3" high', '30" from its left, 3" from below, for socket', ())
    ]


def test_tongue_is_taken_off_the_edge_where_it_hangs() -> None:
    """The tongue of an unturned board hangs at the far edge, that of a turned one at the near edge."""
    (bench,) = porch_blocks()["H05"].bench
    assert [step.text for step in bench.steps] == ["Take the tongue off the upper edge"]
    lapped = EdgeProfile(kind=EdgeKind.SHIPLAP, reach_nm=nm(0.25))
    flat = wall(96, 6, framing=SOLID)
    one = piece(flat, "1a B", (0, 96), (0, 6), at=(0.5, 0), turned=True, near=EdgeTreatment.TONGUE_OFF)
    blocks = cut_list(job(flat, [board("B", 97, 6, profile=lapped)], RULES), of_one(one), WIDTH)
    assert [step.text for step in blocks[0].bench[0].steps] == ["Take the lap off the lower edge"]


def of_one(one: Piece) -> Layout:
    """Give the layout of a wall of one piece."""
    return layout(surface_layout(wall(96, 6, framing=SOLID), course(1, (0, 6), one)))


def test_corner_is_told_by_its_line_alone() -> None:
    """A flat slope that ends before the piece does has no width at its ends to tell."""
    clipped = wall(96, 6, framing=SOLID, outline=outline((0, 0), (96, 0), (96, 4), (56, 6), (0, 6)))
    whole = job(clipped, [board("B", 97, 6.25)], RULES)
    blocks = cut_list(whole, of_one(piece(clipped, "1a B", (0, 96), (0, 6))), WIDTH)
    assert [told(step)[1:3] for step in blocks[0].bench[0].steps] == [
        ("", 'Line from 56" right and 6" up to 96" right and 4" up')
    ]


def test_offcut_tells_size_place_and_name() -> None:
    """What is kept is told with where it lay, and gets the name of its board."""
    assert porch_blocks()["H01"].offcuts == (
        '18-7/8" × 6-3/4": along 40-5/8" to 59-1/2", across 1/8" to 6-7/8"; write H01 on it',
    )
    assert porch_blocks()["H04"].offcuts == ()


def test_backs_shims_splines_and_the_closing_course_are_noted() -> None:
    """What else to get ready stands with the board; what is cut there is not said again."""
    notes = {block.id: block.notes for block in porch_blocks().values() if block.notes}
    assert notes == {
        "H02": ('3b: a shim of 1/16" goes behind it.',),
        "H05": ("4a: lower edge loose spline.",),
        "H06": ("5a: its back shows.",),
        "H07": ("6a is in the closing course: measure the room that is left before you rip it.",),
    }


def test_course_below_a_bare_place_is_no_closing_course() -> None:
    """Where the last course meets nothing, there is no room to measure."""
    blocks = cut_list(porch_job(), short_porch_layout(), WIDTH)
    assert not [note for block in blocks for note in block.notes if "closing" in note]


def test_board_that_hangs_as_found_says_so() -> None:
    """Without any cut the list still tells which piece the board is."""
    flat = wall(96, 6, framing=SOLID)
    rules = replace(RULES, straight_edge_loss_nm=0, end_trim_nm=0)
    whole = Job(
        name="hall",
        tape=porch_job().tape,
        surfaces=(flat,),
        boards=(board("B", 96, 6),),
        rules=rules,
    )
    (block,) = cut_list(whole, of_one(piece(flat, "1a B", (0, 96), (0, 6), at=(0, 0))), WIDTH)
    assert [told(step) for step in block.steps] == [("", "", "Hang it as found: no cut frees it.", ("1a",))]


def test_drawing_stands_beside_the_words() -> None:
    """Each block carries the drawing of its board."""
    assert all(block.drawing.startswith("<svg") for block in porch_blocks().values())

"""The sheets: on the right paper, nothing split, nothing lost, nothing said twice."""

import re
from dataclasses import replace
from functools import cache

import pymupdf
import pytest

from builders import board, course, job, layout, nm, piece, surface_layout, wall, with_piece
from conftest import Golden
from plankwright.check import check_layout
from plankwright.check.finding import FindingSeverity
from plankwright.draw.view import A4, LETTER, Page
from plankwright.layout.sawing import saw_boards
from plankwright.measure import System, TapeStyle, write_inches
from plankwright.model import Bound, CutKind, Framing, Rules, Standing
from plankwright.paper.caution import CAUTIONS
from plankwright.paper.work_sheets import work_sheets_pdf
from porch import porch_job, porch_layout, short_porch_layout
from printed import BODY, POINTS_A_MM, Sheets, lettering, words


@cache
def porch_pdf(page: Page) -> bytes:
    """Print the porch."""
    return work_sheets_pdf(porch_job(), porch_layout(), page)


def porch_sheets(page: Page = LETTER) -> Sheets:
    """Print the porch."""
    return Sheets(porch_pdf(page))


def test_porch_is_a_layout_that_the_checker_passes() -> None:
    """What is printed here could be built: the checker finds no error."""
    for laid in (porch_layout(), short_porch_layout()):
        found = check_layout(porch_job(), laid)
        assert [finding for finding in found if finding.severity is FindingSeverity.ERROR] == []


@pytest.mark.parametrize("page", [LETTER, A4])
def test_map_lies_across_the_paper_and_all_else_stands_on_it(page: Page) -> None:
    """Every page has the size of the paper, and the map alone, behind the first one, lies across it."""
    document = porch_sheets(page)
    width, height = page.width * POINTS_A_MM, page.height * POINTS_A_MM
    sizes = [(sheet.rect.width, sheet.rect.height) for sheet in document.pages]
    assert sizes[1] == pytest.approx((width, height), abs=0.1)
    upright = [sizes[0], *sizes[2:]]
    assert upright == [pytest.approx((height, width), abs=0.1)] * len(upright)


@pytest.mark.parametrize("page", [LETTER, A4])
def test_everything_stands_inside_the_margins(page: Page) -> None:
    """No lettering runs off the paper or into the margin."""
    for sheet in porch_sheets(page).pages:
        room = pymupdf.Rect(20, 15, sheet.rect.x1 - 20, sheet.rect.y1 - 15)
        assert [
            text for text, _, place in lettering(sheet) if text.strip() and not room.contains(place)
        ] == []


def test_pages_are_numbered_of_how_many() -> None:
    """A page that was lost in the dust is missed."""
    document = porch_sheets()
    for number, page in enumerate(document.pages, start=1):
        assert f"Page {number} of {len(document.pages)}" in words(page)


def test_the_first_sheet_tells_the_answer_and_what_to_mind() -> None:
    """Whoever takes the pack in hand reads first whether the pile is enough, then what to look out for."""
    answer = ("Enough: a layout was found that covers porch.", "Wanted:", "- 1 board", "One board is spare.")
    remarks = ("porch, course 1: it may break off.",)
    first = words(Sheets(work_sheets_pdf(porch_job(), porch_layout(), LETTER, answer, remarks)).pages[0])
    assert first.startswith("Start here village hall")
    assert "village hall Enough: a layout was found that covers porch. Wanted: • 1 board One board" in first
    assert "Mind • porch, course 1: it may break off." in first


def test_the_first_sheet_tells_what_to_do_first() -> None:
    """Read, compare, mark, cut, hang: numbered, with a box to tick each."""
    first = words(porch_sheets().pages[0])
    assert re.findall(r"([1-9])\. (\w+)", first) == [
        ("1", "Read"), ("2", "Compare"), ("3", "See"), ("4", "Cut"), ("5", "Hang"), ("6", "When"),
    ]  # fmt: skip


@pytest.mark.parametrize("proven", [True, False])
def test_what_stays_bare_bars_the_saw(proven: bool) -> None:  # noqa: FBT001 - a parameter
    """Before anything else, whether or not it was proven that no layout could cover it."""
    (laid,) = short_porch_layout().surfaces
    bound = Bound(bare_nm2=laid.score.bare_nm2 if proven else 0)
    first = words(Sheets(work_sheets_pdf(porch_job(), layout(replace(laid, bound=bound)), LETTER)).pages[0])
    search = "" if proven else "search longer, or "
    assert (
        "1. Do not cut yet: this layout leaves something bare. Unless that may stay so, "
        f"{search}get the boards that are missing, add them to the tally and lay it out anew. 2. Read"
    ) in first
    assert "Do not cut yet" not in words(porch_sheets().pages[0])


def test_what_stays_bare_of_a_job_in_progress_bars_the_saw() -> None:
    """What hangs stays: only what is left is laid out anew."""
    standing = Standing(sawn=("H07",))
    pdf = work_sheets_pdf(porch_job(), short_porch_layout(), LETTER, standing=standing)
    first = words(Sheets(pdf).pages[0])
    assert "1. Cut no more for now: this layout leaves something bare." in first
    assert "add them to the tally and have what is left laid out anew. 2. Read" in first


def test_the_first_sheet_tells_where_everything_is() -> None:
    """Each part of the pack stands with the page that it begins on."""
    document = porch_sheets()
    listed = re.findall(r"(Map: porch|Cut list|Hanging sheet: porch) page (\d+)", words(document.pages[0]))
    heads = [words(page) for page in document.pages]
    begins = [next(at for at, head in enumerate(heads, 1) if head.startswith(start)) for start in (
        "Cut list", "Hanging sheet: porch"
    )]  # fmt: skip
    # Read line by line, while the list runs down two columns.
    assert sorted(listed) == [
        ("Cut list", str(begins[0])), ("Hanging sheet: porch", str(begins[1])), ("Map: porch", "2"),
    ]  # fmt: skip


def test_a_map_has_its_sheet_to_itself() -> None:
    """The answer does not make the map smaller: it is drawn over at least half the height of its sheet."""
    (many, none) = (
        Sheets(work_sheets_pdf(porch_job(), porch_layout(), LETTER, answer)).pages[1].get_drawings()
        for answer in (["A sentence."] * 30, [])
    )
    assert [shape["rect"] for shape in many] == [shape["rect"] for shape in none]
    right = max(shape["rect"].x1 for shape in many)
    left = min(shape["rect"].x0 for shape in many)
    assert right - left > 0.8 * LETTER.width * POINTS_A_MM


def test_each_piece_comes_free_exactly_once_on_the_cut_list() -> None:
    """Each piece is freed by one cut, at the size that it has in the layout."""
    text = " ".join(words(page) for page in porch_sheets().headed("Cut list"))
    freed = re.findall(r"[Ff]rees (\S+) ", text)
    assert sorted(freed) == sorted(one.label for one in porch_layout().pieces)
    for one in porch_layout().pieces:
        width = write_inches(one.across_to_nm - one.across_from_nm, porch_job().tape)
        length = write_inches(one.along_to_nm - one.along_from_nm, porch_job().tape)
        assert re.search(rf"[Ff]rees {one.label} {length}( LP, \S+ SP)? × {re.escape(width)}", text)


def test_each_piece_is_hung_exactly_once_on_the_hanging_sheet() -> None:
    """Each piece has one row, with its board and its place."""
    text = " ".join(words(page) for page in porch_sheets().headed("Hanging sheet"))
    for one in porch_layout().pieces:
        rows = re.findall(rf"(?<!meets ){one.label} {one.board_id} ", text)
        assert len(rows) == 1


def test_marks_of_square_cuts_are_those_of_the_cut_list() -> None:
    """Marks on paper are the marks of the model, in their order."""
    job_, text = porch_job(), " ".join(words(page) for page in porch_sheets().headed("Cut list"))
    marks = re.findall(r"(Crosscut|Rip) (?:at|take off) (\S+)", text)
    wanted = []
    for cuts in saw_boards(job_, porch_layout()):
        for cut in cuts.cuts:
            if cut.kind in {CutKind.CROSSCUT, CutKind.RIP} and not cut.label:
                kerf = job_.rules.rip_kerf_nm
                at = cut.at_nm if cut.at_nm > kerf else cut.at_nm + kerf
                wanted.append((cut.kind.value.capitalize(), write_inches(at, job_.tape)))
    assert marks == wanted


def test_course_marks_are_those_of_the_layout() -> None:
    """The far edge of every course stands on the hanging sheet, in order; again where it goes on overleaf."""
    text = " ".join(words(page) for page in porch_sheets().headed("Hanging sheet"))
    marks = re.findall(r"Course (\d+): upper edge at (\S+)", text)
    assert list(dict.fromkeys(marks)) == [
        (str(number), write_inches(nm(6 * number), porch_job().tape)) for number in range(1, 7)
    ]


def test_no_board_is_split_over_two_pages() -> None:
    """Everything about a board, from its first cut to what is kept of it, stands on one page."""
    document = porch_sheets()
    pages = [words(page) for page in document.headed("Cut list")]
    for cuts in saw_boards(porch_job(), porch_layout()):
        (on,) = [page for page in pages if f"{cuts.board_id} " in page]
        block = on[on.index(f"{cuts.board_id} ") :]
        assert all(re.search(rf"[Ff]rees {label} ", block) for label in cuts.piece_labels)
        assert all(f"write {cuts.board_id} on it" in block for _ in cuts.offcuts)


def test_headings_of_the_columns_stand_on_every_page() -> None:
    """Each page of a list says what its columns are."""
    document = porch_sheets()
    for page in document.headed("Cut list"):
        assert words(page).count("Cut Mark What comes free, or what it is for") == 1
    for page in document.headed("Hanging sheet"):
        assert words(page).count("Piece Board Length × width What to do") == 1


def test_hazard_note_stands_on_both_lists() -> None:
    """Whoever has only the cut list or only the hanging sheet in hand is warned as well."""
    document = porch_sheets()
    for head in ("Cut list", "Hanging sheet"):
        first = words(document.headed(head)[0]).replace("- ", "-")  # A word may be broken at its hyphen.
        for caution in CAUTIONS:
            assert f"{caution.what} {caution.advice}" in first


def test_bare_places_are_told_plainly() -> None:
    """What stays bare stands in a frame before the first course."""
    pdf = work_sheets_pdf(porch_job(), short_porch_layout(), LETTER)
    first = words(Sheets(pdf).headed("Hanging sheet")[0])
    told = 'Left bare: 0" to 84" along, 30" to 36" from the start. No board was left for it.'
    assert told in first
    assert first.index(told) < first.index("Course 1")


def test_board_too_long_for_a_page_runs_on_to_the_next() -> None:
    """A board with more cuts than a page holds is the only one that is split, and loses nothing."""
    number = 60
    solid = wall(16, number, framing=Framing(solid=True))
    rules = Rules(expansion_gap_nm=0, straight_edge_loss_nm=0, end_trim_nm=0)
    long_board = board("L", 16.125 * number, 1)
    courses = [
        course(
            row + 1,
            (row, row + 1),
            piece(solid, f"{row + 1}a L", (0, 16), (row, row + 1), at=(16.125 * row, 0)),
        )
        for row in range(number)
    ]
    whole = job(solid, [long_board], rules)
    document = Sheets(work_sheets_pdf(whole, layout(surface_layout(solid, *courses)), LETTER))
    pages = document.headed("Cut list")
    freed = re.findall(r"[Ff]rees (\S+) ", " ".join(words(page) for page in pages))
    assert freed == [f"{row + 1}a" for row in range(number)]
    assert len(pages) > 2


def test_same_job_gives_the_same_bytes() -> None:
    """Nothing of the day or the machine gets onto the paper."""
    one = porch_pdf(LETTER)
    assert one == work_sheets_pdf(porch_job(), porch_layout(), LETTER)
    about = pymupdf.open(stream=one, filetype="pdf").metadata
    assert about is not None
    assert not about["creationDate"]
    assert not about["modDate"]


def test_only_our_own_lettering_is_used() -> None:
    """A machine with other fonts prints the same."""
    fonts = {font[3].split("+")[-1] for page in porch_sheets().pages for font in page.get_fonts()}
    assert fonts == {"SourceSansPro-Regular", "SourceSansPro-Bold"}


def test_what_a_user_wrote_is_printed_as_it_stands() -> None:
    """Marks that the typesetter takes for orders are letters like any others in a name or a note."""
    note = '#panic("no") *bold* $x$ `code` _it_ @ref <label> \\ // "5 in" ~ --- ...'
    porch = porch_job()
    boards = tuple(replace(one, note=note) if one.id == "H01" else one for one in porch.boards)
    whole = replace(porch, name='#name("*")', boards=boards)
    text = words(Sheets(work_sheets_pdf(whole, porch_layout(), LETTER)).headed("Cut list")[0])
    assert note in text
    assert text.startswith('Cut list #name("*")')


def test_names_too_long_for_their_columns_are_broken() -> None:
    """A long board id wraps in its own column, and long names at the head are cut short."""
    long_id, porch = "HALL-FLOOR-NORTH-END-0001", porch_job()
    boards = tuple(replace(one, id=long_id) if one.id == "H03" else one for one in porch.boards)
    (laid,) = porch_layout().surfaces
    whole = replace(porch, name="A very long name for a small job " * 4, boards=boards)
    renamed = layout(with_piece(laid, "2a", board_id=long_id))
    document = Sheets(work_sheets_pdf(whole, renamed, LETTER))
    inside = [
        page.rect.x0 + 20 < place.x0 and place.x1 < page.rect.x1 - 20
        for page in document.pages
        for text, _, place in lettering(page)
        if text.strip()
    ]
    assert all(inside)
    (page,) = [page for page in document.headed("Hanging sheet") if "Course 2" in words(page)]
    spans = [(text.replace("\u200b", ""), place) for text, _, place in lettering(page)]
    pieces_of_id = [place for text, place in spans if text.strip() and text.strip("-") in long_id]
    (beside,) = [place for text, place in spans if text.startswith('96"')]
    assert len(pieces_of_id) > 1
    assert all(place.x1 < beside.x0 for place in pieces_of_id)


def test_metric_tape_gives_millimetres_throughout() -> None:
    """A user with a metric tape finds no inch on paper."""
    whole = replace(porch_job(), tape=TapeStyle(system=System.METRIC))
    document = Sheets(work_sheets_pdf(whole, porch_layout(), A4))
    assert [page.number for page in document.pages if '"' in words(page)] == []
    assert "Crosscut at 10 mm" in words(document.headed("Cut list")[0])


def test_sheets_of_the_porch_read_as_they_were_found_right(golden: Golden) -> None:
    """The words of both lists, as a person read them."""
    document = porch_sheets()
    pages = [*document.headed("Cut list"), *document.headed("Hanging sheet")]
    lines = [text.strip() for page in pages for text, size, _ in lettering(page) if size >= BODY]
    text = "".join(f"{line}\n" for line in lines if line)
    golden("porch_sheets.txt", text)

"""Whatever rectangles a board is cut into: the cuts free exactly them, and no wood appears or vanishes."""

from dataclasses import dataclass, field, replace

from hypothesis import given
from hypothesis import strategies as st

from plankwright.check import FindingCode, check_layout, recount
from plankwright.layout.guillotine import Patch, Sawing, fewest_passes
from plankwright.layout.sawing import saw_boards, wood_spent_nm2
from plankwright.measure import INCH, System, TapeStyle
from plankwright.model import (
    Board,
    BoardCuts,
    Course,
    Cut,
    CutKind,
    Framing,
    Job,
    Layout,
    Offcut,
    Piece,
    Rectangle,
    Rules,
    Saw,
    SawKind,
    Score,
    Surface,
    SurfaceLayout,
)

GRID = INCH // 16
KERF = INCH // 8
RULES = Rules(expansion_gap_nm=0, shortest_piece_nm=8 * INCH, narrowest_course_nm=INCH)
SAW_FINDINGS = {FindingCode.NO_STRAIGHT_CUT, FindingCode.CROSSCUT_TOO_WIDE, FindingCode.RIP_TOO_WIDE}
Region = tuple[int, int, int, int]
"""Along from and to, across from and to. [nm]"""


@st.composite
def cut_up_boards(draw: st.DrawFn) -> tuple[Board, list[Region]]:
    """Give a board and rectangles that some order of straight cuts frees from it."""
    length = draw(st.integers(20 * 16, 144 * 16)) * GRID
    width = draw(st.integers(3 * 16, 14 * 16)) * GRID
    board = Board(id="B", length_nm=length, width_start_nm=width, width_end_nm=width, thickness_nm=INCH)
    trim, loss = RULES.end_trim_nm, RULES.straight_edge_loss_nm
    parts: list[Region] = [(trim, length - trim, loss, width - loss)]
    for _ in range(draw(st.integers(0, 5))):
        part = parts.pop(draw(st.integers(0, len(parts) - 1)))
        parts += draw(halves(part))
    regions = [part for part in parts if draw(st.booleans())]
    return board, regions or parts[:1]


@st.composite
def halves(draw: st.DrawFn, part: Region) -> list[Region]:
    """Give a part cut in two a kerf apart or more, or the part itself where it is too small."""
    along_from, along_to, across_from, across_to = part
    gap = draw(st.sampled_from([KERF, KERF, 3 * KERF, 2 * INCH]))
    if draw(st.booleans()):
        room = (along_to - along_from - gap - 2 * INCH) // GRID
        if room <= 0:
            return [part]
        mark = along_from + INCH + draw(st.integers(0, room)) * GRID
        return [(along_from, mark, across_from, across_to), (mark + gap, along_to, across_from, across_to)]
    room = (across_to - across_from - gap - INCH) // GRID
    if room <= 0:
        return [part]
    mark = across_from + INCH // 2 + draw(st.integers(0, room)) * GRID
    return [(along_from, along_to, across_from, mark), (along_from, along_to, mark + gap, across_to)]


def job_and_layout(board: Board, regions: list[Region]) -> tuple[Job, Layout]:
    """Hang each region as a course of its own on a wall big enough."""
    pieces, height = [], 0
    for number, (along_from, along_to, across_from, across_to) in enumerate(regions, start=1):
        top = height + across_to - across_from
        pieces.append(
            Piece(
                label=f"{number}a",
                board_id="B",
                place=Rectangle(left=0, bottom=height, right=along_to - along_from, top=top),
                along_from_nm=along_from,
                along_to_nm=along_to,
                across_from_nm=across_from,
                across_to_nm=across_to,
            )
        )
        height = top
    outline = ((0, 0), (board.length_nm, 0), (board.length_nm, height), (0, height))
    wall = Surface(id="wall", outline=outline, framing=Framing(solid=True))
    courses = tuple(
        Course(number=number, from_nm=piece.place.bottom, to_nm=piece.place.top, pieces=(piece,))
        for number, piece in enumerate(pieces, start=1)
    )
    score = Score(bare_nm2=0, joints_in_sight=0, wood_spent_nm2=0, cuts=0)
    surface_layout = SurfaceLayout(surface_id="wall", courses=courses, score=score)
    tape = TapeStyle(system=System.IMPERIAL)
    job = Job(name="test", tape=tape, surfaces=(wall,), boards=(board,), rules=RULES)
    return job, Layout(job_name="test", surfaces=(surface_layout,))


@dataclass
class Bench:
    """A board at the saw, cut by cut, as a careful sawyer would follow the list."""

    parts: list[Region]
    named: dict[str, Region]
    keep: list[Region]
    kerf_area: int = 0
    freed: list[str] = field(default_factory=list)

    def make(self, cut: Cut) -> None:
        """Cut the one part that the cut goes through, and see what comes free."""
        (part,) = [part for part in self.parts if goes_through(cut, part)]
        self.parts.remove(part)
        start, end, near, far = part
        low, high = (start, end) if cut.kind is CutKind.CROSSCUT else (near, far)
        before, beyond = max(low, cut.at_nm), min(high, cut.at_nm + KERF)
        for region in (*self.named.values(), *self.keep):
            if lies_in(region, part):
                first, last = region[:2] if cut.kind is CutKind.CROSSCUT else region[2:]
                assert last <= cut.at_nm or first >= cut.at_nm + KERF, "the saw goes through wood of use"
        if cut.kind is CutKind.CROSSCUT:
            halves = [(start, before, near, far), (beyond, end, near, far)]
            self.kerf_area += (beyond - before) * (far - near)
        else:
            halves = [(start, end, near, before), (start, end, beyond, far)]
            self.kerf_area += (beyond - before) * (end - start)
        left = [half for half in halves if half[0] < half[1] and half[2] < half[3]]
        self.parts += left
        comes_free = sorted(name for name, region in self.named.items() if region in left)
        assert comes_free == sorted(cut.yields)
        self.freed += comes_free


def goes_through(cut: Cut, part: Region) -> bool:
    """Whether the blade of a cut runs right through a part."""
    start, end, near, far = part
    if cut.kind is CutKind.CROSSCUT:
        return start - KERF < cut.at_nm < end and (cut.from_nm, cut.to_nm) == (near, far)
    return near - KERF < cut.at_nm < far and (cut.from_nm, cut.to_nm) == (start, end)


def lies_in(region: Region, part: Region) -> bool:
    """Whether a region lies inside a part."""
    return part[0] <= region[0] and region[1] <= part[1] and part[2] <= region[2] and region[3] <= part[3]


def area(region: Region) -> int:
    """Give the area of a region. [nm²]"""
    return (region[1] - region[0]) * (region[3] - region[2])


def region_of(offcut: Offcut) -> Region:
    """Give where an offcut lies."""
    return offcut.along_from_nm, offcut.along_to_nm, offcut.across_from_nm, offcut.across_to_nm


def at_bench(board: Board, regions: list[Region], cuts: BoardCuts) -> Bench:
    """Make every cut of a list in order."""
    bench = Bench(
        parts=[(0, board.length_nm, 0, board.width_start_nm)],
        named={f"{number}a": region for number, region in enumerate(regions, start=1)},
        keep=[region_of(offcut) for offcut in cuts.offcuts],
    )
    for cut in cuts.cuts:
        bench.make(cut)
    return bench


@given(cut_up_boards())
def test_cuts_in_order_free_every_piece_and_nothing_is_cut_through(
    case: tuple[Board, list[Region]],
) -> None:
    """Following the list cut by cut frees each piece just when the list says so."""
    board, regions = case
    job, layout = job_and_layout(board, regions)
    (cuts,) = saw_boards(job, layout)
    bench = at_bench(board, regions, cuts)
    assert sorted(bench.freed) == sorted(cuts.piece_labels) == sorted(bench.named)
    assert all(region in bench.parts for region in regions)


@given(cut_up_boards())
def test_wood_is_conserved(case: tuple[Board, list[Region]]) -> None:
    """Pieces, kerfs, offcuts and scrap make up the board; the wood spent is all but the offcuts."""
    board, regions = case
    job, layout = job_and_layout(board, regions)
    (cuts,) = saw_boards(job, layout)
    bench = at_bench(board, regions, cuts)
    left = [part for part in bench.parts if part not in regions]
    for offcut in bench.keep:
        assert sum(lies_in(offcut, part) for part in left) == 1
    kept = sum(map(area, bench.keep))
    scrap = sum(map(area, left)) - kept
    assert scrap >= 0
    assert sum(map(area, regions)) + bench.kerf_area + kept + scrap == board.face_area_nm2
    spent = wood_spent_nm2(job, layout.pieces)
    assert spent == board.face_area_nm2 - kept
    assert spent == recount(job, layout.surfaces[0]).wood_spent_nm2


@st.composite
def strewn_pieces(draw: st.DrawFn) -> tuple[Board, list[Region]]:
    """Give a board with pieces strewn over it, kerfs apart, which straight cuts may part or not."""
    board = Board(
        id="B", length_nm=60 * INCH, width_start_nm=16 * INCH, width_end_nm=16 * INCH, thickness_nm=INCH
    )
    regions: list[Region] = []
    for _ in range(draw(st.integers(2, 6))):
        start, near = draw(st.integers(1, 40)) * INCH, draw(st.integers(1, 10)) * INCH
        length, width = draw(st.integers(4, 19)) * INCH, draw(st.integers(1, 5)) * INCH
        region = (start, start + length, near, near + width)
        if all(apart(region, other) for other in regions):
            regions.append(region)
    return board, regions


def apart(one: Region, other: Region) -> bool:
    """Whether a kerf fits between two regions, one way or the other."""
    return (
        one[1] + KERF <= other[0]
        or other[1] + KERF <= one[0]
        or one[3] + KERF <= other[2]
        or other[3] + KERF <= one[2]
    )


@given(strewn_pieces(), st.integers(2, 18), st.integers(2, 18))
def test_whatever_the_checker_lets_the_saws_do_gets_an_order_of_work(
    case: tuple[Board, list[Region]], crosscut: int, rip: int
) -> None:
    """The checker's rule on saws and the search for the fewest passes agree on what can be freed."""
    board, regions = case
    job, layout = job_and_layout(board, regions)
    saws = (
        Saw(name="crosscut saw", cuts=SawKind.CROSSCUT, capacity_nm=crosscut * INCH),
        Saw(name="table saw", cuts=SawKind.RIP, capacity_nm=rip * INCH),
    )
    found = check_layout(replace(job, saws=saws), layout)
    refused = {finding.code for finding in found} & SAW_FINDINGS
    sawing = Sawing(crosscut_kerf_nm=KERF, rip_kerf_nm=KERF, crosscut_nm=crosscut * INCH, rip_nm=rip * INCH)
    patches = [Patch(*region) for region in regions]
    assert (fewest_passes(board, patches, (), sawing, rip_first=False) is None) is bool(refused)


@given(cut_up_boards())
def test_no_more_passes_than_sides_to_be_cut(case: tuple[Board, list[Region]]) -> None:
    """No piece ever takes more than its four sides, and none is cut that lies on the board's own edge."""
    board, regions = case
    (cuts,) = saw_boards(*job_and_layout(board, regions))
    whole = (0, board.length_nm, 0, board.width_start_nm)
    sides = sum(own != found for region in regions for own, found in zip(region, whole, strict=True))
    assert len(cuts.cuts) <= sides

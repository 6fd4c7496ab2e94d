"""Everything that can be wrong with a surface, told on its line and with its mend."""

import pytest

from job_texts import (
    BOX,
    HEAD,
    JOB,
    START,
    SURFACE,
    WIDE,
    framed,
    outlined,
    problems,
    read,
    with_part,
)

CASES = [
    # Outline.
    pytest.param(
        outlined('width = "12 ft"'),
        3,
        "surface 1 needs its outline in one way: width and height, "
        "or heights = [{at = ..., height = ...}, ...], or corners = [[x, y], ...]",
        id="half-an-outline",
    ),
    pytest.param(
        outlined("width = 1\nheight = 1\ncorners = [[0, 0], [1, 0], [1, 1]]"),
        3,
        "surface 1 needs its outline in one way",
        id="two-outlines",
    ),
    pytest.param(
        outlined("heights = [{at = 0, height = 90}]"),
        5,
        "heights need the height at both ends at least: begin with at = 0 and end at the right end",
        id="one-height",
    ),
    pytest.param(
        outlined("heights = [{at = 1, height = 90}, {at = 9, height = 90}]"),
        5,
        "heights need the height at both ends at least",
        id="heights-from-elsewhere",
    ),
    pytest.param(
        outlined("heights = [{at = 0, height = 90}, {at = 90, height = 90}, {at = 80, height = 90}]"),
        5,
        "heights must go from left to right: each `at` lies beyond the one before",
        id="heights-back-and-forth",
    ),
    pytest.param(
        outlined("heights = [{at = 0, height = 0}, {at = 90, height = 0}]"),
        5,
        "heights are all 0: at least one must be more than nothing",
        id="no-height-at-all",
    ),
    pytest.param(
        outlined("heights = [{at = 0, height = 90}, {at = 90}]"),
        5,
        'height is missing: add height = "2 ft 6"',
        id="no-height",
    ),
    pytest.param(
        outlined("corners = [[0, 0], [9, 0], [18, 0]]"),
        5,
        "corners need at least three that do not lie on one line",
        id="flat-corners",
    ),
    pytest.param(
        outlined("corners = [[0, 0], [9, 9], [0, 9], [9, 0]]"),
        5,
        "corners cross or touch their own path: go round the outline once, corner by corner",
        id="crossed-corners",
    ),
    pytest.param(
        outlined("corners = [[1, 0], [9, 0], [9, 9]]"),
        5,
        "corners must be measured from the lower left of the surface: the smallest x and the "
        "smallest y must be 0",
        id="corners-from-elsewhere",
    ),
    pytest.param(
        outlined("corners = [[0, 0], [9, 0, 1], [9, 9]]"),
        5,
        "corners 2 has more than two lengths: write it like [x, y]",
        id="three-numbers",
    ),
    pytest.param(
        outlined("corners = [\n[0, 0],\n[9],\n[9, 9]]"),
        7,
        "corners 2 needs two lengths, like [x, y]",
        id="one-number",
    ),
    pytest.param(
        outlined("corners = [[0, 0], [9, 0], [9,\n'x']]"), 6, "corners 3 “x” is not a length", id="bad-corner"
    ),
    pytest.param(
        outlined(WIDE + 'start = "left"'),
        7,
        "start does not fit: horizontal courses start at the bottom or the top",
        id="start-across",
    ),
    pytest.param(
        JOB + SURFACE, 11, "id wall is used for another surface: give each its own", id="surface-twice"
    ),
    # Framing.
    pytest.param(
        HEAD + START + WIDE, 3, "framing is missing: add a table [surface.framing] with", id="no-framing"
    ),
    pytest.param(
        framed('width = "1-1/2"'),
        7,
        "framing says nothing to nail to: give spacing and first_centre, or centres = [...], or solid = true",
        id="empty-framing",
    ),
    pytest.param(
        framed("spacing = 16"),
        7,
        "framing needs spacing and first_centre together: where is the first one, and how far is the next?",
        id="half-a-spacing",
    ),
    pytest.param(
        framed("solid = true\ncentres = [1]"),
        8,
        "solid is both solid and listed: keep solid = true, or the centres",
        id="solid-and-listed",
    ),
    pytest.param(
        framed("spacing = 16\nfirst_centre = 17"),
        9,
        "first_centre lies beyond the spacing, so that one would be missing before it: "
        "measure to the first one",
        id="late-first-one",
    ),
    pytest.param(
        framed('spacing = "1/64"\nfirst_centre = 0'),
        7,
        "framing does not fit: the spacing gives more than 1000 of them: check its unit",
        id="too-many",
    ),
    pytest.param(
        framed("centres = [16, 200]"),
        8,
        "centres has 16' 8\", which is beyond the surface (12' 0\"): check where it is measured from",
        id="stud-beyond",
    ),
    pytest.param(
        framed('centres = [16, 32]\nruns = "horizontal"'),
        7,
        "framing runs horizontal like the courses, so no board would cross it: turn the courses, or fix "
        "strips across the framing and list those, or fix solid backing and write solid = true",
        id="along-the-framing",
    ),
    # Openings and the rest.
    pytest.param(
        with_part("[[surface.opening]]\n" + BOX.replace("left = 10", "left = 300")),
        10,
        "opening-1 lies wholly outside the surface: check where it is measured from",
        id="opening-outside",
    ),
    pytest.param(
        with_part("[[surface.opening]]\nid = 'door'\n" + BOX.replace("left = 10", "left = 130")),
        10,
        'opening door reaches 6" beyond the right of the surface: check its place and its size',
        id="opening-beyond",
    ),
    pytest.param(
        with_part("[[surface.cut_out]]\ncentre = [20, 95]\nwidth = 2\nheight = 4"),
        10,
        'cut-out-1 reaches 1" beyond the top of the surface: check its place and its size',
        id="cut-out-beyond-the-top",
    ),
    pytest.param(
        with_part("[[surface.cut_out]]\ncentre = [0, 1]\nwidth = 2\nheight = 2"),
        10,
        'cut-out-1 reaches 1" beyond the left of the surface',
        id="cut-out-beyond-the-left",
    ),
    pytest.param(
        with_part("[[surface.cut_out]]\ncentre = [20, 0]\nwidth = 2\nheight = 2"),
        10,
        'cut-out-1 reaches 1" beyond the bottom of the surface',
        id="cut-out-beyond-the-bottom",
    ),
    pytest.param(
        with_part("[[surface.opening]]\nid = 'a'\n" + BOX + "[[surface.opening]]\nid = 'b'\n" + BOX),
        16,
        "opening b overlaps opening a: check their places, or make them one",
        id="openings-overlap",
    ),
    pytest.param(
        with_part("[[surface.opening]]\nid = 'a'\n" + BOX + "[[surface.cut_out]]\n" + BOX),
        16,
        "cut-out-1 lies in opening a, where no board hangs: check its place, or leave it out",
        id="cut-out-in-opening",
    ),
    pytest.param(
        with_part("[[surface.concealed]]\nid = 'x'\n" + BOX + "[[surface.concealed]]\nid = 'x'\n" + BOX),
        17,
        "concealed zone x is named twice on this surface: give each its own id",
        id="name-twice",
    ),
    pytest.param(
        with_part("[[surface.concealed]]\n" + BOX.replace("bottom = 10", "bottom = 96")),
        10,
        "concealed zone concealed-1 lies wholly outside",
        id="concealed-outside",
    ),
    pytest.param(
        with_part('[[surface.keep_out]]\nvertical = "13 ft"\nwidth = 2'),
        10,
        "keep-out-1 lies wholly outside the surface",
        id="keep-out-outside",
    ),
    pytest.param(
        with_part("[[surface.cut_out]]\nwidth = 2\nheight = 2"),
        10,
        "cut_out 1 needs its place: give left and bottom, or centre = [x, y]",
        id="cut-out-nowhere",
    ),
    pytest.param(
        with_part("[[surface.cut_out]]\n" + BOX + "centre = [9, 9]"),
        15,
        "centre is given twice over: keep either centre, or left and bottom",
        id="cut-out-twice-over",
    ),
    pytest.param(
        with_part("[[surface.keep_out]]\nvertical = 9"),
        10,
        "keep_out 1 needs a width: how wide is what no nail may reach?",
        id="keep-out-without-width",
    ),
    pytest.param(
        with_part("[[surface.keep_out]]\nwidth = 9"),
        10,
        "keep_out 1 needs its place: give vertical = x, or horizontal = y, or left, bottom, width and height",
        id="keep-out-nowhere",
    ),
    pytest.param(
        with_part("[[surface.keep_out]]\nwidth = 9\nvertical = 9\nhorizontal = 9"),
        10,
        "keep_out 1 is placed twice over: keep one of vertical, horizontal, or left, bottom and height",
        id="keep-out-twice-over",
    ),
    pytest.param(
        with_part("[[surface.keep_out]]\nwidth = 9\nvertical = 9\nheight = 9"),
        10,
        "keep_out 1 is placed twice over",
        id="keep-out-line-and-box",
    ),
    pytest.param(
        with_part(f"[[surface.keep_out]]\nwidth = 9\nvertical = 9\nwhat = '{'x' * 501}'"),
        13,
        "what is too long: at most 500 characters",
        id="long-text",
    ),
]


@pytest.mark.parametrize(("text", "line", "sentence"), CASES)
def test_each_problem_is_told_on_its_line(text: str, line: int | None, sentence: str) -> None:
    """The problem is told with its line, what is wrong and how to mend it."""
    told = problems(text)
    assert any(where == line and what.startswith(sentence) for where, what in told), told


def test_parts_that_stand_apart_are_right() -> None:
    """Two openings side by side, touching, and a cut-out beside them."""
    other = BOX.replace("left = 10", "left = 30")
    beside = BOX.replace("left = 10", "left = 60")
    text = with_part(f"[[surface.opening]]\n{BOX}[[surface.opening]]\n{other}[[surface.cut_out]]\n{beside}")
    assert problems(text) == []


def test_trim_that_does_not_hide_the_gap_is_remarked() -> None:
    """Trim narrower than the gap is the user's choice, but it is told."""
    text = with_part("[surface.trim]\ntop = '1/8'\nleft = 1\n[[surface.opening]]\n" + BOX + "trim = '1/16'")
    report = read(text).report
    assert report.problems == ()
    assert [(remark.line, remark.what) for remark in report.remarks] == [
        (11, 'the top trim covers 1/8" but expansion_gap leaves 1/4" open: the gap will show'),
        (
            18,
            'the trim of opening-1 covers 1/16" but expansion_gap leaves 1/4" open: the gap will show',
        ),
    ]


def test_an_opening_cut_by_a_slope_is_remarked() -> None:
    """A window half outside a gable is doubtful; a door cut by a sloping floor is as it should be."""
    gable = outlined("corners = [[0, 0], [100, 0], [50, 50]]") + "[[surface.opening]]\n" + BOX
    report = read(gable).report
    assert report.problems == ()
    assert [(remark.line, remark.what) for remark in report.remarks] == [
        (8, "opening-1 lies outside the outline by 50 % of its area: check its place and the outline")
    ]
    sloping = outlined("heights = [{at = 0, height = 96}, {at = 100, height = 95}]\nlevel = 'ceiling'")
    door = "[[surface.opening]]\nleft = 40\nbottom = 0\nwidth = 30\nheight = 80\n"
    assert read(sloping + door).report.remarks == ()


def test_a_surface_with_nothing_to_cover_is_asked_about() -> None:
    """A layout of nothing would be called enough."""
    door = "left = 0\nbottom = 0\nwidth = 144\nheight = 60\n"
    window = "left = 0\nbottom = 60\nwidth = 144\nheight = 36\n"
    text = with_part(f"[[surface.opening]]\n{door}[[surface.opening]]\n{window}")
    assert problems(text) == [(10, "the openings leave nothing of the surface: check their sizes")]
    trim = with_part("[surface.trim]\ntop = 48\nbottom = 48")
    assert problems(trim) == [(10, "the trim covers the whole surface: check its sizes")]


def test_a_first_centre_beyond_the_surface_is_told_as_such() -> None:
    """Most likely it was meant in another unit; that there is no framing at all would lead astray."""
    ((_, what),) = problems(framed("spacing = '16 ft'\nfirst_centre = '16 ft'"))
    assert "the first centre is beyond the surface: check first_centre and its unit" in what

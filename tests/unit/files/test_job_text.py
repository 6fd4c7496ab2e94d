"""Everything that can be wrong with job.toml, told on its line and with its mend."""

import pytest

from plankwright.files.job_text import JobText
from plankwright.measure import INCH, MILLIMETRE, System, Unit
from plankwright.model import JointPolicy, SawKind

HEAD = 'name = "hall"\nunits = "inches"\n'
WIDE = 'width = "12 ft"\nheight = "8 ft"\n'
STUDS = "spacing = 16\nfirst_centre = 16\n"
START = '[[surface]]\nid = "wall"\n'
BACKING = "[surface.framing]\n"
SURFACE = START + WIDE + BACKING + STUDS
JOB = HEAD + SURFACE


def read(text: str) -> JobText:
    """Read a text as job.toml."""
    return JobText(text.encode(), "job.toml")


def problems(text: str) -> list[tuple[int | None, str]]:
    """Give the line and the sentence of each problem."""
    return [(problem.line, problem.what) for problem in read(text).report.problems]


def outlined(outline: str) -> str:
    """Give a job whose wall has another outline, on line 5."""
    return HEAD + START + outline + "\n" + BACKING + "solid = true\n"


def framed(framing: str) -> str:
    """Give a job with other framing, from line 8 on."""
    return HEAD + START + WIDE + BACKING + framing + "\n"


def with_part(part: str) -> str:
    """Give a job with something more on its wall, from line 10 on."""
    return JOB + part + "\n"


BOX = "left = 10\nbottom = 10\nwidth = 20\nheight = 20\n"

CASES = [
    pytest.param("", None, "the file is empty: fill it in as the template shows", id="empty"),
    pytest.param(
        "name =\n",
        1,
        "cannot be read from here on (invalid value): write a key, an equals sign and a value, text in quotes, "
        'inches best in words, like width = "7 ft 3-5/8 in"',
        id="syntax",
    ),
    pytest.param(JOB + "[[saw", 10, "cannot be read from here on (expected ']]'", id="syntax-at-the-end"),
    pytest.param(
        'name = "a"\nname = "b"\n',
        2,
        "the key or table here is given before: keep one of them",
        id="key-twice",
    ),
    pytest.param("x = " + "[" * 5000, None, "brackets are nested too deeply to be read", id="deep"),
    pytest.param(
        SURFACE + "name = 1", None, 'units is missing: add units = "inches", "feet", "mm"', id="no-units"
    ),
    pytest.param(
        'units = "mm"\n' + SURFACE, None, 'name is missing: add name = "back bedroom"', id="no-name"
    ),
    pytest.param(HEAD, None, "surface is missing: add a table that begins with [[surface]]", id="no-surface"),
    pytest.param(
        HEAD + "surface = []\n",
        3,
        "surface is an empty list: describe what is to be covered",
        id="empty-list",
    ),
    pytest.param(
        JOB.replace("[[surface]]", "[surface]"),
        3,
        "surface must be written with double brackets, [[surface]], since there can be several",
        id="single-brackets",
    ),
    pytest.param(
        with_part("[surface.opening]\n" + BOX),
        10,
        "opening must be written with double brackets, [[surface.opening]], since there can be several",
        id="single-brackets-inside",
    ),
    pytest.param("surface = 1\n" + HEAD, 1, "surface must be a list in square brackets", id="no-list"),
    pytest.param("rules = 1\n" + JOB, 1, "rules must be a table of keys and values", id="no-table"),
    pytest.param(
        JOB.replace('"inches"', '"inch"'),
        2,
        "units is “inch” but must be inches, feet, mm, cm or m (did you mean inches?)",
        id="unknown-word",
    ),
    pytest.param(JOB.replace('"hall"', "7"), 1, "name must be text in quotes", id="no-text"),
    pytest.param(JOB.replace('"hall"', '" "'), 1, "name is empty: give it a name", id="empty-name"),
    pytest.param(
        JOB.replace('"hall"', f'"{"x" * 61}"'),
        1,
        "name must be one line of up to 60 printable characters",
        id="long-name",
    ),
    pytest.param(
        "decimal_comma = 1\n" + JOB, 1, "decimal_comma must be true or false, without quotes", id="flag"
    ),
    pytest.param(
        'fraction = "1/3"\n' + JOB,
        1,
        "fraction is “1/3” but must be 1, 1/2, 1/4, 1/8, 1/16, 1/32 or 1/64",
        id="no-tape-fraction",
    ),
    pytest.param(
        'fraction = "1/16"\n' + JOB.replace("inches", "mm"),
        1,
        "fraction is for an inch tape, but units is metric: leave it out, or give millimetre_step",
        id="fraction-in-metric",
    ),
    pytest.param(
        'millimetre_step = "1 mm"\n' + JOB,
        1,
        "millimetre_step is for a metric tape, but units is not: leave it out, or give fraction",
        id="step-in-inches",
    ),
    pytest.param(
        "millimetre_step = 0.7\n" + JOB.replace("inches", "mm"),
        1,
        'millimetre_step must be "1 mm" or "0.5 mm"',
        id="odd-step",
    ),
    pytest.param(
        outlined('widht = "12 ft"\nheight = 96').replace("solid = true", STUDS),
        5,
        "widht is not a key that is known here (did you mean width?)",
        id="mistyped-key",
    ),
    pytest.param(
        with_part("[surface.trim]\nupstairs = 1"),
        11,
        "upstairs is not a key that is known here: the keys here are bottom, top, left, right",
        id="unknown-key",
    ),
    pytest.param(
        JOB.replace('"12 ft"', '"12 x"'),
        5,
        "width “12 x” has an unknown unit, x: write ' or ft",
        id="bad-length",
    ),
    pytest.param(
        JOB.replace('"12 ft"', "true"), 5, "width “true” is not a length: write a number", id="no-length"
    ),
    pytest.param(JOB.replace('"12 ft"', "2020-02-02"), 5, "width “2020-02-02” is not a length", id="a-date"),
    pytest.param(
        JOB.replace('"12 ft"', "nan"), 5, "width “nan” is no length that could be", id="not-a-number"
    ),
    pytest.param(
        JOB.replace('"12 ft"', "0x" + "f" * 6000),
        5,
        "width “a number” is no length that could",
        id="huge-number",
    ),
    pytest.param(
        JOB.replace('"12 ft"', "-12"), 5, "width “-12” is negative: a length is zero or more", id="negative"
    ),
    pytest.param(JOB.replace('"12 ft"', "0"), 5, "width must be more than nothing", id="zero"),
    # Outline.
    pytest.param(
        outlined('width = "12 ft"'),
        3,
        "surface 1 needs its outline in one way: width and height, or heights = [{at = ..., height = ...}, ...], "
        "or corners = [[x, y], ...]",
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
        "height is missing: add it",
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
        "corners must be measured from the lower left of the surface: the smallest x and the smallest y must be 0",
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
        "first_centre lies beyond the spacing, so that one would be missing before it: measure to the first one",
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
        "framing runs horizontal like the courses, so no board would cross it: turn the courses, or fix strips "
        "across the framing and list those, or fix solid backing and write solid = true",
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
    # Rules and saws.
    pytest.param(
        JOB + "[rules]\nstager = 9",
        11,
        "stager is not a key that is known here (did you mean stagger?)",
        id="rule",
    ),
    pytest.param(JOB + "[rules]\nhold_back = -1", 11, "hold_back must be 0 or more", id="negative-count"),
    pytest.param(JOB + "[rules]\nhold_back = 99999", 11, "hold_back must be 10000 or less", id="large-count"),
    pytest.param(
        JOB + "[rules]\nhold_back = 1.5", 11, "hold_back must be a whole number", id="part-of-a-board"
    ),
    pytest.param(JOB + "[rules]\nnailing_points = 0", 11, "nailing_points must be 1 or more", id="no-nails"),
    pytest.param(
        JOB + "[rules]\nshortest_piece = 0", 11, "shortest_piece must be more than nothing", id="shortest"
    ),
    pytest.param(
        JOB + "[rules]\njoints = 'often'",
        11,
        "joints is “often” but must be never, count or stagger",
        id="policy",
    ),
    pytest.param(
        JOB + "[rules]\nwidth_tolerance = 1",
        11,
        "rules do not fit together: width_tolerance is more than gap_tolerance",
        id="tolerances",
    ),
    pytest.param(
        JOB + "[[saw]]\nname = 'a'\ncapacity = 9",
        10,
        'cuts is missing: add cuts = "crosscut" or "rip"',
        id="saw",
    ),
]


@pytest.mark.parametrize(("text", "line", "sentence"), CASES)
def test_each_problem_is_told_on_its_line(text: str, line: int | None, sentence: str) -> None:
    """The problem is told with its line, what is wrong and how to mend it."""
    told = problems(text)
    assert any(where == line and what.startswith(sentence) for where, what in told), told


@pytest.mark.parametrize(
    ("text", "count"),
    [(JOB, 0), (outlined(WIDE + 'start = "left"'), 1), (with_part("[surface.trim]\nx = 1\ny = 2"), 2)],
)
def test_nothing_else_is_told(text: str, count: int) -> None:
    """One slip is one problem."""
    assert len(problems(text)) == count


def test_a_file_that_is_no_text_is_told() -> None:
    """Bytes that are not UTF-8 are refused."""
    (problem,) = JobText(b"\xff\xfe\x00", "job.toml").report.problems
    assert problem.what == "the file is not UTF-8 text: save it as plain text in UTF-8"


def test_a_byte_order_mark_and_windows_line_ends_are_let_pass() -> None:
    """What editors on Windows add changes nothing, not even the lines told."""
    text = "\ufeff" + (JOB + "[rules]\nstager = 1\n").replace("\n", "\r\n")
    assert problems(text) == [(11, "stager is not a key that is known here (did you mean stagger?)")]


def test_every_problem_is_told_at_once() -> None:
    """Problems of the text, of single keys and of the sense of what is left all come together."""
    text = with_part(
        "[[surface.opening]]\nid = 'a'\nleft = 10\nbottom = 'x'\nwidth = 2\nheight = 2\n"
        "[[surface.opening]]\nid = 'b'\n"
        + BOX
        + "[[surface.opening]]\nid = 'c'\n"
        + BOX
        + "[rules]\nstager = 1"
    )
    assert [line for line, _ in problems(text)] == [13, 22, 29]
    assert "c overlaps opening b" in problems(text)[1][1]


def test_a_surface_that_cannot_be_read_does_not_hide_the_next() -> None:
    """The second surface is judged, on its own lines, although the first is left out."""
    text = JOB.replace('"12 ft"', '"12 x"') + SURFACE.replace("wall", "other").replace("16", "200")
    assert [line for line, _ in problems(text)] == [5, 14]


def test_trim_that_does_not_hide_the_gap_is_remarked() -> None:
    """Trim narrower than the gap is the user's choice, but it is told."""
    text = with_part("[surface.trim]\ntop = '1/8'\nleft = 1\n[[surface.opening]]\n" + BOX + "trim = '1/16'")
    report = read(text).report
    assert report.problems == ()
    assert [(remark.line, remark.what) for remark in report.remarks] == [
        (11, 'the top trim covers 1/8" but expansion_gap leaves 1/4" open: the gap will show'),
        (
            18,
            'the trim of opening opening-1 covers 1/16" but expansion_gap leaves 1/4" open: the gap will show',
        ),
    ]


def test_an_opening_cut_by_a_slope_is_remarked() -> None:
    """A window half outside a gable is doubtful; a door whose foot a sloping floor cuts is as it should be."""
    gable = outlined("corners = [[0, 0], [100, 0], [50, 50]]") + "[[surface.opening]]\n" + BOX
    report = read(gable).report
    assert report.problems == ()
    assert [(remark.line, remark.what) for remark in report.remarks] == [
        (8, "opening-1 lies outside the outline by 50 % of its area: check its place and the outline")
    ]
    sloping = outlined("heights = [{at = 0, height = 96}, {at = 100, height = 95}]\nlevel = 'ceiling'")
    door = "[[surface.opening]]\nleft = 40\nbottom = 0\nwidth = 30\nheight = 80\n"
    assert read(sloping + door).report.remarks == ()


def test_what_is_right_is_read() -> None:
    """A job is read with its own words for units, rules and saws."""
    text = (
        JOB
        + "[rules]\njoints = 'never'\nstagger = '1 ft'\n[[saw]]\nname = 'saw'\ncuts = 'rip'\ncapacity = 8\n"
    )
    job = read(text)
    assert job.report.problems == ()
    assert (job.name, job.notation.unit, job.tape.denominator) == ("hall", Unit.INCH, 16)
    assert (job.rules.joints, job.rules.stagger_nm) == (JointPolicy.NEVER, 12 * INCH)
    assert [(saw.name, saw.cuts, saw.capacity_nm) for saw in job.saws] == [("saw", SawKind.RIP, 8 * INCH)]


def test_metric_is_read() -> None:
    """With metric units the tape is metric, and a comma can be the decimal mark."""
    text = 'decimal_comma = true\nmillimetre_step = "0,5 mm"\n' + JOB.replace("inches", "mm").replace(
        "12 ft", "2,4 m"
    )
    job = read(text.replace("16", "400"))
    assert job.report.problems == ()
    assert (job.tape.system, job.tape.step_nm) == (System.METRIC, MILLIMETRE // 2)
    assert job.surfaces[0].width_nm == 2400 * MILLIMETRE

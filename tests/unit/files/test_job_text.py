"""Everything that can be wrong with job.toml, told on its line and with its mend."""

import pytest

from job_texts import (
    BOX,
    HEAD,
    JOB,
    STUDS,
    SURFACE,
    WIDE,
    outlined,
    problems,
    read,
    with_part,
)
from plankwright.files.job_text import JobText
from plankwright.files.toml_text import parse_toml
from plankwright.measure import INCH, MILLIMETRE, System, Unit
from plankwright.model import JointPolicy, SawKind

CASES = [
    pytest.param("", None, "the file is empty: fill it in as the template shows", id="empty"),
    pytest.param(
        "name =\n",
        1,
        "cannot be read from here on (invalid value): write a key, an equals sign and a value, "
        'text in quotes, inches best in words, like width = "7 ft 3-5/8 in"',
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
        "name is too long for a name: at most 60 characters",
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
    (problem,) = JobText(parse_toml(b"\xff\xfe\x00"), "job.toml").report.problems
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

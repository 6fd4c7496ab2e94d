"""Texts of job.toml for tests: one small wall that is right, and ways to spoil it line by line."""

from plankwright.files.job_text import JobText
from plankwright.files.toml_text import parse_toml

HEAD = 'name = "hall"\nunits = "inches"\n'
WIDE = 'width = "12 ft"\nheight = "8 ft"\n'
STUDS = "spacing = 16\nfirst_centre = 16\n"
START = '[[surface]]\nid = "wall"\n'
BACKING = "[surface.framing]\n"
SURFACE = START + WIDE + BACKING + STUDS
JOB = HEAD + SURFACE


def read(text: str) -> JobText:
    """Read a text as job.toml."""
    return JobText(parse_toml(text.encode()), "job.toml")


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

"""TOML is parsed with the line of each part, or it is said why it is none."""

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plankwright.files.report import Where
from plankwright.files.toml_text import parse_toml

TEXT = 'name = "hall"\n\n[[surface]]\nid = "wall"\n\n[[surface.opening]]\nleft = 3\n'


def trouble(content: bytes) -> tuple[int | None, str]:
    """Give the line and the sentence of the one trouble with a file."""
    given_ = parse_toml(content)
    assert given_.raw == {}
    ((where, sentence),) = given_.troubles
    return given_.place(where)[1], sentence


@pytest.mark.parametrize(
    ("where", "line"),
    [
        (("name",), 1),
        (("surface", 0), 3),
        (("surface", 0, "id"), 4),
        (("surface", 0, "opening", 0, "left"), 7),
        (("surface", 0, "opening", 0, "width"), 6),
        (("surface", 0, "width"), 3),
    ],
)
def test_every_part_has_its_line(where: Where, line: int) -> None:
    """What is missing has that of the table that lacks it."""
    given_ = parse_toml(TEXT.encode())
    assert given_.raw == tomllib.loads(TEXT)
    assert given_.troubles == ()
    assert given_.place(where) == (f"line {line}", line)


def test_what_is_nowhere_in_the_file_has_no_line() -> None:
    """Such as a table that is missing altogether."""
    assert parse_toml(TEXT.encode()).place(("rules",)) == ("", None)


@pytest.mark.parametrize("text", [TEXT, TEXT.replace("\n", "\r\n"), "\ufeff" + TEXT])
def test_line_ends_and_the_mark_of_utf_8_do_not_matter(text: str) -> None:
    """As other systems write them."""
    assert parse_toml(text.encode()).raw == tomllib.loads(TEXT)


@pytest.mark.parametrize(
    ("content", "line", "sentence"),
    [
        (b"\xff\xfe\x00", None, "the file is not UTF-8 text: save it as plain text in UTF-8"),
        (b"", None, "the file is empty: fill it in as the template shows"),
        (b"# only a comment\n", None, "the file is empty"),
        (b"a = " + b"[" * 5_000, None, "brackets are nested too deeply to be read"),
        (b"a = 1\nb =\n", 2, "cannot be read from here on (invalid value)"),
        (b"a = 1\n[b", 2, "cannot be read from here on"),
        (b"a = 1\nb = 2\na = 3\n", 3, "the key or table here is given before: keep one of them"),
    ],
)
def test_what_is_no_toml_is_told_in_one_sentence(content: bytes, line: int | None, sentence: str) -> None:
    """With its line where it has one."""
    found, told = trouble(content)
    assert found == line
    assert told.startswith(sentence)


@given(st.binary() | st.text().map(str.encode))
def test_anything_is_parsed_or_told(content: bytes) -> None:
    """Never a traceback; a place for whatever is asked."""
    given_ = parse_toml(content)
    assert bool(given_.raw) != bool(given_.troubles)
    assert given_.place(("surface", 0))[1] in {None, *range(1, content.count(b"\n") + 2)}

"""Each key and each entry of a TOML text is found on its line."""

import tomllib
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plankwright.files.report import Where
from plankwright.files.toml_lines import lines_of, nearest_line

TEXT = (
    """# A comment with [brackets] and a = sign

name = "hall"  # behind a value
"quoted key" = 'it"""
    """'
dotted.one = 1
dotted."t.w.o" = 2
[table]
list = [
  1, # one
  [2,
   3],
  { at = "a, b]", deep = { er = 5 } },
]
text = \"\"\"
not = a key
[[not.a.table]] \\\"""
\"\"\"\"
literal = '''
neither = this
'''
after = true
[[row]]
id = 1
[[row.cell]]
id = 11
[[row.cell]]
id = 12
[row.more]
x = 1979-05-27T07:32:00Z
[[row]]
id = 2
[[row.cell]]
id = 21
"""
)


@pytest.mark.parametrize(
    ("where", "line"),
    [
        (("name",), 3),
        (("quoted key",), 4),
        (("dotted",), 5),
        (("dotted", "one"), 5),
        (("dotted", "t.w.o"), 6),
        (("table",), 7),
        (("table", "list"), 8),
        (("table", "list", 0), 9),
        (("table", "list", 1), 10),
        (("table", "list", 1, 1), 11),
        (("table", "list", 2), 12),
        (("table", "list", 2, "deep", "er"), 12),
        (("table", "text"), 14),
        (("table", "literal"), 18),
        (("table", "after"), 21),
        (("row",), 22),
        (("row", 0), 22),
        (("row", 0, "cell", 1, "id"), 27),
        (("row", 0, "more", "x"), 29),
        (("row", 1), 30),
        (("row", 1, "cell", 0), 32),
        (("row", 1, "cell", 0, "id"), 33),
    ],
)
def test_everything_is_found_on_its_line(where: Where, line: int) -> None:
    """Keys, quoted and dotted ones, arrays, inline tables and tables are found past strings and comments."""
    assert lines_of(TEXT)[where] == line


def test_the_sample_is_toml() -> None:
    """The text above is what the parser takes it for."""
    assert tomllib.loads(TEXT)["row"][0]["cell"][1]["id"] == 12


@pytest.mark.parametrize(
    ("where", "line"),
    [(("row", 0, "missing"), 22), (("row", 0, "cell", 7, "x"), 24), (("nothing",), None), ((), None)],
)
def test_what_is_missing_is_told_where_it_should_be(where: Where, line: int | None) -> None:
    """A missing key has the line of the nearest table around it."""
    assert nearest_line(lines_of(TEXT), where) == line


VALUES = st.recursive(
    st.integers() | st.booleans() | st.text(st.characters(codec="utf-8", exclude_categories=["Cc", "Cs"])),
    lambda inner: (
        st.lists(inner, max_size=3) | st.dictionaries(st.text("ab c.\"'#[", max_size=3), inner, max_size=3)
    ),
    max_leaves=12,
)


def as_toml(value: object, gap: str) -> str:
    """Write a value, arrays over several lines."""
    if isinstance(value, dict):
        return (
            "{"
            + ", ".join(f"{as_toml(key, gap)} = {as_toml(each, gap)}" for key, each in value.items())
            + "}"
        )
    if isinstance(value, list):
        return "[" + ",".join(gap + as_toml(each, gap) for each in value) + gap + "]"
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, int):
        return str(value)
    return '"' + str(value).replace("\\", "\\\\").replace('"', '\\"') + '"'


def paths(value: object, where: Where = ()) -> list[Where]:
    """List the path of everything inside a value."""
    inner: list[tuple[str | int, object]] = []
    if isinstance(value, dict):
        inner = list(value.items())
    elif isinstance(value, list):
        inner = list(enumerate(value))
    return [path for key, each in inner for path in ((*where, key), *paths(each, (*where, key)))]


@given(
    st.dictionaries(st.text("abc-._ '\"#", min_size=1, max_size=4), VALUES, max_size=4),
    st.sampled_from(["", "\n"]),
)
def test_whatever_the_parser_reads_has_a_line(document: dict[str, Any], gap: str) -> None:
    """Every part of any document has a line, and top-level keys the very one that they were written on."""
    lines = [f"{as_toml(key, gap)} = {as_toml(value, gap)}" for key, value in document.items()]
    text = "\n".join(lines)
    assert tomllib.loads(text) == document
    found = lines_of(text)
    assert set(paths(document)) == set(found)
    starts = [1 + sum(line.count("\n") + 1 for line in lines[:number]) for number in range(len(lines))]
    assert [found[key,] for key in document] == starts

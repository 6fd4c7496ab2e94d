"""What nobody should send: ids that are none, fields of no form, values out of all bounds, broken files."""

import io
import zipfile
from datetime import date
from urllib.parse import quote

from hypothesis import strategies as st
from openpyxl import Workbook

from plankwright.files import example_folder

_LONG = 20_000

IDS = st.one_of(
    st.sampled_from(
        (
            *("0", "-1", "1.5", "1e9", "999999999999999999999999", "٣", "nix", "None", "true", " "),
            *("..", "../../etc/passwd", "a/b", "%2e%2e", "\x00", "wall\n", "<b>", "'; DROP TABLE job; --"),
            "x" * 300,
        )
    ),
    st.text(min_size=1, max_size=20),
).map(lambda text: quote(text, safe=""))
"""Ids as they stand in an address."""

NUMBERS = st.sampled_from(
    (
        *("0", "-1", "-5 1/4", "1/0", "1//2", "1e999", "nan", "inf", "9" * 400, "9" * 5_000, "0x10", "1_000"),
        *("٣", "½", "7 ½ ½", "12''", "7' 3-5/8\"", "3 cubits", "5 mm mm", "1e-30", "+", ".", "1.2.3", "1,5"),
        *("100000000000 ft", '1/1000000"', "0.0000001 mm", "12 ft 400 in"),
    )
)
"""Lengths and numbers that are none, or out of all bounds."""

TEXTS = st.one_of(
    st.sampled_from(
        (
            *("", " ", "\t\r\n", "\x00", "a\x00b", "\x1b[31m", "\u202egnp.exe", "\ufeff"),
            *("🪵" * 70, "é" * 61, "<script>alert(1)</script>", "{{ 7 * 7 }}", "=1+1", "@SUM(A1)"),
            *("{% for %}", "../../x", "a;b:c"),
            *("true", "[]", "{}", '{"a": 1}', "null", "-" * 500, "x" * _LONG),
        )
    ),
    st.text(max_size=30),
)

VALUES = st.one_of(NUMBERS, TEXTS)
"""What may stand in a field."""

_DEEP = ".".join(["a"] * 3_000)
ODD_NAMES = st.one_of(
    st.sampled_from(
        (
            *("", ".", "..", "a.", ".a", "a..b", "0", "0.0.0", "-1", "name.name", "name.0", "rules"),
            *(
                "surface",
                "opening.0",
                "opening.x.left",
                "opening.0.left.deep",
                "opening.99999999999999999999.left",
            ),
            *(f"opening.{'9' * 5_000}.left", "opening.٣.left", "__class__", "\x00", "x" * 5_000, _DEEP),
        )
    ),
    st.text(max_size=12),
)
"""Names that no form has."""


def _packed(**entries: bytes) -> bytes:
    content = io.BytesIO()
    with zipfile.ZipFile(content, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, entry in entries.items():
            archive.writestr(name.replace("_", "."), entry)
    return content.getvalue()


def _spreadsheet(*rows: list[str | float | date]) -> bytes:
    book = Workbook()
    sheet = book.create_sheet("tally", 0)
    for row in rows:
        sheet.append(row)
    content = io.BytesIO()
    book.save(content)
    return content.getvalue()


_TALLY = (example_folder() / "tally.csv").read_bytes()
_JOB = (example_folder() / "job.toml").read_bytes()
_CONTENTS = (
    b"",
    b"\x00" * 4_000,
    bytes(range(256)) * 40,
    b"\xff\xfe\x00\x00",
    b"id,length,width\n" + b"A," * 3_000,
    b'id,length,width\n"A,97,5\n',
    b"id;length;width\nA;97;5\n",
    b"id,length,width,thickness\nA,97,5,3/4\nA,97,5,3/4\n",
    "id,length,width,thickness\nÄ,97,5,3/4\n".encode("latin-1"),
    _TALLY[: len(_TALLY) // 2],
    _JOB,
    _JOB[: len(_JOB) // 2],
    b"name = " + b"[" * 3_000,
    b'name = "x"\nsurface = 3\n',
    b"{" + b'"a":{' * 3_000,
    _packed(job_toml=_JOB),
    _packed(job_toml=_JOB, tally_csv=_TALLY)[:-100],
    _packed(job_toml=_JOB, tally_csv=b"\x00", layout_json=b"[]"),
    _packed(job_toml=_JOB, tally_csv=_TALLY, layout_json=b"{}", work_json=b"null"),
    _packed(inner_zip=_packed(inner_zip=_packed(job_toml=_JOB))),
    _packed(**{"../../job.toml": _JOB, "/etc/tally.csv": _TALLY}),
    _packed(job_toml=b"#" * 30_000_000),
    _packed(**{"[Content_Types].xml": b"<Types/>", "xl/workbook.xml": b"<workbook/>"}),
    _spreadsheet(),
    _spreadsheet(["id", "length", "width"], ["A", "=1+1", 1e300], ["B", -5, date(1900, 1, 1)]),
    _spreadsheet(["id", "length", "width"], ["A", 97, 5])[:-200],
)

_NAMES = (
    *("tally.csv", "tally.xlsx", "job.toml", "job.zip", "layout.json", "work.json", "x", "TALLY.CSV", ".csv"),
    *("../../tally.csv", "a\\b\\tally.csv", "tally.csv.exe", "é.csv", "con.toml", "x" * 300 + ".csv"),
)

FILES = st.lists(st.tuples(st.sampled_from(_NAMES), st.sampled_from(_CONTENTS)), min_size=1, max_size=3)
"""Files that are no job and no tally: names and contents."""

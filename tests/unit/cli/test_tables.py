"""Tables as plain text."""

from plankwright.cli.tables import table


def test_columns_line_up() -> None:
    """The first to the left, the others to the right, without blanks at the end."""
    assert table("Pile", ("lot", "boards"), [("hall floor", "7"), ("dado", "12")]).splitlines() == [
        "Pile",
        "lot          boards",
        "-------------------",
        "hall floor        7",
        "dado             12",
    ]


def test_no_rows_make_no_table() -> None:
    """Nobody wants to read headings over nothing."""
    assert table("Pile", ("lot", "boards"), []) == ""

"""What is found in a file is told in its order, and once."""

from plankwright.files.report import Report, whole_file


def test_problems_come_in_the_order_of_the_file_and_once() -> None:
    """Whatever the order of finding."""
    report = Report("tally.csv", lambda where: (f"line {where[0]}", int(where[0])))
    for line in (9, 2, 9):
        report.refuse((line,), "is wrong")
    report.remark((4,), "is odd")
    assert list(map(str, report.problems)) == ["tally.csv, line 2: is wrong", "tally.csv, line 9: is wrong"]
    assert list(map(str, report.remarks)) == ["tally.csv, line 4: is odd"]


def test_a_file_without_places_is_told_as_a_whole() -> None:
    """Where nothing can be located, the file is named alone."""
    report = Report("layout.json", whole_file)
    report.refuse(("a", 1), "is wrong")
    assert str(report.problems[0]) == "layout.json: is wrong"

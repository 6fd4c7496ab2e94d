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


def test_a_problem_keeps_its_path_in_what_was_given() -> None:
    """A face can show it where it was filled in, even while only a part of that is judged."""
    report = Report("job.toml", whole_file, lambda where: ("surface", *where))
    report.refuse((1, "width"), "width is missing")
    assert [problem.path for problem in report.problems] == [("surface", 1, "width")]

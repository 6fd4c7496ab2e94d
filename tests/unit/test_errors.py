"""The tree of errors: its exit codes, its texts, and its way through another process."""

import importlib
import pickle
import pkgutil
from collections.abc import Iterator

import pytest

import plankwright
from plankwright import errors
from plankwright.errors import (
    BadInputError,
    ExitCode,
    FileTroubleError,
    LayoutRefusedError,
    PlankwrightError,
    Problem,
)

WIDE = Problem(
    file="tally.csv", place="line 14", what='the width 73" is wider than a board: mend it', line=14
)
DOOR = Problem(
    file="job.toml", place="surface entry-wall, opening door", what="the height is missing: add it"
)
ALL = [
    PlankwrightError("A plain one."),
    BadInputError([WIDE, DOOR]),
    LayoutRefusedError(["103: a gap", "201: an overlap"]),
    FileTroubleError("tally.csv cannot be read: check that it exists."),
]


def test_problem_reads_file_place_and_sentence() -> None:
    """A problem is one line: where it is, then what is wrong."""
    assert str(WIDE) == 'tally.csv, line 14: the width 73" is wider than a board: mend it'


def test_problem_without_place_reads_file_and_sentence() -> None:
    """A problem of a whole file leaves no empty place behind its name."""
    assert str(Problem(file="tally.csv", place="", what="it has no rows")) == "tally.csv: it has no rows"


def test_bad_input_tells_every_problem_in_order() -> None:
    """Bad input carries all its problems and reads as one line a problem."""
    error = BadInputError(iter([WIDE, DOOR]))
    assert error.problems == (WIDE, DOOR)
    assert str(error).splitlines() == [str(WIDE), str(DOOR)]
    assert isinstance(error, ValueError)


def test_bad_input_without_problem_is_refused() -> None:
    """An error that could not say what to mend is a slip of ours."""
    with pytest.raises(ValueError, match="at least one problem"):
        BadInputError([])


def test_refused_layout_takes_the_blame_and_lists_findings() -> None:
    """The user reads that it is our fault, then each finding on its own line."""
    error = LayoutRefusedError(iter(["103: a gap", "201: an overlap"]))
    assert error.findings == ("103: a gap", "201: an overlap")
    first, *rest = str(error).splitlines()
    assert "our fault" in first
    assert rest == ["103: a gap", "201: an overlap"]


def test_file_trouble_is_no_system_error() -> None:
    """Whoever catches system errors does not swallow ours with them."""
    assert not issubclass(FileTroubleError, OSError)


def test_error_without_message_has_its_default() -> None:
    """No error of ours is ever silent."""
    assert str(FileTroubleError()) == FileTroubleError.default_message
    assert str(PlankwrightError()) == PlankwrightError.default_message


@pytest.mark.parametrize(
    ("kind", "code"),
    [(PlankwrightError, 70), (BadInputError, 2), (LayoutRefusedError, 70), (FileTroubleError, 3)],
)
def test_each_error_has_its_exit_code(kind: type[PlankwrightError], code: int) -> None:
    """Scripts tell the errors apart by their exit codes."""
    assert kind.exit_code == code


def test_every_exit_code_stands_in_the_table() -> None:
    """The table in the module's docstring names each code, and no other."""
    rows = [line.split()[0] for line in (errors.__doc__ or "").splitlines() if line[:1].isdigit()]
    assert rows == [str(int(code)) for code in ExitCode]


@pytest.mark.parametrize("error", ALL, ids=lambda error: type(error).__name__)
def test_error_comes_whole_from_another_process(error: PlankwrightError) -> None:
    """A search that runs in a process of its own hands its errors over undamaged."""
    copy = pickle.loads(pickle.dumps(error))  # noqa: S301 - our own bytes, made one call ago
    assert type(copy) is type(error)
    assert str(copy) == str(error)
    assert vars(copy) == vars(error)


def every_kind(of: type[PlankwrightError]) -> Iterator[type[PlankwrightError]]:
    """Give every kind of error below one, in all rooms."""
    for kind in of.__subclasses__():
        yield kind
        yield from every_kind(kind)


def test_every_error_that_is_made_of_more_than_a_message_says_how_it_is_made_again() -> None:
    """Else it could not come from another process, and a fault of ours would be told instead of it."""
    for module in pkgutil.walk_packages(plankwright.__path__, "plankwright."):
        if not module.name.endswith("__main__"):
            importlib.import_module(module.name)
    own_way = {kind for kind in every_kind(PlankwrightError) if "__init__" in vars(kind)}
    assert BadInputError in own_way
    assert {kind for kind in own_way if "__reduce__" not in vars(kind)} == set()

"""The sound part of a document keeps the way back to where everything stood."""

from plankwright.files.sound_part import SoundPart

RAW = {"name": "x", "row": [{"cell": [1, 2, 3]}, {"cell": [4]}, {"cell": [5]}], "odd": {"a": 1, "b": 2}}


def test_what_is_left_out_is_gone_and_the_rest_is_found_again() -> None:
    """Numbers shift in what is left, and are turned back."""
    sound = SoundPart(RAW)
    for where in (("row", 0, "cell", 1), ("row", 1), ("odd", "a"), ("missing",)):
        sound.leave_out(where)
    assert sound.build() == {"name": "x", "row": [{"cell": [1, 3]}, {"cell": [5]}], "odd": {"b": 2}}
    assert sound.original(("row", 1, "cell", 0)) == ("row", 2, "cell", 0)
    assert sound.original(("row", 0, "cell", 1)) == ("row", 0, "cell", 2)
    assert sound.original(("odd", "b")) == ("odd", "b")


def test_before_anything_is_left_out_paths_stay() -> None:
    """A path beyond what there is, such as a missing entry, stays as it is."""
    sound = SoundPart(RAW)
    assert sound.build() == RAW
    assert sound.original(("row", 7, "x")) == ("row", 7, "x")

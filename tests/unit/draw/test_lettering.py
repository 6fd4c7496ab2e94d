"""How wide text is at most."""

import pymupdf
import pytest

from plankwright.draw.lettering import shortened, text_width, wrapped
from plankwright.draw.scene import Span

PRINTABLE = "".join(map(chr, range(32, 127))) + "·×–°²½¼¾äöüÄÖÜßéèàçñåøæÅØ"


@pytest.mark.parametrize(("bold", "metrics"), [(False, "helv"), (True, "hebo")])
def test_no_character_is_wider_than_the_table_says(bold: bool, metrics: str) -> None:  # noqa: FBT001
    """Helvetica's standard metrics, as a PDF library carries them for its base fonts, never exceed ours."""
    font = pymupdf.Font(metrics)
    for character in PRINTABLE:
        ours = text_width([Span(text=character, bold=bold)], 1.0)
        assert font.glyph_advance(ord(character)) <= ours + 1e-6, character


def test_the_table_is_upper_but_not_absurd() -> None:
    """A label of ours is at most a third wider by the table than in Helvetica."""
    text = '4b · B17 · 87-5/8"'
    ours = text_width([Span(text=text)], 1.0)
    assert ours <= 1.33 * pymupdf.Font("helv").text_length(text, fontsize=1)


def test_a_character_of_another_script_counts_as_wide() -> None:
    """What stands in no table is taken to be wider than a full em."""
    assert text_width([Span(text="板")], 2.0) > 2.0


def test_width_grows_with_size_and_spans_add_up() -> None:
    """Twice the size is twice the width, and two spans are as wide as both."""
    one, two = Span(text="4b", bold=True), Span(text=" B17")
    assert text_width([one, two], 4.0) == pytest.approx(2 * text_width([one, two], 2.0))
    assert text_width([one, two], 2.0) == pytest.approx(text_width([one], 2.0) + text_width([two], 2.0))


def test_a_text_is_cut_off_only_where_it_must_be() -> None:
    """A text that fits stays whole, one that does not ends in an ellipsis, one without room is gone."""
    assert shortened("village hall", 100.0, 2.0) == "village hall"
    cut = shortened("village hall", 10.0, 2.0)
    assert cut.endswith("…")
    assert "village hall".startswith(cut[:-1])
    assert text_width([Span(text=cut)], 2.0) <= 10.0
    assert shortened("village hall", 0.5, 2.0) == ""


def test_lines_are_broken_between_words_and_keep_them_all() -> None:
    """No line is wider than it may be, and nothing is lost."""
    text = "boards out of a demolished village hall"
    lines = wrapped(text, 20.0, 2.0)
    assert len(lines) > 1
    assert " ".join(lines) == text
    assert all(text_width([Span(text=line)], 2.0) <= 20.0 for line in lines)


def test_a_word_that_is_too_wide_is_cut_off() -> None:
    """A line cannot be wider than it may be even for a single word."""
    (line,) = wrapped("tongue-and-groove", 8.0, 2.0)
    assert line.endswith("…")
    assert wrapped("", 8.0, 2.0) == []

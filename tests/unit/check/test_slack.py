"""What counts as a difference."""

from plankwright.check.slack import SLACK, differs, exceeds


def test_a_micrometre_is_no_difference() -> None:
    """Up to a micrometre nothing exceeds or differs; a nanometre more does."""
    assert not exceeds(5_000 + SLACK, 5_000)
    assert not differs(5_000, 5_000 + SLACK)
    assert exceeds(5_001 + SLACK, 5_000)
    assert differs(5_000, 5_001 + SLACK)
    assert not exceeds(0, 5_000)

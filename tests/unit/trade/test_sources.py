"""Sources: each has a key of its own, and says how far it was followed."""

from plankwright.trade.library import sources_by_room
from plankwright.trade.source import Source, Trust


def every_source() -> list[Source]:
    """Gather the sources of all rooms of the trade."""
    return [source for sources in sources_by_room().values() for source in sources]


def test_keys_are_unique() -> None:
    """What is printed and given as JSON refers to them."""
    keys = [source.key for source in every_source()]
    assert len(keys) > 50
    assert sorted(set(keys)) == sorted(keys)


def test_what_was_read_says_where() -> None:
    """An address for all that was read; none is made up for what is practice or memory."""
    for source in every_source():
        if source.trust is Trust.READ:
            assert source.address.startswith("http"), source.key
        if source.trust in {Trust.PRACTICE, Trust.MEMORY}:
            assert source.address == "", source.key


def test_told_in_a_sentence() -> None:
    """Title, address, how far it was followed, and the note."""
    read = Source(key="a", title="A table", address="http://a", trust=Trust.READ, note="Places differ.")
    assert str(read) == "A table, http://a (read). Places differ."
    assert (
        str(Source(key="b", title="A habit", trust=Trust.PRACTICE)) == "A habit (common practice, no source)."
    )


def test_nothing_says_safe_or_compliant() -> None:
    """Neither a source nor its note claims what the program cannot know."""
    for source in every_source():
        words = f"{source.title} {source.note}".lower()
        assert "safe" not in words.replace("safety", ""), source.key
        assert "complian" not in words, source.key

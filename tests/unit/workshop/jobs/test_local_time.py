"""Times as a clock beside the computer shows them."""

from datetime import UTC, datetime, timedelta, timezone

from plankwright.workshop.jobs.local_time import local_time


def test_a_time_is_told_by_the_clock_on_the_spot() -> None:
    """Not by that of Greenwich, which may have another day."""
    east = timezone(timedelta(hours=2))
    assert local_time("2026-04-11T22:20:59+00:00", east) == "2026-04-12 00:20"


def test_without_a_zone_it_is_that_of_the_computer() -> None:
    """Whichever that is."""
    at = datetime(2026, 4, 11, 22, 20, tzinfo=UTC)
    assert local_time(at.isoformat()) == at.astimezone().strftime("%Y-%m-%d %H:%M")


def test_a_time_that_is_not_known_is_not_told() -> None:
    """A layout that is not kept yet has none."""
    assert local_time("") == ""

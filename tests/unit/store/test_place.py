"""Where jobs are kept when nothing else is said."""

from plankwright.store.place import usual_store


def test_the_usual_place_is_a_file_of_this_program() -> None:
    """In the user's own folder, not in the one that a command happens to be called in."""
    assert usual_store().is_absolute()
    assert usual_store().name == "jobs.db"
    assert "plankwright" in usual_store().parts

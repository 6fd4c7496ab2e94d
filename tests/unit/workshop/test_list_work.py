"""The lists for those who work from a screen say what the paper says."""

from plankwright.workshop.list_work import list_cuts, list_hanging
from trade_jobs import tongued_job, tongued_layout


def test_what_hangs_where_and_with_which_nails() -> None:
    """Piece by piece with the length of its nails, and what boxes ask for."""
    made = tongued_job()
    (surface,) = list_hanging(made, tongued_layout(made))
    assert any("16 gauge finish nails" in sentence for sentence in surface.intro)
    told = {
        piece.label: {todo.what: todo.how for todo in piece.todo}
        for course in surface.courses
        for piece in course.pieces
    }
    assert told["2a"]["Nails:"] == '3 × 2-1/2" at the tongue, at 45°: 1 on each of S1, S2, S4.'
    assert told["1a"]["Nails:"].endswith('3 × 2-1/4": 1 on each of S1, S2, S4.')
    assert told["1a"]["Mind:"] == 'extender 3/4" deep for socket; circuit off.'


def test_what_is_cut() -> None:
    """Board by board."""
    made = tongued_job()
    assert [board.id for board in list_cuts(made, tongued_layout(made))] == ["T1", "T2", "T3"]

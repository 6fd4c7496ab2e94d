"""Lanes side by side, against every choice of heights tried one by one."""

from itertools import combinations_with_replacement

from hypothesis import given
from hypothesis import strategies as st

from plankwright.layout.whole.rips import Rips


@given(
    heights=st.lists(st.integers(1, 20), min_size=1, max_size=6, unique=True).map(sorted),
    width=st.integers(-3, 50),
    kerf=st.integers(0, 3),
    widest=st.none() | st.integers(0, 20),
    most=st.integers(1, 3),
)
def test_lanes_are_all_that_fit(
    heights: list[int], width: int, kerf: int, widest: int | None, most: int
) -> None:
    """With a kerf between each two, and none wider than the saws can take off."""
    found = Rips(heights, heights, kerf).lanes(width, widest, most).tolist()
    lanes = sorted(tuple(height for height in choice if height < len(heights)) for choice in found)
    assert lanes == sorted(
        choice
        for count in range(1, most + 1)
        for choice in combinations_with_replacement(range(len(heights)), count)
        if sum(heights[number] for number in choice) + (count - 1) * kerf <= width
        and all(widest is None or heights[number] <= widest for number in choice)
    )
    assert all(len(choice) == most for choice in found)


def test_a_width_is_worked_out_once() -> None:
    """Sticks of one width share it."""
    rips = Rips([4, 6], [4, 6], 1)
    assert rips.lanes(11, None, 2) is rips.lanes(11, None, 2)

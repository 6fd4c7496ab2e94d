"""Who does the same work many times over, as whoever lays out much asks for it: `crews` answers from afar."""

from collections.abc import Callable, Iterator, Sequence
from typing import Protocol, TypeVar

from plankwright.layout.result import Watch

Common = TypeVar("Common")
Given = TypeVar("Given")
Found = TypeVar("Found")


class Crew(Protocol):
    """Whoever does the same work many times over, side by side, here or elsewhere."""

    def share_out(
        self,
        work: Callable[[Common, Given, Watch], Found],
        common: Common,
        given: Sequence[Given],
        *,
        watch: Watch,
    ) -> Iterator[tuple[int, Found]]:
        """Do the work for everything given.

        Parameters
        ----------
        work
            A function of a module, called with what all have in common, one thing given, and somebody who is
            told how far it is and says when it is enough; it gives what it found, sooner when it is.
        common, given
            Plain values: they may go to other processes and machines.
        watch
            Is told what the work tells. Asked often; once it answers yes, nothing more is begun.

        Returns
        -------
        iterator of tuple of (int, Found)
            As each comes to its end, in whatever order: its place among those given, and what was found. What
            was under way when it was stopped may be among them or not.
        """
        ...


class Alone:
    """Does one after the other, here."""

    def share_out(
        self,
        work: Callable[[Common, Given, Watch], Found],
        common: Common,
        given: Sequence[Given],
        *,
        watch: Watch,
    ) -> Iterator[tuple[int, Found]]:
        """Do the work; parameters are those of `Crew`."""
        for place, each in enumerate(given):
            if watch.stopped():
                return
            yield place, work(common, each, watch)


ALONE = Alone()

"""A solver that says nothing: stdout belongs to the answer."""

import highspy


class SilentHighs(highspy.Highs):
    """HiGHS without its banner, which it prints while it is being made, before an option can be set."""

    def __init__(self) -> None:
        super().__init__()  # type: ignore[no-untyped-call]  # The library's.

    def enableCallbacks(self) -> None:  # noqa: N802 - the library's name; it is called first of all
        """Fall silent first."""
        self.silent()
        super().enableCallbacks()  # type: ignore[no-untyped-call]  # The library's.

"""The door through which phones come in: a word that they bring, and that can be changed."""

import secrets
from collections.abc import Callable


class Door:
    """Knows the word that lets a phone in.

    Parameters
    ----------
    word
        The word; nobody but this machine is let in when it is empty.
    keep
        Keeps another word, so that it still holds when the app is opened next.
    """

    def __init__(self, word: str = "", keep: Callable[[str], None] = lambda _word: None) -> None:
        self._word, self._keep = word, keep

    @property
    def word(self) -> str:
        """The word; empty when no phone is let in."""
        return self._word

    def lets_in(self, brought: str) -> bool:
        """Tell whether what somebody brings is the word."""
        return bool(self._word) and secrets.compare_digest(brought.encode(), self._word.encode())

    def change_word(self) -> None:
        """Take another word: whoever was let in by the old one has to come anew."""
        if self._word:
            self._keep(word := new_word())
            self._word = word


def new_word() -> str:
    """Give a word that nobody guesses."""
    return secrets.token_urlsafe(12)

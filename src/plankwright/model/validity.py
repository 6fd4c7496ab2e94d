"""The one way in which a value of the model refuses to come into being."""


class InvalidValueError(ValueError):
    """A value that cannot exist, told in one sentence that a user can act on.

    Parameters
    ----------
    sentence
        What is wrong and how to mend it, without a closing full stop.
    field
        Name of the offending field, so that a reader of files can name the line it came from.
    """

    def __init__(self, sentence: str, *, field: str) -> None:
        super().__init__(sentence)
        self.field = field


def demand(holds: bool, sentence: str, *, field: str) -> None:  # noqa: FBT001 - reads as a sentence
    """Refuse a value unless a condition holds.

    Parameters
    ----------
    holds
        The condition.
    sentence
        Told to the user when it does not hold.
    field
        Name of the offending field.

    Raises
    ------
    InvalidValueError
        If the condition does not hold.
    """
    if not holds:
        raise InvalidValueError(sentence, field=field)

"""Numbers, boards and lists as a person says them."""

from collections.abc import Sequence

_NUMBER_WORDS = (
    *("no", "one", "two", "three", "four", "five", "six"),
    *("seven", "eight", "nine", "ten", "eleven", "twelve"),
)


def number(count: int) -> str:
    """Say a number: in words up to twelve, in digits beyond.

    Parameters
    ----------
    count
        Zero or more; zero is "no".

    Returns
    -------
    str
        Such as "two" or "27".
    """
    return _NUMBER_WORDS[count] if count < len(_NUMBER_WORDS) else str(count)


def counted(count: int, noun: str) -> str:
    """Say how many there are of something.

    Parameters
    ----------
    count
        How many.
    noun
        In the singular; its plural takes an s.

    Returns
    -------
    str
        Such as "one board" or "no boards".
    """
    return f"{number(count)} {noun}{'' if count == 1 else 's'}"


def listed(items: Sequence[str]) -> str:
    """Say a list.

    Parameters
    ----------
    items
        At least one.

    Returns
    -------
    str
        Such as "A", "A and B" or "A, B and C".
    """
    *all_but_last, last = items
    return f"{', '.join(all_but_last)} and {last}" if all_but_last else last


def listed_at_most(items: Sequence[str], most: int) -> str:
    """Say a list, and of a long one only how many more there are.

    Parameters
    ----------
    items
        At least one.
    most
        How many are said.

    Returns
    -------
    str
        Such as "A and B" or "A, B and 7 more".
    """
    if len(items) <= most:
        return listed(items)
    return f"{', '.join(items[:most])} and {len(items) - most} more"


def capital(sentence: str) -> str:
    """Begin a sentence with a capital letter and leave the rest of it alone.

    Parameters
    ----------
    sentence
        Not empty.

    Returns
    -------
    str
        The sentence.
    """
    return sentence[:1].upper() + sentence[1:]

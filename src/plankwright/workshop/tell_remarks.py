"""Say what the checker leaves to the user's judgement: one sentence for all pieces that it holds for."""

from collections.abc import Iterable

from plankwright.check import Finding

_PIECE = "piece "


def tell_remarks(warnings: Iterable[Finding]) -> tuple[str, ...]:
    """Say them, those of pieces that nothing holds first.

    Parameters
    ----------
    warnings
        In the order in which they were found.

    Returns
    -------
    tuple of str
        Sentences; what is found of several pieces in the same words stands once.
    """
    alike: dict[tuple[str, str, int], list[Finding]] = {}
    for warning in sorted(warnings, key=lambda one: one.measured != 0):
        alike.setdefault((warning.surface_id, warning.message, warning.code), []).append(warning)
    return tuple(_told(some) for some in alike.values())


def _told(some: list[Finding]) -> str:
    first = some[0]
    labels = dict.fromkeys(one.where.rpartition(_PIECE)[2] for one in some)
    if len(labels) == 1:
        return str(first)
    place = ", ".join(filter(None, (first.surface_id, f"pieces {', '.join(labels)}")))
    return f"{place}: {first.message} [{first.code.value}]"

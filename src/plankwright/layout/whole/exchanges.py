"""Which sorts of pieces can stand in for which, told of next of kin only: the rest follows step by step."""

from collections.abc import Collection

from plankwright.layout.whole.question import Question, Sort


def exchanges(sort: Sort, known: Collection[Sort], question: Question) -> list[tuple[Sort, Sort]]:
    """Give the known sorts that can stand in for a new one, and those that it can stand in for, next of kin.

    Parameters
    ----------
    sort
        The new one.
    known
        Those that are known.
    question
        Whose sets of mates they are of.

    Returns
    -------
    list of (Sort, Sort)
        The one that can stand in, and the one it can stand in for: that is shorter or lower, or hidden by
        a fixture, or of all wood together.
    """
    pairs: list[tuple[Sort, Sort]] = []
    alike = [other for other in known if (other.mates, other.hidden) == (sort.mates, sort.hidden)]
    for one, other in (("length", "height"), ("height", "length")):
        line = [kin for kin in alike if getattr(kin, other) == getattr(sort, other)]
        size = getattr(sort, one)
        shorter = [kin for kin in line if getattr(kin, one) < size]
        longer = [kin for kin in line if getattr(kin, one) > size]
        if shorter:
            pairs.append((sort, max(shorter, key=lambda kin: getattr(kin, one))))
        if longer:
            pairs.append((min(longer, key=lambda kin: getattr(kin, one)), sort))
    twin = sort._replace(hidden=not sort.hidden)
    if twin in known:
        pairs.append((twin, sort) if sort.hidden else (sort, twin))
    if question.loose is not None:
        for mates in range(question.sets):
            kin = sort._replace(mates=mates if sort.mates == question.loose else question.loose)
            if kin in known and kin.mates != sort.mates:
                pairs.append((kin, sort) if sort.mates == question.loose else (sort, kin))
    return list(dict.fromkeys(pairs))

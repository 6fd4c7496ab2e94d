"""Where a piece is nailed and where no nail may go, in words."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from plankwright.draw.subject import Subject
from plankwright.layout.hanging import called, grown
from plankwright.layout.regions import extent_in_course, member_at
from plankwright.measure import Nm, write_inches
from plankwright.model import Course, Piece, Point, Rectangle


def member_name(what: Subject, number: int) -> str:
    """Name a framing member as the map does, with the mark of its centre line.

    Parameters
    ----------
    what
        The surface.
    number
        Counted from 1 along the courses.

    Returns
    -------
    str
        Such as `S3 (32-1/2")` for a stud, with a space that no line breaks at.
    """
    mark = write_inches(what.surface.crossing_members[number - 1].centre_nm, what.tape)
    return f"{_initial(what, number)}\N{NO-BREAK SPACE}({mark})"


@dataclass(frozen=True, slots=True, kw_only=True)
class NailGroup:
    """Nails of one sort in a piece.

    Parameters
    ----------
    nail
        How long they are; empty where that was not planned.
    where
        How they go in, where it is not plainly through the face.
    spots
        Where.
    count
        How many there are, where that is not as many as places.
    """

    nail: str = ""
    where: str = ""
    spots: tuple[Point, ...] = ()
    count: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceNailing:
    """What was planned for the nails of a piece, and what else to mind with it at the wall.

    Parameters
    ----------
    groups
        Its nails; none where no nail of the kind may be driven.
    besides
        Sentences.
    """

    groups: tuple[NailGroup, ...] = ()
    besides: tuple[str, ...] = ()


def tell_nails(what: Subject, piece: Piece, planned: PieceNailing | None = None) -> str:
    """Say how many nails a piece gets, and how many on which members.

    Parameters
    ----------
    what, piece
        The piece on its surface.
    planned
        Which nails it gets; when left out, those of the layout without their length.

    Returns
    -------
    str
        What follows after the word "Nails:".
    """
    solid, least = what.surface.framing.solid, what.job.rules.nailing_points
    if planned is None:
        groups: tuple[NailGroup, ...] = (NailGroup(spots=piece.nails),) if piece.nails else ()
    else:
        groups = planned.groups
    if not groups and not solid and not piece.nails:
        return f"none, no {what.member} takes one behind this piece: add blocking or adhesive."
    if not groups and planned is not None:
        return "none, every nail of this kind is too long here or too short: add blocking or adhesive."
    if solid and not piece.nails:
        return _anywhere(groups)
    text = " ".join(_tell_group(what, group) for group in groups)
    reached = {number for group in groups for number in _members(what, group.spots)}
    if not solid and len(reached) < least:
        text += f" Only {len(reached)} of {least} {what.member}s behind it: add blocking or adhesive."
    return text


def _anywhere(groups: tuple[NailGroup, ...]) -> str:
    if not groups:
        return "anywhere, the backing is solid."
    (group,) = groups
    return f"{group.count} × {group.nail}, anywhere, the backing is solid."


def _tell_group(what: Subject, group: NailGroup) -> str:
    members = Counter(_members(what, group.spots))
    said = [
        f"{count} on {'each of ' if len(numbers) > 1 else ''}{_runs(what, numbers)}"
        for count, numbers in _by_count(members).items()
    ]
    elsewhere = len(group.spots) - members.total()
    if elsewhere:
        said.append(
            f"{elsewhere} "
            f"{'into the backing' if what.surface.framing.solid else f'beside the {what.member}s'}"
        )
    kind = f"× {group.nail}" if group.nail else "in all"
    where = f" {group.where}" if group.where else ""
    return f"{len(group.spots)} {kind}{where}: {'; '.join(said)}."


def tell_keep_outs(what: Subject, course: Course) -> Iterator[str]:
    """Say where in a course no nail may go, and what runs there.

    Parameters
    ----------
    what, course
        The course on its surface; the clearance that the rules ask for is counted in. What runs where none of
        its pieces hangs is left out.

    Yields
    ------
    str
        One sentence a keep-out.
    """
    surface = what.surface
    whole = Rectangle(left=0, bottom=0, right=surface.width_nm, top=surface.height_nm)
    _, length, *_ = extent_in_course(surface, whole)
    pieces = [extent_in_course(surface, piece.place) for piece in course.pieces]
    for keep_out in surface.keep_outs:
        place = grown(keep_out.place, what.job.rules.nail_clearance_nm)
        along_from, along_to, across_from, across_to = extent_in_course(surface, place)
        if across_from >= course.to_nm or across_to <= course.from_nm:
            continue
        if not any(start < along_to and end > along_from for start, end, *_ in pieces):
            continue
        where = (
            f"between {_inches(what, max(0, along_from))} and {_inches(what, min(length, along_to))} along"
        )
        if across_from > course.from_nm or across_to < course.to_nm:
            low, high = max(across_from, course.from_nm), min(across_to, course.to_nm)
            where += f", {_inches(what, low)} to {_inches(what, high)} from the start"
        yield f"No nail {where}: {called(keep_out)}."


def _members(what: Subject, spots: Sequence[Point]) -> Iterator[int]:
    """Give the number of the member under each nail that has one, counted from 1."""
    for nail in spots:
        member = member_at(what.surface, nail)
        if member is not None:
            yield member + 1


def _by_count(members: Counter[int]) -> dict[int, list[int]]:
    """Gather the members that get equally many nails."""
    numbers: dict[int, list[int]] = {}
    for number, count in sorted(members.items()):
        numbers.setdefault(count, []).append(number)
    return numbers


def _runs(what: Subject, numbers: Sequence[int]) -> str:
    """List members, three or more neighbours as from the first to the last of them."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    told: list[str] = []
    for first, *others in runs:
        if len(others) > 1:
            told.append(f"{_initial(what, first)} to {_initial(what, others[-1])}")
        else:
            told += [_initial(what, number) for number in (first, *others)]
    return ", ".join(told)


def _initial(what: Subject, number: int) -> str:
    return f"{what.member[0].upper()}{number}"


def _inches(what: Subject, nm: Nm) -> str:
    return write_inches(nm, what.tape)

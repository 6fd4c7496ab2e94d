"""See a layout as a screen shows it: the answer in words, whether it still fits, its drawing, its pieces."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from urllib.parse import quote

from plankwright.layout.result import Result
from plankwright.measure import write_inches, write_length
from plankwright.model import NOTHING_DONE, Board, Course, Job, Layout, Piece, Standing, SurfaceLayout
from plankwright.workshop.ask_enough import Answer, ask_enough
from plankwright.workshop.check_layout import LayoutJudgement, check_layout
from plankwright.workshop.draw_map import draw_map
from plankwright.workshop.jobs.kept import KeptJob, KeptLayout
from plankwright.workshop.jobs.leaf_words import answer_for_screen, on_screen
from plankwright.workshop.jobs.tell_faults import plain_faults
from plankwright.workshop.tell_remarks import tell_remarks

MOST_FAULTS = 8
"""So many faults are told one by one; more would be no help."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """A sentence, and what it counts up, if it does."""

    sentence: str
    items: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SeenPiece:
    """A piece in a list.

    Parameters
    ----------
    label, board, size
        What is written on it, its board, and its length and width.
    looks
        Its lot and its tone, as far as they are known.
    state
        "hangs" or "cut" where it does or is.
    """

    label: str
    board: str
    size: str
    looks: str
    state: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SeenCourse:
    """A course in a list: its number, its height, and its pieces from the left or from below."""

    number: int
    height: str
    pieces: tuple[SeenPiece, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SeenSurface:
    """A surface of a layout.

    Parameters
    ----------
    place
        Where it stands in the layout, from 0.
    id
        What the user calls it.
    about
        Its size and how its courses run; empty when the job has no such surface any more.
    courses
        From the start side on.
    """

    place: int
    id: str
    about: str
    courses: tuple[SeenCourse, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SeenLayout:
    """A layout as a screen shows it.

    Parameters
    ----------
    kept
        The layout.
    answer
        Whether the pile is enough; nothing when the layout no longer fits and none came with it.
    pile, news
        What is spare or wanted, and what is different from the layout before.
    minds
        What the checker leaves to the user's judgement.
    faults
        Why it no longer fits the job as it is now; empty when it does.
    surfaces
        Surface by surface.
    """

    kept: KeptLayout
    answer: Answer | None
    pile: tuple[Said, ...]
    news: tuple[Said, ...]
    minds: tuple[str, ...]
    faults: tuple[str, ...]
    surfaces: tuple[SeenSurface, ...]

    @property
    def fits(self) -> bool:
        """Whether it can be worked by."""
        return not self.faults


def standing_of(kept: KeptJob) -> Standing:
    """Give how far a job has come."""
    return NOTHING_DONE if kept.work is None else kept.work.standing


def see_layout(job: Job, laid: KeptLayout, standing: Standing) -> SeenLayout:
    """Look at a layout beside the job as it is now.

    Parameters
    ----------
    job
        The job.
    laid
        One of its layouts.
    standing
        How far it has come.
    """
    judged = judge(job, laid.layout, standing)
    faults = _told_faults(judged)
    answer = laid.answer
    if answer is None and not faults:
        answer = ask_enough(job, Result(layout=laid.layout), standing)
    return SeenLayout(
        kept=laid,
        answer=None if answer is None else answer_for_screen(answer),
        pile=said(answer.pile if answer is not None else ()),
        news=said(laid.news),
        minds=plain_faults(laid.minds or tell_remarks(judged.warnings)),
        faults=faults,
        surfaces=see_surfaces(job, laid.layout, standing),
    )


def faults_now(job: Job, layout: Layout, standing: Standing) -> tuple[str, ...]:
    """Say why a layout cannot be worked by as the job is now; nothing when it can."""
    return _told_faults(judge(job, layout, standing))


@lru_cache(maxsize=32)
def judge(job: Job, layout: Layout, standing: Standing) -> LayoutJudgement:
    """Judge a layout as `check_layout` does, and remember what came out for whoever looks again."""
    return check_layout(job, layout, standing)


def draw_surface(
    job: Job, laid: SurfaceLayout, standing: Standing, *, links: str = "", as_boards_look: bool = False
) -> str:
    """Draw a surface, and remember the drawing for whoever looks again.

    Parameters
    ----------
    job
        The job.
    laid
        The layout of one of its surfaces.
    standing
        How far it has come.
    links
        Where a tap on a piece leads, less its label; empty for nowhere.
    as_boards_look
        Whether to show the tones and the lots of the boards.

    Returns
    -------
    str
        An SVG file; empty where the layout does not lie on the surface any more.
    """
    return _drawn(job, laid, standing, links, as_boards_look)


@lru_cache(maxsize=48)
def _drawn(job: Job, laid: SurfaceLayout, standing: Standing, links: str, as_boards_look: bool) -> str:  # noqa: FBT001 - lru_cache tells calls apart by place
    to = {piece.label: links + quote(piece.label, safe="") for piece in laid.pieces} if links else {}
    try:
        return draw_map(job, laid, standing=standing, links=to, as_boards_look=as_boards_look)
    except (KeyError, ValueError):
        # Measured anew since, or gone: what no longer lies on it cannot be drawn on it.
        return ""


def see_surfaces(job: Job, layout: Layout, standing: Standing) -> tuple[SeenSurface, ...]:
    """List a layout surface by surface, course by course, piece by piece; parameters as in `see_layout`."""
    return tuple(_see_surface(job, place, laid, standing) for place, laid in enumerate(layout.surfaces))


def said(sentences: Sequence[str]) -> tuple[Said, ...]:
    """Put lines that begin with a dash under the sentence before them."""
    found: list[Said] = []
    for sentence in map(on_screen, sentences):
        if sentence.startswith("- ") and found:
            found[-1] = replace(found[-1], items=(*found[-1].items, sentence.removeprefix("- ")))
        else:
            found.append(Said(sentence=sentence))
    return tuple(found)


def _told_faults(judged: LayoutJudgement) -> tuple[str, ...]:
    told = tuple(dict.fromkeys(plain_faults(map(str, judged.faults))))
    more = len(told) - MOST_FAULTS
    return told if more <= 0 else (*told[:MOST_FAULTS], f"And {more} more like these.")


def _see_surface(job: Job, place: int, laid: SurfaceLayout, standing: Standing) -> SeenSurface:
    surface = next((one for one in job.surfaces if one.id == laid.surface_id), None)
    about = ""
    if surface is not None:
        width, height = (write_length(nm, job.tape) for nm in (surface.width_nm, surface.height_nm))
        about = (
            f"{surface.kind.capitalize()} {width} × {height}, {surface.courses_run} courses "
            f"from the {surface.start}."
        )
    hung = standing.hung_labels(laid.surface_id)
    cut = {one.piece.label for one in standing.cut if one.surface_id == laid.surface_id}
    looks = {board.id: looks_of(board) for board in job.boards}

    def see(piece: Piece) -> SeenPiece:
        state = "hangs" if piece.label in hung else "cut" if piece.label in cut else ""
        size = size_of(job, piece)
        return SeenPiece(
            label=piece.label,
            board=piece.board_id,
            size=size,
            looks=looks.get(piece.board_id, ""),
            state=state,
        )

    return SeenSurface(
        place=place,
        id=laid.surface_id,
        about=about,
        courses=tuple(_see_course(job, course, map(see, course.pieces)) for course in laid.courses),
    )


def _see_course(job: Job, course: Course, pieces: Iterable[SeenPiece]) -> SeenCourse:
    return SeenCourse(
        number=course.number, height=write_inches(course.height_nm, job.tape), pieces=tuple(pieces)
    )


def size_of(job: Job, piece: Piece) -> str:
    """Say how long and how wide a piece is cut."""
    sides = piece.along_to_nm - piece.along_from_nm, piece.across_to_nm - piece.across_from_nm
    return " × ".join(write_inches(nm, job.tape) for nm in sides)


def looks_of(board: Board) -> str:
    """Say the lot and the tone of a board, as far as they are known."""
    return ", ".join(word for word in (f"lot {board.lot}" if board.lot else "", board.tone) if word)

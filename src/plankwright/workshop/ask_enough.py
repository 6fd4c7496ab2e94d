"""Is the pile enough? Yes, and what is spare; no, and what would close it; or not settled."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from plankwright.layout.again import links_kept
from plankwright.layout.left_over import left_over
from plankwright.layout.offcuts import offcuts, wood_spent_nm2
from plankwright.layout.result import Result, TooLittle, Verdict, Wanted, verdict
from plankwright.measure import TapeStyle, round_down, round_up, write_area, write_inches, write_length
from plankwright.model import (
    NOTHING_DONE,
    Bound,
    EdgeKind,
    EdgeProfile,
    Job,
    Score,
    Standing,
    SurfaceLayout,
    Treatment,
    runs_all_round,
    walls_of,
)
from plankwright.trade.readying.telltale import has_insects
from plankwright.workshop.judge_tally import ClearRun, to_cover_nm2, usable_runs
from plankwright.workshop.tell_bound import tell_bound
from plankwright.workshop.tell_look import tell_look
from plankwright.workshop.wording import counted, listed

MOST_NAMED = 12
"""How many boards are named in a sentence before the rest are only counted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfaceAnswer:
    """Whether the pile is enough for one surface, and how good its layout is.

    Parameters
    ----------
    surface_id
        The surface.
    verdict
        Enough, not enough or not settled.
    to_cover_nm2
        Area that must be covered. [nm²]
    score, bound
        What the layout comes to, and what no layout can beat.
    sentences
        The same in words.
    """

    surface_id: str
    verdict: Verdict
    to_cover_nm2: int
    score: Score
    bound: Bound
    sentences: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """Whether the pile is enough, in values and in words; as text it is what a person reads.

    Parameters
    ----------
    verdict
        Not enough when one surface, or linked ones together, surely cannot be covered; enough when all are.
    headline
        The answer in one sentence.
    surfaces
        Each surface by itself, in order of importance.
    untouched
        Boards that nothing is cut from and that are not held back.
    held_back
        Boards kept as spares, as the rules ask.
    offcuts
        How many offcuts worth keeping are left of the boards cut into.
    wanted
        Further boards that would close what is left bare.
    wanted_closes
        Whether a layout with those was made and covers everything.
    pile
        What is spare or wanted, in sentences.
    stopped
        Whether the search was stopped before its effort was spent.
    """

    verdict: Verdict
    headline: str
    surfaces: tuple[SurfaceAnswer, ...]
    untouched: tuple[str, ...]
    held_back: tuple[str, ...]
    offcuts: int
    wanted: tuple[Wanted, ...]
    wanted_closes: bool
    pile: tuple[str, ...]
    stopped: bool

    def __str__(self) -> str:
        """Give the whole answer as a person reads it, a sentence a line."""
        return "\n".join(
            [
                self.headline,
                *(
                    f"{surface.surface_id}: {sentence}"
                    for surface in self.surfaces
                    for sentence in surface.sentences
                ),
                *self.pile,
            ]
        )


def ask_enough(job: Job, result: Result, standing: Standing = NOTHING_DONE) -> Answer:
    """Answer whether the pile is enough, from what a search came to.

    Parameters
    ----------
    job
        The job.
    result
        What the search came to; its layout must have passed the checker, as that of `lay_out` has.
    standing
        How far the job has come.

    Returns
    -------
    Answer
        In values and in words.
    """
    surfaces = tuple(_answer_surface(job, laid) for laid in result.layout.surfaces)
    short = _too_little(surfaces, result.too_little)
    overall = Verdict.NOT_ENOUGH if short else _overall([surface.verdict for surface in surfaces])
    cut_into = {piece.board_id for piece in result.layout.pieces}
    kept = cut_into | set(result.held_back) | set(standing.sawn)
    untouched = tuple(board.id for board in job.boards if board.id not in kept)
    left = _count_offcuts(job, result, standing)
    return Answer(
        verdict=overall,
        headline=_headline(overall, surfaces, short, len(result.held_back)),
        surfaces=surfaces,
        untouched=untouched,
        held_back=result.held_back,
        offcuts=left,
        wanted=result.wanted,
        wanted_closes=result.closing is not None,
        pile=(
            *_tell_corners(job, standing),
            *_tell_too_little(short, job.tape),
            *_tell_wood_in_all(job, result),
            *_tell_wanted(result, job.tape),
            *_tell_left(job, untouched, left, overall),
            *_tell_treated(job, untouched),
            *_tell_held_back(result, overall),
            *(("The search was stopped early: a longer one may find better.",) if result.stopped else ()),
        ),
        stopped=result.stopped,
    )


def describe_wanted(wanted: Wanted, tape: TapeStyle) -> str:
    """Say which further boards are wanted, rounded up to what a tape shows.

    Parameters
    ----------
    wanted
        So many boards of such a size.
    tape
        How lengths are written.

    Returns
    -------
    str
        Such as `2 boards of at least 7' 4" by 5"`.
    """
    length, width = (
        write_length(round_up(size, tape.step_nm), tape) for size in (wanted.length_nm, wanted.width_nm)
    )
    thick = () if wanted.thickness_nm is None else (f"{write_length(wanted.thickness_nm, tape)} thick",)
    edge = () if wanted.profile is None else (_describe_profile(wanted.profile, tape),)
    size = f"{wanted.count} board{'' if wanted.count == 1 else 's'} of at least {length} by {width}"
    return ", ".join((size, *thick, *edge))


def _describe_profile(profile: EdgeProfile, tape: TapeStyle) -> str:
    if profile.kind is EdgeKind.SQUARE:
        return "square-edged"
    what = "tongue" if profile.kind is EdgeKind.TONGUE_AND_GROOVE else "lap"
    return f"{profile.kind} with a {what} of {write_length(profile.reach_nm, tape)}"


def _answer_surface(job: Job, laid: SurfaceLayout) -> SurfaceAnswer:
    to_cover = to_cover_nm2(job.surface(laid.surface_id), job.rules)
    covered = to_cover - laid.score.bare_nm2
    covered_pct = 100 * covered // to_cover if to_cover else 100
    found = verdict(laid)
    cover = (
        f"all {write_area(to_cover, job.tape)} covered."
        if found is Verdict.ENOUGH
        else f"{write_area(covered, job.tape)} of {write_area(to_cover, job.tape)} covered ({covered_pct} %)."
    )
    return SurfaceAnswer(
        surface_id=laid.surface_id,
        verdict=found,
        to_cover_nm2=to_cover,
        score=laid.score,
        bound=laid.bound,
        sentences=(cover, *tell_bound(laid, job.tape), *tell_look(job, laid)),
    )


def _overall(verdicts: Sequence[Verdict]) -> Verdict:
    if Verdict.NOT_ENOUGH in verdicts:
        return Verdict.NOT_ENOUGH
    return Verdict.UNSETTLED if Verdict.UNSETTLED in verdicts else Verdict.ENOUGH


def _too_little(surfaces: Sequence[SurfaceAnswer], found: Sequence[TooLittle]) -> tuple[TooLittle, ...]:
    """Give the linked surfaces that surely cannot all be covered, where that is not sure of one alone."""
    alone = {surface.surface_id for surface in surfaces if surface.verdict is Verdict.NOT_ENOUGH}
    return tuple(together for together in found if not alone & set(together.surfaces))


def _tell_too_little(short: Sequence[TooLittle], tape: TapeStyle) -> Iterator[str]:
    for together in short:
        least = write_area(together.bare_nm2, tape)
        yield f"Of {listed(together.surfaces)} together no layout can leave less than {least} bare."


def _headline(
    overall: Verdict, surfaces: Sequence[SurfaceAnswer], short: Sequence[TooLittle], held_back: int
) -> str:
    together = {name for group in short for name in group.surfaces}
    which = listed(
        [
            surface.surface_id
            for surface in surfaces
            if surface.verdict is overall or surface.surface_id in together
        ]
    )
    pile = f"this pile less the {counted(held_back, 'board')} held back" if held_back else "this pile"
    match overall:
        case Verdict.ENOUGH:
            return f"Enough: a layout was found that covers {which}."
        case Verdict.NOT_ENOUGH:
            return f"Not enough: no layout of {pile} covers all of {which}."
        case Verdict.UNSETTLED:
            return (
                f"Not settled: no layout of {pile} was found that covers all of {which}, "
                "and none was proven impossible. A longer search may tell."
            )


def _tell_corners(job: Job, standing: Standing) -> Iterator[str]:
    kept = links_kept(job, standing)
    for link in job.linked:
        walls = listed(walls_of(link))
        if link in kept and runs_all_round(link):
            yield f"Courses run all round {walls} at the same heights."
        elif link in kept:
            corners = "corner" if len(link) == 2 else "corners"  # noqa: PLR2004 - two walls make one
            yield f"Courses run round the {corners} between {walls} at the same heights."
        else:
            yield (
                f"Courses of {walls} hang at unlike heights already: "
                "from here on each of these walls is laid out by itself."
            )


def _tell_wood_in_all(job: Job, result: Result) -> Iterator[str]:
    """Add up what several surfaces take: a board cut for two of them is spent only once."""
    laid = result.layout.surfaces
    if len(laid) < 2:  # noqa: PLR2004 - one surface is told of already
        return
    in_all = wood_spent_nm2(job, result.layout.pieces)
    apart = sum(surface.score.wood_spent_nm2 for surface in laid)
    note = "" if apart == in_all else "; above, a board cut for several surfaces counts on each of them"
    yield f"Wood spent in all: {write_area(in_all, job.tape)}{note}."


def _tell_wanted(result: Result, tape: TapeStyle) -> Iterator[str]:
    if not result.wanted:
        return
    yield "Wanted to close what is bare, as they come, before trimming:"
    yield from (f"- {describe_wanted(wanted, tape)}" for wanted in result.wanted)
    yield (
        "A layout with these boards was made, and it covers everything."
        if result.closing is not None
        else "No layout with these boards was made: take the list as a guess."
    )


def _tell_left(job: Job, untouched: Sequence[str], left: int, overall: Verdict) -> Iterator[str]:
    kept = f"{counted(left, 'offcut')} worth keeping"
    besides = f"; besides, {kept}." if left else "."
    boards = [board for name in untouched if (board := job.board(name)).treatment is Treatment.NONE]
    if overall is not Verdict.ENOUGH and boards:
        names = [board.id for board in boards]
        yield f"Not used: {counted(len(names), 'whole board')}, {_named(names)}{besides}"
        return
    gives = {board.id: runs for board in boards if (runs := usable_runs(board, job.rules))}
    eaten = [board.id for board in boards if board.id in gives and has_insects(board)]
    spare = {name: _size(runs, job.tape) for name, runs in gives.items() if name not in eaten}
    if spare:
        # With many of them a sentence has no room for their sizes.
        few = len(spare) <= MOST_NAMED
        named = [f"{name} ({size})" if few else name for name, size in spare.items()]
        yield f"Spare: {counted(len(spare), 'whole board')}, {_named(named)}{besides}"
    elif left:
        yield f"No whole board is {'spare' if untouched else 'left over'}, but {kept}."
    elif untouched:
        yield "Nothing is spare: no offcut is worth keeping, and no board left over can hang as it is."
    else:
        yield "Nothing is left over: every board is cut into, and no offcut is worth keeping."
    useless = [board.id for board in boards if board.id not in gives]
    if useless:
        yield f"Not spare, with no clear run that is long and wide enough: {_named(useless)}."
    if eaten:
        yield f"Not spare until heated, with signs of insects: {_named(eaten)}."


def _tell_treated(job: Job, untouched: Sequence[str]) -> Iterator[str]:
    treated = [name for name in untouched if job.board(name).treatment is not Treatment.NONE]
    if treated:
        yield f"Treated, kept out: {_named(treated)}."


def _size(runs: Sequence[ClearRun], tape: TapeStyle) -> str:
    """Give the clear length and the usable width of the longest run of a board, as stock is rounded."""
    longest = max(runs, key=lambda run: run.length_nm)
    length = write_length(round_down(longest.length_nm, tape.step_nm), tape)
    return f"{length} × {write_inches(round_down(longest.width_nm, tape.step_nm), tape)}"


def _tell_held_back(result: Result, overall: Verdict) -> Iterator[str]:
    if result.held_back:
        yield f"Held back as spares, as the rules ask: {_named(result.held_back)}."
        if overall is not Verdict.ENOUGH:
            yield "Hanging them too may close what is bare, and leaves nothing to fall back on."


def _named(boards: Sequence[str]) -> str:
    if len(boards) <= MOST_NAMED:
        return listed(boards)
    return f"{', '.join(boards[:MOST_NAMED])} and {len(boards) - MOST_NAMED} more"


def _count_offcuts(job: Job, result: Result, standing: Standing) -> int:
    if standing.begun:
        return sum(one.id != was.id for one, was in left_over(job, result.layout, standing))
    pieces = sorted(result.layout.pieces, key=lambda piece: piece.board_id)
    return sum(
        len(offcuts(job, job.board(board_id), of_board))
        for board_id, of_board in groupby(pieces, key=lambda piece: piece.board_id)
    )

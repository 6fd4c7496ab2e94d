"""The pieces that something can happen to: those that hang, those that are cut, and those still to be cut."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from plankwright.layout.parting import PieceKey
from plankwright.layout.sawing import name_on
from plankwright.measure import Nm, write_inches, write_length
from plankwright.model import Job, Layout, MarkKind, Part, Piece, Standing, part_of
from plankwright.workshop.jobs.kept import RefusedError
from plankwright.workshop.jobs.mark_kept import happened_to
from plankwright.workshop.mark_work import Happened
from plankwright.workshop.wording import listed


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceAtHand:
    """A piece, told so that nobody takes it for another.

    Parameters
    ----------
    key
        Its surface and its label.
    name
        What it is called on paper.
    board_id
        The board that it is of.
    part
        What of the board it is cut to, or to be cut to.
    size
        How large that is, in words.
    hangs, in_hand
        Whether it hangs; whether it is cut and does not hang.
    """

    key: PieceKey
    name: str
    board_id: str
    part: Part
    size: str
    hangs: bool
    in_hand: bool

    @property
    def word(self) -> str:
        """What it goes by in a form."""
        surface_id, label = self.key
        return f"{label}@{surface_id}"

    @property
    def not_cut(self) -> bool:
        """Whether it is not marked as cut, nor as hung."""
        return not (self.hangs or self.in_hand)

    @property
    def state(self) -> str:
        """How far it is."""
        return "hangs" if self.hangs else "cut" if self.in_hand else "not cut yet"


def pieces_at_hand(job: Job, layout: Layout, standing: Standing) -> Mapping[str, PieceAtHand]:
    """Give the pieces of a job, by what they go by in a form.

    Parameters
    ----------
    job, layout, standing
        The job, the layout that it is worked by, and how far it has come.

    Returns
    -------
    Mapping
        Those of the layout in the order of hanging, then those in hand that it does not have.
    """
    hanging = {(row.surface_id, piece.label): piece for row in standing.hung for piece in row.course.pieces}
    in_hand = {cut.key: cut.piece for cut in standing.cut}
    every = dict(_laid(layout)) | in_hand | hanging
    pieces = (
        PieceAtHand(
            key=key,
            name=name_on(job, *key),
            board_id=piece.board_id,
            part=part_of(piece),
            size=_size(job, part_of(piece)),
            hangs=key in hanging,
            in_hand=key in in_hand,
        )
        for key, piece in every.items()
    )
    return {piece.word: piece for piece in pieces}


def what_broke(pieces: Sequence[PieceAtHand], *, sawn: bool | None) -> tuple[Happened, ...]:
    """Say that pieces broke, or that boards did before those were cut of them.

    Parameters
    ----------
    pieces
        What broke.
    sawn
        Whether those that are not marked as cut were sawn by then. If not, what is left of their boards is
        unknown, and the boards are lost. Nothing when nobody said; it does not matter if all are marked.

    Raises
    ------
    RefusedError
        If it matters and nobody said.
    """
    not_cut = [piece for piece in pieces if piece.not_cut]
    if not_cut and sawn is None:
        verb = "is" if len(not_cut) == 1 else "are"
        raise RefusedError(
            f"{listed([piece.name for piece in not_cut])} {verb} not marked as cut: say whether it was sawn "
            "by then."
        )
    broken = pieces if sawn else [piece for piece in pieces if not piece.not_cut]
    lost = () if sawn else tuple(dict.fromkeys(piece.board_id for piece in not_cut))
    return (
        *happened_to(MarkKind.BROKE, [piece.key for piece in broken]),
        *(Happened(kind=MarkKind.LOST, names=(board_id,)) for board_id in lost),
    )


def cut_wrong(piece: PieceAtHand, length_nm: Nm | None, width_nm: Nm | None) -> Happened:
    """Say that a piece came out smaller than it was to be.

    Parameters
    ----------
    piece
        The piece.
    length_nm, width_nm
        What size it has now, as far as that is another one. [nm]

    Raises
    ------
    RefusedError
        If it hangs, has no size, or is larger than it was to be, so that it is just cut again.
    """
    if piece.hangs:
        raise RefusedError(f"{piece.name} hangs: take it down first, then say what size it has.")
    if length_nm is None and width_nm is None:
        raise RefusedError("Say what size the piece has now: its length, its width, or both.")
    sizes = (
        ("long", piece.part.length_nm, length_nm),
        ("wide", piece.part.width_nm, width_nm),
    )
    for word, planned, size in sizes:
        if size is not None and size <= 0:
            raise RefusedError("A piece of no size is no piece: say that it broke.")
        if size is not None and size > planned:
            raise RefusedError(
                f"{piece.name} is to be {piece.size}. Where it is too {word}, cut it again to that: "
                "there is nothing to mark."
            )
    surface_id, label = piece.key
    return Happened(
        kind=MarkKind.MISCUT, names=(label,), surface_id=surface_id, length_nm=length_nm, width_nm=width_nm
    )


def _laid(layout: Layout) -> Iterator[tuple[PieceKey, Piece]]:
    for laid in layout.surfaces:
        for piece in laid.pieces:
            yield (laid.surface_id, piece.label), piece


def _size(job: Job, part: Part) -> str:
    return f"{write_length(part.length_nm, job.tape)} × {write_inches(part.width_nm, job.tape)}"

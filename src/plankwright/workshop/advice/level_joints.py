"""Steps where boards of unlike thickness meet in sight: which are eased, and how the others go."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from plankwright.draw.subject import Subject, subject
from plankwright.layout.joints import Joint
from plankwright.layout.sawing import piece_name
from plankwright.measure import SIXTY_FOURTH, Nm
from plankwright.model import Job, Layout, Paint, Piece, Standing
from plankwright.trade.readying.facts import PLANE_UP_TO_NM
from plankwright.trade.readying.telltale import paint_of


class Way(StrEnum):
    """What is done with a step."""

    EASE = "ease"
    PLANE = "plane"
    SWAP = "swap"
    SHIM = "shim"


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """A step at a joint in sight.

    Parameters
    ----------
    where
        Both pieces, with their surface where the job has several.
    label, board_id
        The piece that stands out, and its board.
    step_nm
        How far. [nm]
    way
        What is done with it: easing waits until both hang, and where the one that stands out hangs already
        the other one is shimmed.
    paint
        What is on the board that stands out.
    """

    where: str
    label: str
    board_id: str
    step_nm: Nm
    way: Way
    paint: Paint


def steps_at_joints(job: Job, layout: Layout, standing: Standing) -> tuple[Step, ...]:
    """Give the steps of a layout, surface by surface.

    Parameters
    ----------
    job, layout
        The job and a layout of it.
    standing
        Joints of which both pieces hang are left out.
    """
    return tuple(
        step
        for part in layout.surfaces
        for step in _steps_on(subject(job, part), standing.hung_labels(part.surface_id))
    )


def _steps_on(what: Subject, hanging: frozenset[str]) -> Iterator[Step]:
    by_label = {row.piece.label: row.piece for row in what.rows}
    for joint in what.joints:
        if joint.in_sight and not {joint.before, joint.after} <= hanging:
            yield from _step(what, joint, by_label, hanging)


def _step(what: Subject, joint: Joint, by_label: dict[str, Piece], hanging: frozenset[str]) -> Iterator[Step]:
    pair = (by_label[joint.before], by_label[joint.after])
    thinner, thicker = sorted(pair, key=lambda piece: _front_nm(what, piece))
    step_nm: Nm = _front_nm(what, thicker) - _front_nm(what, thinner)
    if step_nm < SIXTY_FOURTH:  # No tape tells so little, and no rule asks for a shim of it.
        return
    before, after = (piece_name(what.job, what.surface.id, piece) for piece in pair)
    paint = paint_of(what.job, what.job.board(thicker.board_id))
    yield Step(
        where=f"{before} | {after}",
        label=piece_name(what.job, what.surface.id, thicker),
        board_id=thicker.board_id,
        step_nm=step_nm,
        way=_way(what.job, step_nm, paint, hangs=thicker.label in hanging),
        paint=paint,
    )


def _way(job: Job, step_nm: Nm, paint: Paint, *, hangs: bool) -> Way:
    if step_nm <= job.rules.thickness_tolerance_nm:
        return Way.EASE
    if hangs:
        return Way.SHIM
    # No dust is made of lead: such a board is swapped rather than planed.
    return Way.PLANE if step_nm <= PLANE_UP_TO_NM.value and paint is not Paint.LEAD else Way.SWAP


def _front_nm(what: Subject, piece: Piece) -> Nm:
    """Give how far the face of a piece stands out. [nm]"""
    return what.job.board(piece.board_id).thickness_nm + piece.shim_nm

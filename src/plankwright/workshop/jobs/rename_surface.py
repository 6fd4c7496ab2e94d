"""Call a surface otherwise without losing what was laid out for it: the layout goes along."""

from collections.abc import Callable
from dataclasses import replace

from plankwright.model import Layout
from plankwright.workshop.jobs.choose_layout import work_by
from plankwright.workshop.jobs.kept import KeptJob
from plankwright.workshop.jobs.measure_surfaces import surface_at
from plankwright.workshop.jobs.ports import Store
from plankwright.workshop.jobs.wishes import PieceWish, Wishes


def carry_layout(
    before: KeptJob, after: KeptJob, place: int | None, store: Store
) -> Callable[[KeptJob], KeptJob]:
    """Keep the layout that is worked by once more, under the new name of a surface.

    Parameters
    ----------
    before, after
        The job before and after the surface was changed.
    place
        Where that surface stands; nothing for one that is new.
    store
        Who keeps layouts.

    Returns
    -------
    Callable[[KeptJob], KeptJob]
        Gives the changed job as it is worked by that layout; the job as it is when nothing was to be carried.
    """
    if place is None or before.layout_id is None:
        return _as_it_is
    old, new = (str(surface_at(kept, place).get("id")) for kept in (before, after))
    if old == new:
        return _as_it_is
    laid_id, laid = before.layout_id, store.layout(before.id, before.layout_id)
    carried = store.keep_layout(before.id, replace(laid, id=0, layout=renamed(laid.layout, old, new)))

    def carry(kept: KeptJob) -> KeptJob:
        # Somebody may have chosen another layout in this very moment.
        if kept.layout_id != laid_id:
            return kept
        return work_by(replace(kept, wishes=_wished(kept.wishes, old, new)), carried.id)

    return carry


def renamed(layout: Layout, old: str, new: str) -> Layout:
    """Give a layout with a surface called otherwise."""
    surfaces = (replace(laid, surface_id=new) if laid.surface_id == old else laid for laid in layout.surfaces)
    return replace(layout, surfaces=tuple(surfaces))


def _as_it_is(kept: KeptJob) -> KeptJob:
    return kept


def _wished(wishes: Wishes, old: str, new: str) -> Wishes:
    def of(pieces: tuple[PieceWish, ...]) -> tuple[PieceWish, ...]:
        return tuple(replace(wish, surface_id=new) if wish.surface_id == old else wish for wish in pieces)

    return replace(wishes, kept=of(wishes.kept), put=of(wishes.put))

"""What must be bought: nails, blades, extenders, extensions, shims, tests, and tools that are not there."""

from dataclasses import replace

from builders import (
    board,
    course,
    job,
    layout,
    nm,
    opening,
    piece,
    rip_saw,
    socket,
    surface_layout,
    wall,
)
from plankwright.model import Job, Layout, Saw, SawKind
from plankwright.workshop.advice.go_shopping import go_shopping, shopping_leaf
from trade_jobs import tongued_job, tongued_layout, tongued_wall
from two_boards import of_two_boards

MADE = tongued_job()
LAID = tongued_layout(MADE)


def shopped(made: Job, laid: Layout) -> dict[str, tuple[str, str]]:
    """Give how much is bought of everything, and what for."""
    return {item.what: (item.amount, item.why) for item in go_shopping(made, laid)}


def test_what_has_to_be_bought() -> None:
    """Nails, a bit, an extender, blades, tests; missing boards first."""
    items = go_shopping(MADE, LAID, ("1 board of at least 6 ft by 6 in",))
    names = [item.what for item in items]
    assert names[0] == "1 board of at least 6 ft by 6 in"
    assert 'box extender, 3/4" deep' in names
    assert "lead test of the paint" in names
    assert any("finish nail" in name for name in names)
    assert not any(name.startswith("drill bit") for name in names)  # No nail stands near an end here.
    assert shopping_leaf(items).sources


def test_jambs_that_come_forward_are_bought() -> None:
    """As deep as the boards are thick, for every opening."""
    surface = wall(64, 6, openings=(opening("hatch", 48, 0, 64, 6),))
    made = job(surface, [board("A", 60, 6.5)])
    hung = piece(surface, "1a A", (0.25, 47.75), (0.25, 5.75), nailed_at=(8, 40))
    bought = shopped(made, layout(surface_layout(surface, course(1, (0.25, 5.75), hung))))
    amount, why = bought['jamb extension, 3/4" deep']
    assert amount == "for one opening"
    assert "hatch" in why
    assert not any(what.startswith("jamb") for what in shopped(MADE, LAID))


def test_a_meter_is_bought_for_boards_that_nobody_measured() -> None:
    """T3 was not; once it was, none is needed."""
    assert shopped(MADE, LAID)["moisture meter"][1] == "one board that nobody measured"
    measured = replace(MADE, boards=tuple(replace(one, moisture_pct=9.0) for one in MADE.boards))
    assert "moisture meter" not in shopped(measured, LAID)


def test_a_jigsaw_is_bought_for_notches_and_holes() -> None:
    """Unless one is listed; a hole that no edge opens is told apart."""
    jigsaw = "jigsaw, or a hole saw for round boxes"
    assert shopped(MADE, LAID)[jigsaw][1] == "2 notches"
    inside = tongued_job(tongued_wall(cut_outs=(socket(12, 2, 14, 5),)))
    assert shopped(inside, tongued_layout(inside))[jigsaw][1] == (
        "one hole that no edge opens: start it from a drilled one"
    )
    plain = tongued_job(tongued_wall(cut_outs=()))
    assert jigsaw not in shopped(plain, tongued_layout(plain))
    there = Saw(name="old Jigsaw", cuts=SawKind.CROSSCUT, capacity_nm=nm(12))
    assert jigsaw not in shopped(replace(MADE, saws=(there, rip_saw(24))), LAID)
    assert jigsaw in shopped(replace(MADE, saws=(rip_saw(24),)), LAID)


def test_shims_are_bought_as_thin_as_they_are() -> None:
    """A 32nd is none of a 16th."""
    made, laid = of_two_boards(0.78125, 0.03125)
    assert shopped(made, laid)['shim, 1/32"'] == ("1", "thinner boards")


def test_what_stays_bare_asks_for_boards() -> None:
    """Without knowing which: another command says."""
    (part,) = LAID.surfaces
    bare = replace(LAID, surfaces=(replace(part, bare=(part.courses[0].pieces[0].place,)),))
    assert go_shopping(MADE, bare)[0].what == "boards"

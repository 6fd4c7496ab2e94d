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
from plankwright.model import HungCourse, Job, Layer, Layout, Lot, Paint, Saw, SawKind, Standing
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


def test_nails_for_a_part_of_the_wall_are_told_as_such() -> None:
    """Boards and trim are listed for all of it, nails only for what this layout hangs."""
    (part,) = LAID.surfaces
    bare = replace(LAID, surfaces=(replace(part, bare=(part.courses[0].pieces[0].place,)),))
    for laid, told in ((bare, "are driven, for what hangs by this layout"), (LAID, "are driven")):
        whys = [why for what, (_, why) in shopped(MADE, laid).items() if "finish nail" in what]
        assert whys
        assert all(why.endswith(told) for why in whys)


def test_only_what_is_in_doubt_is_tested() -> None:
    """Paint that the tally speaks of though its lot is said to have none; plaster, but no strips of wood."""
    plain = replace(MADE, lots=(Lot(name="stage", paint=Paint.NONE),))
    assert "lead test of the paint" not in shopped(plain, LAID)
    seen = replace(plain, boards=(replace(MADE.boards[0], note="old paint"), *MADE.boards[1:]))
    assert shopped(seen, LAID)["lead test of the paint"] == ("1", "lots whose paint nobody tested: stage")
    layers = (Layer(what="furring", thickness_nm=nm(0.75)), Layer(what="plaster", thickness_nm=nm(0.5)))
    asbestos = "asbestos test by a laboratory"
    for between, told in ((layers, "what lies below the boards: plaster"), (layers[:1], None)):
        made = tongued_job(tongued_wall(between=between))
        assert shopped(made, tongued_layout(made)).get(asbestos, ("", None))[1] == told


def hung_of(laid: Layout, *labels: str) -> Standing:
    """Say that some pieces hang."""
    return Standing(
        hung=tuple(
            HungCourse(surface_id=part.surface_id, course=replace(one, pieces=hanging))
            for part in laid.surfaces
            for one in part.courses
            if (hanging := tuple(piece for piece in one.pieces if piece.label in labels))
        )
    )


def test_what_hangs_needs_nothing_more() -> None:
    """No extender once both of its pieces hang; one hanging of two leaves it on the list."""
    extender = 'box extender, 3/4" deep'
    for labels, listed in (((), True), (("1a",), True), (("1a", "2a"), False)):
        items = go_shopping(MADE, LAID, standing=hung_of(LAID, *labels))
        assert (extender in {item.what for item in items}) is listed


def test_a_shim_behind_a_piece_that_hangs_is_not_bought_again() -> None:
    """The other piece of the joint may hang without it."""
    made, laid = of_two_boards(0.78125, 0.03125)
    for label, listed in (("1a", False), ("1b", True)):
        items = go_shopping(made, laid, standing=hung_of(laid, label))
        assert ('shim, 1/32"' in {item.what for item in items}) is listed


def test_jambs_are_seen_to_until_their_surface_hangs() -> None:
    """Then nothing near them is left to be hung."""
    surface = wall(64, 6, openings=(opening("hatch", 48, 0, 64, 6),))
    made = job(surface, [board("A", 60, 6.5)])
    hung = piece(surface, "1a A", (0.25, 47.75), (0.25, 5.75), nailed_at=(8, 40))
    laid = layout(surface_layout(surface, course(1, (0.25, 5.75), hung)))
    items = go_shopping(made, laid, standing=hung_of(laid, "1a"))
    assert not any(item.what.startswith("jamb") for item in items)

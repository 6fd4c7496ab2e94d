"""What of a job is brought before the hazards."""

from dataclasses import replace

from builders import board, job, nm, wall
from plankwright.model import Board, Face, Flaw, Job, Lot, NailsLeft, Paint, Severity, Treatment
from plankwright.workshop.advice.watch_out import situation_of, watch_out

SOUND = Lot(name="floor", built=1990, paint=Paint.NO_LEAD_FOUND)
PAINT = Flaw(start_nm=0, end_nm=nm(96), what="paint", severity=Severity.BLEMISH, face=Face.BACK)


def with_lots(*boards: Board, lots: tuple[Lot, ...] = ()) -> Job:
    """Make a job that knows something of its lots."""
    return replace(job(wall(96, 16), boards), lots=lots)


def test_a_lot_is_told_once_however_it_is_written() -> None:
    """Under the name that comes first, with the faces of all its boards."""
    made = with_lots(board("A", 96, 6, lot="Hall"), board("B", 96, 6, lot="hall"), board("C", 96, 6))
    lots = situation_of(made).lots
    assert [(lot.name, lot.face_ft2) for lot in lots] == [("Hall", 8.0), ("boards of no lot", 4.0)]


def test_paint_that_is_tallied_stands_against_a_lot_without() -> None:
    """By a flaw or a note; only those boards count."""
    made = with_lots(
        board("A", 96, 6, lot="floor"),
        board("B", 96, 6, lot="floor", flaws=(PAINT,)),
        board("C", 96, 6, lot="floor", note="white paint at one end"),
        board("D", 96, 6, lot="floor", note="no paint"),
        lots=(Lot(name="floor", built=1894, paint=Paint.NONE),),
    )
    (lot,) = situation_of(made).lots
    assert (lot.seen, lot.face_ft2, lot.doubtful) == (("B", "C"), 8.0, True)
    (lead,) = [hazard for hazard in watch_out(made) if hazard.what == "Paint and lead"]
    assert "paint on B, C: test it" in lead.said[0].text


def test_an_unpainted_lot_is_not_doubted() -> None:
    """Nothing speaks against it."""
    made = with_lots(board("A", 96, 6, lot="floor"), lots=(Lot(name="floor", paint=Paint.NONE),))
    (lot,) = situation_of(made).lots
    assert not lot.doubtful
    assert lot.seen == ()


def test_only_the_wood_of_untreated_boards_makes_dust() -> None:
    """A treated board is kept out, and nobody saws it."""
    soaked = Flaw(start_nm=0, end_nm=nm(96), what="creosote", severity=Severity.LOST)
    made = with_lots(
        board("A", 96, 6, species="western redcedar", treatment=Treatment.CREOSOTE, flaws=(soaked,)),
        board("B", 96, 6, species="pine"),
    )
    assert situation_of(made).woods == ("pine",)
    (dust,) = [hazard for hazard in watch_out(made) if hazard.what == "Dust"]
    assert not any("redcedar" in said.text for said in dust.said)


def test_of_a_pile_that_nobody_has_tallied_the_worst_is_taken() -> None:
    """Paint, nails and wires are told of before a board is pulled."""
    bare = replace(job(wall(96, 16), ()), house_built=1950)
    said = {hazard.what: hazard.said[0].text for hazard in watch_out(bare)}
    assert said["Paint and lead"].startswith("Paint of unknown age may hold lead")
    assert said["Nails and rust"].startswith("Old boards may still hold nails")


def test_boards_that_are_known_are_told_of_by_themselves() -> None:
    """Nothing general is said beside what is known."""
    made = with_lots(board("A", 96, 6, lot="floor", nails=NailsLeft.CHECKED), lots=(SOUND,))
    said = [one.text for hazard in watch_out(made) for one in hazard.said]
    assert not any(text.startswith(("Paint of unknown age", "Old boards")) for text in said)

"""Hazards: what a situation brings, with thresholds and sources, and nothing that it does not."""

from dataclasses import replace

import pytest

from plankwright.model import Paint, Treatment
from plankwright.trade.hazards.doubts import doubtful_layers, doubtful_lots
from plankwright.trade.hazards.facts import DUSTY_TASK
from plankwright.trade.hazards.lead import lead_chance_pct
from plankwright.trade.hazards.situation import PaintedLot, Situation
from plankwright.trade.hazards.warnings import hazards_of
from plankwright.trade.source import sources_of

PLAIN = PaintedLot(name="floor", built=1894, paint=Paint.NONE, area="100.0 sq ft", face_ft2=100.0)
UNTESTED = PaintedLot(name="dado", built=1911, paint=Paint.UNKNOWN, area="1 sq ft", face_ft2=1.0)
LEADED = PaintedLot(name="doors", built=1911, paint=Paint.LEAD, area="48.0 sq ft", face_ft2=48.0)


def told(what: str, **more: object) -> str:
    """Give what is said of a hazard in a situation."""
    situation = Situation(**({"lots": (PLAIN,)} | more))  # type: ignore[arg-type]
    found = {hazard.what: hazard for hazard in hazards_of(situation)}
    return " ".join(said.text for said in found[what].said) if what in found else ""


@pytest.mark.parametrize(
    ("built", "chance"),
    [(1900, 87), (1939, 87), (1940, 69), (1959, 69), (1960, 24), (1977, 24), (1978, None)],
)
def test_chance_of_lead_paint(built: int, chance: int | None) -> None:
    """Summary of EPA figures, healthyjoco.com (read on a page that repeats them)."""
    assert lead_chance_pct(built) == chance


def test_untested_paint() -> None:
    """Its chance by the age of its building, its area, and from which area on there are rules."""
    lot = PaintedLot(name="dado", built=1911, paint=Paint.UNKNOWN, area="48.0 sq ft", face_ft2=48.0)
    said = told("Paint and lead", lots=(lot,))
    assert "48.0 sq ft a face" in said
    assert "87 in a hundred" in said
    assert "above 6 ft² (0.56 m²) of painted surface a room, or above 20 ft² (1.86 m²) outside" in said
    assert "and these boards are more" in said


def test_as_much_as_minor_work_goes_up_to_is_not_more() -> None:
    """EPA answer (read): up to six square feet a room."""
    assert "these boards are more" not in told("Paint and lead", lots=(replace(UNTESTED, face_ft2=6.0),))
    assert "these boards are more" in told("Paint and lead", lots=(replace(UNTESTED, face_ft2=6.1),))


def test_tasks_that_make_dust_of_paint() -> None:
    """Sanding untested paint is named; hanging is no such task, and unpainted boards may be sanded."""
    assert "Sand the front" in told("Paint and lead", lots=(UNTESTED,), tasks=("Sand the front", "hang"))
    assert "You plan" not in told("Paint and lead", lots=(UNTESTED,), tasks=("hang",))
    assert "You plan" not in told("Paint and lead", tasks=("sand",))


@pytest.mark.parametrize(
    "task",
    [
        # Each verb of "before it is scraped, sanded, planed, heated or sawn", as people write it.
        *("scrape", "scraped clean", "scraping", "cabinet scraper"),
        *("sand", "Sanded", "sanding", "power sander", "sandpaper the edges"),
        *("plane", "planed smooth", "planing", "run through planer"),
        *("heat", "heated", "heating", "heat gun"),
        *("saw to width", "sawn", "sawing", "resaw"),
        *("rip edges", "ripped", "ripping", "crosscut", "cut to length", "cutting"),
        *("strip paint", "burnt off", "grinding", "wire-brush", "wirebrushed", "milled", "jointer"),
    ],
)
def test_dusty_tasks(task: str) -> None:
    """They are met in all their usual forms."""
    assert DUSTY_TASK.search(task.lower())
    assert f"You plan to do this: {task}." in told("Paint and lead", lots=(UNTESTED,), tasks=(task,))


@pytest.mark.parametrize(
    "task",
    [
        *("plan the layout", "planning", "ripe", "grip the end", "scrap wood to the tip"),
        *("stripe", "thousand nails", "plant", "wheat paste", "jointly", "cute", "hang"),
    ],
)
def test_tasks_without_dust(task: str) -> None:
    """Words that only begin or end alike."""
    assert not DUSTY_TASK.search(task)


def test_a_little_paint_is_no_more_than_that() -> None:
    """36 in² off a door are a quarter of a square foot (EPA answer, read): under six."""
    lot = PaintedLot(name="door", built=1911, paint=Paint.UNKNOWN, area="0.3 sq ft", face_ft2=36 / 144)
    assert "these boards are more" not in told("Paint and lead", lots=(lot,))


def test_twelve_painted_boards_are_over() -> None:
    """Twelve boards of 6 in by 8 ft are 48 ft² a face (computed), which counts whole once they come off."""
    lot = PaintedLot(name="dado", built=1911, paint=Paint.UNKNOWN, area="48 sq ft", face_ft2=12 * 0.5 * 8)
    assert "these boards are more" in told("Paint and lead", lots=(lot,))


def test_unpainted_boards_in_a_late_house_need_no_test() -> None:
    """Nothing is said of lead where nothing was ever painted and the house is from after 1978."""
    assert told("Paint and lead", house_built=1990) == ""


def test_paint_on_boards_of_a_lot_that_is_said_to_have_none() -> None:
    """The boards are named, with the odds; they count as untested paint."""
    lot = replace(PLAIN, seen=("F24",), face_ft2=12.0)
    said = told("Paint and lead", lots=(lot,), tasks=("sand",))
    assert "floor: said to be unpainted, yet the tally speaks of paint on F24: test it." in said
    assert "(1894), about 87 in a hundred" in said
    assert "Not before the paint of floor was tested" in said
    assert "and these boards are more" in said
    young = told("Paint and lead", lots=(replace(lot, built=None),))
    assert "F24: test it." in young
    assert "have lead paint" not in young.split("The house")[0]


def test_paint_that_was_seen_on_boards_of_no_known_age() -> None:
    """Nobody can say then that no paint is known."""
    lot = PaintedLot(
        name="odd", built=None, paint=Paint.UNKNOWN, area="1 sq ft", face_ft2=1.0, seen=("A", "B")
    )
    said = told("Paint and lead", lots=(lot,))
    assert "odd: the tally speaks of paint on A, B." in said
    assert "nor any paint" not in said
    assert "neither the age nor any paint" in told("Paint and lead", lots=(replace(lot, seen=()),))


def test_the_paint_of_the_house_itself() -> None:
    """By its own age, or because that is not known."""
    assert "is from 1926" in told("Paint and lead", house_built=1926)
    assert "87 in a hundred" in told("Paint and lead", house_built=1926)
    assert "is of unknown age" in told("Paint and lead")


def test_a_test_that_found_nothing_proves_little() -> None:
    """Other coats and boards may differ."""
    lot = PaintedLot(name="dado", built=1911, paint=Paint.NO_LEAD_FOUND, area="48.0 sq ft", face_ft2=48.0)
    assert "may differ" in told("Paint and lead", lots=(lot,))


def test_lead_goes_deep() -> None:
    """Planing may not be rid of it."""
    assert "a third of the thickness" in told("Paint and lead", lots=(LEADED,))


def test_what_to_do_where_lead_was_found() -> None:
    """Left out at best; else nothing dry or hot, wet work, suction, respirator, and nobody near."""
    said = told("Paint and lead", lots=(LEADED,))
    assert "Where lead was found (doors), better leave the boards out" in said
    assert "certified renovator" in said
    assert "no dry sanding or scraping, no planing, no flame and no heat gun" in said
    # 40 CFR 745.85 by two pages that repeat it: 1100 °F; 593.3 °C by definition of the degrees.
    assert "heat guns above 1100 °F (593 °C)" in said
    for part in ("Mist", "Plastic below", "HEPA vacuum", "wet wiping", "Children, pregnant women"):
        assert part in said
    assert "respirator that fits, of class N100" in said
    assert "wash your clothes apart" in said
    assert "above 6 ft²" in said
    assert "tested" not in said


def test_each_practice_with_lead_has_its_source() -> None:
    """What is said besides the finding itself carries one."""
    situation = Situation(lots=(LEADED,), house_built=1990)
    (lead,) = [hazard for hazard in hazards_of(situation) if hazard.what == "Paint and lead"]
    finding, *practice = lead.said
    assert finding.text == "doors: lead was found on 48.0 sq ft a face of boards."
    assert len(practice) > 4
    assert all(said.sources for said in practice)
    assert {"lead-home", "lead-barred", "lead-body", "lead-clothes"} <= {
        source.key for source in sources_of(practice)
    }


def test_only_untested_paint_is_to_be_tested() -> None:
    """Beside a lot that holds lead; to that one a dusty task is only done as is told."""
    said = told("Paint and lead", lots=(UNTESTED, LEADED), tasks=("sand",))
    assert "Have paint tested before it is scraped, sanded, planed, heated or sawn: dado." in said
    assert "Not before the paint of dado was tested" in said
    assert "To doors only as is told below" in said
    alone = told("Paint and lead", lots=(LEADED,), tasks=("sand",))
    assert "You plan to do this: sand. To doors only as is told below" in alone
    assert "Not before" not in alone
    assert "Where lead was found" not in told("Paint and lead", lots=(UNTESTED,))


def test_what_is_in_doubt() -> None:
    """Lots whose paint nobody tested and layers that may hold asbestos, for those who buy the tests."""
    none = replace(PLAIN, name="sills")
    seen = replace(PLAIN, seen=("F24",))
    tested = replace(PLAIN, name="stage", paint=Paint.NO_LEAD_FOUND, seen=("S1",))
    situation = Situation(
        lots=(UNTESTED, LEADED, none, seen, tested), layers=("Vinyl tile", "furring", "plaster on lath")
    )
    assert doubtful_lots(situation) == ("dado", "floor")
    assert doubtful_layers(situation) == ("Vinyl tile", "plaster on lath")


@pytest.mark.parametrize("treatment", [one for one in Treatment if one is not Treatment.NONE])
def test_treated_wood_is_refused(treatment: Treatment) -> None:
    """Sources conflict about arsenate indoors, so that it is refused as well."""
    said = told("Treated wood", treated=(("A7", treatment),))
    assert "is kept out: A7" in said
    assert "Do not hang, sand or burn it" in said


def test_layers_that_may_hold_asbestos_or_silica() -> None:
    """They are named, with both limits of silica dust."""
    assert told("Asbestos", layers=("old plaster on lath",)).startswith(
        "Old plaster on lath may hold asbestos"
    )
    assert "50 µg/m³ and action from 25 on" in told("Dust", layers=("old plaster on lath",))
    assert "silica" not in told("Dust", layers=("furring",))


def test_redcedar_has_a_limit_of_its_own() -> None:
    """Half a milligram instead of one."""
    for wood in ("western red cedar", "western redcedar", "Redcedar", "cedar"):
        assert "0.5 mg/m³" in told("Dust", woods=(wood,))
    for wood in ("pine", "cedar elm", "eastern redcedar", "northern white cedar", "mystery", ""):
        assert "0.5 mg/m³" not in told("Dust", woods=(wood,))


def test_overhead_only_where_there_is_a_ceiling() -> None:
    """And it is named."""
    assert told("Overhead") == ""
    assert told("Overhead", ceilings=("hall",)).startswith("hall: boards overhead fall")


def test_wires_where_nobody_looked() -> None:
    """With the depth at which a cable may lie; and what was entered is counted."""
    said = told("Wires and pipes", unseen=("east",), keep_outs=2)
    assert '1-1/4" (32 mm) behind the face' in said
    assert "2 keep-outs" in said


def test_it_never_says_that_anything_is_permitted() -> None:
    """Of no situation."""
    for paint in Paint:
        lot = PaintedLot(name="dado", built=None, paint=paint, area="48.0 sq ft", face_ft2=48.0)
        situation = Situation(
            lots=(lot,), ceilings=("hall",), layers=("plaster",), woods=("cedar",), tasks=("sand",)
        )
        words = " ".join(said.text for one in hazards_of(situation) for said in one.said).lower()
        assert "safe" not in words
        assert "complian" not in words
        assert "local codes and licensed trades decide" in words

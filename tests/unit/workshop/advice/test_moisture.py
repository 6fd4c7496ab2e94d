"""Are the boards dry enough: go, wait or measure, and how far they move."""

from dataclasses import replace

import pytest

from builders import board, flaw, job, wall
from plankwright.measure import System, TapeStyle
from plankwright.model import Air, Board, Job, Lot, Room, Treatment
from plankwright.trade.moisture.equilibrium import equilibrium_pct
from plankwright.trade.moisture.facts import METERS
from plankwright.trade.source import Fact
from plankwright.workshop.advice import tell_moisture
from plankwright.workshop.advice.judge_moisture import Verdict, judge_moisture
from plankwright.workshop.advice.tell_moisture import moisture_leaf
from trade_jobs import ROOM


def measured(*readings: float | None, **more: object) -> Job:
    """Give a job whose boards were read so; its room comes to 6.2 to 10.9 %, midway 8.6."""
    boards: list[Board] = [
        board(f"A{number}", 60, 6, moisture_pct=reading, species="longleaf pine")
        for number, reading in enumerate(readings)
    ]
    return replace(job(wall(96, 36), boards), **({"room": ROOM} | more))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("readings", "verdict", "days"),
    [
        ((None, None), Verdict.MEASURE, 7),
        ((8.0, 9.0), Verdict.GO, 7),
        ((8.0, None), Verdict.GO, 7),
        ((8.0, 11.0), Verdict.WAIT, 7),
        ((8.0, 16.0), Verdict.WAIT, 14),
        ((6.0, 8.0), Verdict.WAIT, 7),
        ((8.0, 45.0), Verdict.WAIT, 14),
    ],
)
def test_the_verdict(readings: tuple[float | None, ...], verdict: Verdict, days: int) -> None:
    """Within two points of the middle of the room's seasons; four points off take longer."""
    moisture = judge_moisture(measured(*readings))
    assert moisture.verdict is verdict
    assert moisture.least_days == days


def test_the_room_is_reckoned_by_its_seasons() -> None:
    """Each by the equation; the middle between them is where boards should be."""
    moisture = judge_moisture(measured(8.0))
    dry, damp = equilibrium_pct(20.0, 30.0), equilibrium_pct(23.0, 60.0)
    assert (moisture.dry_pct, moisture.damp_pct) == (dry, damp)
    assert moisture.middle_pct == pytest.approx((dry + damp) / 2)
    assert moisture.now_pct == equilibrium_pct(20.0, 45.0)
    assert not moisture.room_itself_off


def test_a_room_of_which_nothing_is_known() -> None:
    """It is taken as most heated rooms, 6 to 10 %, and that is said."""
    moisture = judge_moisture(measured(8.0, room=None))
    assert (moisture.dry_pct, moisture.damp_pct, moisture.now_pct) == (6.0, 10.0, None)
    text = " ".join(said.text for said in moisture_leaf(measured(8.0, room=None), moisture).parts[0].said)
    assert "Nothing is known of the room's air" in text


def test_air_that_leads_astray() -> None:
    """Waiting in a damp building site makes dry boards wet."""
    room = replace(ROOM, now=Air(temperature_c=10.0, humidity_pct=85.0))
    assert judge_moisture(measured(8.0, room=room)).room_itself_off


def test_seasons_given_the_other_way_round() -> None:
    """Whichever is called dry, the drier one is."""
    room = Room(dry=ROOM.damp, damp=ROOM.dry)
    assert judge_moisture(measured(8.0, room=room)).dry_pct == judge_moisture(measured(8.0)).dry_pct


def test_each_season_is_told_with_its_own_air() -> None:
    """Wood comes to 6.2 % at 20 °C and 30 %, to 10.9 % at 23 °C and 60 %, in whatever order they stand."""
    texts = []
    for room in (ROOM, replace(ROOM, dry=ROOM.damp, damp=ROOM.dry)):
        whole = measured(8.0, room=room)
        texts.append([said.text for said in moisture_leaf(whole, judge_moisture(whole)).parts[0].said])
    assert texts[0][0].startswith(
        "In the dry season (68 °F, 30 %) wood comes to 6.2 %, in the damp one (73 °F, 60 %) to 10.9 %"
    )
    assert texts[1] == texts[0]


def test_treated_boards_are_not_waited_for() -> None:
    """They never come in."""
    whole = measured(8.0)
    lost = replace(
        whole.boards[0],
        flaws=(flaw(0, 60),),
        treatment=Treatment.CREOSOTE,
    )
    moisture = judge_moisture(replace(whole, boards=(lost,)))
    assert (moisture.verdict, moisture.unmeasured) == (Verdict.BARRED, ())
    headline = moisture_leaf(whole, moisture).headline.text
    assert headline == "No board may be hung: not one of those that are left is free of treatment."


def test_the_spread_of_a_lot_stands_in_for_readings() -> None:
    """Both ends are judged, for the boards that have no reading of their own; those that have one keep it."""
    whole = measured(8.5, None, lots=(Lot(name="stage", moisture_pct=(8.0, 12.0)),))
    whole = replace(whole, boards=tuple(replace(each, lot="stage") for each in whole.boards))
    moisture = judge_moisture(whole)
    assert [(reading.of, reading.moisture_pct) for reading in moisture.readings] == [
        ("dampest of stage", 12.0),
        ("driest of stage", 8.0),
        ("A0", 8.5),
    ]
    assert moisture.unmeasured == ()
    assert moisture.verdict is Verdict.WAIT


def test_a_lot_is_one_however_it_is_written() -> None:
    """Hall and hall are one lot, so its spread is judged once."""
    whole = measured(None, None, lots=(Lot(name="Hall", moisture_pct=(8.0, 12.0)),))
    first, second = whole.boards
    whole = replace(whole, boards=(replace(first, lot="Hall"), replace(second, lot="hall")))
    assert [reading.of for reading in judge_moisture(whole).readings] == ["dampest of Hall", "driest of Hall"]


def test_unknown_wood_gets_a_range() -> None:
    """From the quietest to the liveliest species, and that is told as its source."""
    plain = measured(8.0)
    unknown = replace(plain, boards=tuple(replace(each, species="") for each in plain.boards))
    (known,) = judge_moisture(plain).movements
    (wide,) = judge_moisture(unknown).movements
    assert known.opens.least_nm == known.opens.most_nm
    assert wide.opens.least_nm < known.opens.most_nm < wide.opens.most_nm
    leaf = moisture_leaf(unknown, judge_moisture(unknown))
    assert "unknown-species" in {source.key for source in leaf.sources}


def test_readings_that_no_meter_can_be_trusted_with() -> None:
    """Below 4 and above 30 %: told, and waited for."""
    whole = measured(3.0, 8.5, 31.0)
    moisture = judge_moisture(whole)
    assert [reading.readable for reading in moisture.readings] == [False, False, True]
    text = " ".join(said.text for said in moisture_leaf(whole, moisture).parts[1].said)
    assert "below 4 % (6 with a resistance meter) or above 30 % are none that a meter can be trusted" in text


def test_the_limits_of_a_meter_are_told_from_their_facts(monkeypatch: pytest.MonkeyPatch) -> None:
    """Were they others, the sentence would be another."""
    monkeypatch.setattr(tell_moisture, "LEAST_READABLE_PCT", Fact(value=5.0, source=METERS))
    monkeypatch.setattr(tell_moisture, "MOST_READABLE_PCT", Fact(value=28.0, source=METERS))
    whole = measured(3.0)
    text = " ".join(said.text for said in moisture_leaf(whole, judge_moisture(whole)).parts[1].said)
    assert "below 5 %" in text
    assert "above 28 %" in text


def test_units_both_ways() -> None:
    """A metric tape gets degrees Celsius and millimetres, and no inch."""
    metric = replace(measured(8.0), tape=TapeStyle(system=System.METRIC))
    leaf = moisture_leaf(metric, judge_moisture(metric))
    text = " ".join(said.text for part in leaf.parts for said in part.said)
    assert "20 °C" in text
    assert " mm" in text
    assert " in " not in text.replace("in the", "")
    assert "°F" not in text


@pytest.mark.parametrize("readings", [(None,), (8.0,), (8.0, None), (20.0, 8.0)])
def test_every_headline_has_a_source(readings: tuple[float | None, ...]) -> None:
    """Whatever the verdict."""
    whole = measured(*readings)
    leaf = moisture_leaf(whole, judge_moisture(whole))
    assert leaf.headline.sources
    assert leaf.headline.text.split(":")[0].split(" ")[0] in {"Go", "Wait", "Measure"}

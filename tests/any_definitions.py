"""Definitions of jobs with everything that job.toml may say, lengths written in every way that is read."""

from dataclasses import dataclass
from decimal import Decimal
from typing import Any

from hypothesis import strategies as st

from plankwright.measure import FOOT, INCH, METRE, MILLIMETRE, Nm, System, TapeStyle, write_exact
from plankwright.model import BlemishPolicy, JointPolicy, Paint, SawKind, SurfaceKind, Treatment

_UNITS = {"inches": INCH, "feet": FOOT, "mm": MILLIMETRE, "cm": 10 * MILLIMETRE, "m": METRE}
_WIDE, _HIGH = 144 * INCH, 96 * INCH
_TAPES = (TapeStyle(system=System.IMPERIAL), TapeStyle(system=System.METRIC))


@dataclass(frozen=True, slots=True)
class Written:
    """How lengths are written here.

    Parameters
    ----------
    unit_nm
        What a number without a unit counts. [nm]
    comma
        Whether the comma is the decimal mark in text.
    """

    unit_nm: Nm
    comma: bool

    def length(self, nm: Nm) -> st.SearchStrategy[Any]:
        """Write a length: as a number, as text with its unit, or as a number in text."""
        texts = [self._marked(write_exact(nm, tape)) for tape in _TAPES]
        number = Decimal(nm) / Decimal(self.unit_nm)
        if number * self.unit_nm != nm or number != round(number, 6):
            return st.sampled_from(texts)
        whole = int(number) if number == int(number) else float(number)
        return st.sampled_from([*texts, whole, self._marked(f"{number.normalize():f}")])

    def up_to(self, most: Nm, *, least: Nm = 0) -> st.SearchStrategy[Any]:
        """Write some length."""
        steps = st.sampled_from([INCH // 16, INCH, MILLIMETRE, 123_457])
        return steps.flatmap(
            lambda step: st.integers(-(-least // step), most // step).map(lambda count: count * step)
        ).flatmap(self.length)

    def _marked(self, text: str) -> str:
        return text.replace(".", ",") if self.comma else text


@st.composite
def definitions(draw: st.DrawFn) -> dict[str, Any]:
    """Give a definition that says what can be."""
    units = draw(st.sampled_from(sorted(_UNITS)))
    comma = draw(st.booleans())
    how = Written(_UNITS[units], comma)
    names = draw(st.sampled_from([("wall",), ("north", "east")]))
    given: dict[str, Any] = {
        "name": draw(st.sampled_from(["hall", "“old” hall, 2nd floor", "Stube"])),
        "units": units,
        "surface": [draw(_surfaces(how, name, plain=len(names) > 1)) for name in names],
    }
    if comma:
        given["decimal_comma"] = True
    if len(names) > 1 and draw(st.booleans()):
        given["linked"] = [list(names)]
    tape = draw(st.sampled_from(["usual", "fraction", "step"]))
    if tape == "fraction" and units in {"inches", "feet"}:
        given["fraction"] = draw(st.sampled_from(["1/8", "1/32"]))
    if tape == "step" and units not in {"inches", "feet"}:
        given["millimetre_step"] = draw(how.length(MILLIMETRE // 2))
    tables = {
        "rules": _rules(how),
        "saw": st.lists(_saws(how), min_size=1, max_size=2),
        "house": st.just({"built": 1926}),
        "lot": _lots(),
        "room": _rooms(how),
        "nails": _nails(how),
        "task": st.just([{"name": "pull nails", "minutes": 1.5, "per": "board"}]),
        "price": _prices(how),
        "currency": st.sampled_from(["$", "€"]),
    }
    for name in draw(st.lists(st.sampled_from(sorted(tables)), unique=True)):
        given[name] = draw(tables[name])
    return given


@st.composite
def _surfaces(draw: st.DrawFn, how: Written, name: str, *, plain: bool) -> dict[str, Any]:
    surface: dict[str, Any] = {
        "id": name,
        **draw(_outlines(how, plain=plain)),
        "framing": draw(_framings(how)),
    }
    parts = {
        "opening": _boxes(how, 20, {"trim": how.up_to(4 * INCH)}),
        "concealed": _boxes(how, 60, {}),
        "cut_out": _cut_outs(how),
        "keep_out": _keep_outs(how),
        "between": st.fixed_dictionaries(
            {"what": st.just("plaster"), "thickness": how.up_to(INCH, least=INCH // 8)}
        ).map(lambda layer: [layer]),
        "trim": st.dictionaries(
            st.sampled_from(["bottom", "top", "left", "right"]), how.up_to(3 * INCH), min_size=1
        ),
    }
    for part in draw(st.lists(st.sampled_from(sorted(parts)), unique=True)):
        surface[part] = draw(parts[part])
    if not plain and draw(st.booleans()):
        surface["kind"] = draw(st.sampled_from(SurfaceKind)).value
    if plain and name == "east" and draw(st.booleans()):
        surface["raised"] = draw(how.up_to(4 * INCH))
    return surface


@st.composite
def _outlines(draw: st.DrawFn, how: Written, *, plain: bool) -> dict[str, Any]:
    ways = ["plain", "plain", *(() if plain else ("heights", "corners"))]
    way = draw(st.sampled_from(ways))
    if way == "plain":
        return {"width": draw(how.length(_WIDE)), "height": draw(how.length(_HIGH))}
    if way == "corners":
        corners = [(0, 0), (_WIDE, 0), (_WIDE, _HIGH), (_WIDE // 2, _HIGH + 20 * INCH), (0, _HIGH)]
        return {"corners": [[draw(how.length(x)), draw(how.length(y))] for x, y in corners]}
    places = [(0, _HIGH), (_WIDE // 3, _HIGH + INCH), (_WIDE, _HIGH - INCH // 2)]
    heights = [{"at": draw(how.length(at)), "height": draw(how.length(high))} for at, high in places]
    return {"heights": heights, "level": draw(st.sampled_from(["floor", "ceiling"]))}


@st.composite
def _framings(draw: st.DrawFn, how: Written) -> dict[str, Any]:
    way = draw(st.sampled_from(["solid", "spaced", "listed"]))
    if way == "solid":
        return {"solid": True, "thickness": draw(how.length(INCH * 3 // 4))}
    more: dict[str, Any] = {"width": draw(how.up_to(3 * INCH, least=INCH)), "opened": draw(st.booleans())}
    if way == "listed":
        return {"centres": [draw(how.length(at * INCH)) for at in (8, 30, 72, 120)], **more}
    return {"spacing": draw(how.length(16 * INCH)), "first_centre": draw(how.up_to(16 * INCH)), **more}


@st.composite
def _boxes(
    draw: st.DrawFn, how: Written, left: int, more: dict[str, st.SearchStrategy[Any]]
) -> list[dict[str, Any]]:
    size = st.sampled_from([INCH, 12 * INCH, 305 * MILLIMETRE])
    box = {
        "left": draw(how.length(left * INCH)),
        "bottom": draw(how.up_to(20 * INCH)),
        "width": draw(size.flatmap(how.length)),
        "height": draw(size.flatmap(how.length)),
        **{key: draw(value) for key, value in more.items()},
    }
    return [{"id": "door", **box} if draw(st.booleans()) else box]


@st.composite
def _cut_outs(draw: st.DrawFn, how: Written) -> list[dict[str, Any]]:
    size = {"width": draw(how.length(2 * INCH)), "height": draw(how.length(3 * INCH)), "what": "socket"}
    if draw(st.booleans()):
        return [{"centre": [draw(how.length(110 * INCH)), draw(how.length(12 * INCH))], **size}]
    place = {"left": draw(how.length(110 * INCH)), "bottom": draw(how.length(12 * INCH))}
    return [{**place, **size, "front": draw(how.up_to(INCH))}]


@st.composite
def _keep_outs(draw: st.DrawFn, how: Written) -> list[dict[str, Any]]:
    strip = draw(st.sampled_from(["vertical", "horizontal"]))
    return [
        {strip: draw(how.up_to(90 * INCH)), "width": draw(how.up_to(3 * INCH, least=INCH)), "what": "pipe"},
        *draw(_boxes(how, 100, {})),
    ]


@st.composite
def _rules(draw: st.DrawFn, how: Written) -> dict[str, Any]:
    small, some = how.up_to(INCH // 4), st.sampled_from
    rules = {
        "crosscut_kerf": small,
        "rip_kerf": small,
        "straight_edge_loss": small,
        "end_trim": how.up_to(2 * INCH),
        "expansion_gap": small,
        "stagger": how.up_to(30 * INCH),
        "shortest_piece": how.up_to(20 * INCH, least=INCH),
        "joints": some(JointPolicy).map(str),
        "blemishes": some(BlemishPolicy).map(str),
        "hold_back": st.integers(0, 1),
        "nailing_points": st.integers(1, 3),
        "nail_edge": how.up_to(INCH),
    }
    return {name: draw(rules[name]) for name in draw(st.lists(some(sorted(rules)), min_size=1, unique=True))}


def _saws(how: Written) -> st.SearchStrategy[dict[str, Any]]:
    return st.fixed_dictionaries(
        {
            "name": st.just("mitre saw"),
            "cuts": st.sampled_from(SawKind).map(str),
            "capacity": how.up_to(12 * INCH, least=INCH),
        }
    )


def _lots() -> st.SearchStrategy[list[dict[str, Any]]]:
    lot = st.fixed_dictionaries(
        {"name": st.just("floor"), "paint": st.sampled_from(Paint).map(str)},
        optional={
            "built": st.just(1926),
            "treatment": st.sampled_from(Treatment).map(str),
            "moisture": st.sampled_from([[8, 12], [8.5, 11.25], ["8", "12 %"]]),
        },
    )
    return lot.map(lambda one: [one])


@st.composite
def _rooms(draw: st.DrawFn, how: Written) -> dict[str, Any]:
    warm, dry = ("21,5 C", "35,5") if how.comma else ("68 F", 35.5)
    room = {
        "dry": {"temperature": warm, "humidity": dry},
        "damp": {"temperature": "-4 F" if draw(st.booleans()) else "20 C", "humidity": "65 %"},
    }
    return {**room, "now": room["dry"]} if draw(st.booleans()) else room


def _nails(how: Written) -> st.SearchStrategy[dict[str, Any]]:
    return st.fixed_dictionaries(
        {}, optional={"bite": how.length(INCH), "depth_unknown": how.length(INCH * 5 // 4)}
    ).filter(bool)


def _prices(how: Written) -> st.SearchStrategy[list[dict[str, Any]]]:
    price = {"name": "pine", "cost": "4,50" if how.comma else 4.5, "per": "square foot"}
    return st.sampled_from([[price], [{**price, "waste": 12.5}]])

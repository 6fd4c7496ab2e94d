"""What the description of a job says, as far as it can be read, and everything that is wrong with it."""

from collections.abc import Callable
from typing import TypeVar

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from plankwright.files.job_document import MILLIMETRE_STEPS, JobDocument, Units
from plankwright.files.notation import Notation
from plankwright.files.report import Report, Where
from plankwright.files.rule_sense import remark_rules
from plankwright.files.sentences import tell
from plankwright.files.sound_part import Raw, SoundPart
from plankwright.files.surface_sense import make_sense, remark_narrow_trim
from plankwright.files.surfaces import surface_of
from plankwright.files.toml_text import Given
from plankwright.measure import MILLIMETRE, System, TapeStyle
from plankwright.model import (
    Board,
    InvalidValueError,
    Job,
    Link,
    Lot,
    Price,
    Rules,
    Saw,
    Surface,
    demand_corners,
)
from plankwright.model.board import lot_key
from plankwright.model.origin import demand_year

_Made = TypeVar("_Made")

_PART_LISTS = frozenset({"opening", "cut_out", "concealed", "keep_out", "between"})
_STAND_IN: Raw = {"name": "-", "units": Units.INCHES.value, "surface": []}


class JobText:
    """Everything that the description of a job says about it.

    When the report has problems, the rest stands for what could be read, so that the tally can be judged as
    well; it must not be used for anything else.

    Parameters
    ----------
    given
        The description as parsed.
    file
        Its name as the user knows it.
    may_be_bare
        Whether it may have no surface yet.
    """

    def __init__(self, given: Given, file: str, *, may_be_bare: bool = False) -> None:
        self._given, self._may_be_bare = given, may_be_bare
        self._sound = SoundPart(given.raw)
        self.report = Report(file, self._place, self._sound.original)
        for where, sentence in given.troubles:
            self.report.refuse(where, sentence)
        raw = given.raw
        self.notation = _notation(raw)
        document = self._document() if raw else JobDocument.model_validate(_STAND_IN, context=self.notation)
        self.document = document
        self.name = document.name
        self.tape = self._tape(document)
        self.rules = self._rules(document)
        self.saws = tuple(
            Saw(name=saw.name, cuts=saw.cuts, capacity_nm=saw.capacity) for saw in document.saws
        )
        self.surfaces = self._surfaces(document)
        self.linked = self._linked(document)
        self.house_built = self._valid(("house",), lambda: self._house_built(document))
        self.lots = self._lots(document)
        self.room = self._valid(("room",), lambda: None if document.room is None else document.room.room())
        self.fastening = document.nails.fastening()
        self.tasks = tuple(entry.task() for entry in document.tasks)
        self.prices = self._prices(document)
        self.currency = document.currency

    def job(self, boards: tuple[Board, ...]) -> Job:
        """Give the job with its boards; neither may have problems."""
        return Job(
            name=self.name,
            tape=self.tape,
            surfaces=self.surfaces,
            boards=boards,
            rules=self.rules,
            saws=self.saws,
            linked=self.linked,
            room=self.room,
            house_built=self.house_built,
            lots=self.lots,
            fastening=self.fastening,
            tasks=self.tasks,
            prices=self.prices,
            currency=self.currency,
        )

    def demand_some_left(self, boards: tuple[Board, ...]) -> None:
        """Note a problem where the rules hold back every board that there is."""
        if 0 < len(boards) <= self.rules.hold_back:
            self.report.refuse(
                ("rules", "hold_back"),
                f"hold_back keeps {self.rules.hold_back} of {len(boards)} boards, so none is left: "
                "keep fewer",
            )

    def _place(self, where: Where) -> tuple[str, int | None]:
        return self._given.place(self._sound.original(where))

    def _document(self) -> JobDocument:
        """Give the document, without whatever in it had to be refused."""
        stand_in: Raw = {}
        while True:
            try:
                return JobDocument.model_validate(stand_in | self._sound.build(), context=self.notation)
            except ValidationError as trouble:
                tell(trouble, JobDocument, self.report, toml=True)
                offenders = [self._sound.original(_smallest_part(error)) for error in trouble.errors()]
                for offender in offenders:
                    self._sound.leave_out(offender)
                stand_in = _STAND_IN

    def _tape(self, document: JobDocument) -> TapeStyle:
        step = document.millimetre_step or MILLIMETRE
        if document.units.unit.is_metric:
            if document.fraction is not None:
                self.report.refuse(
                    ("fraction",),
                    "fraction is for an inch tape, but units is metric: "
                    "leave it out, or give millimetre_step",
                )
            if step not in MILLIMETRE_STEPS:
                self.report.refuse(("millimetre_step",), 'millimetre_step must be "1 mm" or "0.5 mm"')
                step = MILLIMETRE
            return TapeStyle(system=System.METRIC, millimetre_step=step)
        if document.millimetre_step is not None:
            self.report.refuse(
                ("millimetre_step",),
                "millimetre_step is for a metric tape, but units is not: leave it out, or give fraction",
            )
        return TapeStyle(
            system=System.IMPERIAL, denominator=document.fraction.denominator if document.fraction else 16
        )

    def _rules(self, document: JobDocument) -> Rules:
        try:
            rules = document.rules.rules()
        except InvalidValueError as trouble:
            self.report.refuse(
                ("rules", trouble.field), f"rules do not fit together: {trouble}; mend one of them"
            )
            return Rules()
        if not self.notation.guessed:
            remark_rules(rules, self.report)
        return rules

    def _surfaces(self, document: JobDocument) -> tuple[Surface, ...]:
        if not (document.surfaces or self._may_be_bare or self.report.problems):
            self.report.refuse(
                ("surface",), "surface is an empty list: describe what is to be covered below [[surface]]"
            )
        surfaces: list[Surface] = []
        seen: set[str] = set()
        for number, entry in enumerate(document.surfaces):
            where: Where = ("surface", number)
            if entry.id in seen:
                self.report.refuse(
                    (*where, "id"), f"id {entry.id} is used for another surface: give each its own"
                )
            seen.add(entry.id)
            surface = surface_of(entry, where, self.report)
            if surface is not None:
                make_sense(surface, where, self.report, tape=self.tape)
                remark_narrow_trim(surface, where, self.report, rules=self.rules, tape=self.tape)
                surfaces.append(surface)
        return tuple(surfaces)

    def _valid(self, where: Where, make: Callable[[], _Made]) -> _Made | None:
        """Make a value of the model, or note why there is none."""
        try:
            return make()
        except InvalidValueError as trouble:
            self.report.refuse((*where, trouble.field), f"{trouble.field} {trouble}")
            return None

    @staticmethod
    def _house_built(document: JobDocument) -> int | None:
        demand_year(document.house.built)
        return document.house.built

    def _lots(self, document: JobDocument) -> tuple[Lot, ...]:
        seen: set[str] = set()
        for number, entry in enumerate(document.lots):
            if lot_key(entry.name) in seen:
                self.report.refuse(
                    ("lot", number, "name"), f"name {entry.name} is used for another lot: keep one of them"
                )
            seen.add(lot_key(entry.name))
        lots = (self._valid(("lot", number), entry.lot) for number, entry in enumerate(document.lots))
        return tuple(lot for lot in lots if lot is not None)

    def _prices(self, document: JobDocument) -> tuple[Price, ...]:
        prices = (self._valid(("price", number), entry.price) for number, entry in enumerate(document.prices))
        return tuple(price for price in prices if price is not None)

    def _linked(self, document: JobDocument) -> tuple[Link, ...]:
        """Give the links; they can be judged once every surface could be read."""
        if self.report.problems:
            return ()
        try:
            demand_corners(self.surfaces, document.linked)
        except InvalidValueError as trouble:
            self.report.refuse(("linked",), f"linked does not fit: {trouble}")
            return ()
        return document.linked


def _notation(raw: Raw) -> Notation:
    """Give the notation of the file; inches, which trouble the fewest lines, where the unit is not known."""
    written = raw.get("units")
    units = next((units for units in Units if units.value == written), None)
    return Notation(
        unit=(units or Units.INCHES).unit,
        decimal_comma=raw.get("decimal_comma") is True,
        guessed=units is None,
    )


def _smallest_part(error: ErrorDetails) -> Where:
    """Give the path of the smallest part that can be left out so that the rest can still be judged."""
    where: Where = error["loc"]
    if error["type"] == "extra_forbidden":
        return where
    match where:
        case ("surface", int(), str(word), int(), *_) if word in _PART_LISTS:
            return where[:4]
        case ("surface" | "saw" | "lot" | "task" | "price", int(), *_) | ("rules", str(), *_):
            return where[:2]
        case _:
            return where[:1]

"""Whether a surface makes sense: its parts lie where such parts can lie, and boards can be nailed to it."""

from collections.abc import Sequence
from itertools import combinations

from plankwright.files.outline import overlap, share_inside
from plankwright.files.report import Report, Where
from plankwright.measure import Nm, TapeStyle, write_length
from plankwright.model import ConcealedZone, CutOut, Direction, KeepOut, Opening, Rectangle, Rules, Surface
from plankwright.model.surface import twice_signed_area

_WHOLE = 0.95
"""An out-of-level floor cuts a little off the foot of a door, as it should; one cut by more is doubtful."""

_Part = Opening | CutOut | ConcealedZone | KeepOut


def make_sense(surface: Surface, where: Where, report: Report, *, tape: TapeStyle) -> None:
    """Note what cannot be right about a surface, and what is doubtful.

    Parameters
    ----------
    surface
        The surface.
    where
        Its path in the file.
    report
        Where problems and remarks go.
    tape
        How lengths are told.
    """
    sense = _Sense(surface, where, report, tape)
    for key, parts in sense.parts.items():
        sense.own_names(key, parts)
        sense.on_the_surface(key, parts)
    sense.openings_apart()
    sense.cut_outs_in_wood()
    sense.something_to_cover()
    sense.framing()


def remark_narrow_trim(
    surface: Surface, where: Where, report: Report, *, rules: Rules, tape: TapeStyle
) -> None:
    """Remark on trim that is narrower than the gap which it should hide.

    Parameters
    ----------
    surface, where, report, tape
        As for `make_sense`.
    rules
        They say how wide the gap is.
    """
    gap = rules.expansion_gap_nm
    trims: list[tuple[Where, str, Nm]] = [
        (("trim", side), f"the {side} trim", getattr(surface.trim, side))
        for side in ("bottom", "top", "left", "right")
    ]
    trims += [
        (("opening", number, "trim"), f"the trim of {_part('opening', opening)}", opening.trim_nm)
        for number, opening in enumerate(surface.openings)
    ]
    for below, name, covers in trims:
        if 0 < covers < gap:
            report.remark(
                (*where, *below),
                f"{name} covers {write_length(covers, tape)} but expansion_gap leaves "
                f"{write_length(gap, tape)} open: the gap will show",
            )


class _Sense:
    def __init__(self, surface: Surface, where: Where, report: Report, tape: TapeStyle) -> None:
        self.surface = surface
        self.where = where
        self.report = report
        self.tape = tape
        self.parts: dict[str, Sequence[_Part]] = {
            "opening": surface.openings,
            "cut_out": surface.cut_outs,
            "concealed": surface.concealed,
            "keep_out": surface.keep_outs,
        }

    def refuse(self, below: Where, sentence: str) -> None:
        self.report.refuse((*self.where, *below), sentence)

    def own_names(self, key: str, parts: Sequence[_Part]) -> None:
        seen: set[str] = set()
        for number, part in enumerate(parts):
            if part.id in seen:
                self.refuse(
                    (key, number, "id"),
                    f"{_part(key, part)} is named twice on this surface: give each its own id",
                )
            seen.add(part.id)

    def on_the_surface(self, key: str, parts: Sequence[_Part]) -> None:
        """Demand that a part touches the surface, and that openings and cut-outs lie within its box."""
        for number, part in enumerate(parts):
            share = share_inside(part.place, self.surface.outline)
            beyond = self.beyond(part.place)
            if share == 0:
                self.refuse(
                    (key, number),
                    f"{_part(key, part)} lies wholly outside the surface: check where it is measured from",
                )
            elif beyond and key in {"opening", "cut_out"}:
                self.refuse(
                    (key, number), f"{_part(key, part)} reaches {beyond}: check its place and its size"
                )
            elif share < _WHOLE and key in {"opening", "cut_out"}:
                self.report.remark(
                    (*self.where, key, number),
                    f"{_part(key, part)} lies outside the outline by {round(100 * (1 - share))} % "
                    "of its area: check its place and the outline",
                )

    def beyond(self, box: Rectangle) -> str:
        surface = self.surface
        for over, side in (
            (box.right - surface.width_nm, "right"),
            (box.top - surface.height_nm, "top"),
            (-box.left, "left"),
            (-box.bottom, "bottom"),
        ):
            if over > 0:
                return f"{write_length(over, self.tape)} beyond the {side} of the surface"
        return ""

    def openings_apart(self) -> None:
        for (_, one), (number, other) in combinations(enumerate(self.surface.openings), 2):
            if overlap(one.place, other.place):
                names = f"{_part('opening', other)} overlaps {_part('opening', one)}"
                self.refuse(("opening", number), f"{names}: check their places, or make them one")

    def cut_outs_in_wood(self) -> None:
        for number, cut_out in enumerate(self.surface.cut_outs):
            for opening in self.surface.openings:
                if overlap(cut_out.place, opening.place):
                    names = f"{_part('cut_out', cut_out)} lies in {_part('opening', opening)}"
                    self.refuse(
                        ("cut_out", number),
                        f"{names}, where no board hangs: check its place, or leave it out",
                    )

    def something_to_cover(self) -> None:
        surface = self.surface
        open_nm2 = sum(
            share_inside(opening.place, surface.outline) * opening.place.width_nm * opening.place.height_nm
            for opening in surface.openings
        )
        if 2 * open_nm2 >= abs(twice_signed_area(surface.outline)):
            self.refuse(("opening", 0), "the openings leave nothing of the surface: check their sizes")
        trim = surface.trim
        if trim.left + trim.right >= surface.width_nm or trim.bottom + trim.top >= surface.height_nm:
            self.refuse(("trim",), "the trim covers the whole surface: check its sizes")

    def framing(self) -> None:
        surface = self.surface
        for member in surface.framing.members:
            reach = surface.width_nm if member.runs is Direction.VERTICAL else surface.height_nm
            if member.centre_nm - member.width_nm // 2 >= reach:
                self.refuse(
                    ("framing", "centres"),
                    f"centres has {write_length(member.centre_nm, self.tape)}, which is beyond the surface "
                    f"({write_length(reach, self.tape)}): check where it is measured from",
                )
        if not surface.framing.solid and not surface.crossing_members:
            self.refuse(
                ("framing",),
                f"framing runs {surface.courses_run} like the courses, so no board would cross it: turn the "
                "courses, or fix strips across the framing and list those, or fix solid backing and write "
                "solid = true",
            )


def _part(key: str, part: _Part) -> str:
    word = {"cut_out": "cut-out", "keep_out": "keep-out", "concealed": "concealed zone"}.get(key, key)
    return part.id if part.id.startswith(word) else f"{word} {part.id}"

"""A board as it is filled in: guessed, read back, and made a board of."""

from dataclasses import replace

import pytest

from builders import board, flaw, nm
from kept_jobs import bare_job
from plankwright import files
from plankwright.errors import BadInputError
from plankwright.model import (
    Board,
    EdgeKind,
    EdgeProfile,
    Face,
    Flaw,
    NailsLeft,
    Severity,
    Treatment,
)
from plankwright.workshop.jobs.enter_board import (
    EDGES,
    KINDS,
    NAILS,
    TREATMENTS,
    Entry,
    FlawEntry,
    ReadBack,
    boards_of_entry,
    entry_given,
    entry_of,
    next_entry,
    read_back,
    same_again,
    tell_added,
)
from plankwright.workshop.jobs.kept import KeptJob
from plankwright.workshop.ports import DefinitionReading

INCHES = files.read_definition({"name": "hall", "units": "inches", "surface": []})
COMMA = files.read_definition({"name": "hall", "units": "mm", "decimal_comma": True, "surface": []})
SIZES = {"id": "F1", "length": "97", "width": "5-1/4", "thickness": "3/4"}
MILLED = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))
LAST = board(
    "F12",
    97,
    5.25,
    lot="dado",
    species="pine",
    tone="dark",
    profile=MILLED,
    flaws=(flaw(3, 6),),
    note="cupped",
    moisture_pct=11.5,
    nails=NailsLeft.PULLED,
)


def _read(*flaws: FlawEntry, reading: DefinitionReading = INCHES, **fields: str) -> Board:
    (made,) = boards_of_entry(Entry(fields={**SIZES, **fields}, flaws=flaws), reading)
    return made


def _refused(*flaws: FlawEntry, **fields: str) -> list[str]:
    with pytest.raises(BadInputError) as refusal:
        boards_of_entry(Entry(fields={**SIZES, **fields}, flaws=flaws), INCHES)
    return [problem.what for problem in refusal.value.problems]


def _echo(*flaws: FlawEntry, **fields: str) -> ReadBack:
    return read_back(Entry(fields=fields, flaws=flaws), INCHES)


def _kept(*boards: Board) -> KeptJob:
    return bare_job("hall", *boards)


def test_the_first_board_is_only_given_a_mark() -> None:
    """Nothing is known of it."""
    assert dict(next_entry(_kept(), INCHES).fields) == {"id": "1"}


def test_the_next_board_is_probably_of_the_sort_of_the_last() -> None:
    """Its length is its own, and so are its flaws."""
    entry = next_entry(_kept(LAST), INCHES)
    assert [
        entry[name] for name in ("id", "lot", "species", "width", "thickness", "tone", "edge", "tongue")
    ] == [*("F13", "dado", "pine", '5-1/4"', '3/4"', "dark", "tongue-and-groove", '1/4"')]
    assert not entry["length"]
    assert not entry.flaws


def test_the_same_again_is_a_board_of_the_same_size() -> None:
    """Without what was found on that one alone."""
    entry = same_again(_kept(LAST), INCHES)
    assert entry is not None
    (again,) = boards_of_entry(entry, INCHES)
    assert again == replace(LAST, id="F13", flaws=(), note="", moisture_pct=None)


def test_the_same_again_of_treated_wood_is_treated() -> None:
    """It goes without saying that it is lost."""
    whole = Flaw(start_nm=0, end_nm=nm(97), what="treated", severity=Severity.LOST)
    entry = same_again(_kept(replace(LAST, treatment=Treatment.CREOSOTE, flaws=(whole,))), INCHES)
    assert entry is not None
    (again,) = boards_of_entry(entry, INCHES)
    assert again.treatment is Treatment.CREOSOTE


def test_without_a_board_there_is_no_same_again() -> None:
    """Nothing to be like."""
    assert same_again(_kept(), INCHES) is None


@pytest.mark.parametrize(
    "tallied",
    [
        LAST,
        board("plain", 97, 5.25),
        board("tapered", 97, 5.25, width_end_nm=nm(4), nails=NailsLeft.NIPPED),
        board("untreated", 97, 5.25, untreated=True),
        board("flawed", 97, 5.25, flaws=(flaw(3, 6), flaw(40, 44, Severity.BLEMISH, face=Face.BACK))),
        board("odd", 97, 5.25, length_nm=nm(97) + 12_345),
    ],
    ids=lambda one: str(one.id),
)
def test_a_board_that_is_opened_and_saved_stays_as_it_is(tallied: Board) -> None:
    """To the nanometre."""
    assert boards_of_entry(entry_of(tallied, INCHES), INCHES) == (tallied,)


def test_a_mark_is_asked_for() -> None:
    """It is written on the board."""
    assert _refused(id="") == ["the mark is missing: write one on the board, and here"]


def test_a_flaw_of_the_list_is_read() -> None:
    """With its ends, what it is and what that does to the wood."""
    (found,) = _read(FlawEntry(start="31.5 in", end="33", what="rot lost")).flaws
    assert found == Flaw(start_nm=nm(31.5), end_nm=nm(33), what="rot", severity=Severity.LOST)


def test_a_blemish_shows_on_the_face_that_is_named() -> None:
    """Lost wood is lost through and through."""
    blemish, lost = _read(
        FlawEntry(start="3", end="6", what="stain blemish", face="back"),
        FlawEntry(start="9", end="12", what="rot lost", face="back"),
    ).flaws
    assert (blemish.face, lost.face) == (Face.BACK, None)


def test_a_flaw_whose_end_was_put_down_first_is_turned_round() -> None:
    """As a thumb does that taps from right to left."""
    (found,) = _read(FlawEntry(start="33 in", end="31.5 in")).flaws
    assert (found.start_nm, found.end_nm) == (nm(31.5), nm(33))


@pytest.mark.parametrize(("start", "end"), [("40", ""), ("", "40"), ("40 in", "")])
def test_a_flaw_with_one_place_is_a_single_place(start: str, end: str) -> None:
    """Half an inch to each side."""
    (found,) = _read(FlawEntry(start=start, end=end, what="nail holes lost")).flaws
    assert (found.start_nm, found.end_nm) == (nm(39.5), nm(40.5))


def test_flaws_written_down_and_listed_come_together() -> None:
    """In order along the board."""
    found = _read(FlawEntry(start="3", end="6"), flaws="last 6 split").flaws
    assert [(one.what, one.start_nm) for one in found] == [("lost", nm(3)), ("split", nm(91))]


def test_a_semicolon_in_a_place_ends_no_flaw() -> None:
    """What stands behind it would be taken for another one."""
    (problem,) = _refused(FlawEntry(start="3", end="6; 9 to 12", what="rot lost"))
    assert "9 to 12" in problem


def test_a_tongue_kept_from_the_last_board_does_not_keep_a_square_one_out() -> None:
    """Square says plainly that there is none."""
    assert _read(edge="square", tongue='1/4"').profile == EdgeProfile()


def test_a_decimal_comma_is_read_where_the_job_writes_one() -> None:
    """In sizes and in flaws."""
    place = FlawEntry(start="100,5 mm", end="200 mm")
    made = _read(place, reading=COMMA, length="2226,5", width="130", thickness="20")
    assert (made.length_nm, made.flaws[0].start_nm) == (2_226_500_000, 100_500_000)


@pytest.mark.parametrize("kind", [kind for kinds in KINDS.values() for kind, _ in kinds])
def test_every_kind_that_can_be_chosen_is_read(kind: str) -> None:
    """And does to the wood what it says."""
    (found,) = _read(FlawEntry(start="3", end="6", what=kind)).flaws
    assert found.severity == kind.rpartition(" ")[2]


def test_every_word_that_can_be_chosen_is_read() -> None:
    """For edge, nails and treatment."""
    for edge in EDGES:
        assert _read(edge=edge, tongue="" if edge is EdgeKind.SQUARE else "1/4").profile.kind is edge
    for nails in NAILS:
        assert _read(nails=nails).nails is nails
    for treatment in TREATMENTS:
        assert _read(treatment=treatment).treatment is treatment


def test_what_is_typed_of_a_form_is_kept() -> None:
    """Flaws stay in their rows, empty ones behind them are none; whatever else there is does not count."""
    rows = [
        ("flaw.0.what", "lost"),
        ("flaw.1.start", " 3 "),
        ("flaw.1.what", "rot lost"),
        ("flaw.2.face", ""),
    ]
    entry = entry_given([*SIZES.items(), *rows, ("key", "7"), ("flaw.x.start", "3"), ("flaw.0.else", "3")])
    assert dict(entry.fields) == SIZES
    assert entry.flaws == (FlawEntry(), FlawEntry(start="3", what="rot lost"))


def test_a_row_left_empty_is_no_flaw() -> None:
    """Whatever stands behind it."""
    assert len(_read(FlawEntry(), FlawEntry(start="3", end="6")).flaws) == 1


def test_a_flaw_without_a_place_is_asked_where_it_is() -> None:
    """Somebody chose what it is, and forgot the rest."""
    assert "has no place" in _refused(FlawEntry(what="rot lost"))[0]


@pytest.mark.parametrize("name", ["flaw", "flaw.0", "flaw.99999999.start", "flaw.-1.start", "flaw.٣.start"])
def test_a_field_of_an_odd_name_is_no_flaw(name: str) -> None:
    """Whoever sent it."""
    assert entry_given([(name, "3")]) == Entry()


def test_boards_added_are_named() -> None:
    """One, or the first and the last."""
    assert tell_added([LAST]) == "board F12 added"
    assert tell_added([LAST, replace(LAST, id="F13")]) == "boards F12 to F13 added"


def test_what_was_read_is_said_as_a_tape_shows_it() -> None:
    """As far as it is filled in."""
    assert _echo(length="87-5/8", thickness="3/4").sentence == 'Read as 7\' 3-5/8" long, 3/4" thick.'
    assert _echo().sentence == ""


def test_what_is_no_mark_of_the_tape_is_said_to_be_about() -> None:
    """It is kept just as it was written."""
    assert _echo(length="2226 mm").sentence == "Read as about 7' 3-5/8\" long."


def test_what_cannot_be_read_is_said_while_it_is_typed() -> None:
    """The rest is read all the same, and nobody asks for what is not there yet."""
    echo = _echo(length="8x", width="5")
    assert echo.sentence == 'Read as 5" wide.'
    (problem,) = echo.problems
    assert problem.startswith("the length “8x”")


def test_a_board_is_drawn_as_soon_as_it_has_a_length_and_a_width() -> None:
    """With those of its flaws that can be read."""
    assert _echo(length="97").board is None
    echo = _echo(FlawEntry(start="3", end="6"), FlawEntry(start="x", end="9"), length="97", width="5")
    assert echo.board is not None
    assert [one.start_nm for one in echo.board.flaws] == [nm(3)]
    assert len(echo.problems) == 1


def test_a_board_wider_than_long_is_not_drawn_but_said() -> None:
    """They are swapped, most likely."""
    echo = _echo(length="5", width="60")
    assert echo.board is None
    assert any("wider than it is long" in problem for problem in echo.problems)

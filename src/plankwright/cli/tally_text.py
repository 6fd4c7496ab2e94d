"""What a tally comes to, for a person to read."""

from collections.abc import Sequence

from plankwright.cli.tables import table
from plankwright.cli.talk import Talk
from plankwright.errors import Problem
from plankwright.measure import TapeStyle, write_area, write_length
from plankwright.workshop.judge_tally import LotTotals, TallyJudgement
from plankwright.workshop.wording import capital, counted

_NO_SUM_TELLS = (
    "Whether that is enough, no sum of areas can say: it knows nothing of lengths, courses and joints. "
    "Ask with “plankwright enough”."
)


def show_tally(judged: TallyJudgement, remarks: Sequence[Problem], tape: TapeStyle, talk: Talk) -> None:
    """Show what a tally comes to on stdout.

    Parameters
    ----------
    judged
        What it comes to.
    remarks
        What is doubtful in its file.
    tape
        How lengths and areas are written.
    talk
        How this run speaks.
    """
    pile = judged.pile
    talk.headline(
        f"{capital(counted(pile.boards, 'board'))}, {write_length(pile.length_nm, tape)} end to end, "
        f"{write_area(pile.face_nm2, tape)} of face."
    )
    talk.answer(
        f"After trims and flaws, {write_area(pile.usable_nm2, tape)} of it can be hung: "
        f"a recovery of {_percent(pile)}."
    )
    if judged.to_cover_nm2 is not None:
        talk.answer(f"To be covered: {write_area(judged.to_cover_nm2, tape)}. {_NO_SUM_TELLS}")
    for text in filter(None, _tables(judged, tape)):
        talk.answer(f"\n{text}")
    talk.answer("")
    if judged.useless:
        talk.answer(f"Nothing long and wide enough comes out of {', '.join(judged.useless)}.")
    for remark in remarks:
        talk.answer(f"Look again: {remark}")


def _tables(judged: TallyJudgement, tape: TapeStyle) -> tuple[str, ...]:
    return (
        table(
            "By lot",
            ("lot", "boards", "length", "face", "usable", "recovery"),
            (
                (
                    lot.lot or "(no lot)",
                    str(lot.boards),
                    write_length(lot.length_nm, tape),
                    write_area(lot.face_nm2, tape),
                    write_area(lot.usable_nm2, tape),
                    _percent(lot),
                )
                for lot in judged.lots
            ),
        ),
        table(
            "By width as found",
            ("from", "to under", "boards", "clear length", "longest run"),
            (
                (
                    write_length(found.from_nm, tape),
                    write_length(found.below_nm, tape),
                    str(found.boards),
                    write_length(found.clear_nm, tape),
                    write_length(found.longest_nm, tape) if found.longest_nm else "none",
                )
                for found in judged.widths
            ),
        ),
        table(
            "Longest clear runs",
            ("board", "length", "width", "from", "to"),
            (
                (
                    run.board_id,
                    write_length(run.length_nm, tape),
                    write_length(run.width_nm, tape),
                    write_length(run.from_nm, tape),
                    write_length(run.to_nm, tape),
                )
                for run in judged.longest
            ),
        ),
    )


def _percent(totals: LotTotals) -> str:
    return f"{100 * totals.recovery:.0f} %"

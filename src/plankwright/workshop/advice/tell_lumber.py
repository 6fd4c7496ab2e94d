"""Say in plain words what the pile and the wall come to."""

from collections.abc import Iterator
from fractions import Fraction

from plankwright.measure import System, write_area, write_length, write_mass, write_volume
from plankwright.model import Job, Treatment
from plankwright.paper.leaf import Grid, Leaf, Part
from plankwright.trade.lumber.facts import (
    BOARD_FOOT,
    CARBON,
    DENSITY,
    ENERGY_TIMES,
    HALVES,
    HEAVY_BOARD,
    LIFE_CYCLE,
    NEW_EXTRA,
    NEW_EXTRA_SHARE,
    SURFACE_MEASURE,
    TWO_PEOPLE_KG,
    UNKNOWN_GRAVITY,
    WARMING_TIMES,
    WASTE,
)
from plankwright.trade.source import Said, Source
from plankwright.trade.wood.species import not_understood
from plankwright.workshop.advice.measure_lumber import BoughtInstead, Lumber, Weight, pile_cubic_metres
from plankwright.workshop.advice.woods import gravity_sources_of
from plankwright.workshop.wording import capital, counted

_EXTRA = f"{float(NEW_EXTRA_SHARE.value) * 100:.0f} % more"


def lumber_leaf(job: Job, lumber: Lumber) -> Leaf:
    """Tell what the pile and the wall come to.

    Parameters
    ----------
    job
        The job.
    lumber
        What was measured of it.
    """
    return Leaf(
        title="Measure, weight and worth",
        headline=Said(
            f"{capital(counted(lumber.boards, 'board'))}: {_number(lumber.board_feet, 1)} board feet, of "
            f"which {float(lumber.recovery):.0%} can be hung; {write_area(lumber.to_cover_nm2, job.tape)} "
            "to cover.",
            (BOARD_FOOT,),
        ),
        parts=(
            Part(title="Measure", said=tuple(_measure(job, lumber))),
            Part(title="Weight", said=tuple(_weight(job, lumber))),
            Part(title="Against bought wood", said=tuple(_instead(job, lumber)), grid=_prices(job, lumber)),
            Part(title="Hours", said=tuple(_hours(lumber)), grid=_tasks(lumber)),
            Part(title="Carbon", said=tuple(_carbon(job, lumber))),
        ),
    )


def write_money(amount: Fraction, currency: str) -> str:
    """Write an amount in the user's money, with two decimals."""
    return f"{currency}{float(amount):,.2f}"


def _measure(job: Job, lumber: Lumber) -> Iterator[Said]:
    metric = job.tape.system is System.METRIC
    also = f", {float(pile_cubic_metres(lumber)):.2f} m³ by that rule" if metric else ""
    yield Said(
        f"Board by board to the hundredth: {_number(lumber.board_feet, 2)} board feet{also}. Boards are "
        "measured as they are, and what is under an inch thick counts as an inch.",
        (BOARD_FOOT,),
    )
    yield Said(
        f"By surface measure, the rule for random widths: {lumber.surface_measure} square feet, which makes "
        f"{_number(lumber.board_feet_by_surface, 1)} board feet.",
        (SURFACE_MEASURE, HALVES),
    )
    yield Said(
        f"{write_length(lumber.lineal_nm, job.tape)} end to end; {write_area(lumber.face_nm2, job.tape)} of "
        f"face, {write_area(lumber.usable_nm2, job.tape)} after trims and flaws; truly "
        f"{write_volume(lumber.volume_m3, job.tape)} of wood."
    )


def _weight(job: Job, lumber: Lumber) -> Iterator[Said]:
    sources = _gravity_sources(job)
    yield Said(f"The pile weighs {_range(lumber.pile, job)}.", sources)
    strange = not_understood(board.species for board in job.boards if board.treatment is Treatment.NONE)
    for species, count in strange.items():
        yield Said(
            f"No figures are known of “{species}” ({count} board{'' if count == 1 else 's'}): the range "
            "of all species is used.",
            (UNKNOWN_GRAVITY,),
        )
    if lumber.wall is not None:
        yield Said(f"What hangs weighs {_range(lumber.wall, job)}.", sources)
    if lumber.heaviest is not None:
        label, kg = lumber.heaviest
        told = f"The heaviest piece is {label}, {write_mass(kg, job.tape)} at most"
        if kg >= TWO_PEOPLE_KG.value:
            yield Said(f"{told}: it takes two people.", (*sources, HEAVY_BOARD))
        else:
            yield Said(f"{told}.", sources)


def _instead(job: Job, lumber: Lumber) -> Iterator[Said]:
    if not lumber.instead:
        yield Said("No prices were entered: give some under [[price]] in job.toml to compare with.")
        return
    yield Said(
        f"To cover {write_area(lumber.to_cover_nm2, job.tape)} with wood that is bought, by your prices. "
        "With a waste of 30 %, 143 are bought for 100.",
        (WASTE,),
    )
    if any(one.extra for one in lumber.instead):
        yield Said(f"Where you gave no waste, {_EXTRA} than the area is bought.", (NEW_EXTRA,))


def _prices(job: Job, lumber: Lumber) -> Grid | None:
    rows = tuple(
        (
            one.price.name,
            f"{write_money(one.price.cost, job.currency)} a {one.price.per}",
            _waste(one),
            f"{_number(one.amount, 1)} {_plural(one.price.per)}",
            write_money(one.cost, job.currency),
        )
        for one in lumber.instead
    )
    return Grid(columns=("wood", "price", "waste", "to buy", "cost"), rows=rows) if rows else None


def _waste(one: BoughtInstead) -> str:
    return _EXTRA if one.price.waste is None else f"{float(one.price.waste):.0%}"


def _hours(lumber: Lumber) -> Iterator[Said]:
    if not lumber.tasks:
        yield Said("No times were entered: time five boards at each task and give them under [[task]].")
        return
    whole = all(time.of_all for time in lumber.tasks)
    yield Said(
        f"By your own times {_number(lumber.hours, 1)} hours for "
        f"{'the whole job' if whole else 'what hangs by this layout'}: what is done already, such as boards "
        "whose nails are pulled, is not taken off."
    )
    if any(time.count is None for time in lumber.tasks):
        yield Said("Tasks without hours are reckoned by what only a layout tells: lay the job out first.")


def _tasks(lumber: Lumber) -> Grid | None:
    rows = tuple(
        (
            time.task.name,
            f"{_number(time.task.minutes, 1)} min a {time.task.per}",
            "" if time.count is None else _number(time.count, 0),
            "" if time.hours is None else _number(time.hours, 1),
        )
        for time in lumber.tasks
    )
    return Grid(columns=("task", "your time", "times", "hours"), rows=rows) if rows else None


def _carbon(job: Job, lumber: Lumber) -> Iterator[Said]:
    least, most = (write_mass(kg, job.tape) for kg in lumber.carbon_dioxide_kg)
    what = "What hangs" if lumber.wall is not None else "What can be hung"
    yield Said(
        f"{what} stores carbon that would make {least if least == most else f'{least} to {most}'} of carbon "
        "dioxide, as long as it is not burnt and does not rot. That is stored, not avoided.",
        (CARBON,),
    )
    (energy, energy_most), (warming, warming_most) = ENERGY_TIMES.value, WARMING_TIMES.value
    yield Said(
        f"New framing took about {energy} times the energy of salvaged wood and new flooring {energy_most} "
        f"times; its warming potential was {warming} and {warming_most} times as much. How many kilograms "
        "that makes here no source that was found says.",
        (LIFE_CYCLE,),
    )
    area = write_area(lumber.usable_nm2, job.tape)
    yield Said(
        f"Kept out of the skip, as far as it can be hung: {area} of boards, {_range(lumber.kept, job)}.",
        _gravity_sources(job),
    )


def _gravity_sources(job: Job) -> tuple[Source, ...]:
    untreated = (board for board in job.boards if board.treatment is Treatment.NONE)
    return (DENSITY, *dict.fromkeys(source for board in untreated for source in gravity_sources_of(board)))


def _range(weight: Weight, job: Job) -> str:
    least, most = (write_mass(kg, job.tape) for kg in (weight.least_kg, weight.most_kg))
    return (
        f"about {least}"
        if least == most
        else f"{least} to {most}, by the lightest and the heaviest it may be"
    )


def _number(amount: Fraction, decimals: int) -> str:
    return f"{float(amount):,.{decimals}f}"


def _plural(per: str) -> str:
    return per.replace("foot", "feet") if "foot" in per else f"{per}s"

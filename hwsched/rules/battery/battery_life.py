"""Rule: a battery pack lasts as long as the calendar of changes asks."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import (
    CAPACITY_MAH,
    OPERATION_MA,
    OPERATION_S,
    SELF_DISCHARGE_SHARE,
    STANDING_UA,
    USABLE_SHARE,
)
from hwsched.calc.calculator import InputError
from hwsched.rules.cold import cold_needs
from hwsched.rules.pack_life import pack_life
from hwsched.rules.reading import in_role, unit_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput

_CELL = (CAPACITY_MAH, USABLE_SHARE, SELF_DISCHARGE_SHARE)
_UNIT = (STANDING_UA, OPERATION_MA, OPERATION_S)
_CURE = "Mend the numbers of cell, unit or opening that contradict each other."


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, cell = unit_part(given, fit), in_role(given, fit, "battery")
    if fit.power != "battery" or unit is None or cell is None:
        return
    life = fit.battery
    if life is None:
        needs = [] if given.opening.operations_per_day is not None else ["opening.operations_per_day"]
        needs += [f"part {cell.number}.{name}" for name in _CELL if cell.number_of(name) is None]
        needs += [f"part {unit.number}.{name}" for name in _UNIT if unit.number_of(name) is None]
        needs += cold_needs(cell, given.opening.temperature_low_c)
        if needs:
            yield unknown(tuple(needs), "battery")
            return
        try:
            pack_life(given, unit, cell)
        except InputError as error:
            yield Verdict(
                f"How long the pack lasts cannot be worked out: {error}.", _CURE, about="battery", severity="warning"
            )
        return
    asked, lasts = limits["days"], f"The pack lasts about {life.days:.0f} days at {life.mah_per_day:.2f} mAh a day"
    values = {"days": life.days, "needed_days": asked, "mah_per_day": life.mah_per_day}
    if life.days < asked:
        short = asked - life.days
        said = f"{short:.0f}" if short >= 1 else "less than one"
        yield Verdict(f"{lasts}; {asked:g} days are asked, short by {said}.", values=values, about="battery")
    elif life.days < asked * (1 + limits["margin_share"]) - 1e-9:
        yield Verdict(
            f"{lasts}; that is less than {limits['margin_share']:.0%} over the {asked:g} days that are asked.",
            values=values,
            about="battery",
            severity="warning",
        )


RULE = Rule(
    id="battery-life",
    title="Life of the battery pack",
    discipline="battery",
    severity="error",
    basis="usable capacity over charge a day; cell capacities are data-sheet values (IEC 60086-2 gives tests, not mAh)",
    cure="Feed the opening from a supply, or take cells of more capacity; a person may accept more frequent changes.",
    judge=_judge,
    each_anew=True,
    limits=(
        Limit(
            "days",
            180.0,
            "Least time between changes.",
            "common practice of our own, editable",
            unit="days",
            low=1.0,
            high=3650.0,
        ),
        Limit(
            "margin_share",
            0.1,
            "Life over that up to which it is told.",
            "common practice of our own, editable",
            unit="",
            low=0.0,
            high=2.0,
        ),
    ),
)

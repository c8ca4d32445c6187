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
from hwsched.rules.network.cold import cold_needs
from hwsched.rules.network.pack_life import pack_life
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
        in_cold = cold_needs(cell, given.opening.temperature_low_c)
        try:
            # What the cold takes can only shorten it: a pack that lasts too short without is too short with it.
            best = pack_life(given, unit, cell, 1.0)
        except InputError as error:
            yield Verdict(
                f"How long the pack lasts cannot be worked out: {error}.", _CURE, about="battery", severity="warning"
            )
            return
        if best is not None and in_cold and best.days < limits["days"]:
            yield _short(best.days, best.mah_per_day, limits["days"], " before the cold takes its share")
        elif needs or in_cold:
            yield unknown((*needs, *in_cold), "battery")
        return
    asked = limits["days"]
    if life.days < asked:
        yield _short(life.days, life.mah_per_day, asked)
    elif life.days < asked * (1 + limits["margin_share"]) - 1e-9:
        yield Verdict(
            f"{_lasts(life.days, life.mah_per_day)}; that is less than {limits['margin_share']:.0%} over the {asked:g} "
            "days that are asked.",
            values={"days": life.days, "needed_days": asked, "mah_per_day": life.mah_per_day},
            about="battery",
            severity="warning",
        )


def _lasts(days: float, mah_per_day: float) -> str:
    return f"The pack lasts about {days:.0f} days at {mah_per_day:.2f} mAh a day"


def _short(days: float, mah_per_day: float, asked: float, when: str = "") -> Verdict:
    short = asked - days
    said = f"{short:.0f}" if short >= 1 else "less than one"
    return Verdict(
        f"{_lasts(days, mah_per_day)}{when}; {asked:g} days are asked, short by {said}.",
        values={"days": days, "needed_days": asked, "mah_per_day": mah_per_day},
        about="battery",
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

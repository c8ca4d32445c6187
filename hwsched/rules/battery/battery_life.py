"""Rule: a battery pack lasts as long as the calendar of changes asks."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import (
    CAPACITY_MAH,
    CHEMISTRY,
    OPERATION_MA,
    OPERATION_S,
    SELF_DISCHARGE_SHARE,
    STANDING_UA,
    USABLE_SHARE,
)
from hwsched.calc.power.cells import cold_share
from hwsched.rules.reading import in_role, unit_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput

_CELL = (CAPACITY_MAH, USABLE_SHARE, SELF_DISCHARGE_SHARE)
_UNIT = (STANDING_UA, OPERATION_MA, OPERATION_S)


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, cell = unit_part(given, fit), in_role(given, fit, "battery")
    if fit.power != "battery" or unit is None or cell is None:
        return
    life = fit.battery
    if life is None:
        needs = [] if given.opening.operations_per_day is not None else ["opening.operations_per_day"]
        needs += [f"part {cell.number}.{name}" for name in _CELL if cell.number_of(name) is None]
        needs += [f"part {unit.number}.{name}" for name in _UNIT if unit.number_of(name) is None]
        if cold_share(cell.text_of(CHEMISTRY), given.opening.temperature_low_c) is None:
            needs.append(f"part {cell.number}.chemistry")
        if needs:
            yield unknown(tuple(needs), "battery")
        return
    if life.days < limits["days"]:
        yield Verdict(
            f"The pack lasts about {life.days:.0f} days at {life.mah_per_day:.2f} mAh a day; {limits['days']:g} days "
            f"are asked, short by {limits['days'] - life.days:.0f}.",
            values={"days": life.days, "needed_days": limits["days"], "mah_per_day": life.mah_per_day},
            about="battery",
        )


RULE = Rule(
    id="battery-life",
    title="Life of the battery pack",
    discipline="battery",
    severity="warning",
    basis="usable capacity over charge a day; cell capacities are data-sheet values (IEC 60086-2 gives tests, not mAh)",
    cure="Feed the opening from a supply, or take cells of more capacity.",
    judge=_judge,
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
    ),
)

"""Rule: the cells' capacity is stated down to a voltage at which the unit still works."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import CELLS, END_V, PACK_LOW_V
from hwsched.calc.calculator import InputError
from hwsched.calc.power.cells import end_voltage_per_cell_v
from hwsched.rules.reading import in_role, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, cell = unit_part(given, fit), in_role(given, fit, "battery")
    if fit.power != "battery" or unit is None or cell is None:
        return
    lowest_v, count, end_v = unit.number_of(PACK_LOW_V), unit.number_of(CELLS), cell.number_of(END_V)
    if lowest_v is None:
        # A unit that states no lowest voltage asks nothing of its cells; the usable share stands for it.
        return
    if count is None or end_v is None:
        fact = f"{unit.number}.cells" if count is None else f"{cell.number}.end_v"
        yield unknown((f"part {fact}",), cell.number)
        return
    try:
        needed_v = end_voltage_per_cell_v(lowest_v, int(count))
    except InputError:
        yield unknown((f"part {unit.number}.pack_low_v",), unit.number)
        return
    if end_v < needed_v - 1e-9:
        yield Verdict(
            f"The capacity is stated down to {end_v:g} V a cell; the unit stops at {lowest_v:g} V, {needed_v:.3g} V a "
            "cell: less of the charge is usable than is stated.",
            values={"end_v": end_v, "needed_v": needed_v},
            about=cell.number,
        )


RULE = Rule(
    id="battery-end-voltage",
    title="Capacity down to the unit's lowest voltage",
    discipline="battery",
    severity="warning",
    basis="cells in series share the unit's lowest voltage; data sheets state capacity to an end voltage (IEC 60086)",
    cure="Read the capacity at that end voltage from the data sheet, and lower the usable share in the catalogue.",
    judge=_judge,
)

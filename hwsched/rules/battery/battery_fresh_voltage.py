"""Rule: cells fresh from the pack give the unit no more than it stands."""

from collections.abc import Iterable
from typing import Final

from hwsched.attributes.of_parts import CELLS, CHEMISTRY, PACK_HIGH_V, VOLTAGE_V
from hwsched.calc.power.cells import fresh_cell_v, freshest_v
from hwsched.rules.reading import in_role, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import short_v, unknown
from hwsched.values import Fit, OpeningInput

_OVER: Final = 1.15
"""Fresh cells so far over their nominal voltage are more than a unit made for that nominal voltage need stand."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, cell = unit_part(given, fit), in_role(given, fit, "battery")
    if fit.power != "battery" or unit is None or cell is None:
        return
    count, nominal, chemistry = unit.number_of(CELLS), cell.number_of(VOLTAGE_V), cell.text_of(CHEMISTRY)
    if count is None or nominal is None:
        # Their number is asked for by the rule that counts them.
        return
    highest = unit.number_of(PACK_HIGH_V)
    fresh = fresh_cell_v(chemistry, nominal) if chemistry is not None else None
    most = fresh if fresh is not None else freshest_v(nominal)
    if highest is None:
        if fresh is not None and fresh > nominal * _OVER:
            yield unknown((f"part {unit.number}.pack_high_v",), unit.number)
        return
    if most * count <= highest + 1e-9:
        return
    if fresh is None:
        # With the liveliest chemistry of its nominal voltage it would be too much: then it has to be told.
        if chemistry is None:
            yield unknown((f"part {cell.number}.chemistry",), cell.number)
        return
    yield Verdict(
        f"{count:g} fresh cells give {fresh * count:.4g} V before anything is drawn, {fresh:g} V each; the unit stands "
        f"{highest:g} V, {short_v(fresh * count - highest)} V too much.",
        values={"fresh_v": fresh * count, "allowed_v": highest},
        about=unit.number,
    )


RULE = Rule(
    id="battery-fresh-voltage",
    title="Voltage of fresh cells",
    discipline="battery",
    severity="error",
    basis="cells in series add their volts; open-circuit voltage by chemistry from data books, from memory, unverified",
    cure="Take cells of the chemistry that the unit is made for.",
    judge=_judge,
    slot="power",
)

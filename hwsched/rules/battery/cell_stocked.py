"""Rule: the unit's cells are in the catalogue."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import CELL
from hwsched.rules.reading import unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit = unit_part(given, fit)
    if fit.power != "battery" or unit is None or fit.part("battery") is not None:
        return
    cell = unit.text_of(CELL)
    if cell:
        yield Verdict(f"The unit takes cells {cell}; the catalogue has none.", about=unit.number)


RULE = Rule(
    id="cell-stocked",
    title="Cells of the unit in the catalogue",
    discipline="battery",
    severity="error",
    basis="common practice",
    cure="Add the cell to the catalogue, or take a unit whose cells are stocked.",
    judge=_judge,
    slot="power",
)

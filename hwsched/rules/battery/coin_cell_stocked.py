"""Rule: the unit's backup coin cell is in the box."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import COIN_CELL
from hwsched.rules.reading import unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit = unit_part(given, fit)
    if unit is None:
        return
    coin = unit.text_of(COIN_CELL)
    if coin and fit.part("coin-cell") is None:
        yield Verdict(f"The unit keeps its clock with a coin cell {coin}; none is in the fit.", about=unit.number)


RULE = Rule(
    id="coin-cell-stocked",
    title="Backup coin cell in the box",
    discipline="battery",
    severity="warning",
    basis="common practice",
    cure="Add the coin cell to the catalogue and to the box.",
    judge=_judge,
)

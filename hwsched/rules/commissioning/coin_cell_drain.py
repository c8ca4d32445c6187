"""Rule: a unit that has a coin cell and nothing else yet is not woken by a key."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import COIN_CELL
from hwsched.rules.reading import unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit = unit_part(given, fit)
    if unit is None or not unit.text_of(COIN_CELL):
        return
    supply_link = "the battery pack" if fit.power == "battery" else "the supply"
    yield Verdict(
        f"Keep keys away until {supply_link} feeds the unit: its coin cell is there for clock and memory, and is "
        "spent soon if it has to answer keys. Set the clock once the unit is fed.",
        about=unit.number,
    )


RULE = Rule(
    id="coin-cell-drain",
    title="Coin cell spared until the unit is fed",
    discipline="commissioning",
    severity="note",
    basis="common practice",
    cure="Keep the order of the packet's steps; measure the coin cell before hand-over.",
    judge=_judge,
)

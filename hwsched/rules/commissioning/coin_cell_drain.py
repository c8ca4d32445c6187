"""Rule: where a coin cell backs the unit up, the pack or supply is connected before the first key."""

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
        f"Connect {supply_link} before a key is presented: a key put in while only the coin cell is fitted drains it. "
        "Set the clock once it is fed.",
        about=unit.number,
    )


RULE = Rule(
    id="coin-cell-drain",
    title="Coin cell drained by a key",
    discipline="commissioning",
    severity="note",
    basis="common practice",
    cure="Keep the order of the packet's steps; measure the coin cell before hand-over.",
    judge=_judge,
)

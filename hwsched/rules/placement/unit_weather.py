"""Rule: a unit that stands in the weather is made for it."""

from collections.abc import Iterable
from typing import Final

from hwsched.attributes.of_parts import EXPOSURE
from hwsched.rules.reading import unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput

OPEN_FORMS: Final = ("gate", "turnstile")
"""Forms of opening whose inside is outside as well."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, exposure = unit_part(given, fit), given.opening.exposure
    # Elsewhere the unit is inside the building even where the opening leads out.
    if unit is None or given.opening.form not in OPEN_FORMS or exposure == "interior":
        return
    made_for = unit.text_of(EXPOSURE)
    if made_for == "exterior":
        return
    if exposure is None or made_for is None:
        yield unknown(("opening.exposure" if exposure is None else f"part {unit.number}.exposure",), unit.number)
    else:
        yield Verdict("The unit stands in the weather on both sides; it is made for interior use.", about=unit.number)


RULE = Rule(
    id="unit-weather",
    title="Unit made for the weather",
    discipline="placement",
    severity="error",
    basis="common practice; the maker's declaration",
    cure="Take the unit in its exterior version, or place it inside.",
    judge=_judge,
    slot="unit",
)

"""Rule: cells and unit stand the cold of the opening, inside as well as outside."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import TEMPERATURE_LOW_C
from hwsched.rules.reading import in_role, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit = unit_part(given, fit)
    if unit is None:
        return
    cold, outside = given.opening.temperature_low_c, given.opening.exposure == "exterior"
    cell = in_role(given, fit, "battery") if fit.power == "battery" else None
    parts = [part for part in (unit, cell) if part is not None]
    if cold is None:
        # A cold store stands indoors too: where a part declares how cold it may be, the place's cold is asked.
        if outside or any(part.number_of(TEMPERATURE_LOW_C) is not None for part in parts):
            yield unknown(("opening.temperature_low_c",), unit.number)
        return
    for part in parts:
        stands = part.number_of(TEMPERATURE_LOW_C)
        if stands is None:
            # Above freezing every part of the trade works: there it need not be declared.
            if outside or cold < 0:
                yield unknown((f"part {part.number}.temperature_low_c",), part.number)
        elif cold < stands:
            yield Verdict(
                f"The opening sees {cold:g} C; {part.number} is declared down to {stands:g} C, {stands - cold:g} K too "
                "cold.",
                values={"opening_c": cold, "part_c": stands},
                about=part.number,
            )


RULE = Rule(
    id="battery-cold",
    title="Cells and unit in the cold",
    discipline="battery",
    severity="error",
    basis="the makers' declarations; alkaline cells keep 60 to 75 % at 0 C, 15 to 30 % at -20 C (from "
    "memory, unverified)",
    cure="Take lithium cells and a unit made for the cold, or place the unit inside.",
    judge=_judge,
    slot="power",
)

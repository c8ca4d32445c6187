"""Rule: a surface unit's plate and window are declared the right way round."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import (
    CONNECTOR_X_MM,
    CONNECTOR_Y_MM,
    PLATE_HEIGHT_MM,
    PLATE_WIDTH_MM,
    WINDOW_X0_MM,
    WINDOW_X1_MM,
    WINDOW_Y0_MM,
    WINDOW_Y1_MM,
)
from hwsched.rules.reading import unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput

_NEEDED = (PLATE_WIDTH_MM, PLATE_HEIGHT_MM, CONNECTOR_X_MM, CONNECTOR_Y_MM)


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit = unit_part(given, fit)
    if unit is None or unit.kind != "surface-unit":
        return
    x0, y0, x1, y1 = (unit.number_of(name) for name in (WINDOW_X0_MM, WINDOW_Y0_MM, WINDOW_X1_MM, WINDOW_Y1_MM))
    lacking = [name for name in _NEEDED if unit.number_of(name) is None]
    if x0 is None or y0 is None or x1 is None or y1 is None:
        lacking.append(WINDOW_X0_MM)
    if lacking:
        yield unknown(tuple(f"part {unit.number}.{name}" for name in lacking), unit.number)
    elif x0 is not None and x1 is not None and y0 is not None and y1 is not None and (x1 < x0 or y1 < y0):
        yield Verdict(
            f"Its window runs from {x0:g} to {x1:g} mm across and from {y0:g} to {y1:g} mm up.",
            values={"x0_mm": x0, "x1_mm": x1, "y0_mm": y0, "y1_mm": y1},
            about=unit.number,
        )


RULE = Rule(
    id="unit-window",
    title="Unit's plate and window declared",
    discipline="catalogue-and-stock",
    severity="error",
    basis="the maker's drawing",
    cure="Correct the unit's line in the catalogue.",
    judge=_judge,
    slot="unit",
)

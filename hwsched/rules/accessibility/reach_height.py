"""Rule: what people work stands within reach above the floor on an accessible route."""

from collections.abc import Iterable

from hwsched.rules.reading import lock_item
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import TOUCH_MM
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    lock = lock_item(given)
    if given.opening.accessible is False or lock is None or given.opening.form == "cabinet":
        return
    height = lock.cylinder_height_mm
    if height is None:
        if given.opening.accessible:
            yield unknown(("existing_item.cylinder_height_mm",), "cylinder")
        return
    low, high = limits["low_mm"], limits["high_mm"]
    if low - TOUCH_MM <= height <= high + TOUCH_MM:
        return
    # Asked only where it decides: within reach it does not matter whether the route is an accessible one.
    if given.opening.accessible is None:
        yield unknown(("opening.accessible",), "cylinder")
        return
    short = max(low - height, height - high)
    yield Verdict(
        f"Cylinder or reader stand {length(given, height)} above the floor; the reach is {length(given, low)} to "
        f"{length(given, high)}, off by {length(given, short)}.",
        values={"height_mm": height, "low_mm": low, "high_mm": high, "short_mm": short},
        about="cylinder",
    )


RULE = Rule(
    id="reach-height",
    title="Operable parts within reach",
    discipline="accessibility",
    severity="warning",
    basis="ADA 2010, 404.2.7; IBC 1010.2.2 and 1010.2.3 (2021): 34 to 48 in; locks for security only at any height",
    cure="Move the reader into reach, or have it confirmed that the lock serves security only.",
    judge=_judge,
    limits=(
        Limit("low_mm", 863.6, "Lowest operable part.", "ADA 2010, 404.2.7", unit="mm", low=0.0, high=2500.0),
        Limit("high_mm", 1219.2, "Highest operable part.", "ADA 2010, 404.2.7", unit="mm", low=0.0, high=2500.0),
    ),
    defers=True,
)

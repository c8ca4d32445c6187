"""Rule: the pack has as many cells as the unit takes in series, all of one kind."""

from collections.abc import Iterable

from hwsched.rules.reading import entry, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Case, Fit


def _judge(case: Case, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit = unit_part(case, fit)
    cells = [fitted for fitted in fit.parts if fitted.role == "battery"]
    if fit.power != "battery" or unit is None or not cells:
        return
    wanted = unit.number_of("cells")
    if wanted is None:
        yield unknown((f"part {unit.number}.cells",), unit.number)
        return
    count = sum(fitted.quantity for fitted in cells)
    if count != wanted:
        yield Verdict(
            f"The pack has {count:g} cells; the unit takes {wanted:g} in series.",
            values={"cells": count, "needed_cells": wanted},
            about=cells[0].part,
        )
    for fitted in cells:
        part = entry(case, fitted)
        if part is not None and part.text_of("designation") != unit.text_of("cell"):
            yield Verdict(
                f"It is a {part.text_of('designation')}; the unit takes {unit.text_of('cell')}. Never mix cells.",
                about=fitted.part,
            )


RULE = Rule(
    id="cell-count",
    title="Number and kind of cells",
    discipline="battery",
    severity="error",
    basis="the maker's declaration: cells in series add volts, not mAh",
    cure="Put in the number and kind of cells that the unit declares.",
    judge=_judge,
    slot="power",
)

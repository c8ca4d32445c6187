"""Rule: the pack has as many cells as the unit takes in series, all of one kind."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import CELL, CELLS, DESIGNATION
from hwsched.rules.reading import entry, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit = unit_part(given, fit)
    cells = [fit_part for fit_part in fit.parts if fit_part.role == "battery"]
    if fit.power != "battery" or unit is None or not cells:
        return
    wanted = unit.number_of(CELLS)
    if wanted is None:
        yield unknown((f"part {unit.number}.cells",), unit.number)
        return
    count = sum(fit_part.quantity for fit_part in cells)
    if count != wanted:
        yield Verdict(
            f"The pack has {count:g} cells; the unit takes {wanted:g} in series.",
            values={"cells": count, "needed_cells": wanted},
            about=cells[0].part,
        )
    for fit_part in cells:
        part = entry(given, fit_part)
        if part is not None and part.text_of(DESIGNATION) != unit.text_of(CELL):
            yield Verdict(
                f"It is a {part.text_of(DESIGNATION)}; the unit takes {unit.text_of(CELL)}. Never mix cells.",
                about=fit_part.part,
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

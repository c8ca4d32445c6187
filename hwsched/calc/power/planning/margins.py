"""The greatest margin that all openings can have at one time.

Of all legs a run of its own with the thickest wire leaves most to an opening, so that only these are asked. Where an
opening has no way to a supply but over another one, a plan may have more (`plan.plan_power`).
"""

from typing import Final

import numpy as np

from hwsched.calc.power.planning.columns import RowsOfModel
from hwsched.calc.power.planning.legs import Floats, outlets_of
from hwsched.calc.power.planning.question import NoPlanError, Question
from hwsched.calc.solver import Limits, run

_TOUCH: Final = 1e-7


def greatest_margin(question: Question, limits: Limits) -> float:
    """Return the greatest margin [V], less a touch of what binary adds; raises NoPlanError where there is no plan."""
    margins = _margins(question)
    every = np.unique(margins[np.isfinite(margins) & (margins >= -_TOUCH)])
    low, high = 0, len(every) - 1
    if high < 0 or not _together(question, margins, float(every[0]), limits):
        raise NoPlanError("openings", "no supplies and wires carry all openings together",
                          tuple(o.id for o in question.openings))  # fmt: skip
    while low < high:
        middle = (low + high + 1) // 2
        if _together(question, margins, float(every[middle]), limits):
            low = middle
        else:
            high = middle - 1
    return max(float(every[low]) - _TOUCH, 0.0)


def _margins(question: Question) -> Floats:
    """Room of each opening at each outlet on a run of its own with the thickest wire; -inf where there is none."""
    ohm = min(wire.ohm_per_m for wire in question.wires)
    rows = []
    for outlet in outlets_of(question):
        drawn = outlet.rest_a + (outlet.added_a if outlet.at_once else 0.0)
        way = np.where(np.isfinite(outlet.way_m), outlet.way_m, 0.0)
        rows.append(np.where(np.isfinite(outlet.way_m), outlet.room_v - ohm * outlet.warmth * way * drawn, -np.inf))
    return np.array(rows)


def _together(question: Question, margins: Floats, margin_v: float, limits: Limits) -> bool:
    """Tell whether all openings hang somewhere with a margin, within what the supplies give."""
    outlets = outlets_of(question)
    pairs = [(g, int(i)) for g in range(len(outlets)) for i in np.flatnonzero(margins[g] >= margin_v - _TOUCH)]
    if len({i for _, i in pairs}) < len(question.openings):
        return False
    rows = RowsOfModel(len(pairs), whole=True)
    options = [(g, s) for g, outlet in enumerate(outlets) for s in outlet.sizes]
    size_at = [rows.column(0.0, 1.0) for _ in options]
    for i in range(len(question.openings)):
        rows.row([(n, 1.0) for n, (_, j) in enumerate(pairs) if j == i], 1.0, 1.0)
    for g, outlet in enumerate(outlets):
        held = [(n, float(outlet.held_a[i])) for n, (h, i) in enumerate(pairs) if h == g]
        left = [(at, -question.places[outlet.place].sizes[s].left_a)
                for at, (h, s) in zip(size_at, options, strict=True) if h == g]  # fmt: skip
        rows.row([*held, *left], -np.inf, _TOUCH)
    for p in range(len(question.places)):
        here = [(at, 1.0) for at, (g, _) in zip(size_at, options, strict=True) if outlets[g].place == p]
        rows.row(here, -np.inf, 1.0)
    return run(rows.model(), limits).x is not None

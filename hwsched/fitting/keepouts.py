"""What a unit keeps off on its face, with the distances that the rules of placement ask for."""

from dataclasses import dataclass
from typing import Final

from hwsched.calc.opening.placement import KeepOut
from hwsched.rules import AnyRule, limits_of
from hwsched.rules.clearances import swept
from hwsched.rules.footprints import footprints, stop_bands
from hwsched.rules.placement import (
    closer_clear,
    exit_device_clear,
    frame_stop_clear,
    glazing_clear,
    item_clear,
    label_clear,
    lever_clear,
    thumb_turn_clear,
    trim_clear,
)
from hwsched.values import Fit, Leaf, OpeningInput

_GUARDS: Final = (
    trim_clear,
    thumb_turn_clear,
    lever_clear,
    closer_clear,
    exit_device_clear,
    glazing_clear,
    label_clear,
    item_clear,
)
_RULE_OF_KIND: Final[dict[str, AnyRule]] = {kind: guard.RULE for guard in _GUARDS for kind in guard.KINDS}


@dataclass(frozen=True, slots=True)
class Surroundings:
    """Keep-outs of a face, in leaf coordinates above the floor."""

    keepouts: tuple[KeepOut, ...]
    needs: tuple[str, ...]


def surroundings(given: OpeningInput, fit: Fit, leaf: Leaf, face: str) -> Surroundings:
    """Return what a unit keeps off on a face, by the rule that guards each thing; a rule switched off guards none."""
    off = given.settings.rules_off
    found: list[KeepOut] = []
    needs: dict[str, None] = {}
    for item in footprints(given, fit, face):
        rule = _RULE_OF_KIND.get(item.kind)
        if rule is None or rule.id in off:
            continue
        if item.rect is None:
            needs.update(dict.fromkeys(item.needs))
            continue
        limits = limits_of(rule, given.settings)
        rect = swept(item.rect, limits["sweep_deg"]) if "sweep_deg" in limits else item.rect
        found.append(KeepOut(item.name, rect, limits["clearance_mm"]))
    if frame_stop_clear.RULE.id not in off:
        bands, missing = stop_bands(given, leaf, face)
        needs.update(dict.fromkeys(missing))
        clearance = limits_of(frame_stop_clear.RULE, given.settings)["clearance_mm"]
        found += [KeepOut("frame stop", band, clearance) for band in bands]
    return Surroundings(tuple(found), tuple(needs))

"""What a unit keeps off on its face, with the distances that the rules of placement ask for."""

from dataclasses import dataclass
from typing import Final

from hwsched.calc.opening.placement import KeepOut
from hwsched.rules import RULES, limits_of, rule_named
from hwsched.rules.clearances import swept
from hwsched.rules.footprints import footprints, stop_bands
from hwsched.values import Fit, Leaf, OpeningInput

_FRAME_STOP_CLEAR: Final = rule_named("frame-stop-clear")
_GUARDS: Final = {
    kind: tuple(rule for rule in RULES if kind in rule.guards)
    for kind in dict.fromkeys(kind for rule in RULES for kind in rule.guards)
}
"""Kind of existing item to the rules that keep a unit off it."""


@dataclass(frozen=True, slots=True)
class Surroundings:
    """Keep-outs of a face, in leaf coordinates above the floor."""

    keepouts: tuple[KeepOut, ...]
    needs: tuple[str, ...]


def surroundings(given: OpeningInput, fit: Fit, leaf: Leaf, face: str) -> Surroundings:
    """Return what a unit keeps off on a face, by the rules that guard each thing; a rule switched off guards none."""
    off = given.settings.rules_off
    found: list[KeepOut] = []
    needs: dict[str, None] = {}
    for item in footprints(given, fit, face):
        for rule in _GUARDS.get(item.kind, ()):
            if rule.id in off:
                continue
            # Where it stands nobody measured: a unit placed as if it were not there could be drilled into it.
            if item.rect is None:
                needs.update(dict.fromkeys(item.needs))
                continue
            limits = limits_of(rule, given.settings)
            rect = swept(item.rect, limits["sweep_deg"]) if "sweep_deg" in limits else item.rect
            found.append(KeepOut(item.name, rect, limits["clearance_mm"]))
    # The stop hides a band of the face that closes against it: what stands there hits the frame.
    if _FRAME_STOP_CLEAR.id not in off:
        bands, missing = stop_bands(given, leaf, face)
        needs.update(dict.fromkeys(missing))
        clearance = limits_of(_FRAME_STOP_CLEAR, given.settings)["clearance_mm"]
        found += [KeepOut("frame stop", band, clearance) for band in bands]
    return Surroundings(tuple(found), tuple(needs))

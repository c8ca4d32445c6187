"""Runs from the frame onto a leaf: over the hinge, across the leaf to the unit, and back to what the unit switches."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from hwsched.attributes.of_parts import CONDUCTORS, GAUGE, LENGTH_MM, STRANDING, SUPPLY_CONDUCTORS
from hwsched.calc.calculator import InputError
from hwsched.calc.power import circuit_tree
from hwsched.calc.power.conductor import conductor, loop_ohm
from hwsched.rules import across_leaf
from hwsched.rules.connected_opening import ConnectedOpening
from hwsched.rules.devices import switched
from hwsched.rules.leaf_nodes import leaf_node, strike_node
from hwsched.rules.practice import distance_mm
from hwsched.rules.reading import beside_here, in_role, leafless, lock_item, lock_leaf, transfers_kept, unit_part
from hwsched.values import Fit, Item, OpeningInput, Part, PointFit
from hwsched.values.power import Problem

ASSUMED_OHM: Final = 1.0
"""There and back in a transfer that stays, while nobody has measured it: four terminations of 0.1 ohm (common practice)
and the rest for a metre and more of its thin conductors, 28 AWG at 0.22 ohm a metre; of our own, unverified [ohm]."""
USUAL_CONDUCTORS: Final = 2
"""Plus and minus."""
_PAIR: Final = 2
"""Conductors by which a unit switches one strike."""


@dataclass(frozen=True, slots=True)
class LeafRun:
    """What leads from the frame onto a leaf."""

    run: circuit_tree.Run
    """From the frame to the unit; the wire across the leaf counted into it."""
    part: str
    """Catalogue number of the transfer; empty for one that stays."""
    switch: circuit_tree.Run | None
    """From the frame over transfer and leaf to the unit's contact, and on to the strike in the frame."""


def leaf_runs(
    connected: ConnectedOpening, warm_c: float, problems: list[Problem], unmeasured_ohm: float = ASSUMED_OHM
) -> dict[str, LeafRun]:
    """Return what leads onto the leaves of an opening.

    Parameters
    ----------
    connected : ConnectedOpening
        The opening.
    warm_c : float
        Of the conductors [degC].
    problems : list of Problem
        Takes what is unknown of it.
    unmeasured_ohm : float
        Of a transfer that stays and that nobody has measured [ohm].

    Returns
    -------
    dict
        By leaf, as `ConnectedOpening.leaf_of` names it.
    """
    found: dict[str, LeafRun] = {}
    for at in connected.points:
        leaf = connected.leaf_of(at)
        if at.fit is None or leaf in found:
            continue
        try:
            run = _leaf_run(at, at.fit, leaf, warm_c, problems, unmeasured_ohm)
        except InputError as error:
            opening = at.given.opening
            text = f"what leads onto the leaf of {opening.mark} cannot be reckoned: {error.field} {error.message}"
            run = None
            problems += [Problem("unsound", text, (), opening.id)]
        if run is not None:
            found[leaf] = run
    return found


def _leaf_run(
    at: PointFit, fit: Fit, leaf: str, warm_c: float, problems: list[Problem], unmeasured_ohm: float
) -> LeafRun | None:
    given, opening = at.given, at.given.opening
    transfer, kept = in_role(given, fit, "power-transfer"), transfers_kept(given)
    wire = leaf_wire(given, fit)
    way = across_leaf.standing(given, fit) if across_leaf.needed(given, fit) else None
    wire_m = way.wire_m if way is not None else None
    across_ohm = 0.0
    if wire_m is not None and wire is not None:
        across_ohm = _ohm(wire, wire_m, warm_c)
    begin, end, back = opening.id, leaf_node(opening.id, leaf), strike_node(opening.id, leaf)
    frame = frame_wire_m(given) if switched(given, fit) else None
    frame_ohm = _ohm(wire, frame, warm_c) if frame is not None and wire is not None else 0.0
    if transfer is not None:
        gauge, length = transfer.text_of(GAUGE), transfer.number_of(LENGTH_MM)
        if gauge is None or length is None:
            fact = f"part {transfer.number}.{'gauge' if gauge is None else 'length_mm'}"
            text = f"the resistance of {transfer.number} at {opening.mark} is unknown"
            problem = Problem("unknown", text, (fact,), opening.id, transfer.number)
            problems += [] if problem in problems else [problem]
            return None
        over_m = length / 1000
        return LeafRun(
            circuit_tree.Run(begin, end, over_m, gauge, "stranded", 1, across_ohm),
            transfer.number,
            circuit_tree.Run(begin, back, over_m, gauge, "stranded", 1, across_ohm + frame_ohm),
        )
    gauge = wire.text_of(GAUGE) if wire is not None else None
    if not kept or wire is None or gauge is None or wire_m is None:
        return None
    stranding = wire.text_of(STRANDING) or "stranded"
    over_ohm = _kept_ohm(kept, unmeasured_ohm)
    return LeafRun(
        circuit_tree.Run(begin, end, wire_m, gauge, stranding, 1, over_ohm),
        "",
        circuit_tree.Run(begin, back, wire_m, gauge, stranding, 1, over_ohm + frame_ohm),
    )


def unmeasured(at: PointFit) -> bool:
    """Tell whether power comes onto the leaf over a transfer that stays and that nobody has measured."""
    given, fit = at.given, at.fit
    if fit is None or fit.power != "supply" or unit_part(given, fit) is None or leafless(given):
        return False
    kept = transfers_kept(given)
    if not kept or in_role(given, fit, "power-transfer") is not None:
        return False
    return all(item.loop_ohm is None for item in kept)


def _kept_ohm(kept: Sequence[Item], unmeasured_ohm: float) -> float:
    """Return the resistance of a transfer that stays, there and back [ohm]."""
    measured = [item.loop_ohm for item in kept if item.loop_ohm is not None]
    return max(measured) if measured else unmeasured_ohm


def _ohm(wire: Part, length_m: float, warm_c: float) -> float:
    gauge = wire.text_of(GAUGE)
    if gauge is None:
        return 0.0
    return loop_ohm(length_m, conductor(gauge, wire.text_of(STRANDING) or "stranded", warm_c).resistance_ohm_per_km)


def leaf_wire(given: OpeningInput, fit: Fit) -> Part | None:
    """Return the wire that lies on the leaf: the fit's own, else that of the earlier lock point that it shares."""
    own = in_role(given, fit, "wire")
    if own is not None:
        return own
    others = (each.fit for each in given.beside if each.fit is not None)
    return next((wire for each in others if (wire := in_role(given, each, "wire")) is not None), None)


def frame_wire_m(given: OpeningInput) -> float | None:
    """Return the wire in the frame from the hinges to a strike: up, along the head and down again [m]; None unknown."""
    leaf, lock = lock_leaf(given), lock_item(given)
    if leaf is None or leaf.width_mm is None or leaf.height_mm is None:
        return None
    height = lock.cylinder_height_mm if lock is not None else None
    if height is None:
        return None
    return (2 * max(leaf.height_mm - height, 0.0) + leaf.width_mm + distance_mm("wire-slack")) / 1000


def unit_conductors(given: OpeningInput, fit: Fit) -> int:
    """Return how many conductors a unit takes from its supply: plus and minus where the catalogue does not say."""
    unit = unit_part(given, fit)
    told = unit.number_of(SUPPLY_CONDUCTORS) if unit is not None else None
    return USUAL_CONDUCTORS if told is None else round(told)


def leaf_conductors(given: OpeningInput, fit: Fit) -> int:
    """Return how many conductors one lock point needs on the leaf: its unit's, and a pair for each strike."""
    return unit_conductors(given, fit) + _PAIR * switched(given, fit)


def conductors_on_leaf(given: OpeningInput, fit: Fit) -> int:
    """Return how many conductors have to come onto the leaf for all its lock points worked out so far."""
    earlier = [each.fit for each in beside_here(given) if each.fit is not None and each.fit.power == "supply"]
    return leaf_conductors(given, fit) + sum(unit_conductors(given, each) for each in earlier)


def cables(given: OpeningInput, fit: Fit, wire: Part) -> int:
    """Return how many cables of a wire lie across the leaf: one, and others where a strike wants more conductors."""
    has = round(wire.number_of(CONDUCTORS) or 0)
    wanted = leaf_conductors(given, fit)
    if has >= wanted or has < unit_conductors(given, fit):
        return 1
    return 1 + -(-(wanted - has) // has)

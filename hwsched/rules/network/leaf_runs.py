"""Runs from the frame onto a leaf: over the hinge, across the leaf to the unit, and back to what the unit switches."""

from dataclasses import dataclass
from math import inf
from typing import Final

from hwsched.attributes.of_parts import CONDUCTORS, GAUGE, LENGTH_MM, STRANDING, SUPPLY_CONDUCTORS
from hwsched.calc.calculator import InputError
from hwsched.calc.power import circuit_tree
from hwsched.calc.power.conductor import conductor, loop_ohm
from hwsched.rules.network import across_leaf
from hwsched.rules.network.connected_opening import ConnectedOpening
from hwsched.rules.network.devices import switched
from hwsched.rules.network.leaf_nodes import leaf_node, strike_node
from hwsched.rules.practice import distance_mm
from hwsched.rules.reading import beside_here, in_role, leafless, lock_item, lock_leaf, transfers_kept, unit_part
from hwsched.survey.item import ITEM
from hwsched.values import Fit, OpeningInput, Part, PointFit
from hwsched.values.power import Problem

UNMEASURED_OHM: Final = next(each.high for each in ITEM.attributes if each.name == "loop_ohm") or inf
"""The most that a transfer that stays can have there and back while nobody has measured it: what the survey takes at
all. The least is nothing [ohm]."""
USUAL_CONDUCTORS: Final = 2
"""Plus and minus."""
_NO_WIRE_YET: Final = (0.001, "18 AWG", "stranded")
"""Length [m], gauge and stranding in place of a wire that is not chosen yet, where a transfer leads onto the leaf."""
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
    """From the frame over transfer and leaf to the unit's contact, and on to the strike in the frame; None where
    nothing is switched."""
    more_ohm: float = 0.0
    """What a transfer that nobody has measured can add to either, at the most [ohm]."""


def leaf_runs(connected: ConnectedOpening, warm_c: float, problems: list[Problem]) -> dict[str, LeafRun]:
    """Return what leads onto the leaves of an opening.

    Parameters
    ----------
    connected : ConnectedOpening
        The opening.
    warm_c : float
        Of the conductors [degC].
    problems : list of Problem
        Takes what is unknown of it.

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
            run = _leaf_run(connected, at, at.fit, leaf, warm_c, problems)
        except InputError as error:
            opening = at.given.opening
            text = f"what leads onto the leaf of {opening.mark} cannot be reckoned: {error.field} {error.message}"
            run = None
            problems += [Problem("unsound", text, (), opening.id)]
        if run is not None:
            found[leaf] = run
    return found


def _leaf_run(
    connected: ConnectedOpening, at: PointFit, fit: Fit, leaf: str, warm_c: float, problems: list[Problem]
) -> LeafRun | None:
    given, opening = at.given, at.given.opening
    transfer = in_role(given, fit, "power-transfer")
    kept = transfers_kept(given) if transfer is None else ()
    if transfer is None and not kept:
        return None
    begin, end, back = opening.id, leaf_node(opening.id, leaf), strike_node(opening.id, leaf)
    needs: list[str] = []
    across = across_leaf.needed(given, fit)
    # A further lock point of the leaf may be the one that switches something.
    switching = [each for each in connected.points if _may_switch(each) and connected.leaf_of(each) == leaf
                 and each.fit is not None and switched(each.given, each.fit)]  # fmt: skip
    wire = leaf_wire(given, fit) if across or switching else None
    across_ohm = frame_ohm = 0.0
    stays = _NO_WIRE_YET
    gauge = None
    if across:
        across_ohm, stays = _across(given, fit, wire, warm_c, needs)
    if switching:
        frame_ohm = _in_frame(switching[0].given, wire, warm_c, needs)
    if transfer is not None:
        gauge, length = transfer.text_of(GAUGE), transfer.number_of(LENGTH_MM)
        if gauge is None or length is None:
            needs.append(f"part {transfer.number}.{'gauge' if gauge is None else 'length_mm'}")
    if needs:
        who = transfer.number if transfer is not None else "what leads onto the leaf"
        text = f"the resistance of {who} at {opening.mark} is unknown"
        problem = Problem("unknown", text, tuple(dict.fromkeys(needs)), opening.id, who if transfer is not None else "")
        problems += [] if problem in problems else [problem]
        return None
    if transfer is not None and gauge is not None and length is not None:
        over = (length / 1000, gauge, "stranded", 1)
        return LeafRun(
            circuit_tree.Run(begin, end, *over, across_ohm),
            transfer.number,
            circuit_tree.Run(begin, back, *over, across_ohm + frame_ohm) if switching else None,
        )
    if not across:
        return None
    measured = [item.loop_ohm for item in kept if item.loop_ohm is not None]
    over_ohm = max(measured, default=0.0)
    return LeafRun(
        circuit_tree.Run(begin, end, *stays, 1, over_ohm),
        "",
        circuit_tree.Run(begin, back, *stays, 1, over_ohm + frame_ohm) if switching else None,
        0.0 if measured else UNMEASURED_OHM,
    )


def _may_switch(at: PointFit) -> bool:
    return at.fit is not None and (bool(at.given.items) or any(part.role == "strike" for part in at.fit.parts))


def _across(
    given: OpeningInput, fit: Fit, wire: Part | None, warm_c: float, needs: list[str]
) -> tuple[float, tuple[float, str, str]]:
    """Return the resistance of the wire across the leaf [ohm], and that wire: its length [m], gauge and stranding."""
    way = across_leaf.standing(given, fit)
    # While a fit is put together it has no way and no wire yet; that it gets both is for other rules to say.
    if way is None or wire is None:
        return 0.0, _NO_WIRE_YET
    if way.wire_m is None:
        needs.append("leaf.width_mm")
        return 0.0, _NO_WIRE_YET
    found = _conductor(wire, needs)
    if found is None:
        return 0.0, _NO_WIRE_YET
    return _ohm(found, way.wire_m, warm_c), (way.wire_m, *found)


def _in_frame(given: OpeningInput, wire: Part | None, warm_c: float, needs: list[str]) -> float:
    """Return the resistance of the wire in the frame to what a unit switches [ohm]."""
    metres = frame_wire_m(given)
    if metres is not None and wire is not None:
        found = _conductor(wire, needs)
        return 0.0 if found is None else _ohm(found, metres, warm_c)
    leaf = lock_leaf(given)
    if leaf is None or wire is None:
        return 0.0
    facts = (("leaf.width_mm", leaf.width_mm), ("leaf.height_mm", leaf.height_mm))
    needs += [name for name, value in facts if value is None] or ["existing_item.cylinder_height_mm"]
    return 0.0


def _conductor(wire: Part, needs: list[str]) -> tuple[str, str] | None:
    """Return gauge and stranding of a wire; None where the catalogue does not say."""
    gauge, stranding = wire.text_of(GAUGE), wire.text_of(STRANDING)
    if gauge is None or stranding is None:
        needs.append(f"part {wire.number}.{'gauge' if gauge is None else 'stranding'}")
        return None
    return gauge, stranding


def unmeasured(at: PointFit) -> bool:
    """Tell whether power comes onto the leaf over a transfer that stays and that nobody has measured."""
    given, fit = at.given, at.fit
    if fit is None or fit.power != "supply":
        return False
    kept = transfers_kept(given)
    if not kept or any(item.loop_ohm is not None for item in kept):
        return False
    return unit_part(given, fit) is not None and not leafless(given) and in_role(given, fit, "power-transfer") is None


def _ohm(conductor_of: tuple[str, str], length_m: float, warm_c: float) -> float:
    return loop_ohm(length_m, conductor(*conductor_of, warm_c).resistance_ohm_per_km)


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

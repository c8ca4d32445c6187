"""An opening without a laid circuit as a circuit of one: supply, run to it, what leads onto its leaf, loads.

Solved by what solves circuits that are laid. What is wrong with it is said by the rules of power.
"""

from dataclasses import dataclass, replace

from hwsched.rules.network.circuit_laying import SUPPLY, laid_circuit
from hwsched.rules.network.circuit_solving import solved_supply
from hwsched.rules.network.circuit_source import CircuitSource, SolvingLimits, taken_of_supply
from hwsched.rules.network.connected_opening import ConnectedOpening
from hwsched.rules.network.devices import devices_at
from hwsched.rules.network.leaf_runs import leaf_wire
from hwsched.rules.reading import at_point, on_supply, supply_part
from hwsched.rules.rule_titles import title_of
from hwsched.values import Fit, OpeningInput, PointFit
from hwsched.values.power import Circuit, CircuitResult, Device, NodeResult, Problem, Run, Supply

_ALL_AT_ONCE = 1000
"""At one opening all that hangs there may start together."""
_END_SHARE = 1.0
"""No standby battery stands behind a supply that is not laid: none is asked for its end voltage."""
_TEMPERATURE = "supply-drop.temperature_c"
"""Limit that a project states where it knows how warm its conductors get."""
_DROP = "supply-drop"
"""The rule that has the temperature where no project states it."""
_MARGIN = 1.0
"""No fuse is proposed for it."""


@dataclass(frozen=True, slots=True)
class OwnCircuit:
    """What feeds an opening by itself, solved."""

    result: CircuitResult
    problems: tuple[Problem, ...]
    """Of it and of the devices."""
    run_m: float
    """From the supply to the hinges, one way [m]."""
    gauge: str

    @property
    def low(self) -> tuple[NodeResult, ...]:
        """Places where a load does not find its lowest voltage."""
        nodes = self.result.nodes
        return tuple(node for node in nodes if node.margin_v is not None and node.margin_v < -1e-9)


def points_of(given: OpeningInput, fit: Fit) -> tuple[PointFit, ...]:
    """Return the lock points of an opening that hang on the supply of this one, in the order of the opening."""
    hanging = on_supply(given, fit)
    earlier = [
        PointFit(at_point(given, each), _counting(each.fit))
        for each in given.beside
        if each.fit is not None and any(each.fit is other for other in hanging)
    ]
    return (*earlier, PointFit(given, _counting(fit)))


def devices_of_opening(given: OpeningInput, fit: Fit) -> tuple[tuple[Device, ...], tuple[Problem, ...]]:
    """Return all that the supply of a lock point feeds at its opening, and what is not known of it."""
    return devices_at(ConnectedOpening(given, fit, points_of(given, fit)))


def route_m(given: OpeningInput) -> float | None:
    """Return the way from the supply to the hinges, one way [m]: the route, and the rise where it is told apart."""
    route = given.opening.supply_distance_m
    return None if route is None else route + (given.opening.rise_m or 0.0)


def taken_of_own(given: OpeningInput, fit: Fit) -> list[str]:
    """Return what of an opening's own supply and run is reckoned with though nothing is stated."""
    if route_m(given) is None:
        return []
    taken = [
        *taken_of_supply(supply_part(given, fit)),
        "no resistance at the terminations of its run",
        "one conductor each way, none in parallel, in its run",
    ]
    if _TEMPERATURE not in given.settings.limits:
        taken.append(f"conductors at the temperature of the rule '{title_of(_DROP)}'")
    if given.opening.rise_m is None:
        taken.append("no way up from the hinges beyond the distance to the supply")
    return taken


def own_circuit(given: OpeningInput, fit: Fit, temperature_c: float) -> OwnCircuit | None:
    """Solve an opening as a circuit of one.

    Parameters
    ----------
    given, fit : OpeningInput, Fit
        Of the lock point; earlier ones on the same supply are counted with it.
    temperature_c : float
        Of the conductors [degC].

    Returns
    -------
    OwnCircuit or None
        None while supply, wire or route are not chosen or known: other rules say so.
    """
    part, wire, metres = supply_part(given, fit), leaf_wire(given, fit), route_m(given)
    if given.supply_link is not None or part is None or wire is None or metres is None:
        return None
    opening = given.opening
    supply = Supply("own", part.number, part=part.number)
    circuit = Circuit("own", supply.id, opening.mark, wire=wire.number)
    # A supply beside the hinges needs a run all the same: wire of no length has no resistance.
    run = Run("own", circuit.id, SUPPLY, opening.id, opening.id, max(metres, 0.001), wire.number)
    connected = ConnectedOpening(given, fit, points_of(given, fit))
    devices = devices_at(connected)
    source = CircuitSource.of(supply, part, None, given.catalogue, _END_SHARE)
    limits = SolvingLimits(temperature_c, _ALL_AT_ONCE, _MARGIN)
    laid = laid_circuit(circuit, source, (run,), {opening.id: devices}, {opening.id: connected}, limits, {})
    # Here what is unknown is asked for before anything is judged.
    ((result, _),) = solved_supply([laid], source, limits, bounded=False)
    gauge = result.wire.partition(",")[0]
    return OwnCircuit(result, result.problems, metres, gauge)


def _counting(fit: Fit) -> Fit:
    # While it is built a fit has no status of its own yet; what stands in it is what would be fed.
    return fit if fit.status == "fits" else replace(fit, status="fits")

"""The circuits of a supply that are laid: solved, and what would cure their low voltages.

The solving itself stands in `hwsched.rules.network.circuit_solving`, where the rules of openings ask it too.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Final

from hwsched.rules import limits_of, rule_named
from hwsched.rules.network.circuit_laying import Devices, laid_circuit
from hwsched.rules.network.circuit_solving import Solved, solved_supply
from hwsched.rules.network.circuit_source import CircuitSource, SolvingLimits
from hwsched.rules.network.connected_opening import ConnectedOpening
from hwsched.rules.network.unknown_draw import most_drawn_a
from hwsched.values import Catalogue, Part, Settings
from hwsched.values.power import Circuit, CircuitResult, Run, Supply
from hwsched.wiring.cures import Proofs, cure_offers

_CIRCUIT_LIMITER: Final = rule_named("circuit-limiter")
_CIRCUIT_VOLTAGE: Final = rule_named("circuit-voltage")
_STANDBY_CAPACITY: Final = rule_named("standby-capacity")

_MOST_CURED: Final = 3
"""Nodes of a circuit for which cures are tried: the lowest ones; the others hang on the same runs."""


def circuit_source(
    supply: Supply, part: Part | None, battery: Part | None, catalogue: Catalogue, settings: Settings
) -> CircuitSource:
    """Read a supply as its circuits see it."""
    return CircuitSource.of(supply, part, battery, catalogue, limits_of(_STANDBY_CAPACITY, settings)["end_share"])


def solve_circuits(
    circuits: Sequence[tuple[Circuit, Sequence[Run]]],
    source: CircuitSource,
    devices: Devices,
    connected: Mapping[str, ConnectedOpening],
    settings: Settings,
) -> tuple[CircuitResult, ...]:
    """Solve the circuits of a supply in their states with cures for what is low, or say why they cannot be.

    Parameters
    ----------
    circuits : sequence of (Circuit, runs)
        As laid; runs in any order.
    source : CircuitSource
        The supply.
    devices : mapping
        By opening: what hangs there, and what is unknown of it.
    connected : mapping
        Openings by identifier.
    settings : Settings
        Limits of the rules.
    """
    limits = limits_of(_CIRCUIT_VOLTAGE, settings)
    reckoned = SolvingLimits(
        limits["temperature_c"], round(limits["at_once"]), limits_of(_CIRCUIT_LIMITER, settings)["margin"]
    )
    most_a = {opening: most_drawn_a(connected[opening]) for opening, (_, missing) in devices.items() if missing}
    laid = []
    for circuit, runs in circuits:
        # Where a run begins too: an opening that hangs elsewhere, or on nothing, is named by its mark.
        touched = {each for run in runs for each in (run.opening_id, run.from_node) if each is not None}
        here = {each: connected[each] for each in sorted(touched) if each in connected}
        laid.append(laid_circuit(circuit, source, runs, devices, here, reckoned, most_a))
    solved = [_with_cures(*each, settings.length_style) for each in solved_supply(laid, source, reckoned)]
    return tuple(
        replace(result, assumed=_assumed(circuit, runs))
        for result, (circuit, runs) in zip(solved, circuits, strict=True)
    )


def _assumed(circuit: Circuit, runs: Sequence[Run]) -> tuple[str, ...]:
    """Say what of the wires of a circuit is reckoned with though nobody has stated it."""
    taken = (
        ("no resistance at the terminations of", [run.extra_ohm for run in runs]),
        ("one conductor each way, none in parallel, on", [run.parallel for run in runs]),
    )
    return tuple(f"{words} {_which(stated)} of {circuit.name}" for words, stated in taken if None in stated)


def _which(stated: Sequence[float | None]) -> str:
    untold = stated.count(None)
    return "the runs" if untold == len(stated) else f"{untold} of {len(stated)} runs"


def _with_cures(result: CircuitResult, solved: Solved | None, style: str) -> CircuitResult:
    if solved is None:
        return result
    # Less a touch: a load exactly at its minimum, off by rounding, needs no cure.
    low = sorted(
        (n for n in result.nodes if n.margin_v is not None and n.margin_v < -1e-9), key=lambda n: n.margin_v or 0.0
    )
    proofs: Proofs = {}
    offers = {node.node: cure_offers(node, solved, style, proofs) for node in low[:_MOST_CURED]}
    # What works cures the whole circuit: it is the cure of the places for which none was tried, too.
    works = {offer.text: offer for each in offers.values() for offer in each if offer.works}
    offers |= {node.node: tuple(works.values()) for node in low[_MOST_CURED:]}
    return replace(result, cure_offers=offers)

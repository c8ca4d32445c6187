"""One circuit of those that are laid: solved, and what would cure its low voltages.

The solving itself stands in `hwsched.rules.circuit_solving`, where the rules of openings ask it too.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Final

from hwsched.rules import limits_of, rule_named
from hwsched.rules.circuit_solving import CircuitSource, Devices, SolvingLimits, solved_circuit
from hwsched.rules.connected_opening import ConnectedOpening
from hwsched.values import Catalogue, Part, Settings
from hwsched.values.power import Circuit, CircuitResult, Run, Supply
from hwsched.wiring.cures import cure_offers

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


def solve_circuit(
    circuit: Circuit,
    source: CircuitSource,
    runs: Sequence[Run],
    devices: Devices,
    connected: Mapping[str, ConnectedOpening],
    settings: Settings,
) -> CircuitResult:
    """Solve a circuit in its states with cures for what is low, or say why it cannot be.

    Parameters
    ----------
    circuit : Circuit
        As laid.
    source : CircuitSource
        Its supply.
    runs : sequence of Run
        In any order.
    devices : mapping
        By opening: what hangs there, and what is unknown of it.
    connected : mapping
        Openings that it feeds.
    settings : Settings
        Limits of the rules.
    """
    limits = limits_of(_CIRCUIT_VOLTAGE, settings)
    reckoned = SolvingLimits(
        limits["temperature_c"], round(limits["at_once"]), limits_of(_CIRCUIT_LIMITER, settings)["margin"]
    )
    result, solved = solved_circuit(circuit, source, runs, devices, connected, reckoned)
    if solved is None:
        return result
    # Less a touch: a load exactly at its minimum, off by rounding, needs no cure.
    low = sorted(
        (n for n in result.nodes if n.margin_v is not None and n.margin_v < -1e-9), key=lambda n: n.margin_v or 0.0
    )
    return replace(result, cure_offers={node.node: cure_offers(node, solved) for node in low[:_MOST_CURED]})

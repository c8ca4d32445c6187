"""What a proposed siting would change: supplies, wire, room in volts, findings, and which opening moves where."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

from hwsched.operations.power.supply_siting import CIRCUIT_NAME, Proposal
from hwsched.values import Severity
from hwsched.values.power import NodeResult, PowerResult


@dataclass(frozen=True, slots=True)
class Standing:
    """A building's power as it stands, or as it would stand."""

    supplies: tuple[str, ...]
    """Names of those that feed something."""
    openings: int
    wire_m: float
    """Of all runs [m]."""
    room_v: float | None
    """Least room above what an opening needs, in the worst state [V]; None where nothing is worked out."""
    room_at: str
    """Where it is so little."""
    findings: Mapping[Severity, int]


@dataclass(frozen=True, slots=True)
class Moved:
    """An opening of the proposal."""

    mark: str
    before: str
    """Supply and circuit; empty where it hangs on none."""
    after: str
    length_m: float
    """Of its run as proposed, one way [m]."""
    before_v: float | None
    """Lowest voltage at its devices [V]; None where it is not worked out."""
    after_v: float | None

    @property
    def moves(self) -> bool:
        """Whether it hangs elsewhere then."""
        return self.before != self.after


@dataclass(frozen=True, slots=True)
class Comparison:
    """Before and after."""

    before: Standing
    after: Standing
    openings: tuple[Moved, ...]
    """Those that move first."""


def compare_siting(proposal: Proposal) -> Comparison:
    """Compare what stands with what a proposal would lay.

    Parameters
    ----------
    proposal : Proposal
        As `propose_siting` returns it.

    Returns
    -------
    Comparison
        Both sides for the proposal's building.
    """
    before_at, after_at = _lowest(proposal.before), _lowest(proposal.after)
    connected_devices = {
        opening: f"{supply.supply.name}/{circuit.circuit.name}"
        for supply in proposal.before.supplies
        for circuit in supply.circuits
        for opening in circuit.openings
    }
    openings = [
        Moved(
            proposal.names[opening],
            connected_devices.get(opening, ""),
            f"{proposal.names[supply]}/{CIRCUIT_NAME}",
            proposal.lengths_m[opening],
            _volts(before_at.get(opening)),
            _volts(after_at.get(opening)),
        )
        for opening, supply in proposal.siting.pairs.items()
    ]
    openings.sort(key=lambda each: not each.moves)
    after_wire = sum(_lengths(proposal.after))
    return Comparison(
        _standing(proposal.before, proposal.before_wire_m), _standing(proposal.after, after_wire), tuple(openings)
    )


def _standing(work: PowerResult, wire_m: float) -> Standing:
    used = [supply for supply in work.supplies if supply.openings]
    held = [
        node for supply in used for circuit in supply.circuits for node in circuit.nodes if node.margin_v is not None
    ]
    worst = min(held, key=lambda node: node.margin_v or 0.0, default=None)
    return Standing(
        tuple(supply.supply.name for supply in used),
        sum(len(supply.openings) for supply in used),
        wire_m,
        worst.margin_v if worst is not None else None,
        worst.name if worst is not None else "",
        Counter(each.finding.severity for each in work.findings),
    )


def _lengths(work: PowerResult) -> list[float]:
    return [
        run.length_m
        for supply in work.supplies
        for circuit in supply.circuits
        for run in circuit.runs
        if not run.transfer
    ]


def _lowest(work: PowerResult) -> dict[str, NodeResult]:
    """Return the place of each opening's devices that has the least room."""
    found: dict[str, NodeResult] = {}
    for supply in work.supplies:
        for circuit in supply.circuits:
            for node in circuit.nodes:
                if node.opening_id is None or node.margin_v is None:
                    continue
                held = found.get(node.opening_id)
                if held is None or (held.margin_v or 0.0) > node.margin_v:
                    found[node.opening_id] = node
    return found


def _volts(node: NodeResult | None) -> float | None:
    return node.lowest_v if node is not None else None

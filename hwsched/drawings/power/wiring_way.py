"""The way from a supply to an opening along the runs of a circuit, in order; nothing is placed on paper here."""

from dataclasses import dataclass

from hwsched.drawings.power.riser_strings import SUPPLY_NODE
from hwsched.language import phrase
from hwsched.values.power import CircuitResult, Device, NodeResult, RunResult


@dataclass(frozen=True, slots=True)
class Hop:
    """A run, and the place where it ends."""

    run: RunResult
    number: int
    """Of the run in its circuit, from 1: it names the run's wires on every sheet."""
    node: NodeResult | None

    @property
    def name(self) -> str:
        """Name of the place where it ends."""
        return (self.node.name if self.node is not None else "") or self.run.to_name or self.run.to_node


@dataclass(frozen=True, slots=True)
class WiringWay:
    """All runs to an opening."""

    hops: tuple[Hop, ...]
    """From the supply; the last ends at the opening's frame, or at the opening where there is no transfer."""
    transfer: Hop | None
    in_frame: tuple[Device, ...]
    on_leaf: tuple[Device, ...]
    """Empty without a transfer: nothing says then that the wires go onto the leaf."""


def leaves_of(circuit: CircuitResult, opening_id: str) -> tuple[str, ...]:
    """Return the leaves of an opening that devices of a circuit stand on, a sheet each; empty text where it has one."""
    leaves = dict.fromkeys(device.leaf for device in circuit.devices if device.opening_id == opening_id)
    return tuple(leaves) or ("",)


def wiring_way(
    circuit: CircuitResult, opening_id: str, frame_parts: frozenset[str] | None = None, leaf: str = ""
) -> WiringWay | str:
    """Follow the runs from the supply to an opening.

    Parameters
    ----------
    circuit : CircuitResult
        With its runs.
    opening_id : str
        The opening.
    frame_parts : frozenset of str, optional
        Numbers of parts that stand in the frame; by default those in the role of a strike.
    leaf : str
        Of an opening whose devices are on several leaves: which one.

    Returns
    -------
    WiringWay or str
        Words where there is no such way.
    """
    nodes = {node.node: node for node in circuit.nodes}
    held = {node.node for node in circuit.nodes if node.opening_id == opening_id} | {opening_id}
    numbered = list(enumerate(circuit.runs, start=1))
    transfers = [
        (number, run)
        for number, run in numbered
        if run.transfer
        and (run.to_node in held or run.from_node in held)
        # The node on the leaf names it where there are several.
        and (not leaf or run.to_node.endswith(f"/leaf {leaf}"))
    ]
    into = {run.to_node: (number, run) for number, run in reversed(numbered) if not run.transfer}
    end = transfers[0][1].from_node if transfers else next((node for node in (opening_id, *held) if node in into), "")
    if end not in into:
        return phrase("No run of this circuit leads to the opening.")
    onto = {run.to_node: run.from_node for _, run in numbered if run.transfer}
    hops: list[Hop] = []
    seen: set[str] = set()
    at = end
    while at != SUPPLY_NODE:
        at = at if at in into else onto.get(at, at)
        if at in seen or at not in into:
            return phrase("The runs to the opening do not start at the supply.")
        seen.add(at)
        number, run = into[at]
        hops.append(Hop(run, number, nodes.get(at)))
        at = run.from_node
    devices = tuple(d for d in circuit.devices if d.opening_id == opening_id and (not leaf or d.leaf == leaf))
    transfer = None
    on_leaf: tuple[Device, ...] = ()
    if transfers:
        number, run = transfers[0]
        transfer = Hop(run, number, nodes.get(run.to_node))
        on_leaf = tuple(
            device
            for device in devices
            if (device.role != "strike" if frame_parts is None else device.part not in frame_parts)
        )
    in_frame = tuple(device for device in devices if device not in on_leaf)
    return WiringWay(tuple(reversed(hops)), transfer, in_frame, on_leaf)

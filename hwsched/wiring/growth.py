"""Later openings: how many more a circuit bears, and what stops the next one.

A later opening is one like the one that draws most on the circuit, on a run like that to the place with the least room:
what is borne there is borne anywhere nearer. It is worked out and judged as if it were laid.
"""

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass, replace

from hwsched.rules.network.connected_opening import ConnectedOpening
from hwsched.rules.network.devices import amps
from hwsched.values.power import CircuitResult, Growth, PowerFinding, Run, SupplyResult

Judged = tuple[SupplyResult, Sequence[PowerFinding]]


@dataclass(frozen=True, slots=True)
class Grower:
    """A supply as it is laid, and what works it out with more openings."""

    result: SupplyResult
    findings: Sequence[PowerFinding]
    runs: Mapping[str, Sequence[Run]]
    """By circuit."""
    openings: Mapping[str, ConnectedOpening]
    judged: Callable[[Mapping[str, Sequence[Run]], Mapping[str, ConnectedOpening]], Judged]
    """Works it out with these runs by circuit and these openings, and judges it."""

    def bears(self, circuit: CircuitResult, count: int) -> Growth:
        """Say whether a circuit bears so many later openings.

        Parameters
        ----------
        circuit : CircuitResult
            Of the supply.
        count : int
            Later openings, at least 1.
        """
        name, place = circuit.circuit.name, self._place(circuit)
        most = self._most(circuit)
        if place is None or most is None:
            why = "nothing that is known is connected there yet"
            return Growth(circuit.circuit.id, name, count, None, why)
        added = [f"later opening {number + 1}" for number in range(count)]
        runs = [replace(place, id=mark, to_node=mark, opening_id=mark) for mark in added]
        with_them = {**self.runs, circuit.circuit.id: (*self.runs[circuit.circuit.id], *runs)}
        found, findings = self.judged(with_them, {**self.openings, **{mark: _named(most, mark) for mark in added}})
        before = {_key(each, added) for each in self.findings}
        new = [each.finding for each in findings if each.finding.severity != "note" and _key(each, added) not in before]
        # What is at fault already stays so: it is no question of growth, and the rules say it.
        worse = next((each for each in new if each.severity == "error"), new[0] if new else None)
        if worse is not None:
            return Growth(circuit.circuit.id, name, count, None if worse.needs else False, worse.message, worse.rule)
        grown = next(each for each in found.circuits if each.circuit.id == circuit.circuit.id)
        unsure = [proof for proof in grown.proofs if proof.standing != "proved" and proof.opening_id in added]
        if unsure:
            return Growth(circuit.circuit.id, name, count, None, "whether they find their voltages is not proved")
        return Growth(circuit.circuit.id, name, count, True)

    def most(self, circuit: CircuitResult, at_most: int) -> tuple[int, Growth | None]:
        """Return how many later openings a circuit bears, and what stops the next; None where so many are borne."""
        low, stop = 0, None
        while stop is None and low < at_most:
            tried = self.bears(circuit, min(max(1, 2 * low), at_most))
            low, stop = (tried.count, None) if tried.borne else (low, tried)
        while stop is not None and stop.count - low > 1:
            tried = self.bears(circuit, (low + stop.count) // 2)
            if tried.borne:
                low = tried.count
            else:
                stop = tried
        return low, stop

    def _place(self, circuit: CircuitResult) -> Run | None:
        """Return the run to the opening that has the least room; those that are not known are left out."""
        room = {
            node.opening_id: node.margin_v
            for node in sorted(circuit.nodes, key=lambda node: -(node.margin_v or 0.0))
            if node.opening_id is not None and node.margin_v is not None
        }
        laid = [run for run in self.runs[circuit.circuit.id] if run.opening_id in room]
        return min(laid, key=lambda run: room[run.opening_id or ""], default=None)

    def _most(self, circuit: CircuitResult) -> ConnectedOpening | None:
        volts = self.result.output_v
        if volts is None:
            return None
        drawn: dict[str, float] = {}
        for device in circuit.devices:
            most = max(amps(device, device.holding, volts), amps(device, device.peak, volts))
            drawn[device.opening_id] = drawn.get(device.opening_id, 0.0) + most
        known = [opening for opening in drawn if opening in self.openings]
        return self.openings[max(known, key=lambda opening: drawn[opening])] if known else None


def _named(like: ConnectedOpening, mark: str) -> ConnectedOpening:
    """Return the same opening under another mark."""
    points = [
        replace(at, given=replace(at.given, opening=replace(at.given.opening, id=mark, mark=mark)))
        for at in like.points
    ]
    return ConnectedOpening.of(points)


def _key(found: PowerFinding, added: Collection[str]) -> tuple[str, str, str, str, tuple[str, ...]]:
    finding = found.finding
    # What concerned all openings before concerns the later ones too: that is no other finding.
    present = tuple(each for each in found.opening_ids if each not in added)
    return finding.rule, finding.about, finding.severity, found.circuit_id, present or found.opening_ids

"""What the rules of circuits say, with waivers laid over, and what an opening is kept back for by its circuit."""

from collections.abc import Iterable
from dataclasses import replace

from hwsched.operations.findings.checked import Checked
from hwsched.operations.findings.waiver_book import WaiverBook
from hwsched.rules.wording import label_of
from hwsched.values.power import PowerResult


def of_circuit(opening_id: str, power: PowerResult) -> list[str]:
    """Return what the circuit of an opening keeps it back for; nothing where it is on none."""
    on = power.circuit_of(opening_id)
    if on is None:
        return []
    supply, circuit = on
    found = [
        f"error of circuit {supply.supply.name}/{circuit.circuit.name}: {each.finding.message}"
        for each in power.findings
        # What concerns the opening itself stands among its own.
        if each.finding.severity == "error" and not each.finding.waived and opening_id not in each.opening_ids
        and each.supply_id == supply.supply.id and each.circuit_id in ("", circuit.circuit.id)
    ]  # fmt: skip
    for proof in circuit.unproved:
        if proof.opening_id == opening_id:
            why = f"needs {'; '.join(map(label_of, proof.missing))}" if proof.missing else proof.why
            found.append(f"not proved: whether every load finds its voltage; {why}")
    return found


def waived_power(work: PowerResult, checked: Iterable[Checked], book: WaiverBook | None) -> PowerResult:
    """Mark what the rules of circuits say as waived: at all openings that it concerns, or at the supply."""
    present = {
        (each.given.opening.id, finding.rule, finding.about, finding.message): finding
        for each in checked
        for finding in each.findings
        if finding.waived
    }
    supplies = {supply.supply.id: supply for supply in work.supplies}
    found = []
    for each in work.findings:
        said = each.finding
        if not each.opening_ids:
            over = said if book is None else book.of_supply(supplies[each.supply_id], said)
            found.append(replace(each, finding=over) if over.waived else each)
            continue
        held = [present.get((opening, said.rule, said.about, said.message)) for opening in each.opening_ids]
        waived = [finding for finding in held if finding is not None]
        found.append(replace(each, finding=waived[0]) if waived and len(waived) == len(held) else each)
    return replace(work, findings=tuple(found))

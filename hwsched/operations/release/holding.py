"""What keeps an opening back beside its own fit and errors: its circuit, what is unknown, what nobody decided yet."""

from collections.abc import Iterable, Sequence
from typing import Final

from hwsched.rules.rule import undeferred
from hwsched.rules.wording import label_of, parted, says_only_what_is_missing
from hwsched.values import Finding
from hwsched.values.power import PowerResult

WILL_NOT_LAST: Final = frozenset({"battery-life", "battery-cold", "battery-end-voltage"})
"""Rules whose warnings say that what is installed will not last: a person decides, by accepting them."""


def held_back(
    opening_id: str, findings: Iterable[Finding], power: PowerResult, questions: Sequence[tuple[int, str]]
) -> tuple[str, ...]:
    """Return what keeps an opening back beside its own fit and errors, each as a sentence.

    Parameters
    ----------
    opening_id : str
        Opening.
    findings : iterable of Finding
        Its own.
    power : PowerResult
        With what is waived of supplies and circuits marked.
    questions : sequence of tuple
        That deliveries of the survey left about it: number of the delivery, kind.
    """
    return (
        *_own(findings),
        *_of_circuit(opening_id, power),
        *(f"unfinished question of delivery {delivery}: {kind}" for delivery, kind in questions),
    )


def _own(findings: Iterable[Finding]) -> list[str]:
    found: list[str] = []
    missing: list[str] = []
    for finding in findings:
        if finding.waived or finding.severity != "warning":
            continue
        if says_only_what_is_missing(finding.message, finding.needs):
            missing += finding.needs
        elif finding.needs:
            said = finding.message if "unknown" in finding.message.casefold() else f"unknown: {finding.message}"
            found.append(f"{said} {undeferred(finding.cure)}")
        elif finding.rule in WILL_NOT_LAST:
            found.append(f"a person's decision (accept {finding.rule}, with a reason): {finding.message}")
    # What several rules ask for is asked for once.
    return [*map(_asked_for, parted(missing)), *dict.fromkeys(found)]


def _asked_for(needs: tuple[str, ...]) -> str:
    named = "; ".join(label_of(need) for need in needs)
    if needs[0].startswith("part "):
        return f"unknown: needs {named}. Complete the catalogue."
    return f"unknown: needs {named}. Complete the survey."


def _of_circuit(opening_id: str, power: PowerResult) -> list[str]:
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

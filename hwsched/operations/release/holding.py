"""What keeps an opening back beside its own fit and errors: its circuit, what is unknown, what nobody decided yet."""

from collections.abc import Iterable, Sequence

from hwsched.operations.findings.checked import holds_back
from hwsched.operations.findings.of_circuit import of_circuit
from hwsched.rules.rule import undeferred
from hwsched.rules.wording import label_of, parted, says_only_what_is_missing
from hwsched.values import Finding
from hwsched.values.power import PowerResult


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
        *of_circuit(opening_id, power),
        *(f"unfinished question of delivery {delivery}: {kind}" for delivery, kind in questions),
    )


def _own(findings: Iterable[Finding]) -> list[str]:
    found: list[str] = []
    missing: list[str] = []
    for finding in findings:
        # Errors are told beside this.
        if finding.severity == "error" or not holds_back(finding):
            continue
        if says_only_what_is_missing(finding.message, finding.needs):
            missing += finding.needs
        elif finding.needs:
            said = finding.message if "unknown" in finding.message.casefold() else f"unknown: {finding.message}"
            found.append(f"{said} {undeferred(finding.cure)}")
        else:
            found.append(f"a person's decision (accept {finding.rule}, with a reason): {finding.message}")
    # What several rules ask for is asked for once.
    return [*map(_asked_for, parted(missing)), *dict.fromkeys(found)]


def _asked_for(needs: tuple[str, ...]) -> str:
    named = "; ".join(label_of(need) for need in needs)
    if needs[0].startswith("part "):
        return f"unknown: needs {named}. Complete the catalogue."
    return f"unknown: needs {named}. Complete the survey."

"""What keeps an opening back beside its own fit and errors: its circuit, what is unknown, what nobody decided yet."""

import re
from collections.abc import Iterable, Sequence
from typing import Final

from hwsched.operations.findings.checked import holds_back
from hwsched.operations.findings.of_circuit import of_circuit
from hwsched.rules.rule import undeferred
from hwsched.rules.wording import label_of, parted, says_only_what_is_missing
from hwsched.values import Finding
from hwsched.values.power import PowerResult

_OF_FIT: Final = "fit-complete"
"""The rule that says what a fit lacks."""


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
        # Errors are told beside this, and what the fit lacks by the fit itself.
        if finding.severity == "error" or finding.rule == _OF_FIT or not holds_back(finding):
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


def asked_for(line: str) -> set[str]:
    """Return what a line of `held_back` asks for, by its labels; nothing where it says something else.

    Examples
    --------
    >>> asked_for("unknown: needs leaf: Leaf thickness. Complete the survey."), asked_for("The pack lasts 40 days.")
    ({'leaf: Leaf thickness'}, set())
    """
    found = re.fullmatch(r"unknown: needs (.+)\. Complete the (?:survey|catalogue)\.", line)
    return set(found[1].split("; ")) if found else set()

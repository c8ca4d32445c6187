"""What keeps an opening back beside its own fit and errors: its circuit, what is unknown, what nobody decided yet."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final, Literal

from hwsched.exchange.survey.decisions import kind_title
from hwsched.operations.findings.checked import holds_back
from hwsched.operations.findings.of_circuit import of_circuit
from hwsched.rules.rule import undeferred
from hwsched.rules.rule_titles import title_of
from hwsched.rules.wording import label_of, parted, says_only_what_is_missing
from hwsched.values import Finding
from hwsched.values.power import PowerResult

_OF_FIT: Final = "fit-complete"
"""The rule that says what a fit lacks."""


Of = Literal["fit", "fact", "finding", "circuit", "delivery"]
"""What is to be looked at: the fit, a missing fact, a finding, the circuit, a question that a delivery left."""


@dataclass(frozen=True, slots=True)
class Lack:
    """One thing that is missing until an opening may go out."""

    said: str
    of: Of
    rule: str = ""
    """The rule whose finding it is."""
    need: str = ""
    """The missing fact, or the first of them, as ``entity.attribute``."""
    decision: bool = False
    """Whether it waits for a person who accepts the finding."""


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
        *(each.said for each in own_lacks(findings)),
        *of_circuit(opening_id, power),
        *(f"unfinished question of delivery {delivery}: {kind_title(kind).lower()}" for delivery, kind in questions),
    )


def own_lacks(findings: Iterable[Finding]) -> list[Lack]:
    """Return what keeps an opening back by its own findings, errors and what its fit lacks aside."""
    found: list[Lack] = []
    missing: list[str] = []
    for finding in findings:
        # Errors are told beside this, and what the fit lacks by the fit itself.
        if finding.severity == "error" or finding.rule == _OF_FIT or not holds_back(finding):
            continue
        if says_only_what_is_missing(finding.message, finding.needs):
            missing += finding.needs
        elif finding.needs:
            said = finding.message if "unknown" in finding.message.casefold() else f"unknown: {finding.message}"
            found.append(Lack(f"{said} {undeferred(finding.cure)}", "fact", finding.rule, finding.needs[0]))
        else:
            said = f"a person's decision (accept '{title_of(finding.rule)}', with a reason): {finding.message}"
            found.append(Lack(said, "finding", finding.rule, decision=True))
    # What several rules ask for is asked for once.
    once: dict[str, Lack] = {}
    for each in (*map(_asked_for, parted(missing)), *found):
        once.setdefault(each.said, each)
    return list(once.values())


def _asked_for(needs: tuple[str, ...]) -> Lack:
    named = "; ".join(label_of(need) for need in needs)
    if needs[0].startswith("part "):
        return Lack(f"unknown: needs {named}. Complete the catalogue.", "fact", need=needs[0])
    return Lack(f"unknown: needs {named}. Complete the survey.", "fact", need=needs[0])


def asked_for(line: str) -> set[str]:
    """Return what a line of `held_back` asks for, by its labels; nothing where it says something else.

    Examples
    --------
    >>> asked_for("unknown: needs leaf: Leaf thickness. Complete the survey."), asked_for("The pack lasts 40 days.")
    ({'leaf: Leaf thickness'}, set())
    """
    found = re.fullmatch(r"unknown: needs (.+)\. Complete the (?:survey|catalogue)\.", line)
    return set(found[1].split("; ")) if found else set()


def lack_of(line: str, own: Iterable[Lack]) -> Lack:
    """Return of what a line of `held_back` speaks, given the opening's own lacks.

    Examples
    --------
    >>> lack_of("unfinished question of delivery 3: gone", ()).of
    'delivery'
    """
    found = next((each for each in own if each.said == line), None)
    if found is not None:
        return found
    return Lack(line, "delivery" if line.startswith("unfinished question of delivery ") else "circuit")

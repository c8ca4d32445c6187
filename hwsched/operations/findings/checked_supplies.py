"""Supplies in a check: what the rules say of a supply itself, and whether its circuits could be worked out."""

from collections.abc import Iterable
from dataclasses import dataclass

from hwsched.operations.findings.waiver_book import WaiverBook
from hwsched.values import SEVERITIES, Finding
from hwsched.values.power import PowerResult, Problem, SupplyResult


@dataclass(frozen=True, slots=True)
class Unsolved:
    """Why voltages of a supply are not worked out; circuit "": it concerns all of them."""

    circuit: str
    problem: Problem


@dataclass(frozen=True, slots=True)
class CheckedSupply:
    """One supply with what is said of it."""

    result: SupplyResult
    findings: tuple[Finding, ...] = ()
    """Those that concern no opening: the others stand at the openings. With the waivers that hold there."""
    unsolved: tuple[Unsolved, ...] = ()
    """Not empty: it is not judged, whatever the rules say and whichever of them are off."""


def checked_supplies(work: PowerResult, book: WaiverBook | None) -> tuple[CheckedSupply, ...]:
    """Return the supplies that feed something.

    Parameters
    ----------
    work : PowerResult
        As worked out.
    book : WaiverBook, optional
        Waivers of the project; none when left out.
    """
    said: dict[str, list[Finding]] = {}
    supplies = {supply.supply.id: supply for supply in work.supplies}
    for each in work.findings:
        if not each.opening_ids:
            finding = each.finding if book is None else book.of_supply(supplies[each.supply_id], each.finding)
            said.setdefault(each.supply_id, []).append(finding)
    return tuple(
        CheckedSupply(supply, _worst_first(said.get(supply.supply.id, ())), unsolved(supply))
        for supply in work.supplies
        if supply.circuits
    )


def unsolved(result: SupplyResult) -> tuple[Unsolved, ...]:
    """Say why a supply cannot be judged as a whole; empty where all its circuits are worked out and all is proved."""
    found = [Unsolved("", problem) for problem in result.problems]
    for circuit in result.circuits:
        name = circuit.circuit.name
        told = [problem for problem in circuit.problems if not circuit.solved or problem.kind != "mismatch"]
        if circuit.solved and not circuit.unproved and not told:
            continue
        found += [Unsolved(name, problem) for problem in told]
        if not told and not result.problems:
            marks = dict(zip(circuit.openings, circuit.marks, strict=True))
            # What is unknown may stand on another circuit of the supply.
            why = dict.fromkeys(why for each in circuit.unproved for why in (each.missing or (each.why,)))
            said = ", ".join(marks[each.opening_id] for each in circuit.unproved)
            text = f"the voltages of circuit {name} are not worked out"
            if circuit.solved:
                text = f"the voltages of {said} on circuit {name} are not proved: {', '.join(why)}"
            found.append(Unsolved(name, Problem("unknown", text)))
    return tuple(dict.fromkeys(found))


def _worst_first(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    return tuple(sorted(findings, key=lambda finding: SEVERITIES.index(finding.severity)))

"""`hwsched power show`: supplies with their circuits, volts at every opening, and what the rules say of them."""

from __future__ import annotations

from math import isfinite
from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse

    from hwsched.values.power import CircuitResult, PowerResult, SupplyResult


class NodeShown(TypedDict):
    """Voltage at a place of a circuit, by state."""

    node: str
    mark: str | None
    state_v: dict[str, float]
    """At peak under the operations that are worst for it."""
    bound_v: float | None
    """No operations and nothing that is unknown bring it lower; null where that cannot be said."""
    minimum_v: float | None
    maximum_v: float | None
    operating: list[str]
    """Marks of the openings whose operations at one time are worst for it."""


# `from` is a word of the language's own.
RunShown = TypedDict(
    "RunShown",
    {
        "from": str,
        "to": str,
        "length_m": float,
        "gauge": str,
        "stranding": str,
        "state_a": dict[str, float],
        "state_loss_w": dict[str, float],
    },
)


class ProofShown(TypedDict):
    """Whether an opening finds its voltages: proved, failed, not-proved with what is missing."""

    mark: str
    standing: str
    missing: list[str]
    why: str | None


class CircuitShown(TypedDict):
    """A circuit; what has a value a state is left out for a state without a solution, which `collapsed` explains."""

    name: str
    wire: str | None
    marks: list[str]
    limiter_a: float | None
    source_a: dict[str, float]
    collapsed: dict[str, str]
    nodes: list[NodeShown]
    runs: list[RunShown]
    problems: list[str]
    proofs: list[ProofShown]


class StandbyShown(TypedDict):
    """Standby battery of a supply."""

    hours: float
    load_a: float
    margin: float
    ageing: float
    temperature_c: float | None
    needed_ah: float
    size_ah: float | None
    held_ah: float | None
    peukert: str | None


class SupplyShown(TypedDict):
    """A supply with its circuits."""

    name: str
    building: str | None
    part: str | None
    output_v: float | None
    rated_a: float | None
    held_a: float | None
    share: float | None
    standby: StandbyShown | None
    circuits: list[CircuitShown]


class FindingShown(TypedDict):
    """What a rule says of a supply."""

    supply: str
    rule: str
    severity: str
    message: str
    cure: str
    values: dict[str, float]
    needs: list[str]
    waived: bool


class Power(TypedDict):
    """All supplies, worked out."""

    supplies: list[SupplyShown]
    findings: list[FindingShown]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json, said
    from hwsched.operations.findings.waived_power import power_with_waivers
    from hwsched.rules.wording import label_of

    with opened(arguments) as project:
        work = power_with_waivers(project)
    print_json(as_json(work))
    if arguments.json:
        return DONE
    for supply in work.supplies:
        share = "" if supply.share is None else f", {supply.share:.0%} of the rating held"
        print(f"{supply.supply.name}: {supply.supply.part or 'no supply chosen'}{share}")
        for circuit in supply.circuits:
            print(f"  circuit {circuit.circuit.name}: {circuit.wire or 'no run yet'}")
            for node in circuit.nodes:
                if node.minimum_v is not None and node.lowest_v is not None:
                    print(f"    {node.name:<24} {node.lowest_v:6.2f} V at worst, needs {node.minimum_v:g} V")
            marks = dict(zip(circuit.openings, circuit.marks, strict=True))
            for proof in circuit.unproved:
                why = "; ".join(map(label_of, proof.missing)) or proof.why
                print(f"    {marks[proof.opening_id]:<24} not proved: {why}")
    names = {supply.supply.id: supply.supply.name for supply in work.supplies}
    for each in work.findings:
        waived = f" (waived: {each.finding.waived_by})" if each.finding.waived else ""
        print(f"{names[each.supply_id]}: {each.finding.severity}{waived}: {each.finding.rule}: {each.finding.message}")
        print(f"    cure: {each.finding.cure}")
    if not work.supplies:
        said(arguments, "Nothing is laid yet.")
    return DONE


def as_json(work: PowerResult) -> Power:
    """Return the power of a project for machines."""
    names = {supply.supply.id: supply.supply.name for supply in work.supplies}
    return {
        "supplies": [_supply(each) for each in work.supplies],
        "findings": [
            {
                "supply": names[each.supply_id],
                "rule": each.finding.rule,
                "severity": each.finding.severity,
                "message": each.finding.message,
                "cure": each.finding.cure,
                "values": dict(each.finding.values),
                "needs": list(each.finding.needs),
                "waived": each.finding.waived,
            }
            for each in work.findings
        ],
    }


def _supply(held: SupplyResult) -> SupplyShown:
    standby = held.standby
    return {
        "name": held.supply.name,
        "building": held.supply.building,
        "part": held.supply.part,
        "output_v": held.output_v,
        "rated_a": held.rated_a,
        "held_a": held.holding_a,
        "share": held.share,
        "standby": None
        if standby is None
        else {
            "hours": standby.hours,
            "load_a": standby.load_a,
            "margin": standby.margin,
            "ageing": standby.ageing,
            "temperature_c": standby.temperature_c,
            "needed_ah": standby.needed_ah,
            "size_ah": standby.size_ah,
            "held_ah": standby.held_ah,
            "peukert": standby.peukert or None,
        },
        "circuits": [_circuit(each) for each in held.circuits],
    }


def _circuit(held: CircuitResult) -> CircuitShown:
    marks = dict(zip(held.openings, held.marks, strict=True))
    return {
        "name": held.circuit.name,
        "wire": held.wire or None,
        "marks": list(held.marks),
        "limiter_a": held.limiter_a,
        "source_a": dict(held.current_a),
        "collapsed": dict(held.collapsed),
        "nodes": [
            {
                "node": node.name,
                "mark": marks.get(node.opening_id or ""),
                "state_v": dict(node.volts),
                "bound_v": node.bound_v if node.bound_v is not None and isfinite(node.bound_v) else None,
                "minimum_v": node.minimum_v,
                "maximum_v": node.maximum_v,
                "operating": list(node.operating),
            }
            for node in held.nodes
        ],
        "runs": [
            {
                "from": run.from_name,
                "to": run.to_name,
                "length_m": run.length_m,
                "gauge": run.gauge,
                "stranding": run.stranding,
                "state_a": dict(run.amps),
                "state_loss_w": dict(run.loss_w),
            }
            for run in held.runs
        ],
        "problems": [each.message for each in held.problems],
        "proofs": [
            {
                "mark": marks[each.opening_id],
                "standing": each.standing,
                "missing": list(each.missing),
                "why": each.why or None,
            }
            for each in held.proofs
        ],
    }


VERB = Verb(_arguments, _run, result=Power)

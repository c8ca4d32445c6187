"""`hwsched power show`: supplies with their circuits, volts at every opening, and what the rules say of them."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from typing import Any

    from hwsched.values.power import PowerResult


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json
    from hwsched.operations.power.power_results import power_result

    with opened(arguments) as project:
        work = power_result(project)
    if arguments.json:
        print_json(as_json(work))
        return DONE
    for supply in work.supplies:
        share = "" if supply.share is None else f", {supply.share:.0%} of the rating held"
        print(f"{supply.supply.name}: {supply.supply.part or 'no supply chosen'}{share}")
        for circuit in supply.circuits:
            print(f"  circuit {circuit.circuit.name}: {circuit.wire or 'no run yet'}")
            for node in circuit.nodes:
                if node.minimum_v is not None and node.lowest_v is not None:
                    print(f"    {node.name:<24} {node.lowest_v:6.2f} V at worst, needs {node.minimum_v:g} V")
    names = {supply.supply.id: supply.supply.name for supply in work.supplies}
    for each in work.findings:
        print(f"{names[each.supply_id]}: {each.finding.severity}: {each.finding.rule}: {each.finding.message}")
        print(f"    cure: {each.finding.cure}")
    if not work.supplies:
        print("Nothing is laid yet.")
    return DONE


def as_json(work: PowerResult) -> dict[str, Any]:
    """Return the power of a project for machines."""
    from dataclasses import asdict

    return {
        "supplies": [
            {
                "name": supply.supply.name,
                "building": supply.supply.building,
                "part": supply.supply.part,
                "output_v": supply.output_v,
                "rated_a": supply.rated_a,
                "held_a": supply.holding_a,
                "share": supply.share,
                "standby": None if supply.standby is None else asdict(supply.standby),
                "circuits": [
                    {
                        "name": circuit.circuit.name,
                        "limiter_a": circuit.limiter_a,
                        "source_a": dict(circuit.current_a),
                        "collapsed": dict(circuit.collapsed),
                        "nodes": [
                            {"node": n.name, "volts": dict(n.volts), "minimum_v": n.minimum_v, "maximum_v": n.maximum_v}
                            for n in circuit.nodes
                        ],
                        "runs": [
                            {
                                "from": r.from_name,
                                "to": r.to_name,
                                "length_m": r.length_m,
                                "gauge": r.gauge,
                                "stranding": r.stranding,
                                "amps": dict(r.amps),
                                "loss_w": dict(r.loss_w),
                            }
                            for r in circuit.runs
                        ],
                    }
                    for circuit in supply.circuits
                ],
            }
            for supply in work.supplies
        ],
        "findings": [
            {
                "rule": f.finding.rule,
                "severity": f.finding.severity,
                "message": f.finding.message,
                "cure": f.finding.cure,
                "values": dict(f.finding.values),
                "needs": list(f.finding.needs),
            }
            for f in work.findings
        ],
    }


VERB = Verb(_arguments, _run)

"""Rule: at the end of its wires every load of an opening finds the voltage it takes, at both ends of every limit."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import OUTPUT_V, TOLERANCE_SHARE
from hwsched.rules.network.leaf_runs import leaf_wire
from hwsched.rules.network.own_circuit import OwnCircuit, own_circuit, route_m
from hwsched.rules.reading import supply_part, unit_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import run_length, short_v, unknown
from hwsched.values import Fit, OpeningInput
from hwsched.values.power import NodeResult


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    supply = supply_part(given, fit)
    if fit.power != "supply" or given.supply_link is not None or unit_part(given, fit) is None or supply is None:
        return
    if route_m(given) is None:
        return
    wire = leaf_wire(given, fit)
    if wire is None:
        yield Verdict("No wire of the catalogue carries the opening's current this far.", about="wire")
        return
    facts = (OUTPUT_V, TOLERANCE_SHARE)
    untold = tuple(f"part {supply.number}.{name}" for name in facts if supply.number_of(name) is None)
    if untold:
        yield unknown(untold, supply.number)
        return
    solved = own_circuit(given, fit, limits["temperature_c"])
    if solved is None:
        return
    lacking = [problem for problem in solved.problems if problem.kind == "unknown"]
    for problem in lacking:
        yield unknown(problem.needs, problem.about or wire.number)
    for problem in solved.problems:
        # Another voltage or kind of current than a load takes is said by the rule of the supply's voltage.
        if problem.kind == "unsound":
            yield Verdict(f"{problem.message[:1].upper()}{problem.message[1:]}.", about=problem.about or wire.number)
    if lacking:
        return
    if not solved.low and not solved.result.collapsed:
        # At the least that a transfer can have, which nobody has measured, the volts suffice; at the most they do not.
        for proof in solved.result.unproved:
            if proof.missing:
                yield unknown(proof.missing, "power-transfer")
    far = run_length(given.settings.length_style, solved.run_m)
    for reason in dict.fromkeys(solved.result.collapsed.values()):
        yield Verdict(
            f"The currents cannot be carried over {far} of {solved.gauge}: {reason}.",
            about=wire.number,
        )
    for node in solved.low:
        yield _low(solved, node, wire.number, far)


def _low(solved: OwnCircuit, node: NodeResult, wire: str, run: str) -> Verdict:
    volts = {state: each for state, each in node.volts.items() if state != "highest-mains"}
    state, arrives = min(volts.items(), key=lambda pair: pair[1])
    least, needed = solved.result.source_v[state], node.minimum_v or 0.0
    who = "the strike" if "(strike" in node.name else "the unit" if "leaf)" in node.name else "what is connected there"
    onto = " and what leads onto the leaf" if "(" in node.name else ""
    short = f"short by {short_v(needed - arrives)} V" if arrives >= 0 else "and no voltage is left at all"
    return Verdict(
        f"After {run} of {solved.gauge}{onto} {arrives:.2f} V of {least:.2f} V arrive at the peak; {who} "
        f"needs {needed:g} V, {short}."
        if state == "peak"
        else f"After {run} of {solved.gauge}{onto} {arrives:.2f} V of {least:.2f} V arrive; {who} needs "
        f"{needed:g} V, {short}.",
        values={"arrives_v": arrives, "needed_v": needed, "short_v": needed - arrives, "run_m": solved.run_m},
        about=wire,
    )


RULE = Rule(
    id="supply-drop",
    title="Voltage at the end of the wires",
    discipline="power",
    severity="error",
    basis="node voltages (Kirchhoff), all that starts at one time, supply at its lowest tolerance; resistivity 1/58 at "
    "20 C (IEC 60028), stranding factor 1.02 common practice",
    cure="Take a thicker wire, a nearer supply, a transfer of thicker conductors, or a unit for a higher voltage.",
    judge=_judge,
    slot="power",
    limits=(
        Limit(
            "temperature_c",
            30.0,
            "Temperature of the conductor.",
            "common practice; 75 C is NEC Table 8",
            unit="C",
            low=-40.0,
            high=105.0,
        ),
    ),
)

"""What would mend a low voltage on a circuit: each cure tried, and those that do proved in every state.

The cures themselves stand in `hwsched.calc.power.circuit_cures`; here they meet the states, devices and names of a
circuit.
"""

import re
from collections.abc import Mapping
from dataclasses import replace
from math import ceil, floor
from typing import Final

from hwsched.calc.calculator import InputError
from hwsched.calc.power import circuit_cures, circuit_states, circuit_tree
from hwsched.calc.power.circuit import Load
from hwsched.quantities import in_run_unit, run_unit
from hwsched.rules.network.circuit_solving import Solved
from hwsched.rules.network.leaf_nodes import leaf_words, opening_of
from hwsched.rules.wording import style_of
from hwsched.values.power import CureOffer, NodeResult

_TOUCH_V: Final = 1e-6
"""Cures that are halved down to the limit end a little beside it [V]."""
_MOST_SETS: Final = 12
"""Operations at one time that a cure is tried under, the worst first; all are proved afterwards."""
_OWN_RUN: Final = " (own run)"
"""What the cure of that kind puts behind the name of a place that it feeds."""
_WITH_LENGTH: Final = ("own-run", "nearer-supply")
"""Kinds of cure whose text has lengths, and no name of a place."""
_METRES: Final = re.compile(r"\b([0-9]+(?:\.[0-9]+)?) m\b")
_OF_SOURCE: Final = ("source-voltage", "nominal-voltage")


Proofs = dict[tuple[object, ...], tuple[tuple[circuit_states.State, ...], ...]]
"""States of a circuit with a cure, and of those beside it, by what the cure changes."""


def cure_offers(node: NodeResult, solved: Solved, style: str, proofs: Proofs) -> tuple[CureOffer, ...]:
    """Try every kind of cure at a node that is low.

    Parameters
    ----------
    node : NodeResult
        With a minimum.
    solved : Solved
        Its circuit.
    style : str
        How the project shows lengths.
    proofs : dict
        Takes what was proved of the circuit: a thicker run mends many places, and is proved once.

    Returns
    -------
    tuple of CureOffer
        Each text once. One works only where all devices at the node find their minimum in every state with it, and
        where none finds too much by a higher voltage; empty where the node is not low by the operations that are worst
        for it.
    """
    peak, source = solved.states[-1], solved.source
    loads, *others = (_loads_of(solved, chosen) for chosen in _worst_sets(node, solved))
    # The peak is proved at the lowest voltage: where that is the battery's, so is the resistance in front of it.
    ohm = source.battery_ohm if source.battery_end_v == peak.source_v else source.ohm
    circuit = circuit_cures.Circuit(
        tuple(solved.runs), loads, peak.source_v, ohm, solved.warm_c, solved.bought, tuple(others)
    )
    try:
        higher = [volts for volts in circuit_cures.NOMINAL_V if volts > source.normal_v]
        found = circuit_cures.cures(circuit, node.node, nominal_v=higher)
    # A circuit that the cures cannot take has its own problem told elsewhere.
    except InputError:
        return ()
    made: dict[str, CureOffer] = {}
    for cure in found:
        text, works = _renamed(_in_units(cure.kind, cure.text, style), solved.names), cure.works
        if cure.circuit is not None and works:
            # A cure found in the peak state may do harm in another: more volts for the farthest device can be too
            # many for the nearest.
            against, least_v = _proved(cure, cure.circuit, node, solved, proofs)
            works = not against
            if least_v is not None:
                does = _renamed(_in_units(cure.kind, cure.does, style), solved.names)
                # As it is proved in all states, each place under its own worst operations.
                text = f"{does}: {least_v:.2f} V at {node.name}, {node.minimum_v:g} V needed"
            if cure.kind in _OF_SOURCE and least_v is not None:
                # What a person sets or buys is the normal output; what counts is what arrives in the worst state.
                normal_v = cure.values["source_v"]
                if cure.kind == "source-voltage":
                    # Up, so that the setting as printed still does.
                    normal_v = ceil(100 * normal_v * source.normal_v / peak.source_v) / 100
                begins = "a supply of" if cure.kind == "nominal-voltage" else "an output of"
                text = f"{begins} {normal_v:g} V (now {source.normal_v:g} V): {least_v:.2f} V at {node.name}"
                text += f", {node.minimum_v:g} V needed"
                if cure.kind == "nominal-voltage" and source.battery_end_v is not None:
                    text += ", with a standby battery to match"
            text += against
        # With one run on the way, "this run" and "all runs" are the same cure and read the same.
        made.setdefault(text, CureOffer(cure.kind, works, text))
    return tuple(made.values())


def _in_units(kind: str, text: str, style: str) -> str:
    """Put lengths of runs into the unit in which the project shows them."""
    if kind not in _WITH_LENGTH or run_unit(style_of(style)) == "m":
        return text

    def in_feet(found: re.Match[str]) -> str:
        # Down, so that a distance as printed still does.
        return f"{floor(10 * in_run_unit(float(found[1]), style_of(style))) / 10:g} {run_unit(style_of(style))}"

    return _METRES.sub(in_feet, text)


def _proved(
    cure: circuit_cures.Cure, circuit: circuit_cures.Circuit, node: NodeResult, solved: Solved, proofs: Proofs
) -> tuple[str, float | None]:
    """Solve the supply with a cure in all states; returns what speaks against it, and the least volts at the node.

    A cure that leaves another load of the circuit low does not work: what remains low is said.
    """
    source = solved.source
    by = 1.0
    if cure.kind == "source-voltage":
        by = circuit.source_v / solved.states[-1].source_v
    elif cure.kind == "nominal-voltage":
        by = circuit.source_v / source.normal_v
    # A battery ends where it ends, however the output is set; another supply has one to match.
    alike = by if cure.kind == "nominal-voltage" else 1.0
    end_v = None if source.battery_end_v is None else source.battery_end_v * alike
    highest_v = None if source.highest_v is None else source.highest_v * by
    raised = replace(
        source,
        normal_v=source.normal_v * by,
        lowest_v=source.lowest_v * by,
        battery_end_v=end_v,
        highest_v=highest_v,
    )
    devices = [
        d if d.node == load.node else replace(d, node=load.node)
        for d, load in zip(solved.devices, circuit.loads, strict=True)
    ]
    at = next(
        (load.node for d, load in zip(solved.devices, circuit.loads, strict=True) if d.node == node.node), node.node
    )
    key = circuit.runs, tuple(device.node for device in devices), raised
    try:
        if key not in proofs:
            if cure.kind == "own-run":
                tree = circuit_tree.network(circuit.runs, solved.warm_c)
            else:
                tree = circuit_tree.rewired(solved.tree, solved.runs, circuit.runs, solved.warm_c)
            mended = circuit_states.FedCircuit(tree, devices, solved.at_once)
            proofs[key] = circuit_states.supply_states([mended, *solved.beside], raised)
        states, *others = proofs[key]
    except InputError as error:
        return f"; but {error.message}", None
    least_v: float | None = None
    for state in states:
        said = state.name.replace("-", " ")
        if state.solution.collapsed:
            return f"; but it collapses in the state {said}", None
        volts = state.least_v(at)
        least_v = volts if least_v is None else min(least_v, volts)
        if volts < (node.minimum_v or 0.0) - _TOUCH_V:
            return f"; but {volts:.2f} V in the state {said}", least_v
        # Only what raises the source can bring a device over its maximum.
        if cure.kind in _OF_SOURCE and state.high:
            high = state.high[0]
            name = _named(high, solved.names)
            return f"; but {name} finds {state.solution.volts[high]:.2f} V, too much, in the state {said}", least_v
    if cure.kind in _OF_SOURCE and any(state.high for other in others for state in other):
        return "; but a load on another circuit finds too much", least_v
    remain = dict.fromkeys(
        _named(device.node.removesuffix(_OWN_RUN), solved.names)
        for state in states
        for device in devices
        if state.least_v(device.node) < (device.minimum_v or 0.0) - _TOUCH_V
    )
    if remain:
        return f"; but low remains {', '.join(remain)}", least_v
    return "", least_v


def _worst_sets(node: NodeResult, solved: Solved) -> list[tuple[int, ...]]:
    """Return devices whose operations at one time are worst for a node, by index, and then for the others."""
    worst = solved.states[-1].worst
    own = worst.get(node.node)
    worst_cases = sorted(worst.values(), key=lambda worst_case: worst_case.volts)
    return list(
        dict.fromkeys([() if own is None else own.operating, *(worst_case.operating for worst_case in worst_cases)])
    )[:_MOST_SETS]


def _loads_of(solved: Solved, chosen: tuple[int, ...]) -> tuple[Load, ...]:
    loads = []
    for i, device in enumerate(solved.devices):
        value, kind = _first(device) if i in chosen else device.holding, device.kind
        if kind == "resistance" and value == float("inf"):
            kind, value = "current", 0.0
        loads.append(Load(device.node, kind, value, device.minimum_v, device.maximum_v))
    return tuple(loads)


def _first(device: circuit_states.Device) -> float:
    return device.peak if device.inrush is None else device.inrush


def _named(node: str, names: Mapping[str, str]) -> str:
    opening = opening_of(node)
    if opening == node or opening not in names:
        return names.get(node, node)
    return f"{names[opening]}{leaf_words(node)}"


def _renamed(text: str, names: Mapping[str, str]) -> str:
    for name in names:
        if f"'{name}" not in text:
            continue
        text = re.sub(rf"'({re.escape(name)}(?:/(?:leaf|strike)[^']*)?)'", lambda found: _named(found[1], names), text)
    return text.replace("'supply'", "the supply").replace("'", "")

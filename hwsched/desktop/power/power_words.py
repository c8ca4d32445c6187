"""What is worked out for a supply, a circuit or an opening, in one line of words for the screen."""

from hwsched.drawings.power.power_words import (
    collapse_words,
    is_low,
    limiter_words,
    problem_words,
    rating_words,
    share_words,
    state_words,
)
from hwsched.values.power import CircuitResult, SupplyResult


def supply_line(supply: SupplyResult) -> str:
    """Say rating, load, lowest volts and standby of a supply."""
    words = [rating_words(supply)]
    if supply.openings:
        words.append(share_words(supply))
    if supply.lowest_v is not None:
        words.append(f"{supply.lowest_v:.3g} V at the lowest mains")
    if supply.battery_end_v is not None:
        words.append(f"{supply.battery_end_v:.3g} V at the end of standby")
    standby = supply.standby
    if standby is not None:
        size = f"{standby.size_ah:g} Ah" if standby.size_ah is not None else "more than any standard size"
        held = f", {standby.held_ah:g} Ah laid" if standby.held_ah is not None else ""
        words.append(f"{standby.hours:g} h of standby at {standby.load_a:.3g} A take {size}{held}")
    words += [problem.message for problem in supply.problems]
    return " · ".join(words)


def circuit_line(circuit: CircuitResult) -> str:
    """Say currents, limiter and what could not be worked out of a circuit."""
    words = []
    if circuit.holding_a is not None:
        words.append(f"{circuit.holding_a:.3g} A held")
    if circuit.current_a:
        words.append(f"{max(circuit.current_a.values()):.3g} A at most")
    if circuit.inrush_a is not None:
        words.append(f"{circuit.inrush_a:.3g} A inrush")
    if circuit.openings:
        words.append(f"limiter {limiter_words(circuit)}")
    if circuit.operating:
        words.append(f"at one time: {', '.join(circuit.operating)}")
    words += [*collapse_words(circuit), *problem_words(circuit)]
    return " · ".join(words) or "Nothing hangs on it yet: drag openings onto it."


def opening_line(circuit: CircuitResult, opening_id: str) -> str:
    """Say what hangs at an opening, and its volts in every state."""
    nodes = [node for node in circuit.nodes if node.opening_id == opening_id and node.minimum_v is not None]
    words = [
        f"{device.role.capitalize()} {device.part}, {device.minimum_v:g} to {device.maximum_v:g} V"
        for device in circuit.devices
        if device.opening_id == opening_id
    ]
    for node in nodes:
        volts = ", ".join(f"{state_words(state)} {value:.2f} V" for state, value in node.volts.items())
        words.append(f"TOO LOW: {volts}" if is_low(node) else volts)
    words += [problem.message for problem in circuit.problems if problem.opening_id == opening_id]
    return " · ".join(words)

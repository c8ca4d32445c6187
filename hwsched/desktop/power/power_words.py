"""What is worked out for a supply, a circuit or an opening, in one line of words for the screen."""

import re
from collections.abc import Iterable, Sequence
from typing import Final

from hwsched.drawings.power.power_words import (
    collapse_words,
    is_low,
    limiter_words,
    problem_words,
    rating_words,
    share_words,
    state_words,
)
from hwsched.kept_sentences import FIT, kept_phrase
from hwsched.language import phrase, to_phrase
from hwsched.quantities import LENGTH_STYLES, LengthStyle
from hwsched.survey.power import STRANDINGS
from hwsched.values.power import CircuitResult, NodeResult, PowerFacts, Problem, SupplyResult
from hwsched.values.role_words import role_said

_STRANDED: Final = re.compile(rf"\b(?:{'|'.join(each.value for each in STRANDINGS)})\b")
TOUCH_V: Final = 1e-9
"""Less than this two voltages are the same [V]."""


def wire_said(wire: str) -> str:
    """Say a conductor as the network names it, such as 18 AWG stranded."""
    return _STRANDED.sub(lambda found: phrase(found[0]), wire)


def problem_said(problem: Problem) -> str:
    """Say why something could not be worked out."""
    return kept_phrase(problem.message, FIT)


def problems_said(problems: Iterable[Problem]) -> str:
    """Say it of several, a line each."""
    return "\n".join(map(problem_said, problems))


NO_PLACE: Final = to_phrase("No building has a place for a supply yet. Add supply… in Power names one.")
"""Said where nothing can be planned."""


def style_of(held: str) -> LengthStyle:
    """Return how a project shows lengths, by the word that it keeps."""
    return next((style for style in LENGTH_STYLES if style == held), "fraction")


def supply_line(supply: SupplyResult) -> str:
    """Say rating, load, lowest volts and standby of a supply."""
    words = [rating_words(supply)]
    if supply.openings:
        words.append(share_words(supply))
    if supply.lowest_v is not None:
        words.append(phrase("{lowest_v:.3g} V at the lowest mains", lowest_v=supply.lowest_v))
    if supply.battery_end_v is not None:
        words.append(phrase("{battery_end_v:.3g} V at the end of standby", battery_end_v=supply.battery_end_v))
    standby = supply.standby
    if standby is not None:
        size = (
            phrase("{size_ah:g} Ah", size_ah=standby.size_ah)
            if standby.size_ah is not None
            else phrase("more than any standard size")
        )
        held = phrase(", {held_ah:g} Ah laid", held_ah=standby.held_ah) if standby.held_ah is not None else ""
        words.append(
            phrase(
                "{hours:g} h of standby at {load_a:.3g} A take {size}{held}",
                hours=standby.hours,
                load_a=standby.load_a,
                size=size,
                held=held,
            )
        )
    words += map(problem_said, supply.problems)
    return " · ".join(words)


def circuit_line(circuit: CircuitResult) -> str:
    """Say currents, limiter and what could not be worked out of a circuit."""
    words = []
    if circuit.holding_a is not None:
        words.append(phrase("{holding_a:.3g} A held", holding_a=circuit.holding_a))
    if circuit.current_a:
        words.append(phrase("{values:.3g} A at most", values=max(circuit.current_a.values())))
    if circuit.inrush_a is not None:
        words.append(phrase("{inrush_a:.3g} A inrush", inrush_a=circuit.inrush_a))
    if circuit.openings:
        words.append(phrase("limiter {limiter_words}", limiter_words=limiter_words(circuit)))
    if circuit.operating:
        words.append(phrase("at one time: {operating}", operating=", ".join(circuit.operating)))
    words += [*collapse_words(circuit), *problem_words(circuit)]
    return " · ".join(words) or phrase("Nothing is connected to it yet: drag openings onto it.")


def opening_line(circuit: CircuitResult, opening_id: str) -> str:
    """Say what is connected at an opening, and its volts in every state."""
    nodes = [node for node in circuit.nodes if node.opening_id == opening_id and node.minimum_v is not None]
    words = [
        phrase(
            "{capitalize} {part}, {minimum_v:g} to {maximum_v:g} V",
            capitalize=role_said(device.role).capitalize(),
            part=device.part,
            minimum_v=device.minimum_v,
            maximum_v=device.maximum_v,
        )
        for device in circuit.devices
        if device.opening_id == opening_id
    ]
    for node in nodes:
        volts = ", ".join(f"{state_words(state)} {value:.2f} V" for state, value in node.volts.items())
        words.append(phrase("TOO LOW: {volts}", volts=volts) if is_low(node) else volts)
    words += [problem_said(problem) for problem in circuit.problems if problem.opening_id == opening_id]
    return " · ".join(words)


def buildings_of(facts: PowerFacts) -> list[str]:
    """Return the buildings in which a supply, or a place for one, is laid."""
    return list(dict.fromkeys(each.building for each in facts.supplies if each.building))


def circuits_of(facts: PowerFacts) -> list[tuple[str, str]]:
    """Return name, with its supply, and identifier of each circuit."""
    names = {supply.id: supply.name for supply in facts.supplies}
    return [(f"{names.get(each.supply_id, '')}/{each.name}", each.id) for each in facts.circuits]


def worst_place(nodes: Sequence[NodeResult]) -> NodeResult | None:
    """Return the place with the least room above what it needs, or that has more volts than it takes."""
    held = [node for node in nodes if node.margin_v is not None]
    high = [n for n in held if n.maximum_v is not None and max(n.volts.values()) > n.maximum_v + TOUCH_V]
    return min(high or held, key=lambda node: node.margin_v or 0.0, default=None)


def digits_of(volts: float) -> str:
    """Write volts with as many digits as show them."""
    return f"{volts:.{next((count for count in range(2, 6) if volts >= 10.0**-count), 6)}f}"

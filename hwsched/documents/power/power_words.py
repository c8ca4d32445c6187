"""How volts, amperes and distances are put into words and cells on the documents of power."""

from collections.abc import Mapping

from hwsched.documents import words
from hwsched.values.power import CircuitResult, NodeResult

STATES: Mapping[str, str] = {
    "normal": "Normal",
    "lowest-mains": "Lowest mains",
    "highest-mains": "Highest mains",
    "standby-end": "Standby at its end",
    "peak": "Peak",
}
"""State of a circuit and its heading."""


def volts(node: NodeResult, state: str) -> float | str:
    """Return the voltage of a node in a state, as a cell."""
    found = node.volts.get(state)
    return "-" if found is None else round(found, 2)


def amps(value: float | None) -> float | str:
    """Return a current, as a cell."""
    return words.UNKNOWN if value is None else round(value, 3)


def said(value: float | None, unit: str, digits: int = 2) -> str:
    """Put a number and its unit into words."""
    return words.UNKNOWN if value is None else f"{value:.{digits}f} {unit}"


def name_of(circuit: CircuitResult) -> str:
    """Name a circuit with its supply."""
    return f"{circuit.supply.name}/{circuit.circuit.name}"


def states_of(circuit: CircuitResult) -> tuple[str, ...]:
    """Return the states in which a circuit was solved or collapsed, in their order."""
    return tuple(state for state in STATES if state in circuit.source_v)

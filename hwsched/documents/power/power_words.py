"""How volts, amperes and distances are put into words and cells on the documents of power."""

from collections.abc import Mapping

from hwsched.documents import words
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.quantities import LengthStyle, in_run_unit, run_unit
from hwsched.values.power import CircuitResult, NodeResult
from hwsched.wiring.take_off import WireLine

STATES: Mapping[str, str] = {
    "normal": to_phrase("Normal"),
    "lowest-mains": to_phrase("Lowest mains"),
    "highest-mains": to_phrase("Highest mains"),
    "standby-end": to_phrase("Standby at its end"),
    "peak": to_phrase("Peak"),
}
"""State of a circuit and its heading."""


def volts(node: NodeResult, state: str) -> float | str:
    """Return the voltage of a node in a state, as a cell."""
    found = node.volts.get(state)
    return "-" if found is None else round(found, 2)


def amps(value: float | None) -> float | str:
    """Return a current, as a cell."""
    return phrase(words.UNKNOWN) if value is None else round(value, 3)


def said(value: float | None, unit: str, digits: int = 2) -> str:
    """Put a number and its unit into words."""
    return phrase(words.UNKNOWN) if value is None else f"{value:.{digits}f} {unit}"


def run_lengths(line: WireLine, style: LengthStyle) -> str:
    """Say how long a wire or raceway is, in how many pieces, and from what it is cut."""
    count = len(line.pieces)
    text = phrase_of_count(
        "{far} {run_unit} in {count} piece",
        "{far} {run_unit} in {count} pieces",
        count,
        far=far(line.with_waste_m, style),
        run_unit=run_unit(style),
    )
    if line.reels is None or line.reel_m is None:
        return text
    whole = (
        phrase_of_count("{count} bar", "{count} bars", line.reels)
        if line.kind == "raceway"
        else phrase_of_count("{count} reel", "{count} reels", line.reels)
    )
    return phrase(
        "{text}, from {whole} of {far} {run_unit} ({gap_text})",
        text=text,
        whole=whole,
        far=far(line.reel_m, style),
        run_unit=run_unit(style),
        gap_text=line.gap_text,
    )


def far(length_m: float, style: LengthStyle, digits: int = 1) -> float:
    """Return the length of a run as the project shows it, as a cell."""
    return round(in_run_unit(length_m, style), digits)


def name_of(circuit: CircuitResult) -> str:
    """Name a circuit with its supply."""
    return f"{circuit.supply.name}/{circuit.circuit.name}"


def states_of(circuit: CircuitResult) -> tuple[str, ...]:
    """Return the states in which a circuit was solved or collapsed, in their order."""
    return tuple(state for state in STATES if state in circuit.source_v)

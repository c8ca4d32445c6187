"""How supplies, circuits and runs are written on drawings: conductors, lengths, voltages, states.

Words only; where they stand is the drawings' affair.
"""

import math
from collections.abc import Iterable, Mapping
from typing import Final

from hwsched.drawings.text_room import broken
from hwsched.kept_sentences import FIT, kept_phrase
from hwsched.language import phrase, to_phrase
from hwsched.quantities import LengthStyle, in_run_unit, run_unit
from hwsched.values.power import CircuitResult, Device, NodeResult, RunResult, SupplyResult
from hwsched.values.role_words import role_said
from hwsched.wiring.failure import lasts_h

STATE_WORDS: Final = {
    "normal": to_phrase("mains normal"),
    "lowest-mains": to_phrase("lowest mains"),
    "highest-mains": to_phrase("highest mains"),
    "standby-end": to_phrase("end of standby"),
    "peak": to_phrase("peak"),
}
_ON_ALARM: Final[Mapping[str | None, str]] = {
    "drops": to_phrase("loses power"), "stays": to_phrase("keeps power"), None: to_phrase("unknown: nobody has said"),
}  # fmt: skip
_STRANDING: Final = {"stranded": to_phrase("str"), "solid": to_phrase("sol")}
STRANDING_NOTE: Final = to_phrase("str: stranded, sol: solid; 2 × : so many conductors in parallel, each way.")


def state_words(state: str) -> str:
    """Say a state of a circuit."""
    return phrase(STATE_WORDS.get(state, state))


def run_length_words(length_m: float, style: LengthStyle) -> str:
    """Write the length of a run: metres where the project shows millimetres, else feet.

    Examples
    --------
    >>> run_length_words(23.5, "mm"), run_length_words(23.5, "fraction"), run_length_words(0.45, "fraction")
    ('23.5 m', '77 ft', '1.5 ft')
    """
    if not math.isfinite(length_m):
        return phrase("length unknown")
    shown, unit = in_run_unit(length_m, style), run_unit(style)
    return f"{shown:.0f} {unit}" if unit == "ft" and shown >= 10 else f"{_short(shown)} {unit}"


def conductor_words(run: RunResult) -> str:
    """Write the conductor of a run: gauge, stranding, how many in parallel.

    Examples
    --------
    >>> conductor_words(RunResult("r", "", "", "a", "b", 3.0, "18 AWG", "stranded", 2, "", 0.1, {}))
    '2 × 18 AWG str'
    """
    several = f"{run.parallel} × " if run.parallel > 1 else ""
    stranding = phrase(_STRANDING[run.stranding]) if run.stranding in _STRANDING else run.stranding
    return f"{several}{run.gauge or phrase('gauge unknown')} {stranding}".strip()


def margin_words(result: SupplyResult) -> str:
    """Say in one line what a supply bears: its failure, that of its mains, the fire alarm, later openings."""
    count = len(set(result.openings))
    hours = lasts_h(result)
    lasts = (
        phrase("at once")
        if hours == 0
        else phrase("after an unknown time")
        if hours is None
        else phrase("after {hours:.3g} h", hours=hours)
    )
    circuits: dict[str | None, list[str]] = {}
    for circuit in result.circuits:
        if circuit.openings:
            circuits.setdefault(circuit.circuit.alarm, []).append(circuit.circuit.name)
    alarm = [f"{', '.join(names)} {phrase(_ON_ALARM[does])}" for does, names in circuits.items()]
    told = phrase(
        "with it {count} lose power; without mains {lasts}; on the fire alarm {alarm}",
        count=count,
        lasts=lasts,
        alarm="; ".join(alarm),
    )
    text = f"{result.supply.name}: {told}."
    later = [
        phrase(
            "{circuit} bears {count} more"
            if each.borne
            else "{circuit} may not bear {count} more"
            if each.borne is None
            else "{circuit} does not bear {count} more",
            circuit=each.circuit,
            count=each.count,
        )
        for each in result.growth
    ]
    return f"{text} {'; '.join(later)}." if later else text


def worst_of(node: NodeResult) -> tuple[float, str] | None:
    """Return the lowest voltage of a node and the state in which it is so low; None where nothing was solved."""
    if not node.volts:
        return None
    state = min(node.volts, key=lambda name: node.volts[name])
    return node.volts[state], state


def is_low(node: NodeResult) -> bool:
    """Tell whether a node lies under its minimum in some state."""
    margin = node.margin_v
    return margin is not None and margin < 0


def low_words(node: NodeResult) -> tuple[str, ...]:
    """Say in two lines how low a node is, with as many digits as show it."""
    lowest, least = node.lowest_v, node.minimum_v
    if lowest is None or least is None:
        return ()
    digits = next((count for count in range(1, 6) if least - lowest >= 10.0**-count), 6)
    has, needs = f"{lowest:.{digits}f}", f"{least:.{digits}f}"
    return phrase("has {volts} V", volts=has), phrase("needs {volts} V", volts=needs)


def worst_words(node: NodeResult | None) -> tuple[str, ...]:
    """Say the lowest voltage of a place, and in which state it is so low."""
    worst = None if node is None else worst_of(node)
    if worst is None:
        return (phrase("volts unknown"),)
    return phrase("{volts} V at worst", volts=_volts(node, worst[0])), f"({state_words(worst[1])})"


def _volts(node: NodeResult | None, volts: float) -> str:
    return f"{volts:.{2 if node is not None and is_low(node) else 1}f}"


def narrow_volts_words(node: NodeResult | None, width_mm: float) -> tuple[str, ...]:
    """Say the same in lines no wider than so much paper."""
    worst = None if node is None else worst_of(node)
    parts: Iterable[str] = worst_words(node)
    if worst is not None:
        parts = (f"{_volts(node, worst[0])} V", phrase("at worst"), f"({state_words(worst[1])})")
    return tuple(line for part in parts for line in broken(part, width_mm))


def device_words(device: Device, node: NodeResult | None, width_mm: float) -> tuple[str, ...]:
    """Say what a device is, what it needs and gets, and what to fit across its coil, in lines of a width."""
    worst = None if node is None else worst_of(node)
    texts = [
        f"{role_said(device.role).capitalize()} {device.part}" + (f", {device.fail}" if device.fail else ""),
        phrase("works from {minimum_v:g} to {maximum_v:g} V", minimum_v=device.minimum_v, maximum_v=device.maximum_v),
    ]
    if worst is None:
        texts.append(phrase("volts unknown"))
    else:
        low = worst[0] < device.minimum_v
        volts = f"{worst[0]:.{2 if low else 1}f}"
        texts.append(phrase("gets {volts} V at worst", volts=volts) + (phrase(": TOO LOW") if low else ""))
    if device.suppression:
        texts.append(f"S: {device.suppression}")
    if device.assumed:
        texts.append(phrase("By common practice: {assumed}", assumed="; ".join(device.assumed)))
    return tuple(line for text in texts for line in broken(text, width_mm))


def limiter_words(circuit: CircuitResult) -> str:
    """Say the fuse or limiter of a circuit: as laid, else as proposed."""
    present = circuit.circuit.limiter_a
    if present is not None:
        return f"{present:g} A" + (f" {circuit.circuit.limiter}" if circuit.circuit.limiter else "")
    return (
        phrase("{limiter_a:g} A proposed", limiter_a=circuit.limiter_a)
        if circuit.limiter_a is not None
        else phrase("limiter not chosen")
    )


def rating_words(supply: SupplyResult) -> str:
    """Say output voltage and current of a supply."""
    volts = f"{supply.output_v:g} V" if supply.output_v is not None else phrase("volts unknown")
    return (
        f"{volts}, {supply.rated_a:g} A" if supply.rated_a is not None else phrase("{volts}, amps unknown", volts=volts)
    )


def share_words(supply: SupplyResult) -> str:
    """Say how much of a supply's rating is held."""
    share = supply.share
    return phrase("{share:.0%} of rating", share=share) if share is not None else phrase("share of rating unknown")


def collapse_words(circuit: CircuitResult) -> tuple[str, ...]:
    """Say for each state without a solution that there is none, and why."""
    return tuple(
        phrase(
            "{circuit}: no solution in state {state}: {why}",
            circuit=circuit.circuit.name,
            state=state_words(state),
            why=_sentence(kept_phrase(why, FIT)),
        )
        for state, why in circuit.collapsed.items()
    )


def problem_words(circuit: CircuitResult) -> tuple[str, ...]:
    """Say why a circuit, or a part of it, was not worked out; names what is needed unless the message does."""
    found = []
    for problem in circuit.problems:
        needs = [need for need in problem.needs if need not in problem.message]
        needed = phrase("; unknown: needs {needs}", needs=", ".join(needs)) if needs else ""
        found.append(f"{circuit.circuit.name}: {_sentence(kept_phrase(problem.message, FIT) + needed)}")
    return tuple(found)


def shortened(notes: Iterable[str], most: int, where: str) -> tuple[str, ...]:
    """Keep the first notes and say how many more stand elsewhere.

    Examples
    --------
    >>> shortened(["a", "b", "c"], 2, "See the power schedule.")
    ('a', 'and 2 more. See the power schedule.')
    """
    held = tuple(notes)
    return (
        held
        if len(held) <= most
        else (*held[: most - 1], phrase("and {count} more. {where}", count=len(held) - most + 1, where=where))
    )


def _sentence(text: str) -> str:
    return text if text.endswith((".", "!", "?")) else f"{text}."


def _short(number: float) -> str:
    return f"{number:.1f}".removesuffix(".0")

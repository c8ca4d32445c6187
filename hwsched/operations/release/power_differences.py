"""What is otherwise with supplies and circuits between two states: facts, openings, runs, what was worked out."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields
from typing import Any, Final, Literal

from hwsched.attributes import said_value
from hwsched.drawings.power.power_words import conductor_words, run_length_words
from hwsched.kept_sentences import ERRORS, kept_phrase
from hwsched.language import phrase
from hwsched.operations.release.changed_lines import Changed, unshared
from hwsched.operations.release.frozen_record import PowerRecord, SupplyRecord
from hwsched.operations.release.revisions import Source
from hwsched.quantities import LengthStyle
from hwsched.rules.saying import finding_named, message_of
from hwsched.survey import CIRCUIT, SUPPLY
from hwsched.survey.entity import Entity
from hwsched.values.power import CircuitResult, SupplyResult

_NO_CIRCUITS: Final[Mapping[str, CircuitResult]] = {}


@dataclass(frozen=True, slots=True)
class CircuitDifference:
    """One circuit that is otherwise."""

    circuit_id: str
    name: str
    """Supply and circuit, as they are called in the later state; in the earlier one where it is gone."""
    kind: Literal["new", "gone", "changed"]
    lines: tuple[Changed, ...] = ()


def power_differences(
    source: Source, was: PowerRecord, now: PowerRecord, style: LengthStyle
) -> tuple[tuple[Changed, ...], tuple[CircuitDifference, ...]]:
    """Compare what feeds openings.

    Returns
    -------
    supplies : tuple of Changed
        What is otherwise with supplies themselves.
    circuits : tuple of CircuitDifference
        By the names of supply and circuit.
    """
    otherwise = [
        each
        for each in dict.fromkeys((*was.supplies, *now.supplies))
        if was.supplies.get(each) != now.supplies.get(each)
    ]
    keys = [record.supplies[each] for each in otherwise for record in (was, now) if each in record.supplies]
    held: dict[str, SupplyRecord] = source.read("supply", keys)
    lines: list[Changed] = []
    circuits: list[CircuitDifference] = []
    for each in otherwise:
        old, new = (held[record.supplies[each]] if each in record.supplies else None for record in (was, now))
        of_supply = list(_supply(old, new, style))
        found = list(_circuits(old.result if old else None, new.result if new else None, style))
        if not of_supply and not found and new is not None:
            # A hair's breadth in what is worked out: not on any page, and yet not the same.
            of_supply.append(Changed(_supply_word(new), phrase("as it was"), phrase("otherwise, below what is shown")))
        lines += of_supply
        circuits += found
    return tuple(sorted(lines, key=lambda line: line.what)), tuple(sorted(circuits, key=lambda found: found.name))


def _supply_word(record: SupplyRecord) -> str:
    return phrase("Supply {name}", name=record.result.supply.name)


def _supply(was: SupplyRecord | None, now: SupplyRecord | None, style: LengthStyle) -> Iterable[Changed]:
    there = now or was
    assert there is not None
    name = _supply_word(there)
    if was is None or now is None:
        yield Changed(name, *("" if record is None else phrase("there") for record in (was, now)))
        return
    for line in unshared(_of_supply(was, style), _of_supply(now, style)):
        yield Changed(f"{name}: {line.what}", line.before, line.after)


def _of_supply(record: SupplyRecord, style: LengthStyle) -> dict[str, str]:
    result = record.result
    lines = _facts(SUPPLY, result.supply, style)
    standby = result.standby
    for what, value, unit in (
        (phrase("held at once"), result.holding_a, "A"),
        (phrase("peak"), result.peak_a, "A"),
        (phrase("standby battery needed"), standby.needed_ah if standby is not None else None, "Ah"),
    ):
        if value is not None:
            lines[what] = f"{value:.2f} {unit}"
    lines |= {
        phrase("not worked out, {kind}", kind=phrase(each.kind)): kept_phrase(each.message, ERRORS)
        for each in result.problems
    }
    for said in record.findings:
        each = said.finding
        waived = phrase(" (waived by {person})", person=each.waived_by) if each.waived else ""
        what = phrase("finding: {rule}", rule=finding_named(each))
        lines[what] = f"{phrase(each.severity)}: {message_of(each)}{waived}"
    return lines


def _circuits(was: SupplyResult | None, now: SupplyResult | None, style: LengthStyle) -> Iterable[CircuitDifference]:
    old, new = (
        {each.circuit.id: each for each in result.circuits} if result is not None else _NO_CIRCUITS
        for result in (was, now)
    )
    for circuit_id in dict.fromkeys((*old, *new)):
        before, after = old.get(circuit_id), new.get(circuit_id)
        there = after or before
        assert there is not None
        name = f"{there.supply.name} · {there.circuit.name}"
        if before is None or after is None:
            yield CircuitDifference(circuit_id, name, "new" if before is None else "gone")
            continue
        lines = tuple(unshared(_of_circuit(before, style), _of_circuit(after, style)))
        if lines:
            yield CircuitDifference(circuit_id, name, "changed", lines)


def _of_circuit(result: CircuitResult, style: LengthStyle) -> dict[str, str]:
    lines = _facts(CIRCUIT, result.circuit, style)
    lines |= {phrase("Opening {mark}", mark=mark): phrase("on it") for mark in result.marks}
    for run in (*result.runs, *result.unsolved_runs):
        wire = f", {run.part}" if run.part else ""
        what = phrase(
            "Transfer {first} to {last}" if run.transfer else "Run {first} to {last}",
            first=run.from_name,
            last=run.to_name,
        )
        lines[what] = f"{run_length_words(run.length_m, style)}, {conductor_words(run)}{wire}"
    for node in result.nodes:
        if node.lowest_v is not None:
            lines[phrase("Lowest voltage at {name}", name=node.name)] = f"{node.lowest_v:.2f} V"
    if result.limiter_a is not None:
        lines[phrase("Limiter, worked out")] = f"{result.limiter_a:.2f} A"
    for state, why in result.collapsed.items():
        lines[phrase("No solution in state {state}", state=phrase(state))] = why
    return lines | {
        phrase("Not worked out, {kind}", kind=f"{phrase(each.kind)} {each.about}".rstrip()): kept_phrase(
            each.message, ERRORS
        )
        for each in result.problems
    }


def _facts(entity: Entity, row: Any, style: LengthStyle) -> dict[str, str]:
    declared = {attribute.name: attribute for attribute in entity.attributes}
    return {
        phrase(declared[each.name].label): said_value(declared[each.name], value, style)
        for each in fields(row)
        if each.name in declared and (value := getattr(row, each.name)) is not None
    }

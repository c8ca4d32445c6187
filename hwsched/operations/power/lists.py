"""Rows of the lists of power that are worked out; see `hwsched.operations.lists`."""

from collections.abc import Collection, Iterator
from typing import Any

from hwsched.model.project import Project
from hwsched.model.queries import opening_ids
from hwsched.operations.power.power_results import power_result
from hwsched.operations.snapshot import of_one_state


@of_one_state
def loads(project: Project, openings: Collection[str] | None) -> list[dict[str, Any]]:
    """Return a row an opening on a circuit, with its volts in every state of the circuit."""
    with project.reading() as connection:
        marks = {opening_id: mark for mark, opening_id in opening_ids(connection).items()}
    return list(_loads(project, openings, marks))


def _loads(project: Project, openings: Collection[str] | None, marks: dict[str, str]) -> Iterator[dict[str, Any]]:
    for supply in power_result(project).supplies:
        for circuit in supply.circuits:
            for node in circuit.nodes:
                if node.opening_id is None or (openings is not None and node.opening_id not in openings):
                    continue
                yield {
                    "mark": marks[node.opening_id],
                    "supply": supply.supply.name,
                    "circuit": circuit.circuit.name,
                    "lowest_v": node.lowest_v,
                    "minimum_v": node.minimum_v,
                    "maximum_v": node.maximum_v,
                    "volts_v": dict(node.volts),
                }

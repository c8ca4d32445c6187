"""What the supplies of a project bear beyond today: later openings, and one thing that fails."""

from dataclasses import dataclass

from hwsched.model.power_queries import read_power
from hwsched.model.project import Project
from hwsched.operations.power.power_results import read_growers
from hwsched.operations.snapshot import of_one_state
from hwsched.values.power import CircuitResult, Growth, SupplyResult
from hwsched.wiring.failure import Failure, OnAlarm, failures, on_alarm


@dataclass(frozen=True, slots=True)
class Room:
    """How many later openings a circuit bears."""

    circuit: CircuitResult
    count: int
    """So many are borne."""
    stop: Growth | None
    """What stops the next; None where it bears as many as were tried."""


@dataclass(frozen=True, slots=True)
class SupplyMargins:
    """What one supply bears."""

    result: SupplyResult
    rooms: tuple[Room, ...]
    failures: tuple[Failure, ...]
    alarm: OnAlarm


@of_one_state
def power_margins(project: Project, at_most: int) -> tuple[SupplyMargins, ...]:
    """Work out how many later openings each circuit bears, and who falls out when one thing fails.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    at_most : int
        Later openings that are tried at the most; 0: none.
    """
    with project.reading() as connection:
        _, growers = read_growers(connection, project.catalogue.read(connection), read_power(connection))
    found = []
    for grower in growers:
        result = grower.result
        if not result.openings:
            continue
        circuits = [circuit for circuit in result.circuits if circuit.openings] if at_most else []
        rooms = [Room(circuit, *grower.most(circuit, at_most)) for circuit in circuits]
        found.append(SupplyMargins(result, tuple(rooms), failures(result), on_alarm(result)))
    return tuple(found)

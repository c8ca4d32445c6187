"""Working out the power of a project, or of the supplies that feed some of its openings."""

from collections.abc import Collection, Mapping

from sqlalchemy import Connection

from hwsched.calc.power.circuit_tree import SUPPLY as AT_SUPPLY
from hwsched.model.power_queries import level_heights, read_power
from hwsched.model.project import Project
from hwsched.model.queries import by_opening, read_fits, read_inputs, read_settings
from hwsched.operations.collector import collector_paused
from hwsched.operations.opening.lock_points import outright, point_results
from hwsched.operations.opening.standings import Standings
from hwsched.operations.snapshot import of_one_state
from hwsched.values import Catalogue
from hwsched.values.power import PowerFacts, PowerResult
from hwsched.wiring import ConnectedOpening, solve_supplies
from hwsched.wiring.growth import Grower
from hwsched.wiring.supply_results import growers_of


def power_result(project: Project, ids: Collection[str] | None = None, *, fresh: bool = True) -> PowerResult:
    """Work out the supplies of a project.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    ids : collection of str, optional
        Only the supplies that feed one of these openings; all when left out.
    fresh : bool
        Whether an opening whose stored fit does not count is fitted on the spot; else it counts as not fitted, as in a
        check.
    """
    with project.reading() as connection:
        catalogue, facts = project.catalogue.read(connection), read_power(connection)
        return read_power_result(connection, catalogue, facts, {}, ids, fresh=fresh)


@of_one_state
def power_as_it_stands(project: Project) -> tuple[PowerFacts, PowerResult, Catalogue, str]:
    """Return all that is laid, worked out, with catalogue and style of lengths, of one state."""
    return power_facts(project), power_result(project), project_catalogue(project), project.length_style


def power_facts(project: Project) -> PowerFacts:
    """Return all that is laid."""
    with project.reading() as connection:
        return read_power(connection)


def project_catalogue(project: Project) -> Catalogue:
    """Return the project's catalogue, also while there is no opening yet."""
    with project.reading() as connection:
        return project.catalogue.read(connection)


def opening_levels(project: Project) -> dict[str, tuple[str, float | None]]:
    """Return level and height of its floor [m] of every opening, by identifier."""
    with project.reading() as connection:
        heights = level_heights(connection)
        inputs = read_inputs(connection, None, project.catalogue.read(connection))
        return {
            given.opening.id: (given.opening.level or "", heights.get((given.opening.building, given.opening.level)))
            for given in inputs
        }


def on_same_supplies(project: Project, openings: Collection[str]) -> set[str]:
    """Return openings with all that hang on the same supplies: what touches one can touch the others."""
    connected = power_facts(project).connected()
    supplies = {connected[each].supply_id for each in openings if each in connected}
    return {*openings, *(each for each, circuit in connected.items() if circuit.supply_id in supplies)}


def read_power_result(
    connection: Connection,
    catalogue: Catalogue,
    facts: PowerFacts,
    known: Mapping[str, ConnectedOpening],
    ids: Collection[str] | None = None,
    *,
    fresh: bool = False,
) -> PowerResult:
    """Work out supplies from what a connection sees.

    Parameters
    ----------
    connection : Connection
        In a transaction.
    catalogue, facts
        Read already.
    known : mapping
        Openings that are read already, with the fits that count; the others are read here.
    ids : collection of str, optional
        As in `power_result`.
    fresh : bool
        Whether openings whose stored fit does not count are fitted here; else they count as not fitted.
    """
    if not facts.circuits:
        return solve_supplies(facts, {}, catalogue, read_settings(connection)) if ids is None else PowerResult()
    connected = facts.connected()
    supplies = None if ids is None else {connected[each].supply_id for each in ids if each in connected}
    if supplies is not None and not supplies:
        return PowerResult()
    openings = _connected_openings(connection, catalogue, facts, known, supplies, fresh=fresh)
    settings = read_settings(connection)
    with collector_paused():
        return solve_supplies(facts, openings, catalogue, settings, supplies)


def read_growers(connection: Connection, catalogue: Catalogue, facts: PowerFacts) -> tuple[PowerResult, list[Grower]]:
    """Work out all supplies from what a connection sees, with what says how many later openings they bear."""
    openings = _connected_openings(connection, catalogue, facts, {}, None, fresh=True)
    settings = read_settings(connection)
    with collector_paused():
        result = solve_supplies(facts, openings, catalogue, settings)
    return result, list(growers_of(result.supplies, facts, openings, catalogue, settings).values())


def _connected_openings(
    connection: Connection,
    catalogue: Catalogue,
    facts: PowerFacts,
    known: Mapping[str, ConnectedOpening],
    supplies: Collection[str] | None,
    *,
    fresh: bool,
) -> dict[str, ConnectedOpening]:
    """Read the openings of some supplies, with those that their runs begin at."""
    connected = facts.connected()
    wanted = [each for each, circuit in connected.items() if supplies is None or circuit.supply_id in supplies]
    # And openings that runs begin at without hanging there: they are only named; what is no opening is not found.
    here = {circuit.id for circuit in facts.circuits if supplies is None or circuit.supply_id in supplies}
    junctions = {run.to_node for run in facts.runs if run.opening_id is None}
    begins = {run.from_node for run in facts.runs if run.circuit_id in here}
    wanted += sorted(begins - junctions - set(wanted) - {AT_SUPPLY})
    openings = {each: known[each] for each in wanted if each in known}
    missing = [each for each in wanted if each not in known]
    if missing:
        fits = read_fits(connection, missing)
        standings = Standings()
        for inputs in by_opening(read_inputs(connection, missing, catalogue)):
            points = [each.at for each in point_results(inputs, fits, outright if fresh else None, standings)]
            openings[inputs[0].opening.id] = ConnectedOpening.of(points)
    return openings

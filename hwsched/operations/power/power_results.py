"""Working out the power of a project, or of the supplies that feed some of its openings."""

from collections.abc import Collection, Mapping

from sqlalchemy import Connection

from hwsched.calc.power.circuit_tree import SUPPLY as AT_SUPPLY
from hwsched.fitting import fit
from hwsched.model.power_queries import level_heights, read_power
from hwsched.model.project import Project
from hwsched.model.queries import by_opening, read_cases, read_fits, read_settings
from hwsched.operations.opening.lock_points import worked
from hwsched.operations.opening.standings import Standings
from hwsched.operations.snapshot import of_one_state
from hwsched.values import Catalogue
from hwsched.values.power import PowerFacts, PowerWork
from hwsched.wiring import Fed, work_out


def power_work(project: Project, ids: Collection[str] | None = None, *, fresh: bool = True) -> PowerWork:
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
        return read_work(connection, catalogue, facts, {}, ids, fresh=fresh)


@of_one_state
def power_as_it_stands(project: Project) -> tuple[PowerFacts, PowerWork, Catalogue, str]:
    """Return all that is laid, worked out, with catalogue and style of lengths, of one state."""
    return power_facts(project), power_work(project), project_catalogue(project), project.length_style


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
        cases = read_cases(connection, None, project.catalogue.read(connection))
        return {
            case.opening.id: (case.opening.level or "", heights.get((case.opening.building, case.opening.level)))
            for case in cases
        }


def hung_together(project: Project, openings: Collection[str]) -> set[str]:
    """Return openings with all that hang on the same supplies: what touches one can touch the others."""
    fed = power_facts(project).fed()
    supplies = {fed[each].supply_id for each in openings if each in fed}
    return {*openings, *(each for each, circuit in fed.items() if circuit.supply_id in supplies)}


def read_work(
    connection: Connection,
    catalogue: Catalogue,
    facts: PowerFacts,
    known: Mapping[str, Fed],
    ids: Collection[str] | None = None,
    *,
    fresh: bool = False,
) -> PowerWork:
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
        As in `power_work`.
    fresh : bool
        Whether openings whose stored fit does not count are fitted here; else they count as not fitted.
    """
    fed = facts.fed()
    if not facts.circuits:
        return work_out(facts, {}, catalogue, read_settings(connection)) if ids is None else PowerWork()
    supplies = None if ids is None else {fed[each].supply_id for each in ids if each in fed}
    if supplies is not None and not supplies:
        return PowerWork()
    wanted = [each for each, circuit in fed.items() if supplies is None or circuit.supply_id in supplies]
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
        for cases in by_opening(read_cases(connection, missing, catalogue)):
            points = [each.at for each in worked(cases, fits, fit if fresh else None, standings)]
            openings[cases[0].opening.id] = Fed.of(points)
    return work_out(facts, openings, catalogue, read_settings(connection), supplies)

"""Working out the power of a project, or of the supplies that feed some of its openings."""

from collections.abc import Collection, Mapping

from sqlalchemy import Connection

from hwsched.cases import Catalogue
from hwsched.cases.case_key import case_key
from hwsched.cases.power import PowerFacts, PowerWork
from hwsched.model.power_queries import read_power
from hwsched.model.project import Project
from hwsched.model.queries import read_cases, read_fits, read_settings
from hwsched.wiring import Fed, work_out


def power_work(project: Project, ids: Collection[str] | None = None) -> PowerWork:
    """Work out the supplies of a project.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    ids : collection of str, optional
        Only the supplies that feed one of these openings; all when left out.
    """
    with project.reading() as connection:
        return read_work(connection, project.catalogue.read(connection), read_power(connection), {}, ids)


def read_work(
    connection: Connection,
    catalogue: Catalogue,
    facts: PowerFacts,
    known: Mapping[str, Fed],
    ids: Collection[str] | None = None,
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
    """
    fed = facts.fed()
    if not facts.circuits:
        return work_out(facts, {}, catalogue, read_settings(connection)) if ids is None else PowerWork()
    supplies = None if ids is None else {fed[each].supply_id for each in ids if each in fed}
    if supplies is not None and not supplies:
        return PowerWork()
    wanted = [each for each, circuit in fed.items() if supplies is None or circuit.supply_id in supplies]
    openings = {each: known[each] for each in wanted if each in known}
    missing = [each for each in wanted if each not in known]
    if missing:
        fits = read_fits(connection, missing)
        for case in read_cases(connection, missing, catalogue):
            stored = fits.get(case.opening.id)
            sound = stored is not None and stored.case_key == case_key(case)
            openings[case.opening.id] = Fed(case, stored.fit if stored is not None and sound else None)
    return work_out(facts, openings, catalogue, read_settings(connection), supplies)

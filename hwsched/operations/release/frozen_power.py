"""What is laid and worked out of circuits, as contents of a revision; when it can be taken over from an earlier one."""

from collections.abc import Collection, Mapping, Sequence

from hwsched.model.project import Project
from hwsched.operations.findings.checked import Checked
from hwsched.operations.findings.checking import waiver_book
from hwsched.operations.findings.of_circuit import waived_power
from hwsched.operations.power.power_results import power_result
from hwsched.operations.release.frozen_record import Frozen, PowerRecord, SupplyRecord
from hwsched.values.power import PowerFacts, PowerFinding, PowerResult

Entries = Mapping[str, tuple[str, str]]
"""Opening to its mark and the hash of its content."""


def others_too(
    touched: Collection[str], present: PowerFacts, ids: Sequence[str] | None, held: Mapping[str, Entries]
) -> bool:
    """Tell whether what the touched openings are now can matter to supplies on which none of them hangs."""
    connected = present.connected()
    nodes = {node for run in present.runs for node in (run.from_node, run.to_node)}
    if any(each in nodes and each not in connected for each in touched):
        # Runs begin there: its mark stands on them.
        return True
    if ids is None or not present.supplies:
        return False
    # Which supplies a part of the project needs follows from which openings are in it.
    was = {each for chunk in held.values() for each in chunk}
    return any((each in was) != (each in ids) for each in touched)


def put_power(
    made: Frozen,
    project: Project,
    checked: Sequence[Checked],
    ids: Sequence[str] | None,
    present: PowerFacts,
    others: Mapping[str, str],
) -> str:
    """Put what is laid and worked out; ids: only the supplies that feed one of these, beside the others' contents."""
    work = waived_power(power_result(project, ids, fresh=False), checked, waiver_book(project, project.today()))
    supplies = {**others, **_put_supplies(made, work)}
    here = present if ids is None or others else _only(present, supplies, set(ids))
    return made.put("power", PowerRecord(here, supplies))


def _put_supplies(made: Frozen, work: PowerResult) -> dict[str, str]:
    said: dict[str, list[PowerFinding]] = {}
    for each in work.findings:
        said.setdefault(each.supply_id, []).append(each)
    return {
        each.supply.id: made.put("supply", SupplyRecord(each, tuple(said.get(each.supply.id, ()))))
        for each in work.supplies
    }


def _only(present: PowerFacts, supplies: Collection[str], openings: Collection[str]) -> PowerFacts:
    """Return of what is laid these supplies with their circuits and runs, and the routes of these openings."""
    circuits = tuple(each for each in present.circuits if each.supply_id in supplies)
    known = {each.id for each in circuits}
    return PowerFacts(
        tuple(each for each in present.supplies if each.id in supplies),
        circuits,
        tuple(each for each in present.runs if each.circuit_id in known),
        tuple(each for each in present.routes if each.opening_id in openings),
    )

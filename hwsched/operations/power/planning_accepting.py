"""Accepting a plan of supplies and runs: what was proposed is laid and fitted as one step, where it still is so."""

from collections.abc import Callable, Collection
from dataclasses import replace

from hwsched.calc.power.planning.question import NoPlanError, Plan, Question
from hwsched.calc.solver import Cancelled
from hwsched.model.journal.journal import Change
from hwsched.model.journal.touched import touched_since
from hwsched.model.power_queries import read_power
from hwsched.model.project import Project
from hwsched.model.tables import CIRCUIT_TABLE, RUN_TABLE, SUPPLY_TABLE
from hwsched.operations.changes import Changes
from hwsched.operations.opening.fits_within import change_and_fit
from hwsched.operations.power.power_planning import PowerProposal, planned_by
from hwsched.operations.power.supply_siting import limiter_of
from hwsched.operations.prepared import NotReadyError
from hwsched.operations.shown import ShownOtherwiseError
from hwsched.telling.natural import natural


class _OtherQuestionError(Exception):
    """What is to be planned is not what was planned."""


def accept_plan(
    project: Project,
    proposal: PowerProposal,
    *,
    who: str,
    progress: Callable[[int, int], None] | None = None,
    cancelled: Cancelled | None = None,
) -> Changes:
    """Lay what a plan proposes, take up what it does without, and fit its openings: as one step.

    Parameters
    ----------
    project : Project
        Open project.
    proposal : PowerProposal
        As it was shown.
    who : str
        For the journal.
    progress, cancelled : callable, optional
        Told how far the fits are; asked whether to stop: then nothing is changed.

    Raises
    ------
    ShownOtherwiseError
        Where others changed what it stands on: with the proposal as it is now where the plan is still the same, else
        without one.
    ValueRefusedError
        Where nothing can be planned any more.
    """
    basis = proposal.basis
    openings = [opening for leg in proposal.plan.legs for opening in leg.openings]

    def look() -> None:
        basis.state = _still(project, proposal).basis.state

    def write(change: Change, last: bool) -> Collection[str]:
        if touched_since(change.connection, basis.state):
            if not last:
                raise NotReadyError(look)
            look()
        _write(change, proposal)
        return openings

    what = f"circuit {proposal.circuit}" if proposal.circuit else proposal.building
    count, used = len(openings), len(proposal.laying.used)
    if count == 1:
        text = f"Lay the plan of {what}: 1 opening"
    elif used == 1:
        text = f"Lay the plan of {what}: {count} openings on 1 supply"
    else:
        text = f"Lay the plan of {what}: {count} openings on {used} supplies"
    return change_and_fit(
        project, "accept-plan", text, who, write, memory=basis.fits, progress=progress, cancelled=cancelled
    )


def _still(project: Project, proposal: PowerProposal) -> PowerProposal:
    """Return the proposal as it is now; raises ShownOtherwiseError where that is not what was shown."""

    def solved(question: Question) -> Plan:
        for posed, answer in proposal.basis.posed:
            if posed == question:
                if isinstance(answer, NoPlanError):
                    raise answer
                return answer
        raise _OtherQuestionError

    try:
        now = planned_by(project, proposal.basis, solved)
    except _OtherQuestionError:
        raise ShownOtherwiseError("what the plan stands on has changed meanwhile; ask for it again") from None
    # A mark or a name may be another one: nothing hangs on it.
    if replace(now, names=proposal.names) != proposal:
        raise ShownOtherwiseError(
            "the plan is still the same, but volts, costs or findings differ meanwhile; look at it again", now
        )
    return now


def _write(change: Change, proposal: PowerProposal) -> None:
    laying = proposal.laying
    uses = {supply.id: supply.use for supply in read_power(change.connection).supplies}
    for supply in laying.used:
        facts = {} if uses.get(supply) == "must" else {"use": "laid"}
        if supply in laying.parts:
            facts["part"] = laying.parts[supply]
        if facts:
            change.update(SUPPLY_TABLE, [(supply, facts)])
    # What leads on to others goes before what it leads from: nothing begins at a node that nothing reaches.
    change.delete(RUN_TABLE, laying.taken_up)
    made = {}
    for circuit in laying.circuits:
        limiter = limiter_of(proposal.after, circuit.supply_id)
        row = {"supply_id": circuit.supply_id, "name": circuit.name, "wire": circuit.wire, "limiter_a": limiter}
        made[circuit.id] = change.insert(CIRCUIT_TABLE, [row])[0]
    rows = [
        {"circuit_id": made.get(run.circuit_id, run.circuit_id), "from_node": run.from_node, "to_node": run.to_node,
         "opening_id": run.opening_id, "length_m": run.length_m, "wire": run.wire}
        for run in sorted(laying.runs, key=lambda run: natural(run.to_node))
    ]  # fmt: skip
    change.insert(RUN_TABLE, rows)

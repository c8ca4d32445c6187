"""Accepting a siting: what was proposed is laid and fitted as one step, where it is still what was shown."""

from collections.abc import Callable, Collection
from dataclasses import replace

from hwsched.calc.power.siting import NoSitingError, Problem, Siting
from hwsched.model.journal.journal import Change
from hwsched.model.journal.touched import touched_since
from hwsched.model.power_queries import read_power
from hwsched.model.project import Project
from hwsched.model.tables import CIRCUIT_TABLE, SUPPLY_TABLE
from hwsched.operations.changes import Changes
from hwsched.operations.opening.fits_within import change_and_fit
from hwsched.operations.power.connecting import connect_to
from hwsched.operations.power.supply_siting import CIRCUIT_NAME, Cancelled, Proposal, limiter_of, proposed_by
from hwsched.operations.prepared import NotReadyError
from hwsched.operations.shown import ShownOtherwiseError


class _OtherProblemError(Exception):
    """What is to be solved is not what was solved."""


def accept_siting(
    project: Project,
    proposal: Proposal,
    *,
    who: str,
    progress: Callable[[int, int], None] | None = None,
    cancelled: Cancelled | None = None,
) -> Changes:
    """Lay a circuit at each supply that a siting uses, every opening on a run of its own, and fit them: as one step.

    Parameters
    ----------
    project : Project
        Open project.
    proposal : Proposal
        As it was shown.
    who : str
        For the journal.
    progress, cancelled : callable, optional
        Told how far the fits are; asked whether to stop: then nothing is changed.

    Raises
    ------
    ShownOtherwiseError
        Where others changed what it stands on: with the proposal as it is now where the siting is still the same and
        only its volts or findings are others, else without one.
    ValueRefusedError
        Where nothing can be sited any more.
    """
    siting, basis = proposal.siting, proposal.basis

    def look() -> None:
        now = _still(project, proposal)
        basis.state = now.basis.state

    def write(change: Change, last: bool) -> Collection[str]:
        if touched_since(change.connection, basis.state):
            if not last:
                raise NotReadyError(look)
            look()
        _write(change, proposal)
        return list(siting.pairs)

    supplies, openings = len(siting.open), len(siting.pairs)
    if openings == 1:
        text = f"Site a supply of {proposal.building} for 1 opening"
    elif supplies == 1:
        text = f"Site 1 supply of {proposal.building} for {openings} openings"
    else:
        text = f"Site {supplies} supplies of {proposal.building} for {openings} openings"
    return change_and_fit(
        project, "accept-siting", text, who, write, memory=basis.fits, progress=progress, cancelled=cancelled
    )


def _still(project: Project, proposal: Proposal) -> Proposal:
    """Return the proposal as it is now; raises ShownOtherwiseError where that is not what was shown."""
    again = f"ask for the siting of {proposal.building} again"

    def solved(number: str, problem: Problem) -> Siting:
        for wire, posed, answer in proposal.basis.posed:
            if (wire, posed) == (number, problem):
                if isinstance(answer, NoSitingError):
                    raise answer
                return answer
        raise _OtherProblemError

    try:
        now = proposed_by(project, proposal.building, proposal.basis, solved)
    except _OtherProblemError:
        raise ShownOtherwiseError(f"what the siting stands on has changed meanwhile; {again}") from None
    # A mark or a name may be another one: nothing hangs on it.
    if replace(now, names=proposal.names) != proposal:
        raise ShownOtherwiseError(
            "the siting is still the same, but volts, wire or findings differ meanwhile; look at it again", now
        )
    return now


def _write(change: Change, proposal: Proposal) -> None:
    siting = proposal.siting
    facts = read_power(change.connection)
    change.update(
        SUPPLY_TABLE, [(s.id, {"use": "laid"}) for s in facts.supplies if s.id in siting.open and s.use != "must"]
    )
    circuits = {c.supply_id: c.id for c in facts.circuits if c.name == CIRCUIT_NAME}
    for supply_id in siting.open:
        if supply_id not in circuits:
            limiter = limiter_of(proposal.after, supply_id)
            row = {"supply_id": supply_id, "name": CIRCUIT_NAME, "wire": proposal.wire, "limiter_a": limiter}
            circuits[supply_id] = change.insert(CIRCUIT_TABLE, [row])[0]
        connected_devices = {o: proposal.lengths_m[o] for o, s in siting.pairs.items() if s == supply_id}
        connect_to(change, circuits[supply_id], connected_devices, wire=proposal.wire)

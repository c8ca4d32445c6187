"""Before and after of a siting: counted against the power worked out before it and after it is laid."""

import pytest

from hwsched.model.project import open_project
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.named_openings import openings_of_marks
from hwsched.operations.power.connecting import disconnect_openings, set_route
from hwsched.operations.power.power_editing import edit_power_row
from hwsched.operations.power.power_results import power_facts, power_result
from hwsched.operations.power.siting_accepting import accept_siting
from hwsched.operations.power.siting_comparison import compare_siting
from hwsched.operations.power.supply_siting import propose_siting
from hwsched.values import SEVERITIES

BUILDING = "Mill House"


@pytest.fixture
def project(sample_file):
    with open_project(str(sample_file)) as opened:
        yield opened


def of_building(project):
    work = power_result(project)
    here = [each for each in work.supplies if each.supply.building == BUILDING]
    ids = {each.supply.id for each in here}
    # A circuit that stands empty afterwards is still laid, and still has its findings.
    return [each for each in here if each.openings], [e.finding for e in work.findings if e.supply_id in ids]


def room(supplies):
    nodes = [node for supply in supplies for circuit in supply.circuits for node in circuit.nodes]
    return min(node.lowest_v - node.minimum_v for node in nodes if node.minimum_v is not None)


def test_what_is_foretold_is_what_stands_once_it_is_laid(project):
    (m316, m016) = openings_of_marks(project, ["M316", "M016"])
    mill_3 = next(each.id for each in power_facts(project).supplies if each.name == "MILL-3")
    set_route(project, m316, mill_3, who="t", pinned=True, length_m=7.5)
    disconnect_openings(project, [m016], who="t")
    fit_openings(project, [m016], who="t")
    before, said_before = of_building(project)
    proposal = propose_siting(project, BUILDING)
    compared = compare_siting(proposal)
    assert compared.before.supplies == ("MILL-1",)
    assert compared.before.openings == 3
    assert compared.before.room_v == pytest.approx(room(before))
    assert compared.before.wire_m == proposal.before_wire_m
    lines = {each.mark: each for each in compared.openings}
    assert (lines["M316"].before, lines["M316"].after) == ("MILL-1/S", "MILL-3/S")
    assert lines["M316"].length_m == 7.5
    assert lines["M016"].before == ""
    assert lines["M016"].before_v is None
    assert [each.moves for each in compared.openings] == sorted((e.moves for e in compared.openings), reverse=True)
    accept_siting(project, proposal, who="t")
    fit_openings(project, list(proposal.siting.pairs), who="t")
    after, said_after = of_building(project)
    assert compared.after.supplies == tuple(each.supply.name for each in after)
    assert compared.after.openings == 4 == sum(len(each.openings) for each in after)
    assert compared.after.room_v == pytest.approx(room(after))
    runs = [run.length_m for each in after for c in each.circuits for run in c.runs if not run.transfer]
    assert compared.after.wire_m == pytest.approx(sum(runs)) == pytest.approx(proposal.siting.wire_m)
    for standing, said in ((compared.before, said_before), (compared.after, said_after)):
        for severity in SEVERITIES:
            assert standing.findings.get(severity, 0) == sum(each.severity == severity for each in said)
    volts = {
        node.opening_id: node.lowest_v
        for supply in after
        for circuit in supply.circuits
        for node in circuit.nodes
        if node.minimum_v is not None
    }
    assert lines["M316"].after_v == pytest.approx(volts[m316])


def test_too_little_room_is_named_with_its_place_and_cured(project):
    facts = power_facts(project)
    (m116,) = openings_of_marks(project, ["M116"])
    run = next(each for each in facts.runs if each.opening_id == m116)
    edit_power_row(project, "run", run.id, {"length_m": 400.0}, who="t")
    compared = compare_siting(propose_siting(project, BUILDING))
    assert compared.before.room_v < 0
    assert compared.before.room_at.startswith("M116")
    assert compared.after.room_v > 0
    # As far as it is from the supply that feeds it, another one is nearer.
    assert "M116" in {each.mark for each in compared.openings if each.moves}

"""Plans of a building and of one circuit: proved, shown with what is taken up, accepted as one step, undone as one."""

import pytest

from hwsched.calc.power.planning.question import AIMS
from hwsched.model import errors
from hwsched.operations.parts.cost_terms import set_terms
from hwsched.operations.parts.part_edits import edit_part
from hwsched.operations.parts.part_form import PartEdit
from hwsched.operations.power.connecting import connect_openings, set_route
from hwsched.operations.power.planning_accepting import accept_plan
from hwsched.operations.power.power_editing import add_run, edit_power_row, remove_power_row
from hwsched.operations.power.power_planning import propose_plan
from hwsched.operations.power.power_results import power_result
from hwsched.operations.power.supply_siting import CIRCUIT_NAME, propose_siting
from hwsched.operations.shown import ShownOtherwiseError
from hwsched.operations.survey.editing import edit_facts
from tests.model.backends import furnished
from tests.model.states import state
from tests.operations.power.test_power_editing import there_and_back
from tests.operations.power.test_supply_siting import figures
from tests.operations.powered import (
    WHO,
    circuit,
    closet,
    door,
    doors,
    fit_all,
    lines,
    more_parts,
    power,
    write_catalogue,
)
from tests.rules.scenario import part


@furnished
def yard(project):
    """Six openings along a wall, ten metres apart, and three places; identifiers by name."""
    write_catalogue(project)
    made = doors(project, ["1", "2", "3", "4", "5", "6"])
    for name, x in (("PA", 0.0), ("PB", 35.0), ("PC", 70.0)):
        made[name] = closet(project, name, x_m=x, use="candidate")
    fit_all(project)
    return made


def lowest(work):
    """Least room of all devices."""
    return min(
        node.margin_v
        for supply in work.supplies
        for each in supply.circuits
        for node in each.nodes
        if node.margin_v is not None
    )


def larger_supply(project, **changed):
    """A supply of 6 A beside the usual one of 2.5 A."""
    facts = {"output_v": 12.0, "output_a": 6.0, "tolerance_share": 0.05, "class_2": True, "current": "dc"}
    more_parts(project, part("PSUL", "power-supply", 130.0, **{"regulated": True, **facts, **changed}))


def proved(project):
    """Whether every opening that hangs finds its voltages, and how many there are."""
    proofs = [proof for supply in power_result(project).supplies for each in supply.circuits for proof in each.proofs]
    return {proof.standing for proof in proofs}, len(proofs)


def test_least_wire_is_chains_along_the_wall(project, yard):
    before = state(project)
    found = propose_plan(project, "Main", aim="least-wire")
    # From PB at 35 m 5 + 10 + 10 m to each end of the wall, were one supply of 2.0 A enough for six of 0.4 A; it is
    # not: so an opening at one end hangs on PA or PC instead, 10 m away.
    assert found.plan.wire_m == pytest.approx(50.0)
    assert found.plan.proved_best
    assert (found.kept, found.torn_up, found.before.supplies) == ((), (), ())
    assert state(project) == before
    there_and_back(project, lambda: accept_plan(project, found, who=WHO))
    assert proved(project) == ({"proved"}, 6)
    assert figures(found.after) == figures(power_result(project))
    assert sum(length for *_, length in lines(project)) == pytest.approx(50.0)
    assert {c.name for c in power(project).circuits} == {CIRCUIT_NAME}


def test_planned_again_nothing_is_torn_up(project, yard):
    accept_plan(project, propose_plan(project, "Main", aim="least-wire"), who=WHO)
    first = lines(project)
    again = propose_plan(project, "Main", aim="least-wire")
    # Other divisions are as good: none of them is worth tearing up what lies.
    assert again.already
    assert (again.torn_up, again.laying.runs, again.laying.circuits, again.laying.parts) == ((), (), (), {})
    assert accept_plan(project, again, who=WHO).number is None
    assert lines(project) == first


@pytest.mark.parametrize("aim", ["least-cost", "fewest-supplies"])
@pytest.mark.parametrize(
    ("of_b", "laid_on", "own", "stays"),
    [
        # A door halfway between two supplies that stand: whichever feeds it, by 10 m of the same wire.
        (30.0, "PA", "WIRE", True),
        (30.0, "PB", "WIRE", True),
        # A metre nearer to the other one; and by a wire that costs 30 a metre in place of 0.50.
        (29.0, "PA", "WIRE", False),
        (29.0, "PB", "WIRE", True),
        (30.0, "PA", "DEAR", False),
    ],
)
def test_what_lies_and_costs_no_more_than_a_plan_stays(project, aim, of_b, laid_on, own, stays):
    write_catalogue(project)
    more_parts(project, part("DEAR", "wire", 30.0, gauge="18 AWG", conductors=2, stranding="stranded"))
    supplies = {name: closet(project, name, x_m=x) for name, x in (("PA", 10.0), ("PB", of_b))}
    there = door(project, "1", plan_x_m=20.0)
    connect_openings(project, circuit(project, supplies[laid_on], wire=own), [there], who=WHO)
    fit_all(project)
    found = propose_plan(project, "Main", aim=aim)
    assert found.already == stays
    assert bool(found.torn_up) != stays


def test_work_weighs_as_it_costs(project, yard):
    set_terms(project, who=WHO, labour_per_hour="100")
    found = propose_plan(project, "Main")
    # A metre: 0.5 with a tenth more for ends and slack, and 0.04 h; a supply: its price and 1.5 h to mount it.
    assert found.assumed == ("ways that nobody has measured are estimated from level, plan and rise",)
    metre, supply = 0.55 + 4.0, 80.0 + 150.0
    assert found.plan.cost == pytest.approx(2 * supply + found.plan.wire_m * metre)
    # Two are the fewest, and the wire that the shortest chains have is the least of all.
    assert (found.plan.supplies, found.plan.wire_m) == (2, pytest.approx(50.0))


def test_what_is_laid_by_hand_and_pinned_stays_and_what_is_torn_up_is_said(project, yard):
    c1 = circuit(project, yard["PA"])
    connect_openings(project, c1, [yard["1"]], who=WHO)
    connect_openings(project, c1, [yard["2"]], who=WHO, from_node="1", length_m=9)
    connect_openings(project, c1, [yard["3"]], who=WHO, from_node="2", length_m=9)
    set_route(project, yard["2"], yard["PA"], who=WHO, pinned=True)
    fit_all(project)
    found = propose_plan(project, "Main", aim="least-wire")
    # 1 lies on the way to 2; 3 does not, and hangs 15 m from PB on a chain of three.
    assert found.kept == ("1", "2")
    assert found.torn_up == ("the run from 2 to 3, 29.5 ft, circuit C1 of PA",)
    accept_plan(project, found, who=WHO)
    assert [line for line in lines(project) if line[0] == "C1"] == [("C1", "1", "2", 9.0), ("C1", "supply", "1", 10.0)]
    assert proved(project) == ({"proved"}, 6)


def test_what_is_pinned_hangs_on_no_other_supply_over_its_neighbours_either(project, yard):
    """1 is 10 m from PA and a link of 10 m of the chain from there; pinned to PC it has 60 m of its own."""
    set_route(project, yard["1"], yard["PC"], who=WHO, pinned=True)
    found = propose_plan(project, "Main", aim="least-wire")
    (leg,) = (leg for leg in found.plan.legs if yard["1"] in leg.openings)
    assert leg.place == yard["PC"]


def test_a_chosen_cabinet_and_limiter_are_kept_and_bound_what_is_planned(project, yard):
    """A limiter of 0.4 A carries 0.4 A / 1.25 = 0.32 A, no unit of 0.4 A: PB, from which all is nearest, takes none."""
    more_parts(project, part("F-1", "limiter", 4.0, rating_a=1.0), part("CAB", "enclosure", 40.0, form="cabinet"))
    more_parts(project, part("F-04", "limiter", 4.0, rating_a=0.4))
    own = circuit(project, yard["PB"], CIRCUIT_NAME, limiter="F-04", limiter_a=0.4)
    edit_power_row(project, "supply", yard["PB"], {"cabinet": "CAB"}, who=WHO)
    hand = circuit(project, yard["PA"], "C1", limiter="F-1", limiter_a=1.0)
    connect_openings(project, hand, [yard["3"]], who=WHO)
    fit_all(project)
    found = propose_plan(project, "Main", aim="least-wire")
    # 3 stays on the circuit of PA that a person has laid with its limiter, 30 m away.
    assert (found.kept, found.torn_up) == (("3",), ())
    accept_plan(project, found, who=WHO)
    held = {c.circuit.name + s.supply.name: c for s in power_result(project).supplies for c in s.circuits}
    assert held["C1PA"].marks == ("3",)
    assert held[f"{CIRCUIT_NAME}PB"].marks == ()
    assert {c.limiter for c in power(project).circuits if c.supply_id == yard["PB"]} == {"F-04"}
    assert {s.cabinet for s in power(project).supplies} == {"CAB", None}
    # One of 1 A carries 0.8 A, two units.
    edit_power_row(project, "circuit", own, {"limiter": "F-1", "limiter_a": 1.0}, who=WHO)
    accept_plan(project, propose_plan(project, "Main", aim="least-wire"), who=WHO)
    (taking,) = (c for s in power_result(project).supplies for c in s.circuits if c.circuit.id == own)
    assert 0 < len(taking.marks) <= 2
    # Asked about itself the circuit may be laid anew, its limiter as it is.
    assert propose_plan(project, circuit_id=hand).kept != ("3",)


def test_openings_named_to_be_kept_stay(project, yard):
    c1 = circuit(project, yard["PC"])
    connect_openings(project, c1, [yard["1"]], who=WHO)
    fit_all(project)
    assert "1" not in propose_plan(project, "Main").kept
    assert propose_plan(project, "Main", keep=[yard["1"]]).kept == ("1",)


def test_a_circuit_that_is_low_is_cured_whole_with_everything_else_as_it_is(project, yard):
    c1, c2 = circuit(project, yard["PA"]), circuit(project, yard["PC"], "C2")
    connect_openings(project, c2, [yard["6"]], who=WHO)
    add_run(project, c1, {"from_node": "supply", "to_node": "J9", "length_m": 60.0}, who=WHO)
    for mark in ("1", "2", "3"):
        connect_openings(project, c1, [yard[mark]], who=WHO, from_node="J9", length_m=25)
    fit_all(project)
    assert proved(project)[0] == {"proved", "failed"}
    others = [line for line in lines(project) if line[0] == "C2"]
    found = propose_plan(project, circuit_id=c1)
    assert found.circuit == "PA/C1"
    assert {supply.supply.name for supply in found.after.supplies} == {"PA"}
    assert any("J9" in each for each in found.torn_up)
    there_and_back(project, lambda: accept_plan(project, found, who=WHO))
    assert proved(project) == ({"proved"}, 4)
    assert [line for line in lines(project) if line[0] == "C2"] == others
    # One chain along the wall, on the circuit that it was.
    assert [line for line in lines(project) if line[0] == "C1"] == [
        ("C1", "1", "2", 10.0), ("C1", "2", "3", 10.0), ("C1", "supply", "1", 10.0)
    ]  # fmt: skip


def test_a_run_that_lies_tells_how_long_its_way_is(project, yard):
    """By level and plan 1 is 10 m from PA; 40 m were laid, so that nothing is gained by laying it again."""
    c1 = circuit(project, yard["PA"])
    connect_openings(project, c1, [yard["1"]], who=WHO, length_m=40)
    fit_all(project)
    found = propose_plan(project, circuit_id=c1, aim="least-wire")
    assert found.already
    assert found.plan.wire_m == pytest.approx(40.0)
    # And sited: 1 is nearer to every other supply's place now.
    assert propose_siting(project, "Main").lengths_m[yard["1"]] != pytest.approx(10.0)


def test_where_what_is_kept_is_low_the_refusal_says_what_remains(project, yard):
    for name in ("PA", "PC"):
        remove_power_row(project, "supply", yard[name], who=WHO)
    larger_supply(project)
    edit_power_row(project, "supply", yard["PB"], {"part": "PSUL", "use": "laid"}, who=WHO)
    connect_openings(project, circuit(project, yard["PB"]), [yard["1"]], who=WHO, length_m=300)
    set_route(project, yard["1"], yard["PB"], who=WHO, pinned=True)
    fit_all(project)
    with pytest.raises(errors.ValueRefusedError, match="low remains: 1 on PB/C1 finds"):
        propose_plan(project, "Main", aim="least-wire")


def test_what_no_supply_can_carry_is_named(project, yard):
    edit_facts(project, "opening", yard["4"], {"plan_x_m": 900.0}, who=WHO)
    with pytest.raises(errors.ValueRefusedError, match="no supply can reach or carry: 4"):
        propose_plan(project, "Main")


def test_a_place_takes_whichever_supply_serves(project, yard):
    larger_supply(project)
    fit_all(project)
    for name in ("PA", "PC"):
        edit_power_row(project, "supply", yard[name], {"use": "laid"}, who=WHO)
    found = propose_plan(project, "Main", aim="fewest-supplies")
    assert [(found.names[s], size) for s, size in found.plan.sizes.items()] == [("PB", "PSUL")]
    accept_plan(project, found, who=WHO)
    assert {s.name: (s.part, s.use) for s in power(project).supplies}["PB"] == ("PSUL", "laid")
    assert proved(project) == ({"proved"}, 6)


def test_a_supply_of_which_too_little_is_known_is_not_taken(project, yard):
    larger_supply(project, regulated=None)
    fit_all(project)
    found = propose_plan(project, "Main", aim="fewest-supplies")
    assert set(found.plan.sizes.values()) == {"PSU"}
    assert any(each.startswith("PSUL in PA: what 1 draws is unknown") for each in found.left_out)


def test_a_supply_that_stands_without_its_part_is_left_out_and_a_place_is_not(project, yard):
    edit_power_row(project, "supply", yard["PC"], {"part": None, "use": "laid"}, who=WHO)
    edit_power_row(project, "supply", yard["PA"], {"part": None}, who=WHO)
    found = propose_plan(project, "Main", aim="least-wire")
    assert found.left_out == ("PC: unknown: needs the power supply that stands there",)
    assert {leg.place for leg in found.plan.legs} == {yard["PA"], yard["PB"]}


def test_a_supply_whose_part_tells_too_little_is_named_and_one_that_might_stand_there_is_not(project, yard):
    """Laid at PC, and wished at PA; at PB it is one of the catalogue that might be taken, as good as any."""
    larger_supply(project, output_a=None)
    edit_power_row(project, "supply", yard["PC"], {"part": "PSUL", "use": "laid"}, who=WHO)
    edit_power_row(project, "supply", yard["PA"], {"part": "PSUL"}, who=WHO)
    fit_all(project)
    found = propose_plan(project, "Main", aim="fewest-supplies")
    lacks = "unknown: needs part PSUL.output_a"
    assert sorted(each for each in found.left_out if "PSUL" in each) == [f"PA: {lacks}", f"PC: {lacks}"]
    assert set(found.plan.sizes.values()) == {"PSU"}
    assert yard["PC"] not in found.plan.sizes


@pytest.mark.parametrize("aim", AIMS)
@pytest.mark.parametrize("wire", ["NOSUCH", "PSU"])
def test_a_wire_that_is_none_is_refused_whatever_is_aimed_at(project, yard, aim, wire):
    with pytest.raises(errors.ValueRefusedError, match=f"'{wire}' is no wire of the catalogue"):
        propose_plan(project, "Main", aim=aim, wire=wire)


@pytest.mark.parametrize("aim", AIMS)
@pytest.mark.parametrize(
    ("known", "lacks"), [({"gauge": "18 AWG"}, "stranding"), ({"stranding": "solid"}, "gauge"), ({}, "gauge")]
)
def test_a_wire_of_which_too_little_is_known_is_named_with_what_it_needs(project, yard, aim, known, lacks):
    more_parts(project, part("ODD", "wire", 0.5, conductors=2, **known))
    fit_all(project)
    with pytest.raises(errors.ValueRefusedError, match=rf"ODD: unknown: needs part ODD\.{lacks}"):
        propose_plan(project, "Main", aim=aim, wire="ODD")


def test_without_a_wire_in_the_catalogue_nothing_is_planned(project, yard):
    edit_part(project, PartEdit("WIRE", withdrawn=True), who=WHO)
    fit_all(project)
    with pytest.raises(errors.ValueRefusedError, match="the catalogue has no wire"):
        propose_plan(project, "Main", aim="least-wire")


def test_the_supply_that_loses_an_opening_is_told_beside_the_one_that_takes_it(project):
    """A door 2 m from PB hangs on PA 30 m away; what both had and will have is compared."""
    write_catalogue(project)
    supplies = {name: closet(project, name, x_m=x) for name, x in (("PA", 0.0), ("PB", 32.0), ("PC", 300.0))}
    there = door(project, "1", plan_x_m=30.0)
    connect_openings(project, circuit(project, supplies["PA"]), [there], who=WHO)
    fit_all(project)
    found = propose_plan(project, "Main", aim="least-wire")
    assert [leg.place for leg in found.plan.legs] == [supplies["PB"]]

    def on(work):
        return {s.supply.name: [mark for each in s.circuits for mark in each.marks] for s in work.supplies}

    assert on(found.before) == {"PA": ["1"]}
    assert on(found.after) == {"PA": [], "PB": ["1"]}


@pytest.mark.parametrize("where", ["Main", "Annex"])
def test_a_circuit_is_planned_in_the_building_of_its_supply(project, yard, where):
    hall = closet(project, "PX", building="Annex", level="1", x_m=0.0)
    door(project, "A1", building="Annex", level="1", plan_x_m=5.0)
    made = {"Main": circuit(project, yard["PB"]), "Annex": circuit(project, hall)}
    connect_openings(project, made["Annex"], [door(project, "A2", building="Annex", plan_x_m=8.0)], who=WHO)
    connect_openings(project, made["Main"], [yard["1"]], who=WHO)
    fit_all(project)
    found = propose_plan(project, circuit_id=made[where], aim="least-wire")
    assert found.building == where
    assert {found.names[leg.place] for leg in found.plan.legs} == {"PX" if where == "Annex" else "PB"}


def test_without_places_on_plan_every_opening_has_a_run_of_its_own(project, yard):
    for mark in "123456":
        edit_facts(project, "opening", yard[mark], {"plan_x_m": None}, who=WHO)
        set_route(project, yard[mark], yard["PA"], who=WHO, length_m=8.0)
        set_route(project, yard[mark], yard["PB"], who=WHO, length_m=9.0)
    found = propose_plan(project, "Main", aim="least-wire")
    assert {leg.shape for leg in found.plan.legs} == {"home-run"}
    assert found.plan.wire_m == pytest.approx(5 * 8.0 + 9.0)


def test_what_others_change_meanwhile_is_shown_before_it_is_laid(project, yard):
    found = propose_plan(project, "Main", aim="least-wire")
    edit_facts(project, "opening", yard["1"], {"plan_x_m": 12.0}, who="bob")
    before = state(project)
    with pytest.raises(ShownOtherwiseError):
        accept_plan(project, found, who=WHO)
    assert state(project) == before


def test_what_others_change_elsewhere_is_no_matter(project, yard):
    found = propose_plan(project, "Main", aim="least-wire")
    edit_facts(project, "opening", yard["1"], {"notes": "Store"}, who="bob")
    assert accept_plan(project, found, who=WHO).number is not None


def test_most_margin_takes_what_leaves_most(project, yard):
    wire = propose_plan(project, "Main", aim="least-wire")
    room = propose_plan(project, "Main", aim="most-margin")
    assert lowest(room.after) > lowest(wire.after) + 0.1
    assert room.plan.wire_m > wire.plan.wire_m


def test_what_a_supply_gives_another_building_is_not_given_twice(project, yard):
    far = door(project, "A1", building="Annex", level="1", plan_x_m=0.0)
    for name in ("PA", "PC"):
        remove_power_row(project, "supply", yard[name], who=WHO)
    larger_supply(project, output_a=3.4)
    edit_power_row(project, "supply", yard["PB"], {"part": "PSUL", "use": "laid"}, who=WHO)
    fit_all(project)
    # 80 % of 3.4 A are 2.72 A: six of 0.4 A have room, a seventh has none.
    assert propose_plan(project, "Main", aim="least-wire").plan.supplies == 1
    connect_openings(project, circuit(project, yard["PB"], "ANNEX"), [far], who=WHO, length_m=20)
    fit_all(project)
    with pytest.raises(errors.ValueRefusedError, match="no supplies and wires carry all openings together"):
        propose_plan(project, "Main", aim="least-wire")


def test_a_thicker_wire_is_taken_where_it_needs_a_supply_less(project):
    write_catalogue(project)
    more_parts(project, part("THICK", "wire", 30.0, gauge="14 AWG", conductors=2, stranding="stranded"))
    for mark, x in (("1", 10.0), ("2", 120.0)):
        door(project, mark, plan_x_m=x)
    for name, x in (("PA", 0.0), ("PB", 130.0)):
        closet(project, name, x_m=x, use="candidate")
    fit_all(project)
    assert propose_plan(project, "Main", aim="fewest-supplies").plan.supplies == 1
    cheap = propose_plan(project, "Main")
    assert (cheap.plan.supplies, {leg.wire for leg in cheap.plan.legs}) == (2, {"WIRE"})

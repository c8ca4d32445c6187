"""The verbs of power as people and machines call them: what they write, JSON, refusals in words, exit statuses."""

import pytest

from hwsched.cli.command import run
from hwsched.model.project import create_project, open_project
from hwsched.paths import SAMPLE
from tests.cli.answers import answer, result
from tests.exchange.powers import WHOLE, with_cell, write_power
from tests.model.states import state
from tests.once import copied
from tests.operations.powered import doors, fit_all, lines, power, write_catalogue


@pytest.fixture
def yard(tmp_path):
    """A project of four openings and the catalogue; its path."""
    path = str(tmp_path / "yard.hwsched")

    def make(place):
        with create_project(str(place), "Yard", length_style="mm", bare_unit="mm") as project:
            write_catalogue(project)
            doors(project, ["1", "2", "3", "4"])
            fit_all(project)

    copied("four doors", path, make)
    return path


def told(capsys, *words):
    """Run a command that goes well; returns what it printed."""
    assert run(list(words)) == 0, capsys.readouterr().err
    return capsys.readouterr().out


def answered(capsys, *words):
    """Run a command for machines; returns its result."""
    return result(capsys, *words)


def refused(capsys, *words):
    """Run a command that is refused; returns what it says."""
    assert run(list(words)) == 3
    return capsys.readouterr().err


def present(capsys, yard):
    """Lay a supply with a circuit at the plan's corner."""
    place = ("building=Main", "level=1", "x_m=0", "y_m=0", "rise_m=0")
    told(capsys, "power", "add", yard, "supply", "PS1", *place, "part=PSU")
    told(capsys, "power", "add", yard, "circuit", "PS1/C1", "wire=WIRE", "alarm=drops")


def rows(yard):
    with open_project(yard) as project:
        return lines(project)


def facts(yard):
    with open_project(yard) as project:
        return power(project)


def test_a_circuit_is_laid_hung_shown_and_lifted(yard, capsys):
    assert "Nothing is laid yet." in told(capsys, "power", "show", yard)
    present(capsys, yard)
    assert "no run yet" in told(capsys, "power", "show", yard)
    connected = answer(capsys, "power", "connect", yard, "PS1/C1", "1", "2")
    assert connected["result"] == {"marks": ["1", "2"]}
    assert isinstance(connected["change_set"], int)
    told(capsys, "power", "connect", yard, "PS1/C1", "3", "--from", "2", "--length", "7.5")
    assert rows(yard) == [("C1", "2", "3", 7.5), ("C1", "supply", "1", 10.0), ("C1", "supply", "2", 20.0)]
    told(capsys, "opening", "fit", yard)
    shown = told(capsys, "power", "show", yard)
    # 20 m of 0.8 A and 7.5 m of 0.4 A from 11.4 V: 11.4 - 0.71062 - 0.13324 - 0.02246 in the door loop
    # - 0.02157 in 1.2144 m across the leaf = 10.51 V.
    assert "3 (leaf)                  10.51 V at worst, needs 10 V" in shown
    assert "PS1: PSU, 48% of the rating held" in shown
    assert "PS1: warning: circuit-limiter:" in shown
    told(capsys, "power", "connect", yard, "-", "2")
    assert rows(yard) == [("C1", "supply", "1", 10.0), ("C1", "supply", "3", 27.5)]
    told(capsys, "power", "remove", yard, "PS1/C1", "--run-to", "1")
    assert rows(yard) == [("C1", "supply", "3", 27.5)]
    told(capsys, "power", "remove", yard, "PS1/C1")
    told(capsys, "power", "remove", yard, "PS1")
    assert facts(yard).supplies == ()
    for _ in range(8):
        told(capsys, "project", "undo", yard)


def test_power_for_machines(yard, capsys):
    present(capsys, yard)
    told(capsys, "power", "add", yard, "supply", "PS1", "standby_hours=4", "battery=BAT", "temperature_c=20 C")
    told(capsys, "power", "connect", yard, "PS1/C1", "1", "2")
    told(capsys, "opening", "fit", yard)
    shown = answered(capsys, "power", "show", yard)
    (supply,) = shown["supplies"]
    assert (supply["name"], supply["output_v"], supply["rated_a"], supply["held_a"]) == ("PS1", 12.0, 2.5, 0.8)
    assert (supply["standby"]["hours"], supply["standby"]["temperature_c"]) == (4.0, 20.0)
    (circuit,) = supply["circuits"]
    assert circuit["marks"] == ["1", "2"]
    assert {(node["node"], node["mark"]) for node in circuit["nodes"]} == {
        ("supply", None), ("1", "1"), ("1 (leaf)", "1"), ("2", "2"), ("2 (leaf)", "2"),
    }  # fmt: skip
    for node in circuit["nodes"]:
        assert set(node["state_v"]) == {"normal", "lowest-mains", "highest-mains", "standby-end", "peak"}
    assert {each["supply"] for each in shown["findings"]} == {"PS1"}


def test_what_is_laid_is_told_as_goods_with_every_cut(yard, capsys):
    assert "Nothing is laid yet." in told(capsys, "power", "goods", yard)
    present(capsys, yard)
    told(capsys, "power", "connect", yard, "PS1/C1", "1", "2")
    told(capsys, "opening", "fit", yard)
    bill = answered(capsys, "power", "goods", yard)
    parts = {each["role"]: (each["part"], each["quantity"], each["supply"], each["needs"]) for each in bill["goods"]}
    assert parts["supply"] == ("PSU", "1", "PS1", [])
    assert parts["limiter"] == (None, "1", "PS1", ["circuit.limiter_a"])
    (wire,) = bill["wires"]
    # Runs of 10 and 20 m with 10 % for their ends, and what the two openings have on leaf and in frame.
    assert (wire["runs_m"], wire["reels"], wire["gap"]) == (30.0, 1, 0)
    (reel,) = wire["cut"]
    cut = {each["name"]: each["length_m"] for each in reel["pieces"]}
    assert (cut["PS1/C1 supply to 1"], cut["PS1/C1 supply to 2"]) == (11.0, 22.0)
    assert sum(cut.values()) == pytest.approx(wire["needed_m"], abs=0.05)
    assert reel["left_m"] == pytest.approx(wire["reel_m"] - sum(cut.values()))
    assert [each["supply"] for each in bill["licensed"]] == ["PS1"]
    shown = told(capsys, "power", "goods", yard)
    assert "PS1/C1 supply to 2 22.0 m" in shown
    assert "(exact)" in shown
    assert "circuit PS1/C1: none is laid" in shown


def test_what_falls_out_and_what_more_is_borne(yard, capsys):
    assert "Nothing is laid yet." in told(capsys, "power", "margins", yard)
    present(capsys, yard)
    told(capsys, "power", "connect", yard, "PS1/C1", "1")
    told(capsys, "power", "connect", yard, "PS1/C1", "2", "--from", "1", "--length", "2")
    told(capsys, "opening", "fit", yard)
    (supply,) = answered(capsys, "power", "margins", yard)["supplies"]
    fails = {each["name"]: each["marks"] for each in supply["failures"] if each["what"] == "run"}
    assert fails == {"PS1/C1 PS1 to 1": ["1", "2"], "PS1/C1 1 to 2": ["2"]}
    alarm = supply["alarm"]
    assert (alarm["dropped"], alarm["kept"], alarm["unknown"]) == (["1", "2"], [], [])
    (room,) = supply["rooms"]
    # Units of 0.4 A: five of them are 80 % of 2.5 A.
    assert (room["circuit"], room["later_count"], room["stopped_by"]) == ("C1", 3, "supply-loading")
    assert answered(capsys, "power", "margins", yard, "--most", "2")["supplies"][0]["rooms"][0]["why"] is None
    shown = told(capsys, "power", "margins", yard)
    assert "circuit C1: 3 later openings; one more: Everything held at once draws 2.4 A" in shown
    assert "mains PS1 fails: 1, 2" in shown
    assert "on the fire alarm lose power: 1, 2" in shown
    told(capsys, "project", "settings", yard, "--limit", "supply-growth.openings=4")
    findings = {each["rule"]: each["message"] for each in answered(capsys, "power", "show", yard)["findings"]}
    assert "4 later openings on circuit C1 are not borne" in findings["supply-growth"]


def test_facts_are_changed_by_laying_again(yard, capsys):
    present(capsys, yard)
    told(capsys, "power", "add", yard, "circuit", "PS1/C1", "limiter_a=2 A", "wire=")
    (circuit,) = facts(yard).circuits
    assert (circuit.limiter_a, circuit.wire, circuit.alarm) == (2.0, None, "drops")
    told(capsys, "power", "add", yard, "run", "PS1/C1", "from_node=supply", "to_node=J1", "length_m=4 ft", "wire=WIRE")
    told(capsys, "power", "connect", yard, "PS1/C1", "1", "--from", "J1", "--length", "2")
    assert rows(yard) == [("C1", "J1", "1", 2.0), ("C1", "supply", "J1", pytest.approx(1.2192))]


def test_a_laid_run_is_changed_by_where_it_ends(yard, capsys):
    present(capsys, yard)
    told(capsys, "power", "connect", yard, "PS1/C1", "1", "2", "--length", "5")
    told(capsys, "power", "add", yard, "run", "PS1/C1", "--run-to", "2", "length_m=7.5", "parallel=2")
    (first, second) = facts(yard).runs
    assert (first.length_m, first.parallel, second.length_m, second.parallel) == (5.0, None, 7.5, 2)
    told(capsys, "power", "add", yard, "run", "PS1/C1", "--run-to", "2", "length_m=")
    assert facts(yard).runs[1].length_m is None
    told(capsys, "project", "undo", yard)
    assert facts(yard).runs[1].length_m == 7.5


def test_levels_and_routes(yard, capsys):
    present(capsys, yard)
    answered(capsys, "power", "level", yard, "Main", "1", "-3.5")
    told(capsys, "power", "route", yard, "1", "PS1", "33.5", "--pin")
    (route,) = facts(yard).routes
    assert (route.length_m, route.pinned) == (33.5, True)
    told(capsys, "power", "route", yard, "1", "PS1", "--loose")
    (route,) = facts(yard).routes
    assert (route.length_m, route.pinned) == (33.5, False)
    assert run(["power", "route", yard, "1", "PS1", "--pin", "--loose"]) == 2
    capsys.readouterr()


def test_a_siting_is_proposed_and_accepted(yard, capsys):
    for name, x in (("PA", 0), ("PB", 25)):
        told(capsys, "power", "add", yard, "supply", name, "building=Main", "level=1", f"x_m={x}", "y_m=0", "rise_m=0",
             "part=PSU", "use=candidate")  # fmt: skip
    before = facts(yard)
    plan = answered(capsys, "power", "plan", yard, "Main")
    # From 25 m: 15 + 5 + 5 + 15 m.
    assert (plan["supplies"], plan["wire_m"], plan["proven"], plan["gap"]) == (["PB"], 40.0, True, 0.0)
    assert {each["supply"] for each in plan["pairs"]} == {"PB"}
    assert {each["mark"]: each["length_m"] for each in plan["pairs"]} == {"1": 15.0, "2": 5.0, "3": 5.0, "4": 15.0}
    assert (plan["wire"], plan["left_out"], plan["accepted"]) == ("WIRE", [], False)
    assert facts(yard) == before
    shown = told(capsys, "power", "plan", yard, "Main", "--gap", "0.05", "--seconds", "20", "--wire", "WIRE")
    assert "Nothing is laid yet; --accept lays it." in shown
    assert "1 supply for 4 openings, 40.0 m of WIRE" in shown
    assert plan["shown"] in told(capsys, "power", "plan", yard, "Main")
    before = facts(yard)
    assert run(["power", "plan", yard, "Main", "--accept", "--shown", "0123456789abcdef"]) == 3
    assert "not 0123456789abcdef as it was shown" in capsys.readouterr().err
    assert facts(yard) == before
    accepted = answer(capsys, "power", "plan", yard, "Main", "--accept", "--shown", plan["shown"])
    assert accepted["result"] == {**plan, "accepted": True}
    assert len(rows(yard)) == 4
    assert accepted["change_set"] == answered(capsys, "project", "history", yard)[-1]["number"]
    work = answered(capsys, "power", "show", yard)
    assert not [f for f in work["findings"] if f["severity"] == "error"]


def test_a_layout_is_proposed_and_accepted(yard, capsys):
    for name, x in (("PA", 0), ("PB", 25)):
        told(capsys, "power", "add", yard, "supply", name, "building=Main", "level=1", f"x_m={x}", "y_m=0", "rise_m=0",
             "part=PSU", "use=candidate")  # fmt: skip
    before = facts(yard)
    layout = answered(capsys, "power", "layout", yard, "Main", "--aim", "least-wire")
    # From 25 m both ways along the wall: 5 + 10 m each.
    assert layout["supplies"] == [{"supply": "PB", "part": "PSU"}]
    assert (layout["wire_m"], layout["proven"], layout["gap"]) == (pytest.approx(30.0), True, 0.0)
    runs = sorted((run["from"], run["to"], round(run["length_m"], 6)) for leg in layout["legs"] for run in leg["runs"])
    assert runs == [("2", "1", 10.0), ("3", "4", 10.0), ("supply", "2", 5.0), ("supply", "3", 5.0)]
    # A supply at 80 and 33 m of wire at 0.5; an hour of work has no price.
    assert (layout["cost_before"], float(layout["cost_after"])) == ("0", 80 + 33 * 0.5)
    # Not in silence: the lengths by which its volts are proved follow from the plan.
    assert sorted(layout["assumed"]) == [
        "ways that nobody has measured are estimated from level, plan and rise",
        "work is not counted: an hour of labour has no price",
    ]
    assert (layout["torn_up"], layout["left_out"], layout["accepted"], layout["circuit"]) == ([], [], False, None)
    assert facts(yard) == before
    shown = told(capsys, "power", "layout", yard, "Main", "--aim", "least-wire")
    assert "Main, least wire: 1 supply for 4 openings, 30.0 m of wire, proven best" in shown
    assert f"Shown as {layout['shown']}." in shown
    assert run(["power", "layout", yard, "Main", "--accept", "--shown", "0123456789abcdef"]) == 3
    assert facts(yard) == before
    capsys.readouterr()
    how = ("--aim", "least-wire", "--accept", "--shown", layout["shown"])
    assert answered(capsys, "power", "layout", yard, "Main", *how) == {**layout, "accepted": True}
    assert len(rows(yard)) == 4
    assert "What is laid is as good" in told(capsys, "power", "layout", yard, "PB/S", "--aim", "least-wire")


def test_a_workbook_comes_in_whole_or_not_at_all(yard, tmp_path, capsys):
    path = str(write_power(tmp_path / "power.xlsx", **WHOLE))
    taken = answer(capsys, "power", "import", yard, path)
    assert taken["result"]["format"] == "power"
    assert taken["result"]["counts"] == {
        "level_count": 1, "building_count": 0, "place_count": 2, "supply_count": 2, "circuit_count": 1, "run_count": 3,
        "route_count": 2,
    }  # fmt: skip
    assert isinstance(taken["change_set"], int)
    assert answer(capsys, "power", "import", yard, path)["change_set"] is None
    assert "Read 1 levels, 0 buildings, 2 places" in told(capsys, "power", "import", yard, path)
    with open_project(yard) as project:
        before = state(project)
    bad = str(write_power(tmp_path / "bad.xlsx", **with_cell("Runs", 1, "Length, one way [m]", -3)))
    said = refused(capsys, "power", "import", yard, bad)
    assert "bad.xlsx, sheet Runs, row 3, column E (Length, one way [m])" in said
    with open_project(yard) as project:
        assert state(project) == before


def test_the_sample_s_documents_are_printed(sample_file, tmp_path, capsys):
    told(capsys, "power", "import", str(sample_file), str(SAMPLE / "power.xlsx"))
    for kind in ("power-schedule", "wire-list", "battery-calendar"):
        told(capsys, "release", "print", str(sample_file), kind, "-o", str(tmp_path / "out"), "--format", "xlsx")
        assert (tmp_path / "out" / f"{kind}.xlsx").stat().st_size > 5000
    words = ("release", "print", str(sample_file), "battery-calendar", "-o", str(tmp_path / "out"), "--format", "ics")
    assert answered(capsys, *words)["files"] == [str(tmp_path / "out" / "battery-calendar.ics")]
    assert (tmp_path / "out" / "battery-calendar.ics").read_bytes().startswith(b"BEGIN:VCALENDAR\r\n")


def test_a_slip_in_a_building_s_name_makes_no_other_building(yard, capsys):
    def buildings():
        with open_project(yard) as project:
            return sorted(row["name"] for (table, _), row in state(project).items() if table == "building")

    assert buildings() == ["Main"]
    for words in (("PS1", "building=Mian"), ("PS1", "building=main", "level=1")):
        said = refused(capsys, "power", "add", yard, "supply", *words)
        assert "there is no building" in said
        assert "nearest: Main; --new-building makes a new one" in said
    said = refused(capsys, "power", "add", yard, "supply", "PS1", "building=Annexe 7")
    assert "there is Main; --new-building" in said
    assert facts(yard).supplies == ()
    told(capsys, "power", "add", yard, "supply", "PS1", "building=Main", "level=1")
    # An edit is no way around it.
    assert "nearest: Main" in refused(capsys, "power", "add", yard, "supply", "PS1", "building=Maine")
    assert buildings() == ["Main"]
    told(capsys, "power", "add", yard, "supply", "PS1", "building=Maine", "level=1", "--new-building")
    assert buildings() == ["Main", "Maine"]
    # Known from now on.
    told(capsys, "power", "add", yard, "supply", "PS2", "building=Maine")


REFUSED = {
    "no such supply": (("power", "add", "circuit", "PS7/C1"), "nothing is laid under 'PS7'; there is PS1, PS1/C1"),
    "no such circuit": (("power", "connect", "PS1/C7", "1"), "nothing is laid under 'PS1/C7'"),
    "no such mark": (("power", "connect", "PS1/C1", "77"), "no opening has the mark 77"),
    "no such fact": (("power", "add", "supply", "PS1", "colour=red"), "has no such fact"),
    "no such part": (("power", "add", "supply", "PS1", "part=NONE"), "the catalogue has no part 'NONE'"),
    "part of the wrong kind": (("power", "add", "circuit", "PS1/C1", "wire=PSU"), "'PSU' is a power-supply"),
    "no number": (("power", "add", "supply", "PS1", "x_m=far"), "'far'"),
    "negative length": (("power", "connect", "PS1/C1", "1", "--length", "-4"), "-4 m cannot be"),
    "no such node": (("power", "connect", "PS1/C1", "1", "--from", "J9"), "circuit C1 has no J9"),
    "zero length": (("power", "add", "run", "PS1/C1", "from_node=supply", "to_node=1", "length_m=0"), "0 m of the run"),
    "gauge": (("power", "add", "run", "PS1/C1", "from_node=supply", "to_node=1", "gauge=pencil"), "Gauge: of the run"),
    "loop": (("power", "add", "run", "PS1/C1", "from_node=J1", "to_node=J1"), "ends where it begins"),
    "nothing to lift": (("power", "remove", "PS1/C7"), "nothing is laid under 'PS1/C7'"),
    "no run to lift": (("power", "remove", "PS1/C1", "--run-to", "J9"), "no run of this circuit ends at J9"),
    "no run to change": (("power", "add", "run", "PS1/C1", "--run-to", "J9", "length_m=4"), "no run of this circuit"),
    "a circuit by its run": (("power", "add", "circuit", "PS1/C1", "--run-to", "1"), "accepted: with run"),
    "no such level": (("power", "level", "Main", "9", "3"), "Main has no level 9"),
    "no route": (("power", "route", "1", "PS1"), "give how long the route is"),
    "route of no length": (("power", "route", "1", "PS1", "0"), "0 m cannot be"),
    "no such building": (("power", "plan", "Nowhere"), "there is no building 'Nowhere'"),
    "no such wire": (("power", "plan", "Main", "--wire", "PSU"), "'PSU' is no wire"),
    "run of a supply": (("power", "add", "run", "PS1", "from_node=supply", "to_node=1"), "circuit"),
}


@pytest.mark.parametrize("name", REFUSED)
def test_a_refusal_says_why_and_changes_nothing(yard, capsys, name):
    present(capsys, yard)
    with open_project(yard) as project:
        before = state(project)
    (room, verb, *rest), word = REFUSED[name]
    assert word in refused(capsys, room, verb, yard, *rest)
    with open_project(yard) as project:
        assert state(project) == before


@pytest.mark.parametrize(
    "words",
    [
        ("power", "add", "yard", "door", "X"),
        ("power", "connect", "yard", "PS1/C1"),
        ("power", "level", "yard", "Main", "1", "high"),
        ("power", "plan", "yard"),
    ],
)
def test_wrong_usage(words, yard, capsys):
    assert run([yard if word == "yard" else word for word in words]) == 2
    capsys.readouterr()

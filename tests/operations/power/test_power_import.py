"""Taking in a power workbook: what it says stands, twice is no step, problems name their cell, nothing half done."""

import shutil

import pytest
from sqlalchemy import select

from hwsched.exchange.problems import InputRejected
from hwsched.model.power_queries import level_heights
from hwsched.model.project import open_project
from hwsched.model.tables import CHANGE_ENTRY
from hwsched.operations.power.connecting import set_route
from hwsched.operations.power.power_editing import edit_power_row
from hwsched.operations.power.power_import import import_power, take_in
from hwsched.operations.power.power_results import power_result
from hwsched.paths import SAMPLE
from tests.exchange.powers import SHEETS, WHOLE, with_cell, write_power
from tests.model.backends import furnished
from tests.model.states import state
from tests.operations.power.test_power_editing import there_and_back
from tests.operations.powered import WHO, doors, fit_all, lines, power, write_catalogue


@furnished
def yard(project):
    """Three openings without places, and the catalogue."""
    write_catalogue(project)
    return doors(project, ["1", "2", "3"], plan_y_m=None, rise_m=None)


def taken(project, path, sheets=None):
    return import_power(project, write_power(path / "power.xlsx", **(sheets or WHOLE)), who=WHO)


def test_what_a_workbook_says_stands(project, yard, tmp_path):
    done = there_and_back(project, lambda: taken(project, tmp_path))
    assert done.rows == {"levels": 1, "buildings": 0, "places": 2, "supplies": 2, "circuits": 1, "runs": 3, "routes": 2}
    facts = power(project)
    first, second = sorted(facts.supplies, key=lambda s: s.name)
    assert (first.place, first.part, first.use, first.battery, first.standby_hours) == (
        "Closet", "PSU", "laid", "BAT", 4.0,
    )  # fmt: skip
    assert (second.level, second.use) == ("2", "candidate")
    (circuit,) = facts.circuits
    assert (circuit.wire, circuit.at_once, circuit.limiter_a, circuit.alarm) == ("WIRE", 2, 2.0, "stays")
    assert lines(project) == [("C1", "1", "2", 6.0), ("C1", "J1", "1", 4.0), ("C1", "supply", "J1", 12.5)]
    last = next(r for r in facts.runs if r.opening_id == yard["2"])
    assert (last.gauge, last.stranding, last.parallel, last.from_node) == ("16 AWG", "solid", 2, yard["1"])
    assert sorted((r.length_m, r.pinned) for r in facts.routes) == [(15.0, True), (33.0, False)]
    with project.reading() as connection:
        assert level_heights(connection)["Main", "1"] == 0.0
    fit_all(project)
    work = power_result(project)
    assert not [f for f in work.findings if f.finding.rule in ("circuit-known", "circuit-sound")]
    assert work.circuit_of(yard["2"]) is not None


def test_twice_is_no_step(project, yard, tmp_path):
    first = taken(project, tmp_path)
    assert first.changes.number is not None
    before = state(project)
    again = taken(project, tmp_path)
    assert again.changes.number is None
    assert state(project) == before


def test_the_sample_s_workbook_twice_is_no_step(sample_file, tmp_path):
    shutil.copy(SAMPLE / "power.xlsx", tmp_path / "power.xlsx")
    with open_project(sample_file) as project:
        before = state(project)
        changes = import_power(project, tmp_path / "power.xlsx", who=WHO).changes
        after = state(project)
        # A siting has laid some of its places since; their use alone goes back to what the workbook says.
        changed = {key for key in before if before[key] != after[key]}
        assert {key[0] for key in changed} <= {"supply"}
        assert all(
            {name for name in before[key] if before[key][name] != after[key][name]} == {"use"} for key in changed
        )
        assert changes.number is None or changed
        assert import_power(project, tmp_path / "power.xlsx", who=WHO).changes.number is None


def test_a_later_workbook_changes_what_it_names_and_nothing_else(project, yard, tmp_path):
    taken(project, tmp_path)
    ids = {s.name: s.id for s in power(project).supplies}
    there_and_back(
        project,
        lambda: taken(project, tmp_path, {
            "Supplies": [{"Name": "PS1", "Power supply": "PSU", "Where it stands": "Shaft"}],
            "Runs": [{"Supply": "PS1", "Circuit": "C1", "From": "J1", "To": "1", "Length, one way [m]": 5.5}],
        }),
    )  # fmt: skip
    first = next(s for s in power(project).supplies if s.name == "PS1")
    assert (first.id, first.place, first.building, first.level, first.battery) == (
        ids["PS1"], "Shaft", "Main", "1", "BAT",
    )  # fmt: skip
    assert ("C1", "J1", "1", 5.5) in lines(project)
    assert len(lines(project)) == 3


def test_a_column_for_the_building_alone_keeps_the_level(project, yard, tmp_path):
    taken(project, tmp_path)
    taken(project, tmp_path, {"Supplies": [{"Name": "PS1", "Building": "Annex"}]})
    first = next(s for s in power(project).supplies if s.name == "PS1")
    assert (first.building, first.level) == ("Annex", "1")


def test_an_empty_use_is_laid(project, yard, tmp_path):
    taken(project, tmp_path, {"Supplies": [{"Name": "PS9", "Use": None, "Building": "Main"}]})
    assert [s.use for s in power(project).supplies] == ["laid"]
    taken(project, tmp_path, {"Supplies": [{"Name": "PS9", "Use": None, "Building": "Main"}]})
    assert [s.use for s in power(project).supplies] == ["laid"]


def test_a_pin_moves_the_pair(project, yard, tmp_path):
    taken(project, tmp_path)
    second = next(s.id for s in power(project).supplies if s.name == "PS2")
    set_route(project, yard["1"], second, who=WHO, pinned=True)
    taken(project, tmp_path, {"Routes": [{"Mark": "1", "Supply": "PS1", "Must hang on it": "yes"}]})
    assert sorted((r.supply_id == second, r.pinned, r.length_m) for r in power(project).routes) == [
        (False, True, 15.0), (True, False, 33.0),
    ]  # fmt: skip


def test_without_its_column_a_pin_stays(project, yard, tmp_path):
    taken(project, tmp_path)
    taken(project, tmp_path, {"Routes": [{"Mark": "1", "Supply": "PS1", "Length, one way [m]": 16.0}]})
    assert sorted((r.length_m, r.pinned) for r in power(project).routes) == [(16.0, True), (33.0, False)]


BAD = {
    "unknown part": ("Supplies", 0, "Power supply", "NONE", "NONE"),
    "part of the wrong kind": ("Supplies", 0, "Power supply", "WIRE", "is a wire"),
    "battery of the wrong kind": ("Supplies", 1, "Standby battery", "PSU", "is a power-supply"),
    "slash": ("Supplies", 1, "Name", "A/B", "no /"),
    "use": ("Supplies", 0, "Use", "perhaps", ""),
    "no name": ("Supplies", 1, "Name", None, "must be filled in"),
    "number": ("Supplies", 0, "Standby asked [h]", "long", ""),
    "out of range": ("Supplies", 0, "Standby asked [h]", 999, ""),
    "wire of a circuit": ("Circuits", 0, "Wire", "PSU", "is a power-supply"),
    "supply of a circuit": ("Circuits", 0, "Supply", "PS7", "is no supply"),
    "circuit with a slash": ("Circuits", 0, "Name", "A/B", "no /"),
    "circuit of a run": ("Runs", 0, "Circuit", "C7", "is no circuit of PS1"),
    "supply of a run": ("Runs", 0, "Supply", "PS7", "is no supply"),
    "zero length": ("Runs", 1, "Length, one way [m]", 0, "0 m"),
    "negative length": ("Runs", 1, "Length, one way [m]", -3, "-3 m"),
    "gauge": ("Runs", 2, "Gauge", "pencil", "pencil"),
    "stranding": ("Runs", 2, "Stranding", "woven", ""),
    "run to the supply": ("Runs", 1, "To", "supply", "ends at the supply"),
    "fed twice": ("Runs", 3, "From", "J1", "2 is fed already"),
    "mark of a place": ("Places", 0, "Mark", "77", "no opening of the project"),
    "mark of a route": ("Routes", 0, "Mark", "77", "no opening of the project"),
    "supply of a route": ("Routes", 0, "Supply", "PS7", "is no supply"),
    "route of no length": ("Routes", 0, "Length, one way [m]", 0, ""),
    "height": ("Levels", 0, "Height of the floor [m]", 5000, ""),
    "supply twice": ("Supplies", 2, "Name", "PS1", "stands in row 2 already"),
    "circuit twice": ("Circuits", 1, "Wire", "WIRE", "stands in row 2 already"),
    "place twice": ("Places", 1, "Mark", "1", "stands in row 2 already"),
    "route twice": ("Routes", 1, "Supply", "PS1", "stands in row 2 already"),
    "kept twice": ("Routes", 1, "Must be fed by it", "yes", "kept at PS1 by row 2"),
}


@pytest.mark.parametrize("name", BAD)
def test_a_problem_names_its_cell_and_nothing_is_done(project, yard, tmp_path, name):
    sheet, row, header, value, word = BAD[name]
    before = state(project)
    with pytest.raises(InputRejected) as refused:
        taken(project, tmp_path, with_cell(sheet, row, header, value))
    assert state(project) == before
    found = refused.value.problems
    said = [problem.describe() for problem in found]
    mine = [
        problem for problem in found
        if problem.sheet == sheet and problem.row == row + 2 and word in problem.message + problem.read
    ]  # fmt: skip
    assert mine, said
    assert mine[0].file.endswith("power.xlsx")
    if name != "fed twice":
        assert mine[0].header == ("Name" if name == "circuit twice" else header), said
        assert mine[0].column, said


NAMING_PARTS = [
    (title, each.label)
    for title, attributes in SHEETS.values()
    for each in attributes
    if each.name in ("part", "battery", "wire", "cabinet", "limiter")
]


@pytest.mark.parametrize(("sheet", "header"), NAMING_PARTS)
@pytest.mark.parametrize(
    ("number", "said"),
    [("NONE", "the catalogue has no part 'NONE'"), ("CYL", "'CYL' is a mortise-cylinder; accepted: a")],
)
def test_every_cell_that_names_a_part_is_refused_by_itself(project, yard, tmp_path, sheet, header, number, said):
    with pytest.raises(InputRejected) as refused:
        taken(project, tmp_path, with_cell(sheet, 0, header, number))
    # Rows of other sheets that speak of the refused row are refused with it.
    (problem,) = (each for each in refused.value.problems if each.sheet == sheet)
    assert (problem.row, problem.header) == (2, header)
    # The cell is named already: the message says what is wrong with it, and not once more where.
    assert problem.message.startswith(said)


def test_a_loop_is_named_where_it_closes(project, yard, tmp_path):
    with pytest.raises(InputRejected) as refused:
        taken(project, tmp_path, with_cell("Runs", 1, "From", "2"))
    (problem,) = refused.value.problems
    assert (problem.sheet, problem.row, problem.header) == ("Runs", 4, "From")
    assert "closes a loop" in problem.message


def test_all_problems_are_told_at_once(project, yard, tmp_path):
    sheets = with_cell("Supplies", 0, "Power supply", "NONE")
    sheets["Runs"] = with_cell("Runs", 2, "Gauge", "pencil")["Runs"]
    sheets["Places"] = with_cell("Places", 0, "Mark", "77")["Places"]
    with pytest.raises(InputRejected) as refused:
        taken(project, tmp_path, sheets)
    assert {p.sheet for p in refused.value.problems} >= {"Supplies", "Places"}


@pytest.mark.parametrize(
    ("sheets", "word"),
    [
        ({"Sheet": [{"Mark": "1"}]}, "none of the sheets"),
        ({**WHOLE, "Supplies (2)": WHOLE["Supplies"]}, "sheet Supplies (2): looks like a sheet Supplies and would not"),
        ({**WHOLE, "Closets": WHOLE["Supplies"]}, "sheet Closets: looks like a sheet Supplies"),
        ({"Levels": [{"Building": None, "Level": None, "Height of the floor [m]": None}]}, "no row in Levels"),
        ({"Supplies": [{"Name": "PS1", "Building": "Main", "Colour": "red"}]}, "Colour"),
        ({"Runs": [{"From": "supply", "To": "1"}]}, "Supply, Circuit"),
    ],
)
def test_a_workbook_of_another_kind(project, yard, tmp_path, sheets, word):
    before = state(project)
    with pytest.raises(InputRejected) as refused:
        taken(project, tmp_path, sheets)
    assert any(word in problem.describe() for problem in refused.value.problems)
    assert state(project) == before


def test_a_file_that_is_none(project, tmp_path):
    for name, content in (("none.xlsx", None), ("text.xlsx", b"not a workbook")):
        if content is not None:
            (tmp_path / name).write_bytes(content)
        with pytest.raises(InputRejected, match=name):
            import_power(project, tmp_path / name, who=WHO)


def test_what_came_in_says_where_from(project, yard, tmp_path):
    taken(project, tmp_path)
    with project.reading() as connection:
        query = select(CHANGE_ENTRY.c.origin).where(CHANGE_ENTRY.c.entity == "run")
        origins = set(connection.execute(query).scalars())
    assert {f"power.xlsx, Runs, row {n}" for n in (2, 3, 4)} <= origins


def test_an_import_meets_what_was_laid_by_hand(project, yard, tmp_path):
    taken(project, tmp_path)
    circuit = power(project).circuits[0]
    edit_power_row(project, "circuit", circuit.id, {"limiter_a": 1.0}, who=WHO)
    assert taken(project, tmp_path).changes.entities == {"circuit"}
    assert power(project).circuits[0].limiter_a == 2.0


def test_a_sheet_that_is_not_read_is_named(project, yard, tmp_path):
    path = write_power(tmp_path / "power.xlsx", **WHOLE, Contacts=[{"Who": "caretaker", "Where": "gate"}])
    came = take_in(project, path, who="t", accept="all")
    assert came.unread == ("Contacts",)
    assert came.said.endswith("; not read: sheet Contacts")

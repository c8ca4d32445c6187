"""What a verb reads is of one state, whatever others write between any two of its statements."""

import os
from collections.abc import Mapping
from contextlib import contextmanager
from dataclasses import fields, is_dataclass, replace

import pytest
from openpyxl import load_workbook
from sqlalchemy import event, select

from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.errors import ChangeError
from hwsched.model.project import open_project
from hwsched.model.queries import latest_change
from hwsched.model.tables import LEVEL, OPENING_TABLE, PART, PROJECT, SUPPLY_TABLE, WAIVER
from hwsched.operations.findings.checking import Checker, check_openings, look_again
from hwsched.operations.findings.waivers import waive, waivers_with_marks
from hwsched.operations.findings.why import why
from hwsched.operations.opening.asked_openings import asked_openings
from hwsched.operations.opening.drawing_views import draw
from hwsched.operations.opening.named_openings import openings_of_building, row_of
from hwsched.operations.opening.scope import Scope
from hwsched.operations.opening.what_if import Question, successors, what_if
from hwsched.operations.parts.catalogue_export import export_catalogue
from hwsched.operations.parts.fewest_part_numbers import fewest_part_numbers
from hwsched.operations.parts.hardware_sets import Line, effect_of_lines, hardware_sets, make_set, propose_sets
from hwsched.operations.power.connecting import connect_openings
from hwsched.operations.power.power_results import power_as_it_stands, power_result
from hwsched.operations.power.supply_siting import propose_siting
from hwsched.operations.release.project_view import project_view
from hwsched.operations.survey.own_fields import define_field, set_own_value
from hwsched.operations.survey.return_visit import missing_and_visit
from hwsched.operations.survey.survey_forms import write_form
from hwsched.operations.survey.survey_import import preview_survey
from hwsched.values import Catalogue, Chosen
from tests.model.backends import furnished
from tests.operations.powered import WHO, circuit, closet, doors, fit_all, heights, write_catalogue
from tests.turns import SEED

FLIPS = {
    PROJECT: ("name", ("Yard", "Quay")),
    OPENING_TABLE: ("room_from", ("Hall", "Store")),
    PART: ("stock", (5.0, 7.0)),
    SUPPLY_TABLE: ("x_m", (0.0, 2.0)),
    LEVEL: ("height_m", (0.0, 3.0)),
    WAIVER: ("reason", ("agreed", "agreed again")),
}
"""What an edit by somebody else changes, all in one step: there, and back by the next one."""


@furnished
def yard(project):
    write_catalogue(project)
    made = doors(project, ["1", "2", "3"], room_from="Hall")
    closets = [closet(project, "PA", use="candidate"), closet(project, "PB", x_m=0.0, y_m=30.0, use="candidate")]
    connect_openings(project, circuit(project, closets[0]), [made["1"], made["2"]], who=WHO)
    heights(project, l1=0.0)
    define_field(project, "opening", "clerk", "Clerk", "text", who=WHO)
    set_own_value(project, "opening", made["1"], "clerk", "Doe", who=WHO)
    make_set(project, "HS", [Line("cylinder", "CYL")], who=WHO, openings=[made["3"]])
    fit_all(project)
    rule = check_openings(project, [made["1"]])[0].findings[0].rule
    waive(project, rule, person="Doe", reason="agreed", who=WHO, opening_id=made["1"])
    flip(project, 0)
    return made


def flip(project, side):
    with project.change("edit-facts", "All at once", WHO) as change:
        for table, (column, values) in FLIPS.items():
            ids = list(change.connection.execute(select(table.c.id)).scalars())
            change.update(table, [(each, {column: values[side]}) for each in ids])


def number_of(project):
    with project.reading() as connection:
        return latest_change(connection)


def cells(path):
    return [[cell.value for cell in row] for sheet in load_workbook(path) for row in sheet.iter_rows()]


def written(path, write):
    write(path)
    return cells(path)


def shown(view):
    """A page without its number, which is told apart."""
    return [view.title, view.openings, view.catalogue.parts, view.power, view.terms, dict(view.level_heights)]


def untimed(preview):
    """A preview without who gave the present values, and when: each writing here is another moment."""
    assert all(fact.source for each in preview.changed for fact in each.facts)
    changed = (replace(each, facts=tuple(replace(fact, source="") for fact in each.facts)) for each in preview.changed)
    return replace(preview, changed=tuple(changed))


def unnumbered(checked):
    """Openings as checked, all of one number, without it."""
    assert len({each.base for each in checked}) == 1
    return [replace(each, base=None) for each in checked]


def siting(found):
    return found.lengths_m, found.wire_m if hasattr(found, "wire_m") else found.siting.wire_m, found.before, found.names


READERS = {
    "check": lambda p, made, tmp: unnumbered(check_openings(p, checker=Checker())),
    "look again": lambda p, made, tmp: unnumbered(look_again(p, list(made.values()), checker=Checker())),
    "page": lambda p, made, tmp: shown(project_view(p)),
    "why": lambda p, made, tmp: why(p, "1"),
    "power": lambda p, made, tmp: power_result(p),
    "power as it stands": lambda p, made, tmp: power_as_it_stands(p),
    "catalogue": lambda p, made, tmp: written(tmp / "c.xlsx", lambda path: export_catalogue(p, path)),
    "form": lambda p, made, tmp: written(tmp / "f.xlsx", lambda path: write_form(p, path, ids=list(made.values()))),
    "missing": lambda p, made, tmp: missing_and_visit(p, None),
    "waivers": lambda p, made, tmp: waivers_with_marks(p),
    "drawing": lambda p, made, tmp: [each.read_text() for each in draw(p, "1", "key-side", tmp / "d.svg")],
    "riser": lambda p, made, tmp: [each.read_text() for each in draw(p, "Main", "riser", tmp / "r.svg")],
    "sets": lambda p, made, tmp: hardware_sets(p),
    "proposed sets": lambda p, made, tmp: propose_sets(p),
    "effect": lambda p, made, tmp: effect_of_lines(p, hardware_sets(p)[0].id, [Line("unit", "EDGE")]),
    "building": lambda p, made, tmp: openings_of_building(p, "Main"),
    "asked": lambda p, made, tmp: asked_openings(p, Scope(where="room from = Hall and not finding = lead-reaches")),
    "row": lambda p, made, tmp: row_of(p, "1", "lock"),
    "what if": lambda p, made, tmp: what_if(p, Question(choices=(Chosen("unit", "EDGE"),))).differences,
    "successors": lambda p, made, tmp: successors(p),
    "siting": lambda p, made, tmp: siting(propose_siting(p, "Main")),
    "fewest kinds": lambda p, made, tmp: fewest_part_numbers(p).choices,
    "survey": lambda p, made, tmp: untimed(preview_survey(p, tmp / "s.csv", SurveyOptions(bare_unit="in")).preview),
}
"""Verbs that are put together from several statements, and what a person would see of them."""
NO_SINGLE = {"effect"}
"""Asked about what another verb has named before: two questions, each of one state."""


def plain(value):
    """The same in values that compare by what they hold; a catalogue compares by identity."""
    if isinstance(value, Catalogue):
        return value.key, value.ranks
    if is_dataclass(value):
        return type(value).__name__, *(plain(getattr(value, field.name)) for field in fields(value))
    if isinstance(value, Mapping):
        return {key: plain(held) for key, held in value.items()}
    return [plain(each) for each in value] if isinstance(value, list | tuple) else value


def seen(reader, project, made, folder):
    try:
        return plain(reader(project, made, folder))
    except ChangeError as error:
        return str(error)


@contextmanager
def listening(project, name, hear):
    event.listen(project.engine, name, hear)
    try:
        yield
    finally:
        event.remove(project.engine, name, hear)


@pytest.fixture
def survey(tmp_path):
    (tmp_path / "s.csv").write_text("Mark,Room from\n1,Store\n9,Hall\n")


@pytest.mark.parametrize("name", sorted(READERS.keys() - NO_SINGLE))
def test_a_verb_reads_in_one_transaction(project, yard, survey, tmp_path, name):
    begun = []
    with listening(project, "begin", lambda connection: begun.append(connection)):
        seen(READERS[name], project, yard, tmp_path)
    assert len(begun) == 1


def places():
    """After which statements somebody writes: the first and every third, other ones each day; in full after each."""
    if os.environ.get("HWSCHED_FUZZ"):
        return range(1, 200)
    return 1, *range(2 + SEED % 3, 200, 3)


@pytest.mark.turns(2)
@pytest.mark.parametrize("name", READERS)
def test_a_writer_between_any_two_statements_is_not_half_seen(project, address, yard, survey, tmp_path, name):
    reader = READERS[name]
    states = []
    for side in (1, 0):
        flip(project, side)
        states.append(seen(reader, project, yard, tmp_path))
    reached = 0
    with open_project(address) as other:
        for at in places():
            asked = 0
            side = at % 2

            def write(connection, cursor, statement, parameters, context, many, at=at, side=side):
                nonlocal asked
                asked += statement.lstrip().startswith("SELECT")
                if asked == at:
                    asked = 1000
                    flip(other, side)

            with listening(project, "after_cursor_execute", write):
                found = seen(reader, project, yard, tmp_path)
            assert found in states
            if asked < 1000:
                break
            reached = at
    assert 1 <= reached < 199


def test_the_number_of_a_page_is_that_of_its_facts(project, address, yard):
    with open_project(address) as other:
        for at in places():
            asked = 0

            def write(connection, cursor, statement, parameters, context, many, at=at):
                nonlocal asked
                asked += statement.lstrip().startswith("SELECT")
                if asked == at:
                    asked = 1000
                    flip(other, at % 2)

            number, title = number_of(project), project.title
            with listening(project, "after_cursor_execute", write):
                view = project_view(project)
            if view.revision == f"working state {number}":
                assert view.title == title
            else:
                assert view.revision == f"working state {number + 1}"
                assert view.title == FLIPS[PROJECT][1][at % 2]
            rooms = {each.given.opening.room_from for each in view.openings}
            assert rooms == {FLIPS[OPENING_TABLE][1][FLIPS[PROJECT][1].index(view.title)]}
            if asked < 1000:
                return
    pytest.fail("the page takes more statements than were tried")

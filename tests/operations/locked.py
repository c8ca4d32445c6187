"""Openings with several locks, surveyed on the workbook form: a deadbolt above a lock, a lock in each leaf of a pair.

Locks are those of `tests.rules.scenario`. The deadbolt's case is 90 mm high, half of it above its cylinder.
"""

from dataclasses import replace

from openpyxl import load_workbook

from hwsched.exchange.survey.book import SurveyOptions
from hwsched.exchange.survey.form import write_survey_form
from hwsched.exchange.survey.form_rows import spelled
from hwsched.model.project import create_project, open_project
from hwsched.model.queries import opening_ids, read_inputs
from hwsched.model.tables import ITEM_TABLE, LEAF_TABLE, OPENING_TABLE
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.survey.survey_import import import_survey
from hwsched.survey import ITEM, LEAF, OPENING
from tests.fitting.door import MORE
from tests.once import copied
from tests.operations.powered import more_parts, stated, write_catalogue
from tests.rules.scenario import leaf, lock, opening

WHO = "ann"
WIDE, NARROW = leaf(position="active"), leaf(position="inactive", width_mm=700.0)
LOCK = lock(case_offset_mm=0.0)
SECOND = replace(LOCK, cylinder_height_mm=1010.0)


def deadbolt(y=1300.0, **facts):
    """A deadbolt to be replaced, its cylinder so high above the floor."""
    usual = {
        "kind": "deadbolt",
        "disposition": "replace",
        "function": "deadlock",
        "cylinder_height_mm": y,
        "case_height_mm": 90.0,
        "case_above_mm": 45.0,
        "case_depth_mm": 100.0,
    }
    return replace(LOCK, **{**usual, **facts})


def surveyed(mark, **facts):
    made = opening(mark=mark, building="Main", level="1", **facts)
    return {**stated(made, OPENING_TABLE), "building": made.building, "level": made.level}


YARD = (
    (surveyed("101"), ((leaf(), LOCK),), (deadbolt(),)),
    (surveyed("P1", form="pair", hand="LHR"), ((WIDE, LOCK), (NARROW, SECOND)), ()),
    (surveyed("S1"), ((leaf(), LOCK),), ()),
)
"""Of each opening: its facts, its leaves each with its lock or None, further items."""


def write_rows(sheet, rows, start=3):
    """Write facts under the headings of a sheet of the form; a fact is named by entity and attribute."""
    headings = {}
    group = None
    for column in range(1, sheet.max_column + 1):
        group = sheet.cell(1, column).value or group
        headings[group, str(sheet.cell(2, column).value).split(" [")[0]] = column
    for number, row in enumerate(rows, start):
        for (heading, attribute), value in row.items():
            column = headings[heading, attribute.label]
            sheet.cell(number, column).value = spelled(attribute, value, "mm")


def filled(path, *openings):
    """Fill in the blank survey form as a surveyor does."""
    write_survey_form(path, bare_unit="mm")
    book = load_workbook(path)
    lock_columns = {
        str(book["Existing items"].cell(2, column).value).split(" [")[0]
        for column in range(1, book["Existing items"].max_column + 1)
    }
    assert {ITEM.attribute("backset_mm").label, ITEM.attribute("lock_form").label} <= lock_columns
    doors, items = [], []
    for facts, leaves, more in openings:
        for at, (each, its_lock) in enumerate(leaves):
            said = facts if at == 0 else {"mark": facts["mark"]}
            row = {("Opening", OPENING.attribute(name)): value for name, value in said.items()}
            row |= {
                ("Leaf", LEAF.attribute(name)): value for name, value in stated(each, LEAF_TABLE, ("ordinal",)).items()
            }
            if its_lock is not None:
                of_lock = stated(its_lock, ITEM_TABLE, ("ordinal", "kind", "disposition"))
                row |= {("Lock", ITEM.attribute(name)): value for name, value in of_lock.items()}
            doors.append(row)
        for each in more:
            plain = ("kind", "leaf", "face", "disposition", "x_mm", "y_mm", "width_mm", "height_mm")
            facts_of = stated(each, ITEM_TABLE, ("ordinal",))
            row = {("Opening", OPENING.attribute("mark")): facts["mark"]}
            row |= {
                ("Existing item" if name in plain else "Lock", ITEM.attribute(name)): value
                for name, value in facts_of.items()
            }
            items.append(row)
    write_rows(book["Openings"], doors)
    write_rows(book["Existing items"], items)
    book.save(path)
    return path


def started(folder):
    """Make a project with the usual parts."""
    project = create_project(folder / "yard.hwsched", "Yard", length_style="mm", bare_unit="mm")
    write_catalogue(project)
    more_parts(project, *MORE)
    return project


def yard(folder, *openings):
    """Make a project, take in the survey of these openings, and fit them."""

    def make(path):
        work = path.with_suffix("")
        work.mkdir()
        with started(work) as project:
            survey = filled(work / "survey.xlsx", *(openings or YARD))
            taken = import_survey(project, survey, SurveyOptions(), who=WHO)
            assert taken.problems == ()
            fit_openings(project, who=WHO)
        (work / "yard.hwsched").rename(path)

    copied(f"locked {openings or YARD}", folder / "yard.hwsched", make)
    return open_project(folder / "yard.hwsched")


def id_of(project, mark):
    with project.reading() as connection:
        return opening_ids(connection)[mark]


def points_of(project, mark):
    """Identifier of each lock point of an opening by its name, in order."""
    with project.reading() as connection:
        return {given.point.name: given.point.id for given in read_inputs(connection, [opening_ids(connection)[mark]])}

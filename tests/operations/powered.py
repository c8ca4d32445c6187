"""Projects with openings that circuits can feed; parts and openings are those of `tests.rules.scenario`."""

from dataclasses import fields

from sqlalchemy import select

from hwsched.model.catalogue_writing import write_parts
from hwsched.model.power_queries import read_power
from hwsched.model.tables import ITEM_TABLE, LEAF_TABLE, OPENING_TABLE
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.power.connecting import set_level_height
from hwsched.operations.power.power_editing import add_circuit, add_supply
from hwsched.operations.survey.editing import add_item, add_opening, edit_facts
from hwsched.values import Item, Leaf
from hwsched.values.power import PowerFacts
from tests.rules.scenario import leaf, lock, opening
from tests.wiring.power_rows import parts

WHO = "ann"


def stated(row, table, without=()):
    """Return the facts of a case's row that its table has, and that are known."""
    names = {f.name for f in fields(row)} & set(table.c.keys()) - {"id", *without}
    return {name: getattr(row, name) for name in names if getattr(row, name) is not None}


def write_catalogue(project, **changed):
    """Write the usual parts, changed attribute by attribute."""
    more_parts(project, *parts(**changed).parts.values())


def more_parts(project, *more):
    """Write parts."""
    with project.change("import-catalogue", "Parts", WHO) as change:
        write_parts(change, more, "test")


def door(project, mark, **facts):
    """Add a usual opening that takes a unit; returns its identifier."""
    made = opening(**{"mark": mark, "building": "Main", "level": "1", "power_wish": "supply",
                      "plan_x_m": 0.0, "plan_y_m": 0.0, "rise_m": 0.0, **facts})  # fmt: skip
    row = {**stated(made, OPENING_TABLE), "building": made.building, "level": made.level}
    opening_id = add_opening(project, row, who=WHO)[1]
    with project.reading() as connection:
        leaf_id = connection.execute(select(LEAF_TABLE.c.id).where(LEAF_TABLE.c.opening_id == opening_id)).scalar()
    usual_leaf: Leaf = leaf()
    edit_facts(project, "leaf", leaf_id, stated(usual_leaf, LEAF_TABLE), who=WHO)
    usual_lock: Item = lock()
    add_item(project, opening_id, stated(usual_lock, ITEM_TABLE), who=WHO)
    return opening_id


def doors(project, marks, **facts):
    """Add usual openings in a row, ten metres apart; returns identifier by mark."""
    return {mark: door(project, mark, plan_x_m=10.0 * (i + 1), **facts) for i, mark in enumerate(marks)}


def closet(project, name="PS1", **facts):
    """Lay a supply, or name a place for one; returns its identifier."""
    place = {"building": "Main", "level": "1", "x_m": 0.0, "y_m": 0.0, "rise_m": 0.0, "part": "PSU"}
    return add_supply(project, {"name": name, **place, **facts}, who=WHO)[1]


def circuit(project, supply_id, name="C1", **facts):
    """Lay a circuit; returns its identifier."""
    return add_circuit(project, supply_id, {"name": name, "wire": "WIRE", **facts}, who=WHO)[1]


def fit_all(project):
    """Fit every opening."""
    fit_openings(project, who=WHO)


def power(project) -> PowerFacts:
    """Return what is laid."""
    with project.reading() as connection:
        return read_power(connection)


def lines(project):
    """Return the runs in the names that people give: circuit, from, to, length."""
    facts = power(project)
    with project.reading() as connection:
        marks = {row.id: row.mark for row in connection.execute(select(OPENING_TABLE.c.id, OPENING_TABLE.c.mark))}
    circuits = {c.id: c.name for c in facts.circuits}
    return sorted(
        (circuits[r.circuit_id], marks.get(r.from_node, r.from_node), marks.get(r.to_node, r.to_node), r.length_m)
        for r in facts.runs
    )


def heights(project, building="Main", **metres):
    """Set heights of levels: ``heights(project, l1=0.0)`` of levels 1 and so on."""
    for level, height in metres.items():
        set_level_height(project, building, level.removeprefix("l"), height, who=WHO)

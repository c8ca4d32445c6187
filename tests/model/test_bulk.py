"""Identifiers, many rows in one go, reading by identifier."""

import uuid

from sqlalchemy import bindparam, insert, select, update

from hwsched.model.bulk import among, chunks, execute_many, insert_columns, inserting, new_ids, rows_by_id
from hwsched.model.tables import LEVEL, OPENING_TABLE

ROW = {column.name: None for column in OPENING_TABLE.columns} | {"version": 1, "extra": {}}


def test_identifiers_are_random_uuids_that_ascend():
    made = new_ids(2000)
    assert len(set(made)) == 2000
    assert made == sorted(made)
    # RFC 9562, section 5.4.
    assert {(uuid.UUID(each).version, uuid.UUID(each).variant) for each in made} == {(4, uuid.RFC_4122)}
    assert new_ids(0) == []


def test_values_come_back_as_they_were(project):
    rows = [
        ROW
        | {"id": "a", "mark": "0012", "stair": True, "frame_stop_mm": 0.1, "priority": 7, "extra": {"ü": [1, None]}},
        ROW | {"id": "b", "mark": "%(x)s ? :y 'z'", "stair": False, "notes": "line\nline ½″"},
    ]
    with project.writing() as connection:
        execute_many(connection, insert(OPENING_TABLE), rows)
        execute_many(connection, insert(OPENING_TABLE), [])
    with project.reading() as connection:
        found = [dict(row._mapping) for row in connection.execute(select(OPENING_TABLE).order_by(OPENING_TABLE.c.id))]
    assert found == rows
    assert found[0]["stair"] is True


def test_rows_of_several_a_statement_are_each_there_as_they_were(project):
    """As many as fill statements, one more and one less; with maps, flags and unknowns in them."""
    many = [
        ROW | {"id": f"{number:04d}", "mark": str(number), "stair": number % 2 == 0, "extra": {"n": number}}
        for number in range(1001)
    ]
    for count in (1, 13, 14, 1000, 1001):
        with project.writing() as connection:
            connection.execute(OPENING_TABLE.delete())
            execute_many(connection, inserting(OPENING_TABLE), many[:count])
            query = select(OPENING_TABLE).order_by(OPENING_TABLE.c.id)
            assert [dict(row._mapping) for row in connection.execute(query)] == many[:count]


def test_rows_told_as_columns(project):
    names = ("Hall", "Yard", None)
    columns = {column.name: [None] * 3 for column in LEVEL.columns}
    told = {**columns, "id": ["a", "b", "c"], "version": [1, 1, 1], "name": names, "sort": range(3)}
    with project.writing() as connection:
        insert_columns(connection, LEVEL, told)
        insert_columns(connection, LEVEL, {name: [] for name in told})
        query = select(LEVEL.c.id, LEVEL.c.name, LEVEL.c.sort).order_by(LEVEL.c.id)
        assert [tuple(row) for row in connection.execute(query)] == [("a", "Hall", 0), ("b", "Yard", 1), ("c", None, 2)]


def test_a_statement_of_one_value(project):
    with project.writing() as connection:
        execute_many(
            connection, insert(OPENING_TABLE), [ROW | {"id": "a", "mark": "1"}, ROW | {"id": "b", "mark": "2"}]
        )
        gone = OPENING_TABLE.delete().where(OPENING_TABLE.c.id == bindparam("row_id"))
        execute_many(connection, gone, [{"row_id": "a"}])
    with project.reading() as connection:
        assert connection.execute(select(OPENING_TABLE.c.id)).scalars().all() == ["b"]


def test_maps_in_an_update(project):
    changed = update(OPENING_TABLE).where(OPENING_TABLE.c.id == bindparam("row_id"))
    typed = changed.values(extra=bindparam("new", type_=OPENING_TABLE.c.extra.type))
    with project.writing() as connection:
        execute_many(connection, insert(OPENING_TABLE), [ROW | {"id": "a", "mark": "1"}])
        execute_many(connection, typed, [{"row_id": "a", "new": {"k": 1.5}}])
        assert connection.execute(select(OPENING_TABLE.c.extra)).scalar() == {"k": 1.5}


def test_reading_more_than_a_statement_takes(project):
    ids = new_ids(2500)
    with project.writing() as connection:
        execute_many(connection, insert(OPENING_TABLE), [ROW | {"id": each, "mark": each} for each in ids])
    assert [len(each) for each in chunks(ids)] == [1000, 1000, 500]
    with project.reading() as connection:
        found = rows_by_id(connection, OPENING_TABLE, [OPENING_TABLE.c.mark], [*ids, "nobody"])
        assert {key: row[1] for key, row in found.items()} == {each: each for each in ids}
        query = select(OPENING_TABLE.c.id)
        assert len(list(among(connection, query, OPENING_TABLE.c.id, None))) == 2500
        assert list(among(connection, query, OPENING_TABLE.c.id, [])) == []

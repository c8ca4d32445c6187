"""Identifiers, many rows in one go, reading by identifier."""

import uuid

from sqlalchemy import bindparam, insert, select, update

from hwsched.model.bulk import among, chunks, execute_many, new_ids, rows_by_id
from hwsched.model.tables import OPENING_TABLE

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

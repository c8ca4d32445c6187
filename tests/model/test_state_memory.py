"""What seldom changes is read again after a change set that touched its tables, and only then."""

import contextlib

import pytest
from sqlalchemy import event, select

from hwsched.model.project import open_project
from hwsched.model.state_memory import StateMemory
from hwsched.model.tables import HARDWARE_SET, OPENING_TABLE, OWN_FIELD, PROJECT


def change(project):
    return project.change("test", "Change", "ann")


class Counting:
    """A reader of one column that counts how often it was asked."""

    def __init__(self, column):
        self.column, self.asked = column, 0

    def __call__(self, connection):
        self.asked += 1
        return sorted(connection.execute(select(self.column)).scalars())


@pytest.fixture
def sets():
    return Counting(HARDWARE_SET.c.name)


@pytest.fixture
def styles():
    return Counting(PROJECT.c.length_style)


def test_each_is_read_again_for_its_own_tables_only(project, sets, styles):
    memory = StateMemory()

    def both():
        with project.reading() as connection:
            return memory.read(connection, sets, HARDWARE_SET), memory.read(connection, styles, PROJECT)

    _, style = both()
    assert both() == ([], style)
    with change(project) as made:
        made.insert(HARDWARE_SET, [{"name": "Doors of the stair"}])
    assert both() == (["Doors of the stair"], style)
    assert (sets.asked, styles.asked) == (2, 1)
    with change(project) as made:
        made.update(PROJECT, [(project.id, {"length_style": "mm"})])
        made.insert(OPENING_TABLE, [{"mark": "1"}])
    assert both() == (["Doors of the stair"], ["mm"])
    assert (sets.asked, styles.asked) == (2, 2)


def test_another_handle_s_change_is_seen_and_an_earlier_transaction_spoils_nothing(project, address, sets):
    memory = StateMemory()
    with project.reading() as earlier:
        assert memory.read(earlier, sets, HARDWARE_SET) == []
        with open_project(address) as other:
            with change(other) as made:
                made.insert(HARDWARE_SET, [{"name": "A"}])
            with other.reading() as later:
                assert memory.read(later, sets, HARDWARE_SET) == ["A"]
        assert memory.read(earlier, sets, HARDWARE_SET) == []
    with project.reading() as connection:
        assert memory.read(connection, sets, HARDWARE_SET) == ["A"]


def test_what_a_change_set_in_the_making_sees_is_not_remembered(project, sets):
    memory = StateMemory()
    with project.reading() as connection:
        assert memory.read(connection, sets, HARDWARE_SET, OWN_FIELD) == []
    with contextlib.suppress(ZeroDivisionError), change(project) as made:
        made.insert(HARDWARE_SET, [{"name": "A"}])
        assert memory.read(made.connection, sets, HARDWARE_SET) == ["A"]
        raise ZeroDivisionError
    # The number of what was rolled back goes to the next one.
    with change(project) as made:
        made.insert(HARDWARE_SET, [{"name": "B"}])
    with project.reading() as connection:
        assert memory.read(connection, sets, HARDWARE_SET) == ["B"]


def test_nobody_asks_twice_in_one_transaction_which_change_set_is_the_latest(project, sets, styles):
    memory = StateMemory()
    with project.reading() as connection:
        said = []
        event.listen(connection, "before_cursor_execute", lambda *told: said.append(told[2]))
        for _ in range(3):
            memory.read(connection, sets, HARDWARE_SET)
            memory.read(connection, styles, PROJECT)
    assert len(said) == 3

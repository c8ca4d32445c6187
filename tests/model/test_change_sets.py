"""What a change set is known by elsewhere: identifier, base, device, session; in new projects and in older ones."""

import re
import shutil

from hwsched.model.file.upgrading import upgrade_project
from hwsched.model.journal.history import history, newest
from hwsched.model.project import open_project
from hwsched.model.tables import OPENING_TABLE
from tests.model.saved_projects import SAVED, restore


def add(project, mark, base=None, who="ann"):
    with project.change("add-opening", f"Add {mark}", who, base=base) as change:
        change.insert(OPENING_TABLE, [{"mark": mark}])


def steps(project):
    with project.reading() as connection:
        return history(connection)


def test_a_change_set_has_an_identifier_a_base_a_device_and_a_session(project, address, monkeypatch):
    add(project, "1")
    monkeypatch.setattr("platform.node", lambda: "bench-2")
    with open_project(address) as other:
        add(other, "2", base=0)
        add(other, "3")
    monkeypatch.setattr("platform.node", lambda: "")
    with open_project(address) as third:
        add(third, "4")
    found = steps(project)
    # RFC 9562: version 4, variant 10.
    assert all(re.fullmatch("[0-9a-f]{12}4[0-9a-f]{3}[89ab][0-9a-f]{15}", step.uuid) for step in found)
    assert len({step.uuid for step in found}) == 4
    # Made with a view of nothing, it says so; otherwise it had seen all that was there.
    assert [step.base for step in found] == [0, 0, 2, 3]
    assert [step.device for step in found[1:]] == ["bench-2", "bench-2", "unknown"]
    assert found[1].session == found[2].session
    assert len({step.session for step in found}) == 3


def test_what_was_read_has_been_seen_up_to_there(project):
    with project.reading() as connection:
        assert newest(connection) == 0
    add(project, "1")
    add(project, "2")
    with project.reading() as connection:
        assert newest(connection) == 2


def test_older_change_sets_get_the_same_identifiers_in_every_copy(tmp_path):
    """Two people open copies of one older file: the steps in it are known to be the same."""
    target = tmp_path / "saved.hwsched"
    restore(SAVED / "0002.sql", target)
    copy = shutil.copy(target, tmp_path / "copy.hwsched")
    told = []
    for path in (target, copy):
        upgrade_project(path)
        with open_project(path) as project:
            told.append([(step.uuid, step.base, step.device, step.session) for step in steps(project)])
    assert told[0] == told[1]
    assert len({uuid for uuid, *_ in told[0]}) == len(told[0]) > 10
    assert {known[1:] for known in told[0]} == {(None, None, None)}

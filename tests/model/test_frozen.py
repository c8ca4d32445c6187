"""Frozen contents: held once by hash, given back bit for bit or not at all."""

import hashlib

import pytest
from sqlalchemy import delete, func, select, update

from hwsched.model.errors import DamagedProjectError, MissingRowError
from hwsched.model.frozen import hash_of, hold_frozen, read_frozen, read_revisions, revision_with
from hwsched.model.tables import FROZEN

SHORT, LONG = b'{"a":1}', b'{"text":"' + b"long " * 2000 + b'"}'
KEYS = {hash_of("fit", content): ("fit", content) for content in (SHORT, LONG)}


def held(project):
    with project.reading() as connection:
        return connection.execute(select(func.count()).select_from(FROZEN)).scalar()


def hold(project, contents):
    with project.writing() as connection:
        return hold_frozen(connection, contents)


def test_the_hash_is_of_kind_and_content():
    assert hash_of("fit", SHORT) == hashlib.sha256(b'fit\n{"a":1}').hexdigest()
    assert hash_of("fit", SHORT) != hash_of("part", SHORT)


def test_contents_are_held_once_and_come_back(project):
    assert hold(project, KEYS) == 2
    assert hold(project, KEYS) == 0
    assert held(project) == 2
    with project.reading() as connection:
        assert read_frozen(connection, KEYS) == {key: content for key, (_, content) in KEYS.items()}
        size = connection.execute(select(func.max(func.length(FROZEN.c.content)))).scalar()
    assert size < len(LONG) / 10


@pytest.mark.parametrize("wrong", [b"{}", b"\x78\x01 no zlib", b""])
def test_what_was_changed_from_outside_is_told(project, wrong):
    hold(project, KEYS)
    key = hash_of("fit", SHORT)
    with project.writing() as connection:
        connection.execute(update(FROZEN).where(FROZEN.c.hash == key).values(content=wrong))
    with project.reading() as connection, pytest.raises(DamagedProjectError, match="not what was frozen"):
        read_frozen(connection, [key])


def test_what_is_lost_is_told(project):
    hold(project, KEYS)
    with project.writing() as connection:
        connection.execute(delete(FROZEN))
    with project.reading() as connection, pytest.raises(DamagedProjectError, match="lost"):
        read_frozen(connection, list(KEYS))


def test_no_revision_yet(project):
    with project.reading() as connection:
        assert read_revisions(connection) == []
        with pytest.raises(MissingRowError, match="none yet"):
            revision_with(connection, "A")

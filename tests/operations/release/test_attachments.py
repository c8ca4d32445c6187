"""Files at things: held once by content, journalled where they hang, given back bit for bit."""

import hashlib
from collections import Counter

import pytest
from sqlalchemy import func, select, update

from hwsched.exchange.problems import InputRejected
from hwsched.model.catalogue_writing import write_parts
from hwsched.model.errors import DamagedProjectError, MissingRowError, NotUndoableError, ValueRefusedError
from hwsched.model.journal.history import changes_of_opening
from hwsched.model.tables import ATTACHMENT, BLOB
from hwsched.operations.project.history import history, redo, undo, undo_one
from hwsched.operations.release import attachments
from hwsched.operations.release.attachments import (
    attach,
    attach_content,
    attachment_with,
    attachments_of,
    detach,
    fetch,
    fetch_into,
)
from hwsched.operations.survey.editing import add_item, add_opening, remove
from hwsched.operations.survey.things import Thing, thing_named
from hwsched.values import Part
from tests.model.backends import furnished
from tests.model.states import state

WHO = "ann"
PHOTO = b"\x89PNG\r\n\x1a\n" + bytes(range(256)) * 20


@furnished
def yard(project):
    with project.change("import-catalogue", "Parts", WHO) as change:
        write_parts(change, [Part("C-1", "cam")], "test")
    for mark in ("1", "2"):
        _, opening = add_opening(project, {"mark": mark}, who=WHO)
        add_item(project, opening, {"kind": "lock"}, who=WHO)
    return project


@pytest.fixture
def photo(tmp_path):
    path = tmp_path / "Tür 1.jpg"
    path.write_bytes(PHOTO)
    return path


def at(project, words, path, **more):
    thing = thing_named(project, words.split())
    return attach(project, thing.entity, thing.row_id, path, who=WHO, **more)


def blobs(project):
    with project.reading() as connection:
        return connection.execute(select(func.count()).select_from(BLOB)).scalar()


def test_a_file_hangs_at_a_thing_and_comes_back_bit_for_bit(yard, photo):
    changes = at(yard, "1", photo, title="Key side", note="the closer is bent")
    (found,) = attachments_of(yard)
    assert changes.added == (found.id,)
    assert changes.openings == {found.opening_id}
    assert (found.entity, found.about, found.name) == ("opening", "1", "Tür 1.jpg")
    assert (found.title, found.note, found.size) == ("Key side", "the closer is bent", len(PHOTO))
    # By its content: the name says jpg.
    assert found.media_type == "image/png"
    assert found.hash == hashlib.sha256(PHOTO).hexdigest()
    assert fetch(yard, found.id) == PHOTO
    photo.unlink()
    assert fetch(yard, found.id) == PHOTO


def test_a_content_is_held_once_wherever_it_hangs(yard, photo):
    for words in ("1", "2", "1 lock", "part C-1"):
        at(yard, words, photo)
    assert blobs(yard) == 1
    assert [each.about for each in attachments_of(yard)] == ["1", "1 existing item", "2", "part C-1"]
    opening = thing_named(yard, ["1"]).row_id
    # The lock's photograph belongs to the opening's history too; the part's does not.
    assert [each.about for each in attachments_of(yard, opening_id=opening)] == ["1", "1 existing item"]
    assert [each.about for each in attachments_of(yard, thing_named(yard, ["1"]))] == ["1"]
    with yard.reading() as connection:
        told = [each for each in changes_of_opening(connection, opening) if each.entity == "attachment"]
    assert len(told) == 2
    assert all(each.after["blob"] == hashlib.sha256(PHOTO).hexdigest() for each in told)


def test_undo_and_redo_find_the_content(yard, photo):
    before = state(yard)
    at(yard, "1", photo)
    connected_devices = state(yard)
    (found,) = attachments_of(yard)
    detach(yard, [found.id], who=WHO)
    assert attachments_of(yard) == ()
    assert state(yard) == before
    undo(yard, who=WHO)
    assert state(yard) == connected_devices
    assert fetch(yard, found.id) == PHOTO
    undo(yard, who=WHO)
    assert state(yard) == before
    redo(yard, who=WHO)
    assert fetch(yard, attachments_of(yard)[0].id) == PHOTO


def test_what_is_removed_takes_its_files_along_and_brings_them_back(yard, photo):
    at(yard, "1", photo)
    at(yard, "1 lock", photo)
    at(yard, "2 lock", photo)
    at(yard, "part C-1", photo)
    before = state(yard)
    item = thing_named(yard, ["1", "lock"])
    remove(yard, item.entity, item.row_id, who=WHO)
    assert [each.about for each in attachments_of(yard)] == ["1", "2 existing item", "part C-1"]
    undo(yard, who=WHO)
    assert state(yard) == before
    remove(yard, "opening", thing_named(yard, ["1"]).row_id, who=WHO)
    assert [each.about for each in attachments_of(yard)] == ["2 existing item", "part C-1"]
    undo(yard, who=WHO)
    assert state(yard) == before


def test_a_thing_at_which_a_file_hangs_is_not_undone_from_under_it(yard, photo):
    changes, opening = add_opening(yard, {"mark": "3"}, who=WHO)
    attach(yard, "opening", opening, photo, who=WHO)
    with yard.change("import-catalogue", "Parts", WHO) as change:
        write_parts(change, [Part("C-2", "cam")], "test")
    at(yard, "part C-2", photo)
    for number in (changes.number, change.number):
        with pytest.raises(NotUndoableError, match="Attach"):
            undo_one(yard, number, who=WHO)


def test_a_removed_thing_keeps_its_detached_file_from_coming_back(yard, photo):
    at(yard, "2 lock", photo)
    (found,) = attachments_of(yard)
    gone = detach(yard, [found.id], who=WHO)
    remove(yard, found.entity, found.row_id, who=WHO)
    with pytest.raises(NotUndoableError):
        undo_one(yard, gone.number, who=WHO)


def test_files_are_written_under_safe_names_and_overwrite_nothing(yard, tmp_path):
    thing = thing_named(yard, ["1"])
    for number, name in enumerate(["a.png", "a.png", "../../b.png", "CON.pdf", "no ending", "x" * 300 + ".jpeg"]):
        attach_content(yard, thing.entity, thing.row_id, name, b"content %d" % number, who=WHO)
    out = tmp_path / "out"
    out.mkdir()
    (out / "a.png").write_bytes(b"precious")
    written = fetch_into(yard, attachments_of(yard), out)
    assert (out / "a.png").read_bytes() == b"precious"
    assert [path.read_bytes() for path in written] == [b"content %d" % number for number in range(6)]
    assert {path.name for path in written[:2]} == {"a (2).png", "a (3).png"}
    assert all(path.parent == out and len(path.name) < 120 for path in written)
    assert sorted(path.suffix for path in written) == ["", ".jpeg", ".pdf", ".png", ".png", ".png"]


def test_files_that_cannot_be_taken_in_are_named_and_nothing_changes(yard, tmp_path, monkeypatch):
    before, folder, empty, large = state(yard), tmp_path / "folder", tmp_path / "empty.jpg", tmp_path / "large.jpg"
    folder.mkdir()
    empty.write_bytes(b"")
    large.write_bytes(b"x" * 101)
    monkeypatch.setattr(attachments, "MOST_BYTES", 100)
    for path, words in (
        (folder, "folder: is a folder"),
        (empty, "empty.jpg: is empty"),
        (tmp_path / "none.jpg", "none.jpg: cannot be read"),
        (large, "at most"),
    ):
        with pytest.raises(InputRejected, match=words):
            at(yard, "1", path)
    assert state(yard) == before
    assert blobs(yard) == 0
    # What is just as large as may be is taken in.
    large.write_bytes(b"x" * 100)
    at(yard, "1", large)
    assert [each.size for each in attachments_of(yard)] == [100]


def test_each_step_says_which_file_and_where(yard, photo):
    at(yard, "1 lock", photo)
    assert history(yard)[-1].summary == "Attach Tür 1.jpg to 1 existing item"
    at(yard, "part C-1", photo)
    detach(yard, [each.id for each in attachments_of(yard)], who=WHO)
    assert history(yard)[-1].summary == "Take 2 files off"
    undo(yard, who=WHO)
    of_part = attachments_of(yard)[1]
    detach(yard, [of_part.id, of_part.id], who=WHO)
    assert history(yard)[-1].summary == "Take Tür 1.jpg off part C-1"
    assert [each.about for each in attachments_of(yard)] == ["1 existing item"]


def test_what_cannot_be_attached_to_is_refused(yard, photo):
    with pytest.raises(ValueRefusedError, match="nothing can be attached"):
        attach(yard, "change_set", "1", photo, who=WHO)
    with pytest.raises(MissingRowError, match="not in the project any more"):
        attach(yard, "opening", "gone", photo, who=WHO)
    at(yard, "1", photo)
    with pytest.raises(ValueRefusedError, match=r"the same content already, as Tür 1\.jpg"):
        at(yard, "1", photo)
    with pytest.raises(MissingRowError):
        detach(yard, ["gone"], who=WHO)
    assert len(attachments_of(yard)) == 1


@pytest.mark.parametrize("words", ["9", "part C-9", "supply S", "1 roof", "set HS 1", ""])
def test_things_that_there_are_not(yard, words):
    with pytest.raises(MissingRowError):
        thing_named(yard, words.split())


def test_short_identifiers(yard, photo):
    at(yard, "1", photo)
    at(yard, "2", photo)
    first, second = attachments_of(yard)
    assert attachment_with(yard, first.id[:8]) == first
    assert attachment_with(yard, second.id) == second
    for short in ("", "zz"):
        said = rf"^no attachment begins with {short}; hwsched release attachments lists"
        with pytest.raises(MissingRowError, match=said):
            attachment_with(yard, short)


def test_a_short_identifier_of_several_says_of_how_many(yard):
    """Of seventeen identifiers in sixteen digits two begin alike."""
    thing = thing_named(yard, ["1"])
    for number in range(17):
        attach_content(yard, thing.entity, thing.row_id, f"{number}.txt", b"%d" % number, who=WHO)
    begins = Counter(each.id[0] for each in attachments_of(yard))
    digit, count = begins.most_common(1)[0]
    with pytest.raises(MissingRowError, match=f"^{count} attachments begin with {digit}; "):
        attachment_with(yard, digit)


def test_a_content_changed_from_outside_is_told_and_never_given(yard, photo):
    at(yard, "1", photo)
    (found,) = attachments_of(yard)
    with yard.writing() as connection:
        connection.execute(update(BLOB).values(content=b"other"))
    with pytest.raises(DamagedProjectError, match="not what was taken in"):
        fetch(yard, found.id)


def test_listing_reads_no_content(yard, photo, monkeypatch):
    at(yard, "1", photo)
    with yard.writing() as connection:
        connection.execute(update(BLOB).values(content=b""))
    assert attachments_of(yard, Thing("opening", thing_named(yard, ["1"]).row_id))[0].size == len(PHOTO)


def test_attachments_stand_in_the_order_in_which_they_came(yard):
    thing = thing_named(yard, ["2"])
    names = ["c.txt", "a.txt", "b.txt"]
    for name in names:
        attach_content(yard, thing.entity, thing.row_id, name, name.encode(), who=WHO)
    assert [each.name for each in attachments_of(yard)] == names
    with yard.reading() as connection:
        assert sorted(connection.execute(select(ATTACHMENT.c.ordinal)).scalars()) == [0, 1, 2]

"""What went to whom: written down, listed, printed, fetched as it went out."""

import hashlib

import pytest

from hwsched.cli.command import run as main
from hwsched.documents.release.transmittals import TRANSMITTALS
from hwsched.exchange.problems import InputRejected
from hwsched.model.errors import DamagedProjectError, MissingRowError, ValueRefusedError
from hwsched.model.tables import BLOB
from hwsched.operations.project.history import history, undo
from hwsched.operations.release.freezing import freeze
from hwsched.operations.release.project_view import project_view
from hwsched.operations.release.transmittals import fetch_transmittal, transmit, transmittals
from hwsched.operations.survey.editing import add_opening
from hwsched.render.blocks import Table
from tests.model.backends import furnished

WHO = "ann"


@furnished
def yard(project):
    add_opening(project, {"mark": "1"}, who=WHO)
    return project


@pytest.fixture
def files(tmp_path):
    made = []
    for folder in ("mill", "annexe"):
        (tmp_path / folder).mkdir()
        path = tmp_path / folder / "schedule.pdf"
        path.write_bytes(b"%PDF-1.4 " + folder.encode())
        made.append(path)
    return made


def test_what_went_out_is_kept_and_comes_back_bit_for_bit(yard, files, tmp_path):
    freeze(yard, who=WHO)
    transmit(yard, "Architect", files[:1], who=WHO, purpose="for approval", note="by hand", revision="a")
    content = files[0].read_bytes()
    files[0].write_bytes(b"%PDF-1.4 printed again since")
    (sent,) = transmittals(yard)
    assert (sent.number, sent.person, sent.recipient, sent.purpose) == (1, WHO, "Architect", "for approval")
    assert sent.note == "by hand"
    assert [(each.name, each.revision, each.size) for each in sent.files] == [("schedule.pdf", "A", len(content))]
    assert sent.files[0].hash == hashlib.sha256(content).hexdigest()
    (back,) = fetch_transmittal(yard, 1, tmp_path / "back")
    assert back.read_bytes() == content
    # What is there is left alone: a second time the file gets another name.
    (again,) = fetch_transmittal(yard, 1, tmp_path / "back")
    assert again != back


def test_the_history_says_what_went_to_whom(yard, files):
    for names, to in ((files[:1], "Client"), (files, "Architect")):
        transmit(yard, to, names, who=WHO)
    assert [each.summary for each in history(yard)[-2:]] == [
        "Transmittal 1: 1 file to Client",
        "Transmittal 2: 2 files to Architect",
    ]


def test_files_of_one_name_are_told_apart_by_their_folders(yard, files):
    transmit(yard, "Client", files, who=WHO)
    (sent,) = transmittals(yard)
    assert (sent.purpose, sent.note) == ("", "")
    assert {each.name for each in sent.files} == {"mill-schedule.pdf", "annexe-schedule.pdf"}
    with pytest.raises(ValueRefusedError, match="named twice"):
        transmit(yard, "Client", [files[0], files[0]], who=WHO)


def test_they_are_counted_and_an_undo_takes_one_back(yard, files):
    for name in ("Client", "Architect"):
        transmit(yard, name, files[:1], who=WHO)
    assert [(each.number, each.recipient) for each in transmittals(yard)] == [(1, "Client"), (2, "Architect")]
    undo(yard, who=WHO)
    assert [each.number for each in transmittals(yard)] == [1]


def test_what_cannot_be_written_down(yard, files, tmp_path):
    for recipient, sent, error in (
        ("", files, ValueRefusedError),
        ("Client", [], ValueRefusedError),
        ("Client", [tmp_path / "nowhere.pdf"], InputRejected),
        ("Client", [tmp_path], InputRejected),
    ):
        with pytest.raises(error):
            transmit(yard, recipient, sent, who=WHO)
    with pytest.raises(MissingRowError):
        transmit(yard, "Client", files[:1], who=WHO, revision="C")
    with pytest.raises(MissingRowError):
        fetch_transmittal(yard, 1, tmp_path / "back")
    assert transmittals(yard) == ()
    assert not (tmp_path / "back").exists()


def test_a_content_that_was_changed_from_outside_is_not_given_back(yard, files, tmp_path):
    transmit(yard, "Client", files[:1], who=WHO)
    with yard.engine.begin() as connection:
        connection.execute(BLOB.update().values(content=b"something else"))
    with pytest.raises(DamagedProjectError):
        fetch_transmittal(yard, 1, tmp_path / "back")


def test_the_sheet_says_what_is_written_down(yard, files):
    transmit(yard, "Architect", files[:1], who=WHO, purpose="for approval", note="By hand.")
    document = TRANSMITTALS.build(project_view(yard), None)
    register = next(block for block in document.sections[0].blocks if isinstance(block, Table))
    assert register.rows[0][2:] == ("Architect", "for approval", 1, "working state", WHO)
    (lines,) = (block.rows for block in document.sections[1].blocks if isinstance(block, Table))
    digest = hashlib.sha256(files[0].read_bytes()).hexdigest()
    assert lines == (("schedule.pdf", "working state", len(files[0].read_bytes()) / 1000, digest[:12]),)


def test_at_the_command_line(tmp_path, files, capsys):
    path = str(tmp_path / "yard.hwsched")
    assert main(["project", "new", path]) == 0
    assert main(["release", "transmit", path, str(files[0]), "--recipient", "Architect"]) == 0
    assert main(["release", "transmit", path]) == 0
    assert "to Architect" in capsys.readouterr().out
    assert main(["release", "transmit", path, "--fetch", "1", "-o", str(tmp_path / "back")]) == 0
    assert (tmp_path / "back" / "schedule.pdf").read_bytes() == files[0].read_bytes()
    for wrong in ([str(files[0])], ["--recipient", "Client"], ["--fetch", "1", str(files[0])]):
        assert main(["release", "transmit", path, *wrong]) == 2

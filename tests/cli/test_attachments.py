"""Files at things on the command line."""

import json

import pytest

from hwsched.cli.command import run
from tests.operations.exact import small


@pytest.fixture
def yard(tmp_path):
    small(tmp_path / "y.hwsched", marks="12").close()
    return str(tmp_path / "y.hwsched")


@pytest.fixture
def photo(tmp_path):
    path = tmp_path / "inside.png"
    path.write_bytes(b"\x89PNG\r\n\x1a\n rest")
    return str(path)


def listed(capsys, yard, *words):
    capsys.readouterr()
    assert run(["release", "attachments", yard, *words, "--json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_attach_list_fetch_detach(yard, photo, tmp_path, capsys):
    assert run(["release", "attach", yard, "1", photo, "--title", "Inside"]) == 0
    assert run(["release", "attach", yard, "1", "lock", photo]) == 0
    assert run(["release", "attach", yard, "part", "UNIT", photo, "--note", "data"]) == 0
    found = listed(capsys, yard)["attachments"]
    assert [each["about"] for each in found] == ["1", "1 existing item", "part UNIT"]
    assert [each["about"] for each in listed(capsys, yard, "1")["attachments"]] == ["1", "1 existing item"]
    assert [each["about"] for each in listed(capsys, yard, "1", "lock")["attachments"]] == ["1 existing item"]
    assert listed(capsys, yard, "2")["attachments"] == []
    out = tmp_path / "out"
    written = listed(capsys, yard, "part", "UNIT", "--fetch", str(out))["written"]
    assert written == [str(out / "inside.png")]
    assert (out / "inside.png").read_bytes().endswith(b"rest")
    assert run(["release", "attachments", yard]) == 0
    shown = capsys.readouterr().out
    assert "image/png" in shown
    assert found[0]["id"][:8] in shown
    assert run(["release", "detach", yard, found[0]["id"][:8]]) == 0
    assert len(listed(capsys, yard)["attachments"]) == 2
    assert run(["project", "undo", yard]) == 0
    assert len(listed(capsys, yard)["attachments"]) == 3


def test_what_is_wrong_is_told(yard, photo, tmp_path, capsys):
    assert run(["release", "attach", yard, photo]) == 2
    assert run(["release", "attach", yard, "9", photo]) == 3
    assert "no opening has the mark 9" in capsys.readouterr().err
    assert run(["release", "attach", yard, "1", str(tmp_path / "none.png")]) == 3
    assert "none.png: cannot be read" in capsys.readouterr().err
    assert run(["release", "attach", yard, "1", "2", "3", photo]) == 3
    assert "part NUMBER" in capsys.readouterr().err
    assert run(["release", "detach", yard, "ffff"]) == 3
    capsys.readouterr()
    assert run(["release", "attachments", yard]) == 0
    assert "Nothing is attached" in capsys.readouterr().out

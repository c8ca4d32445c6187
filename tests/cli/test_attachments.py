"""Files at things on the command line."""

import pytest

from hwsched.cli.command import run
from tests.cli.answers import answer, result
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
    return result(capsys, "release", "attachments", yard, *words)


def test_attach_list_fetch_detach(yard, photo, tmp_path, capsys):
    attached = answer(capsys, "release", "attach", yard, "1", photo, "--title", "Inside")
    assert attached["result"]["marks"] == ["1"]
    assert attached["change_set"] is not None
    assert run(["release", "attach", yard, "1", "lock", photo]) == 0
    assert run(["release", "attach", yard, "part", "UNIT", photo, "--note", "data"]) == 0
    found = listed(capsys, yard)["attachments"]
    assert [each["about"] for each in found] == ["1", "1 existing item", "part UNIT"]
    assert [each["mark"] for each in found] == ["1", "1", None]
    assert found[0]["id"] == attached["result"]["id"]
    assert [(each["title"], each["note"]) for each in found] == [("Inside", None), (None, None), (None, "data")]
    # The eight bytes of a PNG's signature and "\x20rest".
    assert [each["byte_count"] for each in found] == [13, 13, 13]
    assert [each["about"] for each in listed(capsys, yard, "1")["attachments"]] == ["1", "1 existing item"]
    assert [each["about"] for each in listed(capsys, yard, "1", "lock")["attachments"]] == ["1 existing item"]
    assert listed(capsys, yard, "2")["attachments"] == []
    out = tmp_path / "out"
    written = listed(capsys, yard, "part", "UNIT", "-o", str(out))["files"]
    assert written == [str(out / "inside.png")]
    assert (out / "inside.png").read_bytes().endswith(b"rest")
    assert run(["release", "attachments", yard]) == 0
    shown = capsys.readouterr().out
    assert "image/png" in shown
    assert found[0]["id"][:8] in shown
    assert result(capsys, "release", "detach", yard, found[0]["id"][:8]) == {"ids": [found[0]["id"]], "marks": ["1"]}
    earlier = tmp_path / "earlier"
    assert run(["release", "attachments", yard, "--fetch", str(earlier)]) == 0
    assert len(list(earlier.iterdir())) == 2
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

"""`hwsched opening pieces`: what was done to a piece at the bench."""

import pytest

from hwsched.cli.command import run
from tests.cli.answers import result
from tests.operations.exact import small


@pytest.fixture
def yard(tmp_path):
    small(tmp_path / "y.hwsched", marks="12").close()
    return str(tmp_path / "y.hwsched")


def done(capsys, yard, mark="1"):
    found = result(capsys, "opening", "pieces", yard, mark)["pieces"]
    return {each["role"]: each["done"] for each in found if each["done"]}


def test_bench_work_is_written_down_and_taken_away(yard, capsys):
    words = ["opening", "pieces", yard, "1", "--who", "ann"]
    assert run([*words, "--done", "unit=programmed, tested", "--done", "cylinder=built"]) == 0
    assert "unit/UNIT#1" in (told := capsys.readouterr().out)
    assert "programmed, tested" in told
    assert done(capsys, yard) == {"unit": ["programmed", "tested"], "cylinder": ["built"]}
    assert done(capsys, yard, "2") == {}
    assert run([*words, "--done", "unit="]) == 0
    assert done(capsys, yard) == {"cylinder": ["built"]}


@pytest.mark.parametrize(
    ("text", "said"),
    [("unit", "names no piece"), ("unit=polished", "'polished' is not done to the unit"), ("cam=built", "nothing")],
)
def test_what_cannot_be_is_refused(yard, capsys, text, said):
    assert run(["opening", "pieces", yard, "1", "--who", "ann", "--done", text]) == 3
    assert said in capsys.readouterr().err
    assert done(capsys, yard) == {}

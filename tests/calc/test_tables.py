"""Tables of resources/power: every row has its source, and nothing from memory passes as verified."""

import doctest

import pytest

from hwsched.calc import tables
from hwsched.calc.tables import row, rows
from hwsched.paths import RESOURCES

NAMES = sorted(path.stem for path in (RESOURCES / "power").glob("*.csv"))


def test_docs():
    assert doctest.testmod(tables).failed == 0


@pytest.mark.parametrize("name", NAMES)
def test_rows_say_where_they_are_from(name):
    assert rows(name)
    for each in rows(name):
        assert each.source
        assert each.text("reading")
        assert each.text("verified") in ("yes", "no")
        if "MEM" in each.text("reading") or "memory" in each.source:
            assert not each.verified, each


def test_there_are_tables():
    assert {"cells", "nec_table_8", "iec_60228", "class_2", "self_discharge"} <= set(NAMES)


def test_missing():
    with pytest.raises(OSError, match="no_such_table"):
        rows("no_such_table")
    with pytest.raises(KeyError, match="no row"):
        row("cells", "cell", "none")
    with pytest.raises(ValueError):
        row("cells", "cell", "cr2").number("end_v")
    assert row("cells", "cell", "cr2").optional_number("end_v") is None


def test_a_ragged_table_is_refused(tmp_path, monkeypatch):
    (tmp_path / "power").mkdir()
    (tmp_path / "power" / "ragged.csv").write_text("a,b\n1\n")
    monkeypatch.setattr(tables, "RESOURCES", tmp_path)
    with pytest.raises(ValueError, match=r"ragged.csv line 2: 2 cells expected"):
        rows("ragged")

"""Labour: the method's worked examples, published learning curves, the table and a project's own hours."""

import doctest
from decimal import Decimal
from math import fsum

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hwsched.calc.calculator import InputError
from hwsched.calc.project import labour as module
from hwsched.calc.project.labour import (
    ANY,
    Task,
    labour,
    labour_table,
    learning_rate,
    learnt_hours,
    series_share,
    unit_share,
)
from hwsched.calc.tables import rows
from hwsched.survey import ITEM, LEAF

TABLE = labour_table()


def words(entity, name):
    return {choice.value for a in entity.attributes if a.name == name for choice in a.choices}


def test_docs():
    assert doctest.testmod(module).failed == 0


def test_rows_say_where_they_are_from():
    assert len(TABLE) == len(rows("tasks", "labour"))  # no row twice
    for each in rows("tasks", "labour"):
        assert each.source
        assert each.text("text")
        assert each.text("unit") in ("each", "m")
        assert each.text("leaf_material") in words(LEAF, "material") | {ANY}
        assert Decimal(each.text("hours")) > 0
        assert each.text("reading") == "MEM"
        assert not each.verified


def test_every_lock_form_and_material_has_its_hours():
    forms, materials = words(ITEM, "lock_form"), words(LEAF, "material")
    assert len(forms) == len(materials) == 7
    for form in forms:
        assert labour([Task(f"fit-{form}")], TABLE).needs == ()
    for material in materials:
        found = labour([Task("drill-access-hole", 1, material)], TABLE)
        # Toughened glass is not drilled once it hangs.
        assert found.needs == (("hours of drill-access-hole (glass)",) if material == "glass" else ())
        assert bool(found.hours) == (material != "glass")


def test_worked_examples():
    """Method of the manual of labour units: 12 · 1.5 h · 1.25 = 22.5 h; 350 at 0.85 h per 100; 450 at 6 h per 1000."""
    own = labour_table({"box": "1.5", "strap": "0.0085", "cable": "0.006", "tag": Decimal(45) / 60})
    assert labour([Task("box", 12)], own, "1.25").hours == Decimal("22.5")
    assert labour([Task("strap", 350)], own).hours == Decimal("2.975")
    assert labour([Task("cable", 450)], own).hours == Decimal("2.7")
    assert labour([Task("tag")], own).hours == Decimal("0.75")


def test_an_opening_by_hand():
    tasks = [
        Task("take-off-cylinder"),  # 0.10
        Task("drill-access-hole", 2, "hollow-metal"),  # 2 · 0.30
        Task("fit-mortise"),  # 0.20
        Task("mount-unit-surface", 1, "hollow-metal"),  # 0.40, whatever the leaf
        Task("lay-wire", 7.5),  # 7.5 · 0.04
    ]
    found = labour(tasks, TABLE, 1.5)
    assert found.hours == Decimal("2.4")  # 1.6 · 1.5
    assert [line.hours for line in found.lines] == [Decimal(h) for h in ("0.1", "0.6", "0.2", "0.4", "0.3")]
    assert found.lines[1].row.material == "hollow-metal"
    assert found.lines[3].row.material == ANY
    assert labour([], TABLE).hours == 0


def test_own_hours():
    wood, steel, other = (Task("drill-access-hole", 1, m) for m in ("wood", "hollow-metal", "composite"))
    own = labour_table({("drill-access-hole", "wood"): "0.5", "drill-access-hole": "0.2"})
    assert [labour([task], own).hours for task in (wood, steel, other)] == [Decimal(h) for h in ("0.5", "0.2", "0.2")]
    row = own["drill-access-hole", "wood"]
    assert (row.source, row.verified, row.text) == ("the project's own", True, "Drill the access hole for the lead")
    only = labour_table({("drill-access-hole", "wood"): 1})
    assert [labour([task], only).hours for task in (wood, steel)] == [1, Decimal("0.3")]
    # In glass by another trade, to an agreed time.
    assert labour([Task("drill-access-hole", 1, "glass")], labour_table({("drill-access-hole", "glass"): 4})).hours == 4
    assert labour([Task("lay-wire", 10)], labour_table({"lay-wire": 0})).hours == 0
    assert labour_table({"lay-wire": 1})["lay-wire", ANY].unit == "m"
    assert [row.task for row in labour_table({"survey-visit": 1}).values()] == [row.task for row in TABLE.values()]
    assert labour_table() == TABLE
    assert list(labour_table({"take-down-ceiling": 1}))[-1] == ("take-down-ceiling", ANY)


def test_what_is_missing():
    found = labour([Task("drill-access-hole", 1, None), Task("dance"), Task("clean-up", 1, None), Task("dance")], TABLE)
    assert found.needs == ("leaf material for drill-access-hole", "hours of dance (any)")
    assert found.hours == Decimal("0.15")


@pytest.mark.parametrize(
    ("ask", "words"),
    [
        (lambda: labour([Task("clean-up", -1)], TABLE), "count of clean-up"),
        (lambda: labour([], TABLE, 0), "difficulty: must be more than 0"),
        (lambda: labour([], TABLE, float("nan")), "difficulty"),
        (lambda: labour_table({"fit-rim": "long"}), "hours of fit-rim"),
        (lambda: labour_table({("fit-rim", "wood"): -1}), r"hours of fit-rim \(wood\)"),
        (lambda: series_share(-1, 0.9), "count"),
        (lambda: series_share(1.5, 0.9), "count"),  # type: ignore[arg-type]
        (lambda: series_share(1_000_001, 0.9), "count"),
        (lambda: series_share(1, 0.9, -1), "done"),
        (lambda: series_share(1, 0.49), "rate"),
        (lambda: series_share(1, 1.01), "rate"),
        (lambda: series_share(1, 0.9, curve="steep"), "curve"),  # type: ignore[arg-type]
        (lambda: unit_share(0, 0.9), "n: must be at least 1"),
        (lambda: learnt_hours(-1, 1, 0.9), "first_h"),
        (lambda: learning_rate(1, 0, 8), "nth_h"),
        (lambda: learning_rate(1, 1, 1), "n: must be at least 2"),
    ],
)
def test_bad_values_are_named(ask, words):
    with pytest.raises(InputError, match=words):
        ask()


@pytest.mark.parametrize(
    ("first_h", "rate", "n", "hours"),
    [
        # Operations-management texts, 80 % unit curve (shared facts 9, read in three copies).
        *((10, 0.80, n, h) for n, h in ((1, 10.0), (2, 8.0), (3, 7.0210), (4, 6.4), (8, 5.12), (10, 4.7651))),
        # The same equation at 90 % (calculated in shared facts 9).
        *((2, 0.90, n, h) for n, h in ((2, 1.8), (4, 1.62), (8, 1.458), (10, 1.40938), (20, 1.26844))),
        (10, 0.50, 8, 1.25),
    ],
)
def test_published_unit_curve(first_h, rate, n, hours):
    assert first_h * unit_share(n, rate) == pytest.approx(hours, abs=6e-5)
    if n > 1:
        assert learning_rate(first_h, first_h * unit_share(n, rate), n) == pytest.approx(rate)


def test_published_totals():
    """Shared facts 9: unit curve as above; cumulative average of a project-management workbook (2018)."""
    assert 10 * series_share(10, 0.80) == pytest.approx(63.1537, abs=5e-5)
    assert 2 * series_share(20, 0.90) == pytest.approx(29.2155, abs=5e-5)
    assert 10 * series_share(8, 0.80) == pytest.approx(53.4591, abs=5e-5)
    wright = "cumulative-average"
    assert 10 * series_share(8, 0.80, curve=wright) == pytest.approx(40.96)
    assert 10 * series_share(8, 0.80, curve=wright) / 8 == pytest.approx(5.12)
    assert 10 * unit_share(8, 0.80, wright) == pytest.approx(3.5457, abs=5e-5)


curves = st.sampled_from(["unit", "cumulative-average"])
rates = st.floats(0.5, 1)


@given(st.integers(0, 300), st.integers(0, 300), st.integers(0, 300), rates, curves)
def test_a_series_is_the_sum_of_its_units_however_it_is_cut(first, second, done, rate, curve):
    whole = series_share(first + second, rate, done, curve)
    parts = series_share(first, rate, done, curve) + series_share(second, rate, done + first, curve)
    units = fsum(unit_share(n, rate, curve) for n in range(done + 1, done + first + second + 1))
    assert whole == pytest.approx(parts, rel=1e-9, abs=1e-9)
    assert whole == pytest.approx(units, rel=1e-9, abs=1e-9)


@given(st.integers(1, 5000), rates, st.sampled_from([1, 2, 4]))
def test_each_doubling_leaves_the_rate(n, rate, times):
    assert unit_share(n * 2 * times, rate) == pytest.approx(unit_share(n * times, rate) * rate)


@given(st.integers(1, 500), st.integers(0, 500), rates, curves)
def test_bounds(count, done, rate, curve):
    share = series_share(count, rate, done, curve)
    assert -1e-9 <= share <= count + 1e-9
    assert share <= series_share(count, 1.0, done, curve)
    assert series_share(count, rate, done + 1, curve) <= share + 1e-9
    assert series_share(0, rate, done, curve) == 0


def test_no_learning_is_exact():
    assert series_share(7, 1.0, 3) == 7
    assert learnt_hours("0.1", 3, 1.0) == Decimal("0.3")
    assert learnt_hours("0.1", 0, 0.8) == 0
    assert float(learnt_hours(10, 10, 0.80)) == pytest.approx(63.1537, abs=5e-5)


@given(
    st.lists(
        st.builds(
            Task,
            st.sampled_from(["clean-up", "lay-wire", "drill-access-hole"]),
            st.decimals(min_value=0, max_value=1000, places=3),
            st.sampled_from(["wood", "hollow-metal"]),
        ),
        max_size=6,
    ),
    st.decimals(min_value="0.01", max_value=10, places=2),
)
def test_hours_are_linear(tasks, difficulty):
    whole = labour(tasks, TABLE, difficulty)
    assert whole.hours == sum(line.hours for line in whole.lines) * difficulty
    assert whole.hours == labour(tasks, TABLE).hours * difficulty
    assert whole.hours == sum(labour([task], TABLE, difficulty).hours for task in tasks)

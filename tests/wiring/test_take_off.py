"""Wire take-off: lengths with waste, whole reels, conductors in parallel, transfers and boxes; by building."""

import pytest

from hwsched.values.terms import CostTerms
from hwsched.wiring.costing import price_supplies
from hwsched.wiring.goods import bill_of
from hwsched.wiring.take_off import wire_lines
from tests.rules.scenario import part
from tests.wiring.power_rows import alone, circuit, connected, parts, run, supply, work


def lines_of(runs, cat=None, **more):
    cat = cat or parts()
    found = alone(runs, cat, **more)
    doors = [each.points for each in more.get("openings", {}).values()]
    boxes = tuple(each for each in bill_of(found.supplies, doors, cat).goods if each.role in BY_THE_PIECE)
    return wire_lines(found.supplies, cat), boxes


BY_THE_PIECE = ("power-transfer", "junction-box")


def test_reels_are_whole_ones():
    # 10 % allowance (common practice): 60 + 30 = 90 m, 99 m with waste: one reel of 100 m; 91 m need 100.1 m: two.
    ((line,), _) = lines_of([run("supply", "a", 60.0), run("a", "b", 30.0)])
    assert (line.part, line.gauge, line.stranding, line.runs, line.reels) == ("WIRE", "18 AWG", "stranded", 2, 1)
    assert (line.length_m, line.with_waste_m) == pytest.approx((90.0, 99.0))
    assert lines_of([run("supply", "a", 91.0)])[0][0].reels == 2
    # 1000 / 11 m is a whole reel to the last millimetre.
    assert lines_of([run("supply", "a", 1000 / 11)])[0][0].reels == 1


def test_runs_are_cut_whole():
    """Three runs of 60 m take 66 m each with their ends: 198 m, yet no two come from one reel of 100 m."""
    ((line,), _) = lines_of([run("supply", name, 60.0) for name in "abc"])
    assert (line.reels, line.fewest, line.spliced) == (3, 3, 0)
    assert sorted([piece.name for piece in each] for each in line.cuts) == [
        [f"PS-s/C supply to {name}"] for name in "ABC"
    ]
    # 45.4 m are 49.94 m with their ends: two to a reel.
    ((line,), _) = lines_of([run("supply", name, 45.4) for name in "abc"])
    assert (line.reels, sorted(map(len, line.cuts))) == (2, [1, 2])


def test_a_run_longer_than_a_reel_is_spliced_and_said():
    ((line,), _) = lines_of([run("supply", "a", 91.0)])
    assert (line.reels, line.spliced) == (2, 1)


def test_a_reel_of_unknown_length_gives_no_number():
    ((line,), _) = lines_of([run("supply", "a")], parts(WIRE={"reel_m": None}))
    assert (line.reel_m, line.reels) == (None, None)


def test_conductors_in_parallel_take_as_many_times_the_wire():
    ((line,), _) = lines_of([run("supply", "a", 20.0, parallel=3)])
    assert (line.length_m, line.runs) == (60.0, 1)


def test_by_building_wire_and_gauge():
    cat = parts(add=(part("THIN", "wire", gauge="22 AWG", conductors=2, stranding="solid", reel_m=50.0),))
    runs = [run("supply", "a"), run("a", "b", wire="THIN"), run("b", "c", gauge="1.0 mm2", stranding="solid"),
            run("supply", "d", 5.0, "other")]  # fmt: skip
    found = work(
        runs, {n: connected(n, cat) for n in "abcd"}, cat,
        supplies=[supply(building="Main"), supply("t", building="Annex")], circuits=[circuit(), circuit("other", "t")],
    )  # fmt: skip
    assert [(line.building, line.part, line.gauge, line.length_m) for line in wire_lines(found.supplies, cat)] == [
        ("Annex", "WIRE", "18 AWG", 5.0),
        ("Main", "", "1.0 mm2", 10.0),
        ("Main", "THIN", "22 AWG", 10.0),
        ("Main", "WIRE", "18 AWG", 10.0),
    ]


def test_transfers_and_boxes():
    cat = parts()
    runs = [run("supply", "J1"), run("J1", "a"), run("J1", "b"), run("b", "c")]
    stated = {"a": connected("a", cat, without=()), "b": connected("b", cat, without=()), "c": connected("c", cat)}
    wires, devices = lines_of(runs, cat, openings=stated)
    # Wire is joined at J1 and at b, where it goes on; door loops at a and b, no wire of a reel.
    assert [(each.role, each.part, each.text.split(" on ")[0], each.quantity) for each in devices] == [
        ("power-transfer", "LOOP", "A", 1), ("power-transfer", "LOOP", "B", 1),
        ("junction-box", "", "at J1", 1), ("junction-box", "", "at B", 1),
    ]  # fmt: skip
    assert wires[0].length_m == 40.0


def test_nothing_laid_takes_nothing():
    assert lines_of([]) == ((), ())


def test_one_unknown_length_leaves_the_wire_that_is_known():
    """30 m before it and 20 m behind it are bought; how much the run itself takes is said to be missing."""
    cat = parts()
    found = alone([run("supply", "a", 30.0), run("a", "b", None), run("b", "c", 20.0)], cat)
    (line,) = wire_lines(found.supplies, cat)
    assert (line.length_m, line.runs) == (50.0, 2)
    cost = price_supplies(found.supplies, cat, CostTerms(currency="USD"))[""]
    # Mounting 1.5 h, 0.04 h a metre (own table of hours).
    assert float(cost.hours) == pytest.approx(1.5 + 0.04 * 50)
    assert {(each.about, each.needs) for each in cost.unknown} >= {
        ("wire", ("run.length_m",)), ("labour", ("run.length_m",))}  # fmt: skip


def test_hours_have_no_digits_that_nobody_laid():
    cat = parts()
    lengths = (0.1, 0.2, 0.7, 10.1, 33.3)
    found = alone([run("supply", f"o{i}", each) for i, each in enumerate(lengths)], cat)
    cost = price_supplies(found.supplies, cat, CostTerms())[""]
    assert str(cost.hours.normalize()) == "3.276"


def test_a_circuit_that_cannot_be_reckoned_with_is_bought_all_the_same():
    cat = parts(PSU={"tolerance_share": None})
    assert wire_lines(alone([run("supply", "a", 30.0)], cat).supplies, cat)[0].length_m == 30.0

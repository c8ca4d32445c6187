"""Plans of supplies and runs: the best of everything that can be tried, the bound kept, every leg solved by itself."""

import random
from dataclasses import replace
from itertools import combinations

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.power.circuit import Load, solve
from hwsched.calc.power.circuit_tree import Network
from hwsched.calc.power.planning import margins, plan
from hwsched.calc.power.planning.plan import plan_power
from hwsched.calc.power.planning.question import AIMS, Drawn, NoPlanError, PlanOpening, PlanPlace, Question, Size, Wire
from hwsched.calc.power.planning.relaxed_legs import RelaxedLegs
from hwsched.calc.power.planning.small_search import MOST_OPENINGS
from tests.calc.oracles import case_count
from tests.calc.oracles.planning import best_plan
from tests.calc.power.planning.questions import question_of, random_numbers

CASES = min(case_count(8), 400)
WEIGHED = {
    "least-cost": lambda cost, metres, supplies: cost,
    "least-wire": lambda cost, metres, supplies: metres,
    "fewest-supplies": lambda cost, metres, supplies: 1e6 * supplies + cost,
}
AIMED = {
    "least-cost": lambda found: found.cost,
    "least-wire": lambda found: found.wire_m,
    "fewest-supplies": lambda found: 1e6 * found.supplies + found.cost,
}


def planned(question, aim, **how):
    try:
        return plan_power(question, aim, **how)
    except NoPlanError:
        return None


def tree_of(leg, ohm):
    """A leg as a network of its own, its points by number."""
    feeder, ohms = {0: 0}, {0: 0.0}
    for run in leg.runs:
        feeder[run.end + 1], ohms[run.end + 1] = run.begin + 1, run.metres * ohm
    order = [0]
    for at in order:
        order += [end for end in sorted(feeder) if end and feeder[end] == at]
    place = {point: i for i, point in enumerate(order)}
    names = tuple("supply" if not point else str(point - 1) for point in order)
    steps = tuple((place[p], place[feeder[p]], ohms[p]) for p in order[1:])
    runs = (-1, *range(len(order) - 1))
    return Network(names, {n: i for i, n in enumerate(names)}, tuple(place[feeder[p]] for p in order),
                   tuple(ohms[p] for p in order), runs, (True,) * len(order), steps)  # fmt: skip


def check_plan(question, found, margin_v=0.0):
    """Every opening once, every supply within its current, every voltage enough under every set of operations."""
    places, wires = {p.id: p for p in question.places}, {w.id: w for w in question.wires}
    drawn = {o.id: o.drawn["12 V"] for o in question.openings}
    assert sorted(o for leg in found.legs for o in leg.openings) == sorted(drawn)
    assert found.wire_m == pytest.approx(sum(run.metres for leg in found.legs for run in leg.runs))
    for place, named in found.sizes.items():
        size = next(s for s in places[place].sizes if s.id == named)
        own = [leg for leg in found.legs if leg.place == place]
        assert sum(drawn[o].held_a for leg in own for o in leg.openings) <= size.left_a + 1e-6
        for leg in own:
            tree = tree_of(leg, wires[leg.wire].ohm_per_m)
            at = {o: str(leg.points.index(o)) for o in leg.openings}
            assert len(tree.names) == len(leg.points) + 1 == len(leg.runs) + 1
            assert all(run.metres > 0 for run in leg.runs)
            count = min(places[place].at_once, len(at))
            lowest = float("inf")
            for working in combinations(at, count):
                loads = [Load(at[o], "current", max(drawn[o].work_a, drawn[o].rest_a) if o in working
                              else drawn[o].rest_a) for o in at]  # fmt: skip
                volts = solve(tree, loads, size.terminals_v).volts
                lowest = min([lowest, *(volts[at[o]] - drawn[o].needed_v for o in at)])
            assert lowest >= margin_v - 1e-6
            assert leg.margin_v == pytest.approx(lowest, abs=1e-6)
    assert set(found.sizes) >= {leg.place for leg in found.legs}


@pytest.mark.fuzz
@pytest.mark.parametrize("aim", sorted(WEIGHED))
def test_few_openings_are_planned_as_well_as_by_trying_everything(aim):
    rng = random.Random(f"everything {aim}")
    solved = 0
    for number in range(CASES):
        numbers = random_numbers(rng, rng.randint(1, 4 if number < 100 else 8))
        question = question_of(numbers)
        found, best = planned(question, aim), best_plan(*numbers, WEIGHED[aim])
        assert (found is None) == (best is None)
        if found is not None:
            solved += 1
            assert found.proved_best
            assert AIMED[aim](found) == pytest.approx(best, rel=1e-6, abs=1e-3)
            check_plan(question, found)
    assert solved > CASES / 2


def test_the_greatest_margin_that_all_can_have_and_then_the_least_cost():
    rng = random.Random("margins")
    for number in range(min(case_count(3), 300)):
        numbers = random_numbers(rng, 3 if number < 3 else rng.randint(1, 4 if number < 100 else 8))
        question = question_of(numbers)
        found = planned(question, "most-margin")
        if found is None:
            assert best_plan(*numbers, WEIGHED["least-cost"]) is None
            continue
        check_plan(question, found)
        # A hundredth of a volt more, and there is no plan; and with this margin none costs less.
        assert best_plan(*numbers, WEIGHED["least-cost"], found.margin_v + 0.01) is None
        assert found.cost == pytest.approx(best_plan(*numbers, WEIGHED["least-cost"], found.margin_v - 1e-6), rel=1e-6)


@pytest.mark.parametrize("aim", AIMS)
def test_the_bound_of_the_large_search_is_none_too_high(aim, monkeypatch):
    rng = random.Random(f"bound {aim}")
    for _ in range(min(case_count(1), 200)):
        question = question_of(random_numbers(rng, 5, sizes=1))
        best = planned(question, aim)
        monkeypatch.setattr(plan, "MOST_OPENINGS", 0)
        found = planned(question, aim)
        monkeypatch.undo()
        assert (found is None) == (best is None)
        if found is None:
            continue
        check_plan(question, found)
        reached = found.wire_m if aim == "least-wire" else found.cost
        exact = best.wire_m if aim == "least-wire" else best.cost
        if found.supplies == best.supplies or aim != "fewest-supplies":
            assert found.bound <= exact * (1 + 1e-6) + 1e-3
            assert reached >= exact * (1 - 1e-6) - 1e-3
        assert found.least_supplies <= best.supplies
        assert reached - found.gap * reached <= exact + 1e-3


@pytest.mark.fuzz
def test_what_is_reached_over_others_alone_has_a_greatest_margin_wherever_it_has_a_plan():
    rng = random.Random("over others")
    for number in range(min(case_count(1), 20)):
        count = 10 + 2 * (number % 4)
        supplies, drawn, kinds, to_m, between_m = random_numbers(rng, count, amps=(3.0, 5.0), sizes=1)
        seldom = [[metres if rng.random() < 0.3 else None for metres in row] for row in to_m]
        question = question_of((supplies, drawn, [(ohm / 4, cost) for ohm, cost in kinds], seldom, between_m))
        cheap, roomy = planned(question, "least-cost"), planned(question, "most-margin")
        assert (cheap is None) == (roomy is None)
        if roomy is not None:
            check_plan(question, roomy)
            assert roomy.margin_v >= cheap.margin_v - 1e-6


def test_more_openings_with_a_gap_that_is_told():
    question = question_of(random_numbers(random.Random("more-b"), 10, wires=2, amps=(4.0, 6.0), sizes=1))
    found = plan_power(question, time_limit_s=20.0)
    check_plan(question, found)
    assert 0.0 <= found.gap < 0.4
    assert found.bound == pytest.approx(found.cost * (1 - found.gap), rel=1e-6)


def row_of_doors(count, needed=10.0, **more):
    """A closet at 0 m and openings every ten metres along one cable way, without rise."""
    openings = tuple(PlanOpening(f"{i}", {"12 V": Drawn(0.3, 0.1, 0.3, needed)}) for i in range(count))
    place = PlanPlace("closet", (Size("S", "12 V", 5.0, 11.4, 100.0),), 1)
    return Question((place,), openings, (Wire("thin", 0.1, 1.0), Wire("thick", 0.03, 1.5)),
                    [[10.0 * (i + 1)] for i in range(count)],
                    [[abs(i - j) * 10.0 if i != j else None for j in range(count)] for i in range(count)],
                    **more)  # fmt: skip


def test_openings_along_one_way_are_one_chain_of_one_wire():
    found = plan_power(row_of_doors(3))
    (leg,) = found.legs
    # Thin: 30 m of 0.1 ohm with 0.3 A in work, and 0.1 A each at 10 and 20 m: 0.9 + 0.1 + 0.2 = 1.2 V of 1.4 V.
    assert (leg.wire, leg.openings, found.wire_m, found.cost) == ("thin", ("0", "1", "2"), 30.0, 130.0)
    assert leg.margin_v == pytest.approx(0.2)


def test_the_greatest_margin_of_many_openings_that_are_reached_over_others_alone():
    doors = row_of_doors(10, needed=9.0)
    apart = replace(doors, to_place_m=[[10.0], *[[None]] * 9])
    found = plan_power(apart, "most-margin")
    (leg,) = found.legs
    # Thick: 100 m of 0.03 ohm with 0.3 A in work, and 0.1 A each at 10 to 90 m: 0.9 + 1.35 = 2.25 V of 2.4 V.
    assert (leg.wire, leg.openings) == ("thick", tuple("0123456789"))
    assert found.margin_v == pytest.approx(0.15)
    assert found.proved_best


def test_the_greatest_margin_where_one_is_nearer_over_another_than_by_its_own_way():
    doors = row_of_doors(2, needed=9.0)
    found = plan_power(replace(doors, to_place_m=[[10.0], [300.0]]), "most-margin")
    # Thick: over the first 20 m with 0.3 A, and 0.1 A at 10 m: 0.18 + 0.03 V of 2.4 V; by its own way 2.7 V.
    assert found.margin_v == pytest.approx(2.19)


def test_of_two_orders_of_a_chain_the_roomier_one_counts_whichever_is_found_first():
    """One is 10 m from the closet; from there 5 m lead to another, and 6 m to one that needs a volt more."""
    doors = row_of_doors(3, needed=9.0)
    needy = replace(doors.openings[2], drawn={"12 V": Drawn(0.3, 0.1, 0.3, 10.0)})
    found = plan_power(
        replace(
            doors,
            openings=(*doors.openings[:2], needy),
            to_place_m=[[None], [10.0], [None]],
            between_m=[[None, 5.0, 5.0], [5.0, None, 6.0], [5.0, 6.0, None]],
        ),
        "most-margin",
    )
    (leg,) = found.legs
    # By the shortest steps it would be the last, at 20 m. Thick: at 16 m it shares 10, 16 and 16 m with all three at
    # 0.1 A, and takes 0.2 A more itself: 0.03 ohm x (42 x 0.1 + 16 x 0.2) = 0.222 V of 1.4 V; at 20 m 0.255 V.
    assert leg.openings == ("1", "2", "0")
    assert found.margin_v == pytest.approx(1.4 - 0.222)


def test_a_margin_of_which_a_greater_one_is_not_ruled_out_says_so(monkeypatch):
    monkeypatch.setattr(margins, "_WHOLE", 0)
    monkeypatch.setattr(margins, "_TIMES", 1)
    doors = row_of_doors(10, needed=9.0)
    found = plan_power(replace(doors, to_place_m=[[10.0], *[[None]] * 9]), "most-margin")
    # By a run of its own along the same way the last one would lose 0.9 V: so much more a bound leaves open.
    assert found.margin_left_v == pytest.approx(1.35)
    assert not found.proved_best
    assert "up to 1.35 V more margin" in found.proved


@pytest.mark.parametrize("aim", ["least-cost", "least-wire"])
def test_what_has_no_room_nearby_is_fed_from_afar_whatever_that_costs(aim, monkeypatch):
    """A closet one metre away gives 0.3 A, for one of two; the other opening is 1000 m from the next closet."""
    monkeypatch.setattr(plan, "MOST_OPENINGS", 0)
    doors = row_of_doors(2, needed=1.0, shapes=frozenset({"home-run"}))
    places = tuple(
        PlanPlace(name, (Size("S", "12 V", amps, 11.4, 1.0),), 1) for name, amps in (("near", 0.3), ("far", 5.0))
    )
    found = plan_power(replace(doors, places=places, to_place_m=[[1.0, 1000.0]] * 2), aim)
    # Thick: 1000 m of 0.03 ohm with 0.3 A lose 9 V of 10.4 V; thin would lose 30 V.
    assert sorted((leg.place, leg.wire_m) for leg in found.legs) == [("far", 1000.0), ("near", 1.0)]
    assert next(leg.wire for leg in found.legs if leg.place == "far") == "thick"
    assert found.wire_m == pytest.approx(1001.0)


def doors_off_the_way(**more):
    """Doors at 10, 20 and 30 m along a cable way, each 5 m off it."""
    return replace(
        row_of_doors(3, needed=5.0, **more),
        to_place_m=[[15.0], [25.0], [35.0]],
        between_m=[[abs(i - j) * 10.0 + 10.0 if i != j else None for j in range(3)] for i in range(3)],
    )


@pytest.mark.parametrize(("most", "metres"), [(3, 45.0), (2, 55.0), (1, 75.0)])
@pytest.mark.parametrize("openings", [MOST_OPENINGS, 0])
def test_a_leg_takes_as_many_openings_as_it_may(monkeypatch, openings, most, metres):
    """Tried out or searched by prices."""
    monkeypatch.setattr(plan, "MOST_OPENINGS", openings)
    # All on one way, 35 + 5 + 5 m; two of them, 35 + 5 m, and the nearest by itself, 15 m; each by itself.
    assert plan_power(doors_off_the_way(most_on_leg=most), "least-wire").wire_m == pytest.approx(metres)


@pytest.mark.parametrize(
    ("each", "cost", "shape"), [(0.0, 45.0, "junctions"), (3.0, 51.0, "junctions"), (10.0, 55.0, "daisy-chain")]
)
@pytest.mark.parametrize("openings", [MOST_OPENINGS, 0])
def test_every_junction_costs_what_one_costs_and_nothing_else_does(monkeypatch, openings, each, cost, shape):
    """Thin wire at 1 a metre: one way with two junctions, 45 m; or from door to door, 15 + 20 + 20 m."""
    monkeypatch.setattr(plan, "MOST_OPENINGS", openings)
    found = plan_power(doors_off_the_way(junction_cost=each))
    (leg,) = found.legs
    assert (leg.shape, leg.points.count(None)) == (shape, 2 if shape == "junctions" else 0)
    assert (leg.cost, found.cost) == (pytest.approx(cost), pytest.approx(100.0 + cost))


@pytest.mark.parametrize(("most", "metres"), [(3, 45.0), (2, 55.0), (1, 75.0)])
def test_ways_with_branches_are_found_by_what_openings_are_worth_alone(monkeypatch, most, metres):
    """Of many openings time may be up before a bound is looked for, whose legs would lead to them too."""
    monkeypatch.setattr(plan, "MOST_OPENINGS", 0)
    monkeypatch.setattr(RelaxedLegs, "paying", lambda *_: ([], 1.0))
    doors = doors_off_the_way(most_on_leg=most, shapes=frozenset({"home-run", "junctions"}))
    assert plan_power(doors, "least-wire").wire_m == pytest.approx(metres)


def test_only_the_shapes_that_are_asked_for():
    found = plan_power(row_of_doors(3, shapes=frozenset({"home-run"})))
    assert [leg.shape for leg in found.legs] == ["home-run"] * 3
    assert found.wire_m == 60.0


def test_what_nothing_reaches_is_named():
    question = row_of_doors(3)
    lost = Question(question.places, question.openings, question.wires, [[10.0], [None], [30.0]])
    with pytest.raises(NoPlanError) as caught:
        plan_power(lost)
    assert caught.value.openings == ("1",)
    with pytest.raises(NoPlanError):
        plan_power(row_of_doors(3, needed=11.39))


def test_what_cannot_be_is_refused_by_name():
    with pytest.raises(InputError, match="aim"):
        plan_power(row_of_doors(1), "cheapest")
    question = row_of_doors(2)
    with pytest.raises(InputError, match="to_place_m"):
        plan_power(Question(question.places, question.openings, question.wires, [[10.0]]))

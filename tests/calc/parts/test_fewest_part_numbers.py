"""Fewest kinds against every choice of small cases, proofs, limits, stopping, bad input; sizes of a real project."""

import doctest
import itertools
import random
from decimal import Decimal
from time import monotonic

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.parts import fewest_part_numbers as module
from hwsched.calc.parts.fewest_part_numbers import (
    Alternative,
    ChoiceNotFinishedError,
    Group,
    NoChoiceError,
    at_most,
    choose,
    fewest,
)
from hwsched.calc.parts.part_numbers_model import Pool, reduced, solve
from hwsched.calc.solver import Limits

CASES = range(400)


def small(seed):
    """A few groups over a few parts, with equal costs, equal sets and empty sets among them."""
    rng = random.Random(seed)
    parts = [f"P-{i}" for i in range(rng.randint(1, 8))]
    return [
        Group(
            f"g{g}",
            rng.randint(1, 9),
            [
                Alternative(
                    f"{rng.choice((3, 4, 5, 5, 9.25, 12.1))}",
                    frozenset(rng.sample(parts, rng.randint(0, min(4, len(parts))))),
                )
                for _ in range(rng.randint(1, 4))
            ],
        )
        for g in range(rng.randint(1, 6))
    ]


def every(groups):
    """(cost, number of different parts) of every choice there is."""
    for chosen in itertools.product(*(group.alternatives for group in groups)):
        cost = sum(group.count * Decimal(str(each.cost)) for group, each in zip(groups, chosen, strict=True))
        yield cost, len(frozenset().union(*(each.kinds for each in chosen)))


def check(groups, found):
    """The answer is one of the choices, and says truly what it costs and uses."""
    taken = [group.alternatives[i] for group, i in zip(groups, found.chosen, strict=True)]
    assert found.kinds == tuple(sorted(frozenset().union(*(each.kinds for each in taken))))
    assert found.cost == sum(g.count * Decimal(str(a.cost)) for g, a in zip(groups, taken, strict=True))


def test_docs():
    assert doctest.testmod(module).failed == 0


@pytest.mark.parametrize("seed", CASES)
def test_against_every_choice(seed):
    groups = small(seed)
    ways = list(every(groups))
    for price in (Decimal(0), Decimal("0.75"), Decimal(random.Random(seed).randint(1, 40))):
        found = choose(groups, price)
        check(groups, found)
        assert found.value == found.cost + price * len(found.kinds) == min(cost + price * n for cost, n in ways)
        assert found.optimal
        if price == 0:
            assert len(found.kinds) == min(n for cost, n in ways if cost == found.cost)
    found = fewest(groups)
    check(groups, found)
    assert (len(found.kinds), found.cost) == min((n, cost) for cost, n in ways)
    assert found.least_kinds == len(found.kinds)
    assert found.optimal
    least = len(found.kinds)
    for most in range(max(n for _, n in ways) + 1):
        if most < least:
            with pytest.raises(NoChoiceError) as refused:
                at_most(groups, most)
            assert most < refused.value.least_kinds <= least
            alone = [g.id for g in groups if min(len(set(a.kinds)) for a in g.alternatives) > most]
            assert refused.value.group == (alone[0] if alone else "")
            continue
        found = at_most(groups, most)
        check(groups, found)
        assert len(found.kinds) <= most
        assert found.cost == min(cost for cost, n in ways if n <= most)
        assert found.optimal


def test_the_price_decides():
    """By hand: A cheapest with x (5 · 1 less than y); B wants y; one kind more costs `price`."""
    groups = [
        Group("A", 5, [Alternative(10, ["x"]), Alternative(11, ["y"])]),
        Group("B", 9, [Alternative(20, ["y"])]),
    ]
    assert choose(groups, "4.99").kinds == ("x", "y")
    assert choose(groups, "4.99").value == Decimal("239.98")  # 50 + 180 + 2 · 4.99
    assert choose(groups, "5.01").kinds == ("y",)
    assert choose(groups, "5.01").value == Decimal("240.01")  # 55 + 180 + 5.01
    assert choose(groups, 5).value == 240
    assert fewest(groups).chosen == (1, 0)
    assert at_most(groups, 2).cost == 230
    assert at_most(groups, 1).cost == 235


def test_a_dearer_price_never_means_more_kinds():
    for seed in range(40):
        groups = small(seed)
        prices = [Decimal(p) for p in (0, 1, 3, 9, 27, 81, 1000)]
        counts = [len(choose(groups, price).kinds) for price in prices]
        assert counts == sorted(counts, reverse=True)
        assert counts[-1] == len(fewest(groups).kinds)


def test_money_is_exact():
    """Ten million openings, and alternatives that differ in the last of 20 places."""
    tight = [Alternative("0.10000000000000000002", ["x"]), Alternative("0.10000000000000000001", ["y"])]
    found = choose([Group("A", 10_000_000, tight)], 0)
    assert found.chosen == (1,)
    assert found.cost == Decimal("1000000.0000000000001")
    assert choose([Group("A", 3, [Alternative(0.1, ["x"])])], 0.2).value == Decimal("0.5")


def test_dropping():
    """By hand: the dear superset goes; then z is in use anyway, so the offer of z alone beats y."""
    pools, needed = reduced([Pool(2, ((0, 0b001), (1, 0b011))), Pool(1, ((0, 0b100),))], None)
    assert (pools, needed) == ([], 0b101)
    pools, needed = reduced([Pool(2, ((0, 0b100), (1, 0b010))), Pool(1, ((0, 0b100),))], None)
    assert (pools, needed) == ([], 0b100)
    kept = Pool(2, ((0, 0b001), (3, 0b010)))
    assert reduced([kept], None) == ([kept], 0)
    assert reduced([kept, kept], None) == ([Pool(4, kept.offers)], 0)
    assert reduced([kept], 7) == ([kept], 0)  # saves 6 where a part costs 7
    assert reduced([kept], 6) == ([], 0b001)


def test_a_start_does_not_hide_the_answer():
    """The solver's preparation settles this model whole: 0 for what costs 4 from the start (HiGHS 1.16)."""
    pools = [Pool(2, ((0, 4), (2, 0))), Pool(3, ((0, 96), (1, 11), (2, 21)))]
    mask, bound = solve(pools, 0, 6, Limits(), 96)
    assert mask & 0b1100100 == 0b1100100
    assert bound == 0


def test_large_project_in_seconds():
    """Three hundred groups of ten ways over 120 parts."""
    groups = project(4, groups=300, parts=120, ways=10)
    began = monotonic()
    found = choose(groups, 200)
    assert found.optimal
    assert monotonic() - began < 20
    check(groups, found)
    cheapest = sum(g.count * min(a.cost for a in g.alternatives) for g in groups)
    assert cheapest < found.cost
    assert len(found.kinds) < len(choose(groups, 0).kinds)


def test_nothing_asked():
    assert choose([], 5).value == 0
    assert fewest([]).kinds == ()
    assert at_most([], 0).gap == 0.0
    free = [Group("A", 2, [Alternative(0, [])])]
    assert at_most(free, 0).chosen == (0,)


def test_a_limit_that_no_group_breaks_alone():
    groups = [Group(name, 1, [Alternative(1, [name])]) for name in "abc"]
    with pytest.raises(NoChoiceError, match="at least 3 different parts are needed, 2 allowed") as refused:
        at_most(groups, 2)
    assert (refused.value.least_kinds, refused.value.group) == (3, "")
    # Any two of three parts serve one group each: two are needed, though no group needs more than one.
    pairs = [Group(a + b, 1, [Alternative(1, [a]), Alternative(1, [b])]) for a, b in ("xy", "yz", "xz")]
    with pytest.raises(NoChoiceError, match="at least 2"):
        at_most(pairs, 1)
    assert at_most(pairs, 2).cost == 3


@pytest.mark.parametrize(
    ("groups", "words"),
    [
        ([Group("A", 1, [])], "group 'A': has no alternative"),
        ([Group("A", 0, [Alternative(1, [])])], "group 'A' count: must be at least 1"),
        ([Group("A", 1.5, [Alternative(1, [])])], "group 'A': count must be a whole number"),  # type: ignore[arg-type]
        ([Group("A", 1, [Alternative(-1, [])])], "group 'A' alternative 0 cost: must be at least 0"),
        ([Group("A", 1, [Alternative("dear", [])])], "group 'A' alternative 0 cost: must be a number"),
        ([Group("A", 1, [Alternative(float("nan"), [])])], "group 'A' alternative 0 cost: must be a finite"),
        ([Group("A", 1, [Alternative(1, "C-1")])], "group 'A': kinds of an alternative"),
        ([Group("A", 1, [Alternative(1, [])])] * 2, "group 'A': is given twice"),
    ],
)
def test_errors_name_the_group(groups, words):
    for ask in (lambda: choose(groups, 1), lambda: fewest(groups), lambda: at_most(groups, 3)):
        with pytest.raises(InputError, match=words):
            ask()


def test_other_bad_input():
    with pytest.raises(InputError, match="price_per_kind"):
        choose([], -1)
    for most in (-1, 1.5, True):
        with pytest.raises(InputError, match="most"):
            at_most([], most)


def project(seed, groups=30, parts=24, ways=5):
    """Groups of a project: each way takes a cylinder, a unit and some of a wide choice of trim and wire."""
    rng = random.Random(seed)
    price = [rng.randint(5, 400) for _ in range(parts)]
    asked = []
    for g in range(groups):
        alternatives = []
        for _ in range(ways):
            used = {rng.randrange(parts // 4), parts // 4 + rng.randrange(parts // 4), *rng.choices(range(parts), k=2)}
            alternatives.append(Alternative(sum(price[k] for k in used), {f"P-{k:03}" for k in used}))
        asked.append(Group(f"g{g}", rng.randint(1, 40), alternatives))
    return asked


def test_stopped_answers_hold_and_state_their_gap():
    groups = project(1)
    best = choose(groups, 900)
    assert best.optimal
    stopped = choose(groups, 900, Limits(cancelled=lambda: True))
    check(groups, stopped)
    assert stopped.gap > 0
    assert not stopped.optimal
    assert stopped.value > best.value
    assert stopped.least_value <= float(best.value)
    assert stopped.least_value == pytest.approx(float(stopped.value) * (1 - stopped.gap))
    few, late = fewest(groups), fewest(groups, Limits(until=monotonic() - 1))
    check(groups, late)
    assert late.least_kinds <= len(few.kinds) <= len(late.kinds)
    with pytest.raises(ChoiceNotFinishedError, match="not settled"):
        at_most(groups, len(few.kinds), Limits(cancelled=lambda: True))


def test_a_gap_that_suffices():
    groups = project(3)
    best, near = choose(groups, 900), choose(groups, 900, Limits(gap=0.2))
    assert near.gap <= 0.2
    assert near.least_value <= float(best.value) + 1e-6 <= float(near.value) + 1e-6


def test_progress_and_cancelling_in_the_course():
    told = []
    groups = project(2)
    fewest(groups, Limits(progress=lambda step, gap: told.append(step)))
    assert told[0] == "fewest different parts"
    assert told[-1].startswith("least cost with ")
    asked = []
    found = fewest(groups, Limits(cancelled=lambda: bool(asked.append(1)) or len(asked) > 2))
    assert len(asked) > 2
    check(groups, found)
    assert found.least_kinds <= len(fewest(groups).kinds) <= len(found.kinds)

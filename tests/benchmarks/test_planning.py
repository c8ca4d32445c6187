"""A plan of 60 openings against one bare solve of the model that chooses among its legs; a ratio of one run."""

import random
import time

import pytest

from hwsched.calc.power.planning.large_search import LargeSearch
from hwsched.calc.power.planning.legs import Weights, outlets_of, ways_of
from hwsched.calc.solver import Limits, run
from tests.calc.power.planning.questions import question_of, random_numbers

pytestmark = pytest.mark.bench
GAP = 0.01
LOOK_S = 240.0
BARE_S = 120.0
"""Where the bare solver takes longer than this, the ratio is only better than printed."""


def test_60_openings_with_6_wires_and_8_places_within_30_bare_solves():
    rng = random.Random("sixty")
    question = question_of(random_numbers(rng, 60, places=8, wires=6, span_m=120.0, amps=(3.0, 8.0)))
    weights = Weights(1.0, 1e-6)
    begin = time.perf_counter()
    search = LargeSearch(
        question, outlets_of(question), ways_of(question, weights), weights, Limits(GAP, time.monotonic() + LOOK_S)
    )
    legs, sizes, bound = search.answer()
    mine = time.perf_counter() - begin
    begin = time.perf_counter()
    run(search.model(), Limits(GAP, time.monotonic() + BARE_S))
    bare = time.perf_counter() - begin
    cost = sum(leg.weight for leg in legs) + sum(question.places[p].sizes[s].cost for p, s in sizes.items())
    gap = (cost - bound) / cost
    print(
        f"\n60 openings, 6 wires, 8 places: {mine:.1f} s, {len(sizes)} supplies, cost {cost:.0f}, gap {gap:.1%}; "
        f"bare solver {bare:.1f} s; ratio {mine / bare:.2f}"
    )
    assert sorted(i for leg in legs for i in leg.order) == list(range(60))
    assert 0.0 <= gap < 1.0
    assert mine <= 30.0 * bare

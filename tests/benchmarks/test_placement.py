"""One placement against reading and writing its own JSON, in one run."""

import json
import time

import pytest

from hwsched.calc.opening.placement import PLACEMENT
from hwsched.cli.project.calc import answers

pytestmark = pytest.mark.bench


def given(number):
    keepouts = [
        {
            "x0": 20 + 7 * n,
            "y0": 300 + 170 * n + number % 13,
            "x1": 120 + 9 * n,
            "y1": 380 + 170 * n,
            "clearance_mm": 5,
            "name": f"k{n}",
        }
        for n in range(8)
    ]
    holes = ((1000, 1000), (1050, 1150), (820, 940))
    patterns = [
        {"name": name, "hole": {"x0": 70, "y0": low, "x1": 70, "y1": high}, "base_mm": 60, "cost": cost}
        for cost, (name, (low, high)) in enumerate(zip(("straight", "above", "below"), holes, strict=True))
    ]
    return json.dumps(
        {
            "leaf": {"width_mm": 910, "height_mm": 2110}, "edge_margin_mm": 3, "keepouts": keepouts,
            "plate": {"width_mm": 76, "height_mm": 152}, "window": {"x0": 12, "y0": 14, "x1": 64, "y1": 70},
            "connector": {"x": 38, "y": 92}, "cylinder": {"x": 70, "y": 1000}, "patterns": patterns,
        }
    )  # fmt: skip


def test_a_placement_costs_at_most_twenty_times_its_json():
    lines = [given(number) for number in range(400)]
    start = time.perf_counter()
    for line in lines:
        json.dumps(json.loads(line))
    bare = time.perf_counter() - start
    start = time.perf_counter()
    answered = [json.dumps(answer) for answer in answers(PLACEMENT, lines)]
    ratio = (time.perf_counter() - start) / bare
    print(f"\nplacement: {ratio:.1f} times its JSON (at most 20)")
    assert all('"feasible"' in answer for answer in answered)
    assert ratio <= 20

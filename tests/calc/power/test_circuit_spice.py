"""Circuit against ngspice: 500 random trees of each kind of load, volts equal to 1 mV."""

import random
import shutil

import pytest

from hwsched.calc.power.circuit import CIRCUIT
from tests.calc.circuits import random_circuit
from tests.calc.oracles import case_count, spice

TREES = case_count(125)
AT_ONCE = 125


@pytest.mark.slow
@pytest.mark.skipif(shutil.which("ngspice") is None, reason="ngspice is not installed; .ci/setup test installs it")
@pytest.mark.parametrize("kind", ["current", "power", "resistance", "mixed"])
def test_against_ngspice(kind, tmp_path):
    rng = random.Random(f"trees of {kind}")
    inputs, answers, collapsed = [], [], 0
    while len(inputs) < TREES:
        given = random_circuit(rng, kind)
        answer = CIRCUIT.run(given)
        if answer["collapsed"]:
            # No voltages to compare; test_circuit proves collapses.
            collapsed += 1
            continue
        inputs.append(given)
        answers.append(answer)
    assert collapsed < TREES / 4
    assert kind in ("power", "mixed") or collapsed == 0
    compared = 0
    for begin in range(0, TREES, AT_ONCE):
        batch = slice(begin, begin + AT_ONCE)
        for expected, answer in zip(spice.volts(inputs[batch], tmp_path), answers[batch], strict=True):
            assert answer["volts"] == pytest.approx(expected, abs=1e-3, rel=0)
            # The program's own tolerance is far finer than the figure asked for.
            assert answer["volts"] == pytest.approx(expected, abs=1e-6, rel=0)
            compared += len(expected)
    assert compared > 3 * TREES

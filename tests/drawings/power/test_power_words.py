import pytest

from hwsched.drawings.power.power_words import (
    conductor_words,
    low_words,
    narrow_volts_words,
    run_length_words,
    worst_words,
)
from hwsched.language import STRETCHED, in_language, stretched
from hwsched.values.power import NodeResult, RunResult


@pytest.mark.parametrize(
    ("metres", "inches", "words"),
    # 1 ft is 0.3048 m exactly (international foot).
    [(0.3048, True, "1 ft"), (30.48, True, "100 ft"), (30.48, False, "30.5 m"), (float("nan"), True, "length unknown")],
)
def test_lengths_of_runs(metres, inches, words):
    assert run_length_words(metres, "decimal-inch" if inches else "mm") == words


@pytest.mark.parametrize(("has", "said"), [(9.4, "has 9.4 V"), (9.95, "has 9.95 V"), (9.996, "has 9.996 V")])
def test_a_low_voltage_never_reads_as_enough(has, said):
    first, second = low_words(NodeResult("n", "n", "n", 1.0, {"peak": has, "normal": 12.0}, 10.0, 14.0))
    assert first == said
    assert second.startswith("needs 10.0")


def test_the_worst_state_is_named():
    node = NodeResult("n", "n", "n", 1.0, {"peak": 11.04, "standby-end": 10.96}, 10.0, 14.0)
    assert worst_words(node) == ("11.0 V at worst", "(end of standby)")
    assert narrow_volts_words(node, 14.0) == ("11.0 V", "at worst", "(end of", "standby)")
    assert worst_words(None) == ("volts unknown",)


@pytest.mark.parametrize(("stranding", "short"), [("stranded", "str"), ("solid", "sol")])
def test_how_a_conductor_is_made_is_said_short_in_the_language_of_its_drawing(stranding, short):
    run = RunResult("r", "", "", "a", "b", 3.0, "18 AWG", stranding, 1, "", 0.1, {})
    assert conductor_words(run) == f"18 AWG {short}"
    with in_language(STRETCHED):
        assert conductor_words(run) == f"18 AWG {stretched(short)}"

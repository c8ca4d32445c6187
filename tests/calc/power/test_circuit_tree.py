"""Runs as a tree: order, paths, and what is refused."""

import doctest

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.power import circuit_tree
from hwsched.calc.power.circuit_tree import Run, network


def run(a, b, length_m=1.0):
    return Run(a, b, length_m, "18 AWG", "solid")


def test_docs():
    assert doctest.testmod(circuit_tree).failed == 0


def test_feeders_stand_before_what_they_feed():
    tree = network([run("c", "b"), run("x", "supply"), run("b", "a"), run("a", "supply"), run("d", "b")], 20)
    assert set(tree.names) == {"supply", "a", "b", "c", "d", "x"}
    assert all(to < i for i, to, _ in tree.steps)
    assert tree.path("d") == (3, 2, 4)
    assert tree.path("supply") == ()
    assert not any(tree.outward[1:4])


@pytest.mark.parametrize(
    ("runs", "field", "word"),
    [
        ([run("supply", "a"), run("a", "b"), run("b", "supply")], "runs[2].to", "loop"),
        ([run("supply", "a"), run("supply", "a")], "runs[1].to", "conductors_in_parallel"),
        ([run("a", "b"), run("b", "c"), run("c", "a"), run("supply", "z")], "runs[2].to", "loop"),
        ([run("a", "a")], "runs[0].to", "loop"),
        ([run("supply", "a"), run("b", "c")], "runs[1].from", "not fed"),
        ([run("a", "b")], "runs[0].from", "not fed"),
        ([run("supply", "a", 0)], "runs[0].length_m", "more than 0"),
        ([run("supply", "a", -1)], "runs[0].length_m", "more than 0"),
        ([run("supply", "a", float("nan"))], "runs[0].length_m", "finite"),
        ([Run("supply", "a", 1, "18 AWG", "solid", 0)], "runs[0].conductors_in_parallel", "at least 1"),
        ([Run("supply", "a", 1, "18 AWG", "solid", 1, -1)], "runs[0].extra_ohm", "at least 0"),
        ([Run("supply", "a", 1, "two", "solid")], "runs[0].gauge", "wire size"),
        ([Run("supply", "a", 1, "18 AWG", "bare")], "runs[0].stranding", "solid"),
    ],
)
def test_refused(runs, field, word):
    with pytest.raises(InputError) as caught:
        network(runs, 20)
    assert caught.value.field == field
    assert word in caught.value.message

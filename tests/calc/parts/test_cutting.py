"""Cutting stock against published optima, each solved again by integer programming, and against trying all."""

import doctest
import random

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.parts import cutting
from hwsched.calc.parts.cutting import cut

PAPER = {1380: 22, 1520: 25, 1560: 12, 1710: 14, 1820: 18, 1880: 18, 1930: 20, 2000: 10, 2050: 12, 2100: 14, 2140: 16,
         2150: 18, 2200: 20}  # fmt: skip
PUBLISHED = {
    "paper machine, an encyclopedia's": (5600, 0, PAPER, 73),
    "a modelling library's": (100, 0, {45: 97, 36: 610, 31: 395, 14: 211}, 453),
    "raceway": (6000, 0, {2100: 10, 1020: 14, 915: 20, 600: 9}, 10),
    "raceway with a kerf": (6000, 3, {2100: 10, 1020: 14, 915: 20, 600: 9}, 10),
    "short bars": (3000, 3, {1020: 8, 990: 4, 915: 12, 600: 9}, 10),
}


def pieces(counts):
    return [length for length, count in counts.items() for _ in range(count)]


def sound(found, lengths, stock, kerf=0):
    """Every piece once, nothing over the stock, a cut between any two."""
    assert sorted(i for each in found.stock for i in each) == list(range(len(lengths)))
    for each in found.stock:
        assert sum(lengths[i] for i in each) + kerf * (len(each) - 1) <= stock


def test_docs():
    assert doctest.testmod(cutting).failed == 0


@pytest.mark.parametrize("name", PUBLISHED)
def test_published_optima(name):
    stock, kerf, counts, fewest = PUBLISHED[name]
    lengths = pieces(counts)
    found = cut(lengths, stock, kerf)
    sound(found, lengths, stock, kerf)
    assert (len(found.stock), found.fewest) == (fewest, fewest)


def fewest_by_hand(lengths, stock):
    """By trying: each piece into every stock length that is begun, or a new one."""
    best = len(lengths)

    def place(i, left):
        nonlocal best
        if len(left) >= best:
            return
        if i == len(lengths):
            best = len(left)
            return
        for at in range(len(left)):
            if left[at] >= lengths[i]:
                place(i + 1, [*left[:at], left[at] - lengths[i], *left[at + 1 :]])
        place(i + 1, [*left, stock - lengths[i]])

    place(0, [])
    return best


def test_against_trying_all():
    rng = random.Random("cutting")
    for _ in range(25):
        lengths = sorted((rng.randint(10, 100) for _ in range(rng.randint(1, 8))), reverse=True)
        found = cut(lengths, 100)
        sound(found, lengths, 100)
        fewest = fewest_by_hand(lengths, 100)
        assert found.fewest <= fewest <= len(found.stock)
        assert len(found.stock) == fewest


def test_nothing_to_cut():
    assert cut([], 100).stock == ()


@pytest.mark.parametrize("length", [0, -1, 101])
def test_what_cannot_be_cut_is_named(length):
    with pytest.raises(InputError, match=r"lengths\[1\]"):
        cut([5, length], 100)

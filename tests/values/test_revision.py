"""Letters of revisions as drawing offices count them, and what of a project a revision holds."""

import doctest

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hwsched.values import revision
from hwsched.values.revision import LETTERS, Scope, is_letter, letter_at, next_letter, place_of


def test_docs():
    assert doctest.testmod(revision).failed == 0


def test_the_alphabet_without_i_and_o():
    assert len(LETTERS) == 24
    assert [letter_at(place) for place in range(1, 25)] == list("ABCDEFGHJKLMNPQRSTUVWXYZ")
    assert [letter_at(place) for place in (25, 26, 48, 49)] == ["AA", "AB", "AZ", "BA"]
    # 24 single letters, 24 · 24 double ones.
    assert letter_at(24 + 24 * 24) == "ZZ"
    assert letter_at(24 + 24 * 24 + 1) == "AAA"


@given(st.integers(1, 10**6))
def test_places_and_letters_are_one_to_one(place):
    assert place_of(letter_at(place)) == place
    assert is_letter(letter_at(place))


@pytest.mark.parametrize("text", ["", "I", "O", "a", "A1", "A B", "ÄA", "AI"])
def test_what_is_no_letter(text):
    assert not is_letter(text)


def test_the_next_is_after_the_last_whatever_is_missing():
    assert next_letter([]) == "A"
    assert next_letter(["A", "C"]) == "D"
    assert next_letter(["AA", "B"]) == "AB"


@pytest.mark.parametrize(
    ("scope", "words"),
    [
        (Scope(), "the whole project"),
        (Scope("Mill"), "Mill"),
        (Scope("Mill", "2"), "Mill, level 2"),
        (Scope(marks=("1", "2")), "openings 1, 2"),
    ],
)
def test_scopes_are_held_and_said(scope, words):
    assert scope.words == words
    assert Scope.of(scope.plain()) == scope
    assert (scope.plain() == {}) == (scope == Scope())

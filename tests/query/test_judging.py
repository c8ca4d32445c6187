"""What is found is what is true: held against plain Python over random openings and random questions."""

import os
import random
from itertools import product

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from hwsched.query import Askable, QueryError, as_text, completions, judge, parse, said_in_words
from hwsched.query.parsing import DEEPEST, LONGEST
from tests.query.plain import ASKABLE, FACTS, OPENINGS, Table, answer, order, questions, signs_of, written

TRIES = int(os.environ.get("HWSCHED_FUZZ", "400"))
many = settings(max_examples=TRIES, deadline=None, suppress_health_check=list(HealthCheck))


@many
@given(questions(), st.lists(OPENINGS, max_size=6), st.integers(0, 10**6))
def test_a_query_finds_what_plain_python_finds(question, openings, seed):
    text = written(question, random.Random(seed))
    query = parse(text, ASKABLE)
    truth = judge(query, Table(openings))
    told = [True if n in truth.true else False if n in truth.false else None for n in range(len(openings))]
    assert told == [answer(question, each) for each in openings], text


@many
@given(questions(), st.integers(0, 10**6))
def test_a_query_written_from_its_tree_reads_as_the_same_tree(question, seed):
    query = parse(written(question, random.Random(seed)), ASKABLE)
    again = parse(str(query), ASKABLE)
    assert again.root == query.root
    assert str(again) == str(query)
    assert said_in_words(again) == said_in_words(query)


@pytest.mark.parametrize("key", sorted(key for key in FACTS if FACTS[key][1] not in ("list", "place")))
def test_every_sign_at_every_pair_of_values(key):
    """The boundary of each comparison: every value held against every value asked."""
    thing, _, name = key.partition(".")
    opening = dict.fromkeys(k for k in FACTS if "." not in k) | {"leaf": [], "item": []}
    held = [*FACTS[key][2], None]
    openings = [{**opening, thing: [{name: v}]} if name else {**opening, key: v} for v in held]
    rng = random.Random(key)
    for sign in signs_of(key):
        for one, other in product(FACTS[key][2], repeat=2):
            if sign == "between" and order(key, other) < order(key, one):
                continue
            values = {"between": [one, other], "in": [one, other], "known": [], "unknown": []}.get(sign, [one])
            question = ("fact", key, sign, values, False)
            text = written(question, rng)
            truth = judge(parse(text, ASKABLE), Table(openings))
            told = [True if n in truth.true else False if n in truth.false else None for n in range(len(held))]
            assert told == [answer(question, each) for each in openings], text


@pytest.mark.parametrize("key", sorted(FACTS))
def test_unknown_is_neither_true_nor_false(key):
    """x > 1 or not x > 1 is not true where x is unknown; x is unknown is."""
    names, sort, values = FACTS[key]
    empty = {k: None for k in FACTS if "." not in k} | {"leaf": [], "item": []}
    empty |= {k: ([], True) for k in ("status", "uses", "finding", "waived")}
    (name, *_), value = names, next(iter(values.values()))[0]
    asked = f'{name} = "{value}"' if '"' not in value else f"{name} = {value}"
    for text in (asked, f"not {asked}", f"{asked} or not {asked}", f"{asked} and not {asked}"):
        truth = judge(parse(text, ASKABLE), Table([empty]))
        assert (truth.true, truth.false) == (frozenset(), frozenset()), text
    if sort not in ("list", "place"):
        assert judge(parse(f"{name} is unknown", ASKABLE), Table([empty])).true == {0}
        assert judge(parse(f"not {name} is known", ASKABLE), Table([empty])).true == {0}


def test_only_the_facts_of_the_query_are_asked_for():
    table = Table([])
    judge(parse("leaf.thickness > 1 and (level = 2 or not uses q1)", ASKABLE), table)
    assert {fact.name for fact in table.asked} == {"leaf.thickness", "level", "uses"}


PIECES = (
    *("and", "or", "not", "every", "uses", "is", "in", "known", "unknown", "between", "contains", "(", ")", ",", "="),
    *("!=", "<", ">=", "≤", '"', "'", "“", "leaf.thickness", "rating", "thk", "1 3/4", "status", "finding", "M1", "?"),
    *("error", "Mill House", "\n", "\t", "\0", "\u202e", "é", "#N/A", "1e999", "9" * 400, "-"),
)
LANGUAGE = st.lists(st.one_of(st.sampled_from(PIECES), st.text(max_size=8)), max_size=14).flatmap(
    lambda words: st.sampled_from([" ", "", "  "]).map(lambda blank: blank.join(words))
)


@many
@given(LANGUAGE, st.integers(-2, 40))
@example("(" * 5000, 3)
@example("not " * 900, 3)
@example("(" * 100 + "a" + ")" * 100, 50)
@example("a or " * 790 + "a", 3)
@example("building = Mill" + "l" * 3900, 3)
def test_whatever_is_typed_gets_an_answer_or_a_pointed_error(text, cursor):
    query = fault = None
    try:
        query = parse(text, ASKABLE)
    except QueryError as error:
        fault, pointed = error.fault, error.pointed
    if query is not None:
        assert parse(str(query), ASKABLE).root == query.root
        assert said_in_words(query)
        assert judge(query, Table([])).true == frozenset()
    else:
        assert 0 <= fault.start <= fault.end <= len(text)
        assert fault.found == text[fault.start : fault.end]
        assert fault.message
        assert pointed.splitlines()[-1].strip("\t ^") == ""
    offered = completions(text, cursor, ASKABLE)
    assert 0 <= offered.start <= offered.end <= len(text)


def test_depth_and_length_are_bounded():
    assert parse("(" * DEEPEST + "a" + ")" * DEEPEST, ASKABLE).root is not None
    with pytest.raises(QueryError, match=f"more than {DEEPEST} deep"):
        parse("(" * (DEEPEST + 1) + "a" + ")" * (DEEPEST + 1), ASKABLE)
    assert as_text(parse("a" * LONGEST, ASKABLE).root) == "a" * LONGEST
    with pytest.raises(QueryError, match="too long"):
        parse("a" * (LONGEST + 1), ASKABLE)


def test_lengths_that_differ_by_what_conversion_leaves_are_equal():
    """1 3/4 in is 44.45 mm; as 1.75 * 25.4 a computer holds a neighbour of it."""
    leaf = {"leaf": [{"thickness_mm": 44.449999999999996}]}
    for sign, found in {"=": True, "<": False, ">": False, "<=": True, ">=": True, "!=": False}.items():
        query = parse(f"leaf.thickness {sign} 44.45 mm", Askable())
        assert bool(judge(query, Table([leaf])).true) is found, sign


@pytest.mark.parametrize(
    ("style", "asked", "held", "found"),
    [
        # Shown as 1 3/4", 1.752" and 44.5 mm.
        ("fraction", "> 1 3/4 in", 44.5, False), ("fraction", "= 1 3/4 in", 44.5, True),
        ("fraction", "<= 1 3/4 in", 44.5, True), ("fraction", "!= 1 3/4 in", 44.5, False),
        ("fraction", "in 1 1/2 in, 1 3/4 in", 44.5, True), ("fraction", "between 1 1/2 in and 1 3/4 in", 44.5, True),
        ("fraction", "> 1 3/4 in", 44.7, True), ("fraction", ">= 1 3/4 in", 44.3, True),
        ("fraction", "< 1 3/4 in", 44.2, True),
        ("decimal-inch", "> 1.75 in", 44.5, True), ("decimal-inch", "> 1.752 in", 44.5, False),
        ("mm", "= 44.5 mm", 44.45, True), ("mm", "> 44.4 mm", 44.45, True), ("mm", "> 44.5 mm", 44.51, False),
    ],
)  # fmt: skip
def test_a_length_is_found_as_what_it_is_shown_as(style, asked, held, found):
    columns = Table([{"leaf": [{"thickness_mm": held}]}])
    query = parse(f"leaf.thickness {asked}", Askable(length_style=style))
    assert judge(query, columns).true == (frozenset([0]) if found else frozenset())

"""What a person names by words: every kind of thing, each to its row and back to a name, and what there is not."""

import pytest

from hwsched.model.errors import MissingRowError
from hwsched.operations.parts.hardware_sets import Line, make_set
from hwsched.operations.survey.things import KINDS, Thing, names_of, thing_named
from tests.operations.locked import points_of, yard
from tests.operations.powered import WHO, closet


@pytest.fixture(scope="module")
def shop(tmp_path_factory):
    """A deadbolt above a lock at 101, a set and a supply; it is only read."""
    made = yard(tmp_path_factory.mktemp("shop"))
    make_set(made, "Shop", [Line("unit", "UNIT")], who=WHO)
    closet(made, "PS1")
    yield made
    made.close()


def named(project, thing):
    with project.reading() as connection:
        return names_of(connection, [thing]).get(thing)


NAMED = {
    ("101",): ("opening", "101"),
    ("opening", "101"): ("opening", "101"),
    ("part", "UNIT"): ("part", "part UNIT"),
    ("supply", "PS1"): ("supply", "supply PS1"),
    ("set", "Shop"): ("hardware_set", "set Shop"),
    ("101", "leaf"): ("leaf", "101 leaf"),
    ("101", "lock"): ("existing_item", "101 existing item"),
    ("101", "item:2"): ("existing_item", "101 existing item"),
    ("101", "point:1"): ("lock_point", "101 lock point"),
    ("101", "point:2"): ("lock_point", "101 lock point"),
}


@pytest.mark.parametrize("words", NAMED)
def test_every_kind_of_thing_is_found_and_called_by_a_name(shop, words):
    found = thing_named(shop, words)
    assert (found.entity, named(shop, found)) == NAMED[words]


def test_no_kind_of_thing_is_left_out():
    assert {kind.word for kind in KINDS} <= {words[0] for words in NAMED}


def test_lock_points_are_counted_from_one_in_their_order(shop):
    points = points_of(shop, "101")
    assert [thing_named(shop, ["101", f"point:{n}"]) for n in (1, 2)] == [
        Thing("lock_point", row_id) for row_id in points.values()
    ]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ((), "accepted: MARK, MARK leaf"),
        (("a", "b", "c"), "'a b c' names nothing"),
        (("999",), "no opening has the mark 999"),
        (("part", "NONE"), "no part has the number NONE"),
        (("supply", "NONE"), "no supply has the name NONE"),
        (("set", "NONE"), "no set has the name NONE"),
        (("101", "item:9"), "101 has no item:9; it has opening"),
        (("101", "point:3"), "101 has no lock point 3; it has 1, 2"),
        (("101", "point:"), "101 has no lock point ; it has 1, 2"),
        (("999", "point:1"), "999"),
    ],
)
def test_what_there_is_not_is_said_with_what_there_is(shop, words, said):
    with pytest.raises(MissingRowError, match=said):
        thing_named(shop, words)

"""What a file changes in a project: which thing is which, and what stays."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hwsched.exchange.survey.difference import difference
from hwsched.exchange.survey.facts import SurveyedItem, SurveyedLeaf, SurveyedOpening, SurveyRead
from hwsched.survey.item import FACES, KINDS
from hwsched.values import Catalogue, Item, Leaf, Opening, OpeningInput

EMPTY = Catalogue({}, "")


def surveyed(mark="1", facts=None, leaves=(), items=()):
    return SurveyedOpening(
        mark,
        {"mark": mark, **(facts or {})},
        tuple(SurveyedLeaf(position, {"position": position, **more}, "row") for position, more in leaves),
        tuple(item if isinstance(item, SurveyedItem) else SurveyedItem(item, {}, "row") for item in items),
        "s.csv, s, row 2",
    )


def read(*openings, rejected=()):
    return SurveyRead("s.csv", openings, rejected, (), (), (), (), ())


def known_opening(mark="1", leaves=(), items=(), **facts):
    return OpeningInput(
        Opening(f"o{mark}", mark, **facts),
        tuple(Leaf(f"o{mark}-{position}", position, **more) for position, more in leaves),
        tuple(Item(f"o{mark}-{n}", **more) for n, more in enumerate(items)),
        EMPTY,
    )


def changes(opening, held, extra=None):
    preview = difference(read(opening), [held], extra or {})
    (change,) = preview.changed
    return {(c.row_id, c.attribute): (c.before, c.after) for c in change.facts}, change, preview


def test_new_changed_unchanged_missing():
    known = [known_opening("1", hand="LH"), known_opening("2", hand="LH"), known_opening("3"), known_opening("4")]
    told = read(surveyed("1", {"hand": "LH"}), surveyed("2", {"hand": "RH"}), surveyed("5"), rejected=("4",))
    preview = difference(told, known, {})
    assert [opening.mark for opening in preview.new] == ["5"]
    assert [change.mark for change in preview.changed] == ["2"]
    assert preview.unchanged == ("1",)
    # An opening that a problem keeps out is in the file.
    assert preview.missing == ("3",)


def test_what_the_file_leaves_out_stays():
    told = surveyed("1", {"hand": "LH"}, [("single", {})])
    held = known_opening("1", [("single", {"width_mm": 900.0})], [{"kind": "closer"}], hand="LH", rating="45")
    preview = difference(read(told), [held], {})
    assert (preview.changed, preview.unchanged, preview.kept) == ((), ("1",), ())


def test_items_that_a_list_of_items_does_not_name_are_said_and_stay():
    held = known_opening("1", items=[{"kind": "closer", "face": "key"}, {"kind": "viewer"}])
    preview = difference(read(surveyed("1", items=[{"kind": "viewer"}])), [held], {})
    assert preview.kept == ("1, closer key",)
    assert preview.changed == ()


def test_facts_show_before_and_after():
    facts, change, preview = changes(surveyed("1", {"rating": "45"}), known_opening("1", rating="none"))
    assert facts == {("o1", "rating"): ("none", "45")}
    assert change.facts[0].origin == "s.csv, s, row 2"
    assert "1: Opening, Fire rating: Not rated -> 45 min" in preview.describe()


def test_fields_of_the_projects_own_are_compared():
    facts, _, _ = changes(surveyed("1", {"key_group": "B"}), known_opening("1"), {"o1": {"key_group": "A"}})
    assert facts == {("o1", "key_group"): ("A", "B")}


@pytest.mark.parametrize(
    ("known", "told", "index"),
    [
        # exactly the same, in the order of the file
        ([("closer", "active", "key"), ("closer", "active", "key")], ("closer", "active", "key"), 0),
        ([("closer", "inactive", "key"), ("closer", "active", "key")], ("closer", "active", "key"), 1),
        # the file does not know the face or the leaf, or the project does not
        ([("viewer", None, None), ("closer", "active", "key")], ("closer", None, None), 1),
        ([("closer", None, "key")], ("closer", "active", "key"), 0),
        ([("closer", "active", None)], ("closer", "active", "inside"), 0),
        # a single door that is a pair after all
        ([("lock", "single", None)], ("lock", "active", None), 0),
        # another thing
        ([("closer", "active", "key")], ("closer", "inactive", "key"), None),
        ([("closer", "active", "key")], ("closer", "active", "inside"), None),
        ([("closer", "active", "key")], ("viewer", "active", "key"), None),
    ],
)
def test_items_are_matched_by_kind_leaf_face_and_order(known, told, index):
    held = known_opening("1", items=[{"kind": k, "leaf": leaf, "face": face} for k, leaf, face in known])
    named = {name: value for name, value in zip(("kind", "leaf", "face"), told, strict=True) if value is not None}
    facts, change, _ = changes(surveyed("1", items=[{**named, "projection_mm": 60.0}]), held)
    if index is None:
        assert len(change.new_items) == 1
        assert facts == {}
    else:
        assert change.new_items == ()
        assert facts[f"o1-{index}", "projection_mm"] == (None, 60.0)


def test_sure_matches_go_before_possible_ones():
    held = known_opening("1", items=[{"kind": "closer", "face": "key"}, {"kind": "closer", "face": "inside"}])
    items = [{"kind": "closer", "x_mm": 1.0}, {"kind": "closer", "face": "key", "x_mm": 2.0}]
    facts, _, _ = changes(surveyed("1", items=items), held)
    assert facts == {("o1-0", "x_mm"): (None, 2.0), ("o1-1", "x_mm"): (None, 1.0)}


def test_what_is_deduced_fills_gaps_and_never_changes_what_is_known():
    item = SurveyedItem({"kind": "lock"}, {"leaf": "active"}, "row")
    facts, _, _ = changes(surveyed("1", items=[item]), known_opening("1", items=[{"kind": "lock"}]))
    assert facts == {("o1-0", "leaf"): (None, "active")}
    moved = known_opening("1", items=[{"kind": "lock", "leaf": "inactive"}])
    known = SurveyedItem({"kind": "lock", "face": "both"}, {"leaf": "inactive"}, "row")
    assert changes(surveyed("1", items=[known]), moved)[0] == {("o1-0", "face"): (None, "both")}


def test_a_single_door_that_turns_out_to_be_a_pair_keeps_its_leaf():
    told = surveyed("1", {"form": "pair"}, [("active", {}), ("inactive", {"width_mm": 600.0})])
    facts, change, _ = changes(told, known_opening("1", [("single", {"width_mm": 900.0})], form="single"))
    assert facts == {("o1", "form"): ("single", "pair"), ("o1-single", "position"): ("single", "active")}
    assert [leaf.position for leaf in change.new_leaves] == ["inactive"]
    back = surveyed("1", {"form": "single"}, [("single", {})])
    facts, change, preview = changes(back, known_opening("1", [("active", {}), ("inactive", {})], form="pair"))
    assert facts[("o1-active", "position")] == ("active", "single")
    assert preview.kept == ("1, leaf inactive",)


ITEMS = st.lists(
    st.fixed_dictionaries(
        {"kind": st.sampled_from([choice.value for choice in KINDS[:4]])},
        optional={
            "leaf": st.sampled_from(["active", "inactive"]),
            "face": st.sampled_from([choice.value for choice in FACES[:3]]),
            "x_mm": st.sampled_from([10.0, 20.0]),
        },
    ),
    max_size=7,
)


@settings(max_examples=150, deadline=None)
@given(items=ITEMS, order=st.randoms(use_true_random=False))
def test_what_was_taken_in_is_unchanged_the_second_time_in_whatever_order_it_is_held(items, order):
    told = surveyed("1", {"hand": "LH"}, [("active", {}), ("inactive", {})], items)
    held = known_opening("1", [("active", {}), ("inactive", {})], items, hand="LH")
    assert difference(read(told), [held], {}).unchanged == ("1",)
    # Items that share kind, leaf and face are told apart by their order alone, so only their keys are compared here.
    keyed = [{name: value for name, value in item.items() if name != "x_mm"} for item in items]
    shuffled = list(keyed)
    order.shuffle(shuffled)
    held = known_opening("1", [("active", {}), ("inactive", {})], shuffled, hand="LH")
    again = difference(read(replace(told, items=tuple(SurveyedItem(i, {}, "") for i in keyed))), [held], {})
    assert again.unchanged == ("1",)

"""Rows of a grid without a screen: order, groups, filters, identity; what is kept, pasted and filled."""

from dataclasses import dataclass

import pytest
from PySide6.QtCore import Qt

from hwsched.attributes import Attribute, show_value
from hwsched.attributes.unknown import unknown_word
from hwsched.desktop.grid.arrangement import Arrangement
from hwsched.desktop.grid.column import Column, Target
from hwsched.desktop.grid.contents import Contents
from hwsched.desktop.grid.model import GridModel
from hwsched.desktop.grid.proposals import Reading, cells_of, proposed, spread, text_of
from hwsched.survey import ITEM, OPENING

Role = Qt.ItemDataRole
BACKSET, HAND = ITEM.attribute("backset_mm"), OPENING.attribute("hand")


@dataclass
class Thing:
    id: str
    mark: str
    rating: str | None = None
    backset_mm: float | None = None


def fact(attribute, read, **more):
    return Column(
        attribute.name,
        attribute.label,
        read,
        lambda value: show_value(attribute, value, "fraction", unknown=unknown_word()),
        attribute=attribute,
        target=lambda each: Target("existing_item", each.id, attribute.name),
        **more,
    )


COLUMNS: tuple[Column[Thing], ...] = (
    Column("mark", "Mark", lambda each: each.mark),
    Column("rating", "Rating", lambda each: each.rating, key=["none", "20", "90"].index),
    fact(BACKSET, lambda each: each.backset_mm),
    fact(Attribute("name", "Name", required=True), lambda each: each.mark, standard=False),
)


@pytest.fixture
def contents():
    made = Contents(COLUMNS, lambda each: each.id)
    made.load(
        [
            Thing("a", "M10", "90", 69.85),
            Thing("b", "M2", None, 60.0),
            Thing("c", "M1", "20", None),
            Thing("d", "M3", "90", 69.85),
        ]
    )
    return made


def test_marks_are_in_the_order_in_which_people_count_and_choices_as_declared(contents):
    contents.sort("mark")
    assert contents.shown_ids() == ["c", "b", "d", "a"]
    contents.sort("rating", down=True)
    assert contents.shown_ids() == ["a", "d", "c", "b"], "what nobody knows comes last either way"
    contents.sort("backset_mm")
    assert contents.shown_ids() == ["b", "a", "d", "c"]
    contents.sort(None)
    assert contents.shown_ids() == ["a", "b", "c", "d"]


def test_filters_are_by_value_and_each_offers_what_the_others_leave(contents):
    assert contents.counted("rating") == [("20", 1), ("90", 2), (None, 1)]
    contents.allow("rating", ["90", None])
    assert contents.shown_ids() == ["a", "b", "d"]
    assert contents.counted("backset_mm") == [(60.0, 1), (69.85, 2)]
    assert contents.counted("rating") == [("20", 1), ("90", 2), (None, 1)], "its own filter hides none of its values"
    contents.allow("backset_mm", [69.85])
    assert contents.shown_ids() == ["a", "d"]
    contents.allow("rating", None)
    contents.allow("backset_mm", None)
    assert len(contents.shown_ids()) == 4


def test_rows_of_one_value_stand_together_and_can_be_folded(contents):
    contents.sort("mark")
    contents.group("rating")
    lines = [group.title if (group := contents.group_at(n)) else contents.id_at(n) for n in range(len(contents))]
    assert lines == ["20", "c", "90", "d", "a", "(empty)", "b"]
    contents.fold("90", folded=True)
    assert contents.shown_ids() == ["c", "b"]
    assert contents.line_of("d") is None
    assert (contents.group_at(2).count, contents.row_at(2), contents.line_of("b")) == (2, None, 4)


def test_a_changed_row_stays_where_it_is_known_by_what_it_is(contents):
    contents.sort("backset_mm")
    assert contents.renew([Thing("b", "M2", "90", 80.0), Thing("gone", "X")]) == [1]
    assert contents.shown_ids() == ["b", "a", "d", "c"], "it does not jump away under the hand"
    assert contents.row_of("b").rating == "90"
    contents.choose()
    assert contents.shown_ids() == ["a", "d", "b", "c"], "its value is known"


def test_what_is_kept_is_taken_for_the_columns_that_there_are(contents):
    kept = Arrangement(
        ("backset_mm", "gone", "mark"), 7, {"mark": 300, "gone": 4, "rating": 5}, ("gone", True), "rating"
    )
    contents.arrange(Arrangement.of_text(kept.as_text()))
    assert [each.name for each in contents.columns] == ["backset_mm", "mark"]
    assert contents.arrangement == Arrangement(("backset_mm", "mark"), 1, {"mark": 300}, None, "rating")
    for broken in ("", "{}", "[]", "7", '{"columns": 3}', '{"columns": [], "frozen": "x", "widths": {}}'):
        assert Arrangement.of_text(broken) == Arrangement()


def propose(contents, identity, name, text, unit="in"):
    return proposed(contents, identity, name, text, Reading(unit, "fraction"), identity)


def test_a_typed_cell_is_read_as_a_cell_of_a_survey(contents):
    cell = propose(contents, "b", "backset_mm", "2 3/4")
    assert (cell.before, cell.after, cell.text, cell.changes) == ('2 23/64"', '2 3/4"', "2 3/4", True)
    assert cell.target == Target("existing_item", "b", "backset_mm")
    assert propose(contents, "b", "backset_mm", "70", "mm").after == propose(contents, "b", "backset_mm", "70 mm").after
    assert not propose(contents, "a", "backset_mm", "69.85 mm").changes, "it holds that already"
    assert "wide" in propose(contents, "b", "backset_mm", "wide").refused
    assert propose(contents, "b", "backset_mm", "2000").refused, "no lock has a backset of two thousand inches"
    assert propose(contents, "b", "backset_mm", "").after == "unknown"
    assert propose(contents, "b", "name", "").refused == "cannot be unknown"
    assert propose(contents, "a", "rating", "20").refused == "is worked out, not typed"
    again = propose(contents, "a", "rating", "90")
    assert (again.refused, again.changes) == ("", False), "a block that is copied is put back as it was"


@pytest.mark.parametrize(
    "cells",
    [[["M1", '1 3/4"'], ['2"', ""]], [['"', "a b"]], [["two\nlines", "a\tb"], ['say "so"', "x"]], [["one"]]],
)
def test_what_is_copied_is_pasted_as_it_was(cells):
    assert cells_of(text_of(cells)) == cells


def test_pasted_cells_are_laid_from_the_first_row_on_and_one_line_over_all_selected():
    ids, names = ["a", "b", "c"], ["x", "y"]
    laid, left = spread([["1", "2"], ["3", "4"], ["5", "6"]], ids, 1, names, ["b"])
    assert laid == [("b", "x", "1"), ("b", "y", "2"), ("c", "x", "3"), ("c", "y", "4")]
    assert left == 2
    assert spread([["1", "2", "3"]], ids, 0, names, ["a", "c"]) == (
        [("a", "x", "1"), ("a", "y", "2"), ("c", "x", "1"), ("c", "y", "2")],
        2,
    )


def test_what_nobody_knows_is_said_in_a_word(contents):
    model = GridModel(contents)
    cell = model.index(model.row_of_id("c"), model.place_of("backset_mm"))
    said = [cell.data(each) for each in (Role.DisplayRole, Role.ToolTipRole, Role.AccessibleTextRole)]
    assert said == ["unknown", "unknown", "unknown"]
    assert contents.known["backset_mm"].said(None) == "unknown"
    contents.group("backset_mm")
    assert {contents.group_at(n).title for n in range(len(contents)) if contents.group_at(n)} == {
        "unknown", '2 23/64"', '2 3/4"',
    }  # fmt: skip

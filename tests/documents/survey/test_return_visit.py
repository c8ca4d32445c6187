"""The return-visit sheet: what is missing, by worth and by building, and of which item it is to be found."""

from dataclasses import replace

import pytest

from hwsched.documents.survey.return_visit import RETURN_VISIT, to_visit
from hwsched.documents.view import OpeningView, ProjectView
from hwsched.values import Catalogue, Finding, Fit, Item, Leaf, Need, Opening, OpeningInput, Part
from tests.documents.reading import facts, lines

LOCK = Item("lock", kind="lock", lock_form="mortise", disposition="replace")


def visit(mark, *missing, items=(LOCK,), **told):
    """Return an opening that is to be measured, with the facts that it lacks."""
    given = OpeningInput(
        Opening(mark, mark, **{"form": "single", "building": "Quay", **told}),
        (Leaf("leaf", position="single"),), items, Catalogue({}, ""),
    )  # fmt: skip
    return OpeningView(given, Fit("to-measure", needs=tuple(Need(fact, fact, "something") for fact in missing)), ())


def sheet(*views):
    parts = Catalogue({"UNIT": Part("UNIT", "surface-unit")}, "")
    return RETURN_VISIT.build(ProjectView("Quay", "working state 1", "2031-05-01", "mm", views, parts), None)


def found(document, building="Quay"):
    return [(line["Mark"], line["Find"], line["Of"]) for line in lines(document, building)]


def test_what_unblocks_most_stands_first_and_is_counted():
    """Thickness alone keeps 1 and 2, with the hand 3; the lead is the catalogue's, and nobody walks for it."""
    views = (
        visit("1", "leaf.thickness_mm"), visit("2", "leaf.thickness_mm"),
        visit("3", "leaf.thickness_mm", "opening.hand"), visit("4", "part UNIT.slack_mm"),
    )  # fmt: skip
    document = sheet(*views)
    assert [tuple(line.values()) for line in lines(document, "Missing facts")] == [
        ("leaf: Leaf thickness", "survey", 2, 3, "1, 2, 3"),
        ("part UNIT: Slack to open the cover", "catalogue", 1, 1, "4"),
        ("opening: Hand", "survey", 0, 1, "3"),
    ]
    said = facts(document)
    assert (said["Openings to visit"], said["Facts that are missing"]) == ("3", "3")
    assert document.subtitle == "3 openings"
    assert [view.mark for view in to_visit(ProjectView("", "", "", "mm", views, Catalogue({}, "")))] == ["1", "2", "3"]
    # The second fact of an opening stands below its mark, which is not said again.
    assert [row[:2] for row in found(document)] == [
        ("1", "leaf: Leaf thickness"), ("2", "leaf: Leaf thickness"), ("3", "leaf: Leaf thickness"),
        ("", "opening: Hand"),
    ]  # fmt: skip


@pytest.mark.parametrize(("count", "said"), [(12, ""), (13, " and 1 more"), (15, " and 3 more")])
def test_of_many_openings_twelve_are_named(count, said):
    document = sheet(*(visit(f"M{n}", "opening.hand") for n in range(count)))
    (line,) = lines(document, "Missing facts")
    assert line["Openings"] == ", ".join(f"M{n}" for n in range(12)) + said


def test_each_building_has_its_page_and_what_has_none_too():
    document = sheet(visit("1", "opening.hand", level="2", room_to="Loft"), visit("2", "opening.hand", building=None))
    (line,) = lines(document, "Quay")
    assert (line["Mark"], line["Level"], line["Location"], line["Found"]) == ("1", "2", "Loft", "." * 30)
    assert found(document, "No building") == [("2", "opening: Hand", "")]


def test_beside_a_reader_the_wall_is_measured():
    """Its leaf's thickness is the wall's; where leaves lack it too both are named."""
    reader = visit("L", "leaf.thickness_mm", form="lift")
    assert found(sheet(reader))[0][1] == "wall: Thickness of wall or enclosure"
    assert lines(sheet(reader), "Missing facts")[0]["Fact"] == "wall: Thickness of wall or enclosure"
    both = sheet(reader, visit("1", "leaf.thickness_mm"))
    assert lines(both, "Missing facts")[0]["Fact"] == "leaf: Leaf thickness; wall: Thickness of wall or enclosure"
    assert [row[1] for row in found(both)] == ["wall: Thickness of wall or enclosure", "leaf: Leaf thickness"]
    # All else of a reader is called as everywhere.
    assert found(sheet(visit("L", "opening.exposure", form="lift")))[0][1] == "opening: Exposure"


TURN = replace(LOCK, thumb_turn=True)
LITE = Item("lite", kind="lite", disposition="keep")
GONE = Item("gone", kind="closer", disposition="remove")
TRIM = Item("trim", kind="trim", disposition="keep", x_mm=1.0)


@pytest.mark.parametrize(
    ("fact", "items", "of"),
    [
        ("opening.hand", (LOCK,), ""),
        # Of those that stay and lack it, each kind once; what goes is not measured.
        ("existing_item.x_mm", (LITE, replace(LITE, id="two"), GONE), "Lite or vision panel"),
        ("existing_item.x_mm", (replace(LITE, x_mm=5.0), TRIM), ""),
        # Place and size of a lock with a thumb turn are the turn's, where the turn has no row of its own.
        ("existing_item.x_mm", (TURN,), "Thumb turn of the lock"),
        ("existing_item.height_mm", (TURN,), "Thumb turn of the lock"),
        ("existing_item.x_mm", (TURN, TRIM), "Lock"),
        ("existing_item.x_mm", (TURN, replace(TRIM, kind="thumb-turn")), "Lock"),
        ("existing_item.x_mm", (TURN, replace(TRIM, disposition="remove")), "Thumb turn of the lock"),
        ("existing_item.projection_mm", (TURN,), "Lock"),
        ("existing_item.x_mm", (LOCK,), "Lock"),
        # What only a lock has is asked of what is converted, and not of the lite beside it.
        ("existing_item.backset_mm", (LOCK, LITE), "Lock"),
        # What only a lite or a closer has is asked of none beside it.
        ("existing_item.stops", (LOCK, LITE), "Lite or vision panel"),
        ("existing_item.bolt_inset_mm", (LOCK, LITE), ""),
        ("existing_item.latch_form", (LOCK, replace(LOCK, id="old", lock_form="rim", disposition="remove")), "Lock"),
    ],
)  # fmt: skip
def test_it_says_of_which_item_a_fact_is_to_be_found(fact, items, of):
    assert found(sheet(visit("1", fact, items=items)))[0][2] == of


def test_nothing_missing_is_said():
    known = replace(visit("1"), findings=(Finding("x", "holes", "note", "Said.", "made up", "", needs=("leaf.hand",)),))
    document = sheet(known)
    assert "Nothing is missing." in str(document.sections[0])
    assert len(document.sections) == 1

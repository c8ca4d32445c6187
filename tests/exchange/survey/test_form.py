"""The surveyor's workbook: what it offers, and that whatever is filled in comes back."""

import pytest
from openpyxl import load_workbook
from openpyxl.utils import get_column_letter

from hwsched.attributes import Attribute
from hwsched.exchange.survey.book import SurveyOptions, read_survey
from hwsched.exchange.survey.difference import difference
from hwsched.exchange.survey.form import write_survey_form
from hwsched.exchange.survey.form_rows import spelled
from hwsched.survey import ITEM, LEAF, OPENING
from hwsched.values import Catalogue, Item, Leaf, Opening, OpeningInput

OWN = {"opening": (Attribute("key_group", "Key group"),), "existing_item": (Attribute("colour", "Colour"),)}
EMPTY = Catalogue({}, "")


@pytest.fixture
def path(tmp_path):
    return tmp_path / "form.xlsx"


def value_of(attribute, turn):
    if attribute.choices:
        return attribute.choices[turn % len(attribute.choices)].value
    if attribute.kind == "date":
        return f"2026-{turn % 12 + 1:02}-{turn % 28 + 1:02}"
    if attribute.kind == "flag":
        return turn % 2 == 0
    if attribute.kind in ("length", "number", "integer"):
        low, high = attribute.low or 0.0, attribute.high or 100.0
        value = low + (high - low) * (turn % 7 + 1) / 9
        return int(value) if attribute.kind == "integer" else value
    return ("0012", "9E4", "3-4", "=1+1", "../../x", "-", "1/2", "+1", "@x")[turn % 9]


def filled(turn):
    """Return a pair of which every fact is known."""

    def facts(entity, without=()):
        return {a.name: value_of(a, turn + n) for n, a in enumerate(entity.attributes) if a.name not in without}

    def item(number, kind, leaf):
        return Item(f"i{turn}-{number}", **{**facts(ITEM), "kind": kind, "leaf": leaf, "x_mm": 10.0 + number})

    leaves = tuple(
        Leaf(f"l{turn}-{p}", **{**facts(LEAF), "position": p, "width_mm": 900.0}) for p in ("active", "inactive")
    )
    opening = Opening(
        f"o{turn}", **{**facts(OPENING), "mark": f"{value_of(Attribute('m', ''), turn)} {turn}", "form": "pair"}
    )
    return OpeningInput(
        opening, leaves, (item(0, "lock", "active"), item(1, "closer", "inactive"), item(2, "lock", "inactive")), EMPTY
    )


def test_every_fact_has_a_column_a_note_or_a_list(path):
    write_survey_form(path, own_fields=OWN)
    book = load_workbook(path)
    assert book.sheetnames == ["Openings", "Existing items", "How to fill in", "Words"]
    assert book["Words"].sheet_state == "hidden"
    openings, items = book["Openings"], book["Existing items"]
    titles = [str(cell.value).split(" [")[0] for sheet in (openings, items) for cell in sheet[2]]
    for entity in (OPENING, LEAF, ITEM):
        for attribute in entity.attributes:
            assert attribute.label in titles
    assert {"Key group", "Colour"} <= set(titles)
    assert [openings.cell(1, c).value for c in range(1, openings.max_column + 1) if openings.cell(1, c).value] == [
        "Opening", "Leaf", "Lock",
    ]  # fmt: skip
    listed = {
        str(r) for sheet in (openings, items) for v in sheet.data_validations.dataValidation for r in v.cells.ranges
    }
    for sheet in (openings, items):
        for cell in sheet[2]:
            attribute = next(
                (a for e in (OPENING, LEAF, ITEM) for a in e.attributes if str(cell.value).split(" [")[0] == a.label),
                None,
            )
            if attribute is None:
                continue
            letter = get_column_letter(cell.column)
            if attribute.kind in ("choice", "flag"):
                assert f"{letter}3:{letter}2002" in listed, attribute.name
                assert cell.comment is not None
            if attribute.kind in ("text", "length"):
                assert sheet.column_dimensions[letter].number_format == "@"
            if attribute.note:
                assert attribute.note in cell.comment.text
    assert openings.freeze_panes == items.freeze_panes == "B3"


def test_the_words_of_the_lists_are_read(path):
    write_survey_form(path)
    book = load_workbook(path)
    for sheet in (book["Openings"], book["Existing items"]):
        for validation in sheet.data_validations.dataValidation:
            name, cells = validation.formula1.split("!")
            words = [cell.value for (cell,) in book[name.strip("'")][cells.replace("$", "")]]
            first = min(str(cells_) for cells_ in validation.cells.ranges).split(":")[0]
            label = str(sheet[f"{first.rstrip('0123456789')}2"].value)
            attribute = next(a for e in (OPENING, LEAF, ITEM) for a in e.attributes if a.label == label)
            expected = [choice.label for choice in attribute.choices] or ["yes", "no"]
            assert words == expected


def test_a_blank_form_holds_no_opening_and_no_example(path):
    write_survey_form(path)
    found = read_survey(path, SurveyOptions())
    assert (found.openings, found.rejected, found.unmapped) == ((), (), ())
    assert [problem.describe() for problem in found.problems] == [
        "form.xlsx, sheet Openings: has no row below its header; accepted: rows with a mark and facts"
    ]
    assert found.other_sheets == ("How to fill in",)


@pytest.mark.parametrize("unit", ["in", "ft", "mm", "cm", "m"])
def test_what_is_known_goes_out_and_comes_back_unchanged(path, unit):
    inputs = [filled(turn) for turn in range(30)]
    extra = {"o3": {"key_group": "AA"}, "i3-1": {"colour": "red"}, "i3-0": {"colour": "blue"}}
    write_survey_form(path, openings=inputs, extra=extra, bare_unit=unit, own_fields=OWN)
    found = read_survey(path, SurveyOptions(own_fields=OWN, as_typed=True))
    assert [problem.describe() for problem in found.problems] == []
    preview = difference(found, inputs, extra)
    assert [(c.mark, f.attribute, f.before, f.after) for c in preview.changed for f in c.facts] == []
    assert (len(preview.unchanged), preview.kept) == (30, ())
    assert found.openings[3].facts["key_group"] == "AA"


def test_what_is_little_known_comes_back_unchanged_too(path):
    inputs = [
        OpeningInput(Opening("a", "1"), (Leaf("l1", "single"),), (), EMPTY),
        OpeningInput(Opening("b", "2", form="lift"), (), (Item("i1", kind="other", face="key"),), EMPTY),
        OpeningInput(Opening("c", "3", form="pair"), (Leaf("l2", "active"), Leaf("l3", "inactive")), (), EMPTY),
        OpeningInput(
            Opening("d", "4"),
            (Leaf("l4", "single"),),
            (Item("i2", kind="lock", leaf="single", lock_form="rim"),),
            EMPTY,
        ),
        OpeningInput(
            Opening("e", "5"), (Leaf("l5", "single"),), (Item("i3", kind="lock", leaf="single", x_mm=1.0),), EMPTY
        ),
    ]
    write_survey_form(path, openings=inputs)
    found = read_survey(path, SurveyOptions())
    assert [problem.describe() for problem in found.problems] == []
    assert difference(found, inputs, {}).unchanged == ("1", "2", "3", "4", "5")


@pytest.mark.parametrize(
    ("mm", "unit", "text"),
    [
        (69.85, "in", '2 3/4"'),
        (69.85, "ft", '2 3/4"'),
        (44.5, "in", "44.5 mm"),
        (44.5, "mm", "44.5 mm"),
        (70.0, "cm", "70 mm"),
        (0.0, "in", '0"'),
    ],
)
def test_lengths_are_spelled_so_that_they_come_back(mm, unit, text):
    assert spelled(ITEM.attribute("x_mm"), mm, unit) == text


def test_a_form_in_millimetres_takes_bare_millimetres(path):
    write_survey_form(path, bare_unit="mm")
    book = load_workbook(path)
    titles = {str(cell.value): cell.column for cell in book["Openings"][2]}
    book["Openings"].cell(3, 1).value = "7"
    book["Openings"].cell(3, titles["Leaf width [mm]"]).value = 915
    book["Openings"].cell(3, titles["Backset [mm]"]).value = "60"
    book.save(path)
    (opening,) = read_survey(path, SurveyOptions(bare_unit="in")).openings
    assert opening.leaves[0].facts["width_mm"] == 915
    assert opening.items[0].facts["backset_mm"] == 60

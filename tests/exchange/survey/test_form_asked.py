"""In the surveyor's workbook a cell is hatched where nothing is asked of such a lock, or beside what is known."""

import pytest
from openpyxl import load_workbook

from hwsched.exchange.survey.form import write_survey_form
from hwsched.values import Catalogue, Item, Leaf, Opening, OpeningInput

HEADER = 2


def door(mark, lock_form, **facts):
    return OpeningInput(
        Opening(mark, mark, **{"form": "single", "rating": "90", **facts}),
        (Leaf(f"l{mark}", position="single"),),
        (Item(f"i{mark}", kind="lock", leaf="single", lock_form=lock_form),),
        Catalogue({}, ""),
    )


@pytest.fixture(scope="module")
def hatched(tmp_path_factory):
    """By mark, the headers of the cells that are hatched, without their unit."""
    path = tmp_path_factory.mktemp("form") / "form.xlsx"
    openings = [door("1", "bored"), door("2", "mortise"), door("3", "rim", rating="none", stair=False), door("4", None)]
    write_survey_form(path, openings=openings)
    sheet = load_workbook(path)["Openings"]
    heads = [str(cell.value).split(" [")[0] for cell in sheet[HEADER]]
    return {
        row[0].value: {
            head for head, cell in zip(heads, row, strict=True) if cell.fill.patternType == "lightUp"
        }
        for row in sheet.iter_rows(min_row=HEADER + 1)
    }  # fmt: skip


def test_a_lock_is_asked_for_the_sizes_that_its_form_has(hatched):
    assert {"Lock case height", "Cam or tailpiece", "Thumb turn inside"} <= hatched["1"]
    assert {"Cross bore", "Edge bore"} <= hatched["2"]
    assert not {"Cross bore", "Backset"} & hatched["1"]
    assert not {"Lock case height", "Trim thickness, inside"} & hatched["2"]
    assert "Trim thickness, inside" in hatched["3"]


def test_beside_what_is_known_what_decides_nothing_is_not_asked(hatched):
    idle = {"Gasket or smoke seal", "Unused holes", "Re-entry release of the stair"}
    assert idle <= hatched["3"]
    assert not idle & hatched["1"]


def test_of_a_lock_whose_form_nobody_noted_everything_is_asked(hatched):
    assert not {"Lock case height", "Cross bore", "Cam or tailpiece"} & hatched["4"]

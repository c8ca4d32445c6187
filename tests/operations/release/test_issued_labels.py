"""Labels and box sheets: one a box of what may be picked for, with the code of its packet."""

from dataclasses import replace

import pytest
from pypdf import PdfReader

from hwsched.documents.release.box_sheet import BOX_SHEETS
from hwsched.model.errors import ValueRefusedError
from hwsched.operations.release.issued_documents import issue_by_name
from hwsched.operations.release.issued_labels import issue_labels, opening_labels
from hwsched.operations.release.sheet_codes import sheet_code
from hwsched.render.blocks import Table
from tests.documents.quay import viewed
from tests.documents.reading import lines, texts


@pytest.fixture(scope="module")
def quay(tmp_path_factory):
    return viewed(tmp_path_factory.mktemp("labels"))


def of(view, mark):
    return next(each for each in view.openings if each.mark == mark)


def test_a_label_says_mark_place_and_the_code_of_its_sheet(quay):
    labels = {label.mark: label for label in opening_labels(quay)}
    assert set(labels) == {view.mark for view in quay.openings if view.ready}
    wood = labels["WOOD"]
    # Survey cells: Bldg Quay, Floor 1, rooms Corridor and Net loft.
    assert wood.lines == ("Quay · 1", "Corridor to Net loft")
    assert wood.code == sheet_code(of(quay, "WOOD").points)


def test_labels_are_written_from_a_start(quay, tmp_path):
    (path,) = issue_labels(quay, tmp_path / "out", "a4-21", start=20)
    count = len(opening_labels(quay))
    assert len(PdfReader(path).pages) == 1 + -(-(count - 2) // 21)


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"sheet": "a4-9"}, "there is no 'a4-9'"),
        ({"start": 22}, "labels 1 to 21"),
        ({"shift_mm": (10.5, 0.0)}, "at most 10 mm"),
        ({"shift_mm": (float("nan"), 0.0)}, "at most 10 mm"),
    ],
)
def test_what_there_is_not_is_refused(quay, tmp_path, changes, said):
    with pytest.raises(ValueRefusedError, match=said):
        issue_labels(quay, tmp_path / "out", **{"sheet": "a4-21", **changes})
    assert not (tmp_path / "out").exists()


def test_where_nothing_may_be_picked_there_is_no_label(quay, tmp_path):
    held = replace(quay, openings=(of(quay, "UNSEEN"),))
    with pytest.raises(ValueRefusedError, match="release gate"):
        issue_labels(held, tmp_path / "out", "a4-21")


def test_a_box_sheet_compares_what_was_found_with_what_is_put_in(quay):
    document = BOX_SHEETS.build(replace(quay, openings=(replace(of(quay, "WOOD"), code="K7M2QF4P"),)), None)
    checks = {line["Look at"]: line for line in lines(document, "Before it is closed")}
    # Survey cells: thickness 1 3/4, SCW, mortise, B/S 2 3/4, cam straight; CYL and CAM of the catalogue.
    assert checks["Leaf"]["It is"] == '1 3/4" thick, Wood, solid core'
    assert checks["Lock"]["It is"] == 'Mortise, threaded cylinder, backset 2 3/4"'
    assert "CYL" in checks["Lock"]["In the box"]
    assert "CAM" in checks["Cam"]["In the box"]
    assert "K7M2QF4P" in checks["Sheet"]["In the box"]
    assert quay.revision in checks["Sheet"]["It is"]
    held = " ".join(texts(BOX_SHEETS.build(quay, None)))
    assert "Not to be picked: UNSEEN" in held


def test_every_box_has_its_sheet_with_the_contents_of_the_packet(quay, tmp_path):
    (path,) = issue_by_name(quay, "box-sheets", tmp_path)
    ready = [view for view in quay.openings if view.ready]
    text = [" ".join(page.extract_text().split()) for page in PdfReader(path).pages]
    for view in ready:
        assert any(f"Box of {view.mark}" in page and sheet_code(view.points) in page for page in text), view.mark
    tables = [
        block
        for section in BOX_SHEETS.build(quay, None).sections
        for block in section.blocks
        if isinstance(block, Table) and block.title == "Box contents"
    ]
    assert [{row[3] for row in table.rows if row[0]} for table in tables] == [
        {part.part for at in view.points for part in at.fit.parts if part.role != "tool"} for view in ready
    ]

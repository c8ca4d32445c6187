"""Catalogues in and out: the export comes back unchanged, own fields travel, parts outside the book may be named."""

import pytest
from openpyxl import load_workbook

from hwsched.exchange.parts.catalogue_sheets import write_catalogue
from hwsched.exchange.problems import InputRejected
from hwsched.model.catalogue_writing import write_parts
from hwsched.model.project import create_project, open_project
from hwsched.model.queries import read_extra
from hwsched.model.tables import PART
from hwsched.operations.parts.catalogue_export import export_catalogue
from hwsched.operations.parts.catalogue_import import import_catalogue
from hwsched.operations.survey.own_fields import define_field
from hwsched.values import Part
from hwsched.writing import UnwritableError


@pytest.fixture
def project(sample_file):
    opened = open_project(sample_file)
    yield opened
    opened.close()


def parts_of(project):
    with project.reading() as connection:
        return project.catalogue.read(connection).parts


def test_an_export_comes_back_unchanged_and_fills_another_project_alike(project, tmp_path):
    path = tmp_path / "c.xlsx"
    assert export_catalogue(project, path) == len(parts_of(project)) > 80
    assert import_catalogue(project, path, who="t").changes.number is None
    other = create_project(tmp_path / "o.hwsched", "Other")
    import_catalogue(other, path, who="t")
    assert parts_of(other) == parts_of(project)
    other.close()


def test_own_fields_of_parts_travel(project, tmp_path):
    define_field(project, "part", "shelf", "Shelf", "text", who="t")
    path = tmp_path / "c.xlsx"
    export_catalogue(project, path)
    book = load_workbook(path)
    sheet = book["Collars"]
    column = next(cell.column for cell in sheet[1] if cell.value == "Shelf")
    sheet.cell(2, column).value = "B 14"
    book.save(path)
    assert import_catalogue(project, path, who="t").changed == 1
    with project.reading() as connection:
        assert list(read_extra(connection, PART).values()) == [{"shelf": "B 14"}]
    again = tmp_path / "again.xlsx"
    export_catalogue(project, again)
    assert load_workbook(again)["Collars"].cell(2, column).value == "B 14"


@pytest.mark.parametrize(("style", "unit"), [("mm", "mm"), ("fraction", "in"), ("decimal-inch", "in")])
def test_lengths_are_written_as_the_project_shows_them(tmp_path, style, unit):
    """A collar of 3.175 mm is 1/8 in high."""
    made = create_project(tmp_path / "p.hwsched", "P", length_style=style)
    with made.change("import-catalogue", "Parts", "t") as change:
        write_parts(change, [Part("C-1", "collar", "x", attributes={"height_mm": 3.175})], "test")
    export_catalogue(made, tmp_path / "c.xlsx")
    made.close()
    sheet = load_workbook(tmp_path / "c.xlsx")["Collars"]
    column = next(cell.column for cell in sheet[1] if str(cell.value).startswith("Height"))
    assert f"[{unit}]" in sheet.cell(1, column).value
    expected = {"mm": 3.175, "fraction": "1/8", "decimal-inch": 0.125}[style]
    found = sheet.cell(2, column).value
    assert (found.rstrip('"') if isinstance(found, str) else found) == expected


def test_a_book_may_refer_to_parts_that_the_project_has(project, tmp_path):
    path = tmp_path / "few.xlsx"
    new = Part("NEW-1", "collar", "New collar", attributes={"height_mm": 4.0}, kit=(("ARC-HW", 2.0),))
    write_catalogue(path, [new])
    assert import_catalogue(project, path, who="t").added == 1
    assert parts_of(project)["NEW-1"].kit == (("ARC-HW", 2.0),)
    write_catalogue(path, [Part("NEW-2", "collar", "x", attributes={"height_mm": 4.0}, kit=(("NOBODY", 1.0),))])
    with pytest.raises(InputRejected, match="NOBODY"):
        import_catalogue(project, path, who="t")
    assert "NEW-2" not in parts_of(project)


def test_a_file_that_cannot_be_written_is_said_so(project, tmp_path):
    with pytest.raises(UnwritableError, match="xlsx"):
        export_catalogue(project, tmp_path / "c.txt")
    with pytest.raises(UnwritableError, match="cannot be written"):
        export_catalogue(project, tmp_path / "none" / "c.xlsx")


def test_a_catalogue_without_any_part_is_refused(project, tmp_path):
    path = tmp_path / "c.xlsx"
    write_catalogue(path, [])
    with pytest.raises(InputRejected, match="holds no part"):
        import_catalogue(project, path, who="t")

"""Which sheet is the current one: a code stands for what its packet shows, and for nothing else."""

import pytest
from pypdf import PdfReader

from hwsched.documents.release.packet import PACKET
from hwsched.model.errors import ValueRefusedError
from hwsched.model.queries import read_inputs
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.release.freezing import freeze
from hwsched.operations.release.issued_documents import issue
from hwsched.operations.release.issued_packets import write_down_packets
from hwsched.operations.release.project_view import project_view
from hwsched.operations.release.sheet_codes import LENGTH, as_code, sheet_code, verify_sheet
from hwsched.operations.survey.editing import edit_facts, remove
from tests.operations.exact import id_of, small

WHO = "ann"


@pytest.fixture
def yard(tmp_path):
    made = small(tmp_path / "y.hwsched")
    yield made
    made.close()


def code_of(project, mark):
    (view,) = [each for each in project_view(project).openings if each.mark == mark]
    return sheet_code(view.points)


def edit(project, mark, fact, value):
    with project.reading() as connection:
        (given,) = read_inputs(connection, [id_of(project, mark)])
    edit_facts(project, "leaf", given.leaves[0].id, {fact: value}, who=WHO)
    fit_openings(project, who=WHO)


def test_each_opening_has_a_code_of_its_own_that_stays(yard):
    codes = {mark: code_of(yard, mark) for mark in "123"}
    assert len(set(codes.values())) == 3
    assert all(len(code) == LENGTH and as_code(code) == code for code in codes.values())
    fit_openings(yard, who=WHO)
    edit(yard, "2", "width_mm", 1000.0)
    assert code_of(yard, "1") == codes["1"]
    assert code_of(yard, "2") != codes["2"]


@pytest.mark.parametrize("typed", ["k7m2qf4p", "K7M2-QF4P", " k7m2 qf4p "])
def test_a_code_is_read_however_a_person_types_it(typed):
    assert as_code(typed) == "K7M2QF4P"


def test_letters_that_look_alike_are_one():
    assert as_code("OIL2QF4P") == "0112QF4P"


@pytest.mark.parametrize("typed", ["", "K7M2QF4", "K7M2QF4PP", "K7M2QF4!", "K7M2QF4U"])
def test_what_is_no_code_is_refused(yard, typed):
    with pytest.raises(ValueRefusedError, match="no code of a sheet"):
        verify_sheet(yard, typed)


def test_the_sheet_of_the_project_as_it_stands_is_current(yard):
    (found,) = verify_sheet(yard, code_of(yard, "2").lower())
    assert (found.state, found.mark, found.current) == ("current", "2", code_of(yard, "2"))


def test_a_code_that_no_sheet_has_is_unknown(yard):
    (found,) = verify_sheet(yard, "00000000")
    assert (found.state, found.mark) == ("unknown", "")


def test_a_sheet_that_went_out_is_superseded_when_the_survey_changes(yard):
    old = code_of(yard, "1")
    write_down_packets(yard, project_view(yard), who="bea")
    edit(yard, "1", "width_mm", 1000.0)
    (found,) = verify_sheet(yard, old)
    assert (found.state, found.mark, found.current) == ("superseded", "1", code_of(yard, "1"))
    assert "by bea" in found.said


def test_a_sheet_of_a_revision_says_what_changed_since(yard):
    old = code_of(yard, "1")
    freeze(yard, letter="A", purpose="for review", who=WHO)
    edit(yard, "1", "width_mm", 1000.0)
    (found,) = verify_sheet(yard, old)
    assert (found.state, found.mark, found.current) == ("superseded", "1", code_of(yard, "1"))
    assert "revision A" in found.said
    assert any("1000 mm" in line for line in found.changed)


def test_a_sheet_of_what_may_no_longer_be_installed_is_withdrawn(yard):
    old = code_of(yard, "1")
    freeze(yard, letter="A", purpose="for review", who=WHO)
    edit(yard, "1", "thickness_mm", None)
    (found,) = verify_sheet(yard, old)
    assert (found.state, found.mark, found.current) == ("withdrawn", "1", "")
    gone = code_of(yard, "2")
    remove(yard, "opening", id_of(yard, "2"), who=WHO)
    (found,) = verify_sheet(yard, gone)
    assert (found.state, found.mark) == ("withdrawn", "2")
    assert "gone" in found.said


def test_every_page_of_a_printed_packet_carries_its_code(yard, tmp_path):
    paths = issue(project_view(yard), PACKET, tmp_path / "out")
    for mark, path in zip("123", sorted(paths), strict=True):
        assert path.stem == mark
        for page in PdfReader(path).pages:
            assert f"Code {code_of(yard, mark)}" in " ".join(page.extract_text().split())

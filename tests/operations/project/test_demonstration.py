"""A demonstration that is run again never takes a person's work away."""

import shutil

import pytest

from hwsched.documents.documents import DOCUMENTS
from hwsched.model.errors import BusyProjectError, ExistingProjectError, ForeignFileError
from hwsched.model.project import open_project
from hwsched.operations.project import demonstration
from hwsched.operations.project.demonstration import demonstrate
from hwsched.operations.project.history import history
from hwsched.operations.survey.editing import add_opening
from hwsched.paths import SAMPLE


@pytest.fixture
def folder(sample_folder, tmp_path):
    """A demonstration that was run before."""
    again = tmp_path / "again"
    again.mkdir()
    shutil.copy(sample_folder / "quayside-works.hwsched", again / "quayside-works.hwsched")
    return again


def stands(path):
    project = open_project(path)
    try:
        return len(history(project))
    finally:
        project.close()


@pytest.mark.slow
def test_run_again_over_an_open_project_is_refused_and_nothing_is_lost(folder):
    project = open_project(folder / "quayside-works.hwsched")
    add_opening(project, {"mark": "MINE"}, who="t")
    steps = len(history(project))
    with pytest.raises(BusyProjectError, match="open elsewhere"):
        demonstrate(folder, who="t", again=True)
    assert len(history(project)) == steps
    project.close()
    assert stands(folder / "quayside-works.hwsched") == steps
    assert [path.name for path in folder.iterdir()] == ["quayside-works.hwsched"]


@pytest.mark.slow
def test_a_project_in_which_somebody_worked_is_kept_and_named(folder, corner_folder, tmp_path, monkeypatch):
    # What it prints is looked at elsewhere, and a corner of the survey makes as many steps as all of it.
    monkeypatch.setattr(demonstration, "DOCUMENTS", DOCUMENTS[:1])
    monkeypatch.setattr(demonstration, "SAMPLE", tmp_path)
    for name, held in (("catalogue.xlsx", SAMPLE), ("power.xlsx", SAMPLE), ("survey.xlsx", corner_folder)):
        shutil.copy(held / name, tmp_path)
    project = open_project(folder / "quayside-works.hwsched")
    add_opening(project, {"mark": "MINE"}, who="t")
    steps = len(history(project))
    project.close()
    shown = demonstrate(folder, who="t", again=True)
    kept = folder / "quayside-works.kept-1.hwsched"
    assert shown.kept == kept
    assert stands(kept) == steps
    assert stands(shown.project) == steps - 1
    assert any(str(kept) in line for line in shown.lines)
    assert not [path for path in folder.iterdir() if path.name.startswith(".")]
    # As it was made, it is replaced without leaving copies about.
    assert demonstrate(folder, who="t", again=True).kept is None
    assert len(list(folder.glob("*.hwsched"))) == 2


def test_a_project_that_is_there_is_left_alone_unless_it_is_said(folder):
    before = (folder / "quayside-works.hwsched").read_bytes()
    with pytest.raises(ExistingProjectError, match="already there; it was left alone"):
        demonstrate(folder, who="t")
    assert [path.name for path in folder.iterdir()] == ["quayside-works.hwsched"]
    assert (folder / "quayside-works.hwsched").read_bytes() == before


def test_what_is_written_while_it_is_replaced_is_kept(folder, tmp_path, monkeypatch):
    target, fresh = folder / "quayside-works.hwsched", tmp_path / "fresh.hwsched"
    shutil.copy(target, fresh)
    late = []

    def opened_meanwhile(path):
        # After the question whether it is open: whoever opened it then has the file, whatever it is called now.
        kept = demonstration_set_aside(path)
        late.append(open_project(kept))
        add_opening(late[0], {"mark": "FIRST"}, who="t")
        return kept

    demonstration_set_aside = demonstration.set_aside
    monkeypatch.setattr(demonstration, "set_aside", opened_meanwhile)
    kept = demonstration._replace(target, fresh)
    add_opening(late[0], {"mark": "MINE"}, who="t")
    late[0].close()
    assert kept == folder / "quayside-works.kept-1.hwsched"
    assert stands(kept) == stands(target) + 2


def test_an_open_one_in_which_nobody_has_worked_is_not_removed_either(folder, tmp_path, monkeypatch):
    target, fresh = folder / "quayside-works.hwsched", tmp_path / "fresh.hwsched"
    shutil.copy(target, fresh)
    late = []

    def opened_meanwhile(path):
        kept = demonstration_set_aside(path)
        late.append(open_project(kept))
        history(late[0])
        return kept

    demonstration_set_aside = demonstration.set_aside
    monkeypatch.setattr(demonstration, "set_aside", opened_meanwhile)
    kept = demonstration._replace(target, fresh)
    add_opening(late[0], {"mark": "MINE"}, who="t")
    late[0].close()
    assert kept is not None
    assert stands(kept) == stands(target) + 1


def test_a_file_that_is_no_project_is_left_alone(tmp_path):
    (tmp_path / "quayside-works.hwsched").write_text("letters")
    with pytest.raises(ForeignFileError):
        demonstrate(tmp_path, who="t")
    assert (tmp_path / "quayside-works.hwsched").read_text() == "letters"

"""The guide's four values, followed from where they enter to where they are printed: what ran is what it lists."""

import re
import sys
import tomllib
from pathlib import Path

import pytest

from hwsched.cli.command import run
from hwsched.model.project import open_project
from hwsched.operations.opening.hand_choices import place_unit
from hwsched.operations.opening.named_openings import openings_of_marks
from hwsched.paths import SAMPLE

ROOT = Path(__file__).parents[2]
GUIDE = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
_, _, FOLLOWED = GUIDE.partition("## Four values followed")
WAYS = {
    title: {
        part: re.findall(r"`([\w/]+\.py)`", files) for part, files in re.findall(r"(\w+):\s((?:`[^`]+`[,\s]*)+)", said)
    }
    for title, said in re.findall(r"\*\*(.+?)\.\*\* (.*?)(?=\n\n|\Z)", FOLLOWED.partition("\n## ")[0], re.S)
}
LAYERS = tomllib.loads((ROOT / "pyproject.toml").read_text())["tool"]["importlinter"]["contracts"][0]["layers"]
HEIGHT = {floor.strip(): -at for at, layer in enumerate(LAYERS) for floor in layer.split("|")}


def test_the_guide_follows_four_values():
    assert list(WAYS) == ["A leaf's thickness", "A lead's length", "A price", "A dragged unit"]
    for parts in WAYS.values():
        assert list(parts) == ["In", "Held", "Used", "Out"]
        assert all(parts.values())


@pytest.mark.parametrize("title", WAYS)
def test_every_part_of_a_way_goes_down_the_floors(title):
    for part, files in WAYS[title].items():
        heights = [HEIGHT[file.split("/")[0]] for file in files]
        assert heights == sorted(heights, reverse=True), (title, part)
        assert all((ROOT / "hwsched" / file).exists() for file in files), (title, part)


@pytest.fixture(scope="module")
def ran(tmp_path_factory):
    """Files of the program in which something ran on the way from the workbooks to the pages."""
    folder = tmp_path_factory.mktemp("followed")
    path = str(folder / "p.hwsched")
    seen = set()

    def note(frame, event, _):
        # That a module was imported says nothing.
        if event == "call" and frame.f_code.co_name != "<module>":
            seen.add(frame.f_code.co_filename)

    before = sys.getprofile()
    sys.setprofile(note)
    try:
        assert run(["project", "new", path, "--bare-unit", "in"]) == 0
        assert run(["parts", "import", path, str(SAMPLE / "catalogue.xlsx")]) == 0
        assert run(["survey", "import", path, str(SAMPLE / "survey.xlsx"), "--accept", "good-rows"]) == 1
        with open_project(Path(path)) as project:
            (opening,) = openings_of_marks(project, ["M003"])
            place_unit(
                project, opening, leaf="single", face="inside", pattern="straight", x_mm=50.0, y_mm=1031.71, who="w"
            )
        marks = ["--mark", "M003", "--mark", "M006"]
        assert run(["opening", "fit", path, *marks]) == 0
        for document in ("packets", "cost-estimate"):
            assert run(["release", "print", path, document, "--to", str(folder / "out"), *marks]) == 0
    finally:
        sys.setprofile(before)
    home = ROOT / "hwsched"
    return {Path(file).relative_to(home).as_posix() for file in seen if Path(file).is_relative_to(home)}


@pytest.mark.parametrize("title", WAYS)
def test_what_the_guide_lists_runs(title, ran):
    listed = {file for files in WAYS[title].values() for file in files}
    # Plain values and declarations have nothing that runs; the screen is gone through by its own tests.
    still = {file for file in listed if file.startswith(("desktop/", "values/", "survey/", "catalogue/"))}
    still |= {"model/tables.py"}
    assert listed - still <= ran

"""What it costs to add a member of each family, by the recipes of the guide: done in a copy of the tree, and counted.

Each recipe gives the files that are new and the lines that are added to others; all are added to one copy. Then what the
program says of each new member is asked, and the tests that walk their families run in the copy.
"""

import difflib
import os
import shutil
import subprocess
import sys
from dataclasses import dataclass, field
from pathlib import Path

import pytest

from hwsched.model.file.schema import HEAD

ROOT = Path(__file__).parents[2]
pytestmark = pytest.mark.slow


@dataclass(frozen=True)
class Recipe:
    """How one member is added."""

    files: dict[str, str]
    """New files by path."""
    lines: dict[str, tuple[str, str]]
    """File to the line behind which a line is put, and that line."""
    asked: str
    """A program that fails where the member does not work."""
    tests: tuple[str, ...] = ()
    """Tests of the family that must hold as they are."""
    most_lines: int = 1
    most_files: int = 1
    removed: tuple[str, ...] = field(default=())


RECIPES = {
    "a rule": Recipe(
        {
            "hwsched/rules/placement/unit_below_eye.py": '''"""Rule: a unit stands no higher than a person sees its light."""

from collections.abc import Iterable

from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if fit.placement is not None and fit.placement.y_mm > limits["highest_mm"]:
        yield Verdict(f"The unit begins at {fit.placement.y_mm:g} mm.", values={"y_mm": fit.placement.y_mm})


RULE = Rule(
    id="unit-below-eye",
    title="Unit below the eye",
    discipline="placement",
    severity="note",
    basis="common practice",
    cure="Choose a place below.",
    judge=_judge,
    limits=(Limit("highest_mm", 1600.0, "Edge of the plate.", "common practice", unit="mm", low=0.0, high=2500.0),),
)
'''
        },
        {"hwsched/rules/__init__.py": ("from hwsched.rules.placement.unit_on_inside import RULE as UNIT_ON_INSIDE", "from hwsched.rules.placement.unit_below_eye import RULE as UNIT_BELOW_EYE")},
        """
from hwsched.rules import RULEBOOK, in_rulebook
assert in_rulebook("unit-below-eye") in RULEBOOK
""",
        ("tests/house/test_families.py",),
    ),
    "a part kind": Recipe(
        {
            "hwsched/catalogue/rain_hood.py": '''"""Part kind: rain hoods."""

from hwsched.attributes import Attribute
from hwsched.catalogue.kind import PartKind

RAIN_HOOD = PartKind(
    "rain-hood",
    "Rain hoods",
    (Attribute("overhang_mm", "Overhang", "length", "mm", low=5, high=300, required=True),),
    note="Stand over a unit outside.",
)
'''
        },
        {"hwsched/catalogue/__init__.py": ("from hwsched.catalogue.mounting import MOUNTING", "from hwsched.catalogue.rain_hood import RAIN_HOOD")},
        """
from pathlib import Path
from openpyxl import load_workbook
from hwsched.catalogue import kind_of
from hwsched.exchange.parts.catalogue_sheets import write_catalogue
write_catalogue(Path("book.xlsx"), [], length_style="mm")
assert kind_of("rain-hood")
assert any("hood" in name.lower() for name in load_workbook("book.xlsx").sheetnames)
""",
        ("tests/catalogue",),
    ),
    "a document": Recipe(
        {
            "hwsched/documents/release/mark_list.py": '''"""The mark list: every opening by its mark, for the wall of the site office."""

from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.render.blocks import Column, Document, Section, Table


def build(project: ProjectView, _: OpeningView | None = None) -> Document:
    """Build the mark list of a project."""
    rows = tuple((view.mark,) for view in project.openings)
    section = Section((Table((Column("Mark"),), rows, title="Marks"),))
    return Document("Mark list", project.title, project.revision, project.date, (section,))


MARK_LIST = DocumentKind("mark-list", "Mark list", ("pdf", "xlsx"), False, build)
'''
        },
        {"hwsched/documents/__init__.py": ('    Line("packets", "release.packet:PACKET"),', '    Line("mark-list", "release.mark_list:MARK_LIST"),')},
        """
import subprocess, sys
from hwsched.documents.documents import DOCUMENTS
assert "mark-list" in [each.name for each in DOCUMENTS]
said = subprocess.run([sys.executable, "-m", "hwsched", "release", "print", "--help"], capture_output=True, text=True, check=True)
assert "mark-list" in said.stdout
""",
        ("tests/house/test_families.py",),
    ),
    "an import format": Recipe(
        {
            "hwsched/operations/parts/stock_import.py": '''"""Taking in counts of stock: number and count, a part a line."""

import csv
from pathlib import Path

from hwsched.exchange.problems import FileProblem, InputRejected
from hwsched.model.project import Project
from hwsched.model.tables import PART
from hwsched.operations.changes import Changes
from hwsched.operations.imports import TakenIn
from sqlalchemy import select


def take_in(project: Project, path: Path, *, who: str, accept: str) -> TakenIn:
    """Take counts in, as `IMPORTS` has it."""
    with path.open(encoding="utf-8", newline="") as file:
        counts = {row[0]: float(row[1]) for row in csv.reader(file)}
    with project.change("import-stock", f"Import stock {path.name}", who) as change:
        known = {row.number: row.id for row in change.connection.execute(select(PART.c.number, PART.c.id))}
        if counts.keys() - known.keys():
            raise InputRejected([FileProblem(path.name, f"no part {min(counts.keys() - known.keys())}")])
        change.update(PART, [(known[number], {"stock": count}) for number, count in counts.items()])
    return TakenIn(Changes.of(change), f"{len(counts)} parts counted", {"parts": len(counts)})
'''
        },
        {"hwsched/operations/imports.py": ("IMPORTS = (", '    ImportFormat("stock", "parts", "Take in counts of stock.", "number,count", (".csv",), "hwsched.operations.parts.stock_import"),')},
        """
import contextlib, io
from pathlib import Path
from hwsched.cli.command import run
from hwsched.model.project import create_project
from hwsched.model.catalogue_writing import write_parts
from hwsched.model.queries import read_catalogue
from hwsched.values import Part
with create_project(Path("p.hwsched"), "P") as project, project.change("c", "c", "w") as change:
    write_parts(change, [Part("B-1", "coin-cell")], "here")
Path("counts.csv").write_text("B-1,7\\n")
with contextlib.redirect_stdout(io.StringIO()) as said:
    assert run(["parts", "import", "p.hwsched", "counts.csv"]) == 0
assert said.getvalue() == "1 parts counted\\n", said.getvalue()
""",
        ("tests/house/test_families.py",),
    ),
    "a verb": Recipe(
        {
            "hwsched/cli/project/whoami.py": '''"""`hwsched project whoami`: the name under which edits are written down."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--who", default="", help="who is at work")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import who

    print(who(arguments))
    return DONE


VERB = Verb(_arguments, _run)
'''
        },
        {"hwsched/cli/__init__.py": ('        Entry("people", "List who works on a project and in which role; add and remove people.", "people"),', '        Entry("whoami", "Say under which name edits are written down."),')},
        """
import subprocess, sys
said = subprocess.run([sys.executable, "-m", "hwsched", "project", "whoami", "--who", "ann"], capture_output=True, text=True, check=True)
assert said.stdout == "ann\\n"
""",
        ("tests/house/test_families.py",),
    ),
    "a window beside the main one": Recipe(
        {
            "hwsched/desktop/survey/marks_window.py": '''"""All marks of the project, one under the other."""

from PySide6.QtWidgets import QPlainTextEdit, QWidget

from hwsched.desktop.frame.tool_window import Desk, ToolWindow


class MarksWindow(ToolWindow):
    """The marks, to be copied."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, "Marks", parent)
        self.marks = QPlainTextEdit("\\n".join(each.given.opening.mark for each in desk.workspace.checked.values()))
        self.marks.setReadOnly(True)
        self.body.addWidget(self.marks)
'''
        },
        {"hwsched/desktop/frame/beside.py": ("_SIDE: Final = (", '    SidePlace("marks", "Marks", "All marks, to be copied", later("survey.marks_window:MarksWindow")),')},
        """
from PySide6.QtWidgets import QApplication
app = QApplication([])
from hwsched.desktop.window import Window
window = Window("ann")
assert window.beside.acts["marks"].text() == "Marks"
assert any(window.beside.acts["marks"] in each.menu().actions() for each in window.menuBar().actions())
assert [each.title for each in window.frame.finder.find("marks") if each.kind == "Place"] == ["Marks"]
""",
        ("tests/house/test_desktop.py",),
    ),
    "a calculator": Recipe(
        {
            "hwsched/calc/survey/undercut.py": '''"""Calculator: the gap under a leaf from two heights."""

from dataclasses import dataclass
from typing import Annotated

from hwsched.calc.calculator import Calculator, Said
from hwsched.calc.limits import Positive


@dataclass(frozen=True)
class _Answer:
    gap_mm: Annotated[float, Said("What is left.")]


def _gap(
    opening_mm: Annotated[Positive, Said("Height of the opening.")],
    leaf_mm: Annotated[Positive, Said("Height of the leaf.")],
) -> _Answer:
    return _Answer(opening_mm - leaf_mm)


UNDERCUT = Calculator(
    name="undercut",
    title="Gap under a leaf",
    basis="common practice",
    work=_gap,
    example={"opening_mm": 2110, "leaf_mm": 2100},
)
'''
        },
        {"hwsched/calc/__init__.py": ('    Line("length", "survey.length:LENGTH"),', '    Line("undercut", "survey.undercut:UNDERCUT"),')},
        """
from hwsched.calc.calculators import CALCULATORS
(one,) = [each for each in CALCULATORS if each.name == "undercut"]
assert one.run(one.example) == {"gap_mm": 10}
""",
        ("tests/house/test_families.py",),
    ),
    "a survey fact": Recipe(
        {
            "migrations/versions/v9999_leaf_weight.py": '''"""Weight of leaves

Revision: 9999
"""

import sqlalchemy as sa
from alembic import op

revision = "9999"
down_revision = "HEAD"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("leaf", schema=None) as batch_op:
        batch_op.add_column(sa.Column("weight_kg", sa.Float(), nullable=True))
'''
        },
        {
            "hwsched/survey/leaf.py": ("    (", '        Attribute("weight_kg", "Leaf weight", "number", "kg", synonyms=("weight",), low=1, high=500),'),
            "hwsched/values/facts.py": ("    undercut_mm: float | None = None", "    weight_kg: float | None = None"),
            "hwsched/model/file/schema.py": ('HEAD: Final = REVISIONS[-1]', 'HEAD = (REVISIONS := (*REVISIONS, "9999"))[-1]'),
        },
        """
from pathlib import Path
from hwsched.cli.command import run
from hwsched.model.project import open_project
from hwsched.model.queries import read_inputs
Path("doors.csv").write_text("Mark,Leaf weight\\nA1,45\\n")
assert run(["project", "new", "p.hwsched"]) == 0
assert run(["survey", "import", "p.hwsched", "doors.csv"]) == 0
assert run(["survey", "edit", "p.hwsched", "A1", "leaf", "weight_kg", "50"]) == 0
with open_project(Path("p.hwsched")) as project, project.reading() as connection:
    (given,) = read_inputs(connection)
    assert given.leaves[0].weight_kg == 50.0, given
""",
        ("tests/exchange/survey/test_form.py",),
        # Declared; held as a plain value that the type checker knows; the schema's list of revisions.
        most_lines=3,
    ),
}  # fmt: skip


@pytest.fixture(scope="module")
def tree(tmp_path_factory):
    """A copy of the tree to which all members are added, and how many lines each has cost."""
    folder = tmp_path_factory.mktemp("recipes") / "tree"
    ignored = shutil.ignore_patterns("saved", "*.hwsched", "out")
    for name in ("hwsched", "migrations", "resources", "sample_projects", "tests"):
        shutil.copytree(ROOT / name, folder / name, ignore=ignored)
    for name in ("pyproject.toml", "README.md", "DEVELOPERS.md"):
        shutil.copy(ROOT / name, folder / name)
    lines = {}
    for name, recipe in RECIPES.items():
        for path, text in recipe.files.items():
            assert not (folder / path).exists()
            (folder / path).write_text(text.replace('"HEAD"', f'"{HEAD}"'), encoding="utf-8")
        added = [added_to(folder / path, behind, line) for path, (behind, line) in recipe.lines.items()]
        lines[name] = sum(added)
    return folder, lines


def run(folder, work, *words):
    environment = {**os.environ, "PYTHONPATH": str(folder), "QT_QPA_PLATFORM": "offscreen"}
    return subprocess.run(
        [sys.executable, *words], cwd=work, env=environment, capture_output=True, text=True, check=False
    )


def added_to(path, behind, line):
    """Put a line behind another one; returns how many lines differ."""
    before = path.read_text(encoding="utf-8").splitlines()
    assert behind in before, f"{path}: no line {behind!r}"
    at = before.index(behind) + 1
    after = [*before[:at], line, *before[at:]]
    path.write_text("\n".join(after) + "\n", encoding="utf-8")
    return sum(each.startswith(("+ ", "- ")) for each in difflib.ndiff(before, after))


@pytest.mark.parametrize("name", RECIPES)
def test_a_member_costs_what_the_guide_says(name, tree, tmp_path):
    folder, lines = tree
    recipe = RECIPES[name]
    assert len(recipe.files) <= recipe.most_files
    assert lines[name] <= recipe.most_lines
    asked = run(folder, tmp_path, "-c", recipe.asked)
    assert asked.returncode == 0, asked.stderr


def test_the_tests_of_the_families_hold_as_they_are(tree, tmp_path):
    folder, _ = tree
    tests = dict.fromkeys(str(folder / each) for recipe in RECIPES.values() for each in recipe.tests)
    where = ("-c", str(folder / "pyproject.toml"), "--rootdir", str(folder))
    held = run(folder, tmp_path, "-m", "pytest", "-q", "-p", "no:cacheprovider", *where, *tests)
    assert held.returncode == 0, held.stdout[-3000:]
    assert " passed" in held.stdout

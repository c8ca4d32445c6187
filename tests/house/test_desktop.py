"""The desktop is put together from small pieces: no tall towers of classes, and no subject that knows another."""

import ast
import importlib
import inspect
import pkgutil
import re
import subprocess
import sys
from pathlib import Path

import pytest

import hwsched.desktop

ROOT = Path(hwsched.desktop.__file__).parent
MOST_LINES = 400
DEEPEST = 3
NAMES = sorted(each.name for each in pkgutil.walk_packages([str(ROOT)], "hwsched.desktop."))
# Rooms whose work is put together by the window; the frame and what stands beside it are given to all.
SUBJECTS = ("findings", "opening", "parts", "power", "project", "release", "survey")


def classes():
    """All classes that the desktop defines."""
    for name in NAMES:
        module = importlib.import_module(name)
        for each in vars(module).values():
            if inspect.isclass(each) and each.__module__ == name:
                yield each


def ours(kind):
    return [each for each in kind.__mro__ if each.__module__.startswith("hwsched.")]


def test_no_class_stands_on_more_than_two_others_of_ours():
    walked = list(classes())
    assert len(walked) > 60
    assert not [f"{each.__qualname__}: {len(ours(each))}" for each in walked if len(ours(each)) > DEEPEST]


def test_no_class_has_two_of_ours_side_by_side():
    """One class of ours at most is inherited from; what else is needed is a member."""
    beside = [each for each in classes() if sum(base.__module__.startswith("hwsched.") for base in each.__bases__) > 1]
    assert not beside


def test_what_others_inherit_from_says_what_belongs_there():
    bases = {base for each in classes() for base in each.__bases__ if base.__module__.startswith("hwsched.")}
    assert {base.__name__ for base in bases} >= {"Subject", "ToolWindow", "LinesPage"}
    for base in bases:
        assert base.__doc__, base
        assert "Here belongs" in base.__doc__, base.__qualname__


def test_nobody_walks_along_the_chain_of_the_focus():
    """What Python holds of a widget met there belongs to the one asked: it is deleted with it, a window's foot too."""
    walked = {path.name for path in ROOT.rglob("*.py") if "InFocusChain" in path.read_text(encoding="utf-8")}
    assert not walked


def test_no_file_is_long():
    long = {path.name: text.count("\n") for path in ROOT.rglob("*.py") if (text := path.read_text(encoding="utf-8"))}
    assert not {name: lines for name, lines in long.items() if lines > MOST_LINES}


def imported(path):
    """Modules that a file imports, wherever in it."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom):
            yield node.module or ""
        elif isinstance(node, ast.Import):
            yield from (each.name for each in node.names)


def test_actions_of_a_subject_know_those_of_no_other():
    actions = sorted(ROOT.rglob("*_actions.py"))
    assert {path.parent.name for path in actions} == set(SUBJECTS)
    for path in actions:
        for name in imported(path):
            assert not name.endswith("_actions"), f"{path.name} imports {name}"
            assert name != "hwsched.desktop.window", path.name
            parts = name.split(".")
            if parts[:2] == ["hwsched", "desktop"] and len(parts) > 3 and parts[2] in SUBJECTS:
                assert parts[2] == path.parent.name, f"{path.name} reaches into {name}"


def test_nobody_but_the_window_puts_actions_together():
    for path in ROOT.rglob("*.py"):
        if path.name != "window.py":
            assert not [name for name in imported(path) if name.endswith("_actions")], path.name


@pytest.mark.parametrize(
    "module", ["project.project_state", "project.workspace", "project.touched_openings", "frame.trail"]
)
def test_what_subjects_share_needs_no_screen(module):
    script = (
        "import sys, types\n"
        "sys.modules['PySide6.QtWidgets'] = sys.modules['PySide6.QtGui'] = None\n"
        # The package itself starts the whole desktop.
        "package = sys.modules['hwsched.desktop'] = types.ModuleType('hwsched.desktop')\n"
        f"package.__path__ = [{str(ROOT)!r}]\n"
        f"import hwsched.desktop.{module}\n"
    )
    subprocess.run([sys.executable, "-c", script], check=True, timeout=120)


TABLES = {"QTableWidget", "QTableView"}


def makes_table(tree):
    """Tell whether a module makes a table of Qt, or a class of one."""
    made = {getattr(node.func, "id", "") for node in ast.walk(tree) if isinstance(node, ast.Call)}
    kinds = {
        getattr(base, "id", "") for node in ast.walk(tree) if isinstance(node, ast.ClassDef) for base in node.bases
    }
    return bool((made | kinds) & TABLES)


def test_no_table_writes_its_titles_in_other_letters_where_a_row_is_chosen():
    """Bold they are wider: they are cut, and leap as one walks over the rows."""
    sources = {path: path.read_text(encoding="utf-8") for path in ROOT.rglob("*.py")}
    found = [path for path, text in sources.items() if makes_table(ast.parse(text))]
    assert len(found) > 5
    # Wrapped titles see to it themselves.
    ways = ("setHighlightSections(False)", "WrappedTitles(")
    assert not [path.name for path in found if not any(each in sources[path] for each in ways)]


def test_letters_and_icons_are_given_by_what_gives_them_anew():
    """Set once by a widget's own call they keep the text size in which its page was made."""
    once = re.compile(r"(?<!painter)\.(?:setFont\((?:fixed_)?font\(|setIconSize\(icon_size\()")
    kept = [path.name for path in ROOT.rglob("*.py") if once.search(path.read_text(encoding="utf-8"))]
    assert kept == ["text_size.py"]

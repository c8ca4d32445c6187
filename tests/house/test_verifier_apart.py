"""The verifier is written apart: nothing of it imports the program, nor what the program's other tests import."""

import ast
from pathlib import Path

import pytest

VERIFIER = Path(__file__).parents[1] / "verifier"
FILES = sorted(VERIFIER.glob("**/*.py"))


def imported(path):
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, "imports say the whole name"
            yield node.module or ""
        elif isinstance(node, ast.Call) and ast.unparse(node.func) in ("__import__", "importlib.import_module"):
            yield "a module by its name"


@pytest.mark.parametrize("path", FILES, ids=[path.name for path in FILES])
def test_nothing_of_the_program_is_imported(path):
    foreign = [
        name
        for name in imported(path)
        if name.split(".")[0] in ("hwsched", "conftest", "a module by its name")
        or (name.split(".")[0] == "tests" and name.split(".")[1:2] != ["verifier"])
    ]
    assert foreign == []


def test_the_walk_sees_imports_in_functions(tmp_path):
    module = tmp_path / "module.py"
    module.write_text("def f():\n    import hwsched.calc\n    from hwsched import rules\n    return rules\n")
    assert list(imported(module)) == ["hwsched.calc", "hwsched"]


def test_there_is_something_to_walk():
    assert {"judging.py", "searching.py", "surveys.py", "run.py"} <= {path.name for path in FILES}

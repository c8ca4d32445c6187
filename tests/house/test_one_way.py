"""The desktop has one way of calling an operation that writes."""

import ast
from pathlib import Path

import hwsched

ROOT = Path(hwsched.__file__).parent


def _calls(tree, depth=0):
    """Yield every call with how many functions stand around it; a method counts as one."""
    for node in ast.iter_child_nodes(tree):
        inside = depth + isinstance(node, ast.FunctionDef | ast.Lambda)
        if isinstance(node, ast.Call):
            yield node, inside
        yield from _calls(node, inside)


def test_what_writes_is_called_in_work_that_is_handed_to_the_runner():
    direct = []
    for path in sorted((ROOT / "desktop").glob("**/*.py")):
        for call, depth in _calls(ast.parse(path.read_text(encoding="utf-8"))):
            # Operations that write are told who is at work. Straight in a method they would hold the screen.
            if any(keyword.arg == "who" for keyword in call.keywords) and depth < 2:
                direct.append(f"{path.name}:{call.lineno}")
    assert direct == []


def test_threads_are_started_by_the_runner_alone():
    for path in sorted((ROOT / "desktop").glob("**/*.py")):
        text = path.read_text(encoding="utf-8")
        if path.name != "jobs.py":
            assert "QThread" not in text, path.name
            assert "threading.Thread(" not in text, path.name

"""Who imports whom inside a floor, and what no other floor may import.

Imports inside functions, and those for the type checker alone, count like any other.
"""

import ast
from functools import cache
from pathlib import Path

import pytest

import hwsched
from hwsched.rules import RULEBOOK

ROOT = Path(hwsched.__file__).parent
FLOORS = sorted(path.name for path in ROOT.iterdir() if (path / "__init__.py").exists())
# Two rooms of the floor hold no rules, but what rules and fitting both reckon with.
RULE_ROOMS = sorted({path.parent.name for path in (ROOT / "rules").glob("*/*.py")} - {"solid", "network"})


def name_of(path, root=ROOT):
    words = path.relative_to(root.parent).with_suffix("").parts
    return ".".join(words[:-1] if words[-1] == "__init__" else words)


def imported(tree, known):
    """Modules that a file imports, wherever in it: in functions and for the type checker alone too."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names if alias.name in known)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, "imports say the whole name"
            taken = {f"{node.module}.{alias.name}" for alias in node.names}
            yield from taken & known
            # A package is asked itself only where something is taken that is none of its modules.
            if node.module in known and taken - known:
                yield node.module


@cache
def graph(root=ROOT):
    """Module to the modules of the same program that it imports."""
    paths = {name_of(path, root): path for path in sorted(root.rglob("*.py"))}
    known = frozenset(paths)
    return {
        name: frozenset(imported(ast.parse(path.read_text(encoding="utf-8")), known)) - {name}
        for name, path in paths.items()
    }


def circles(edges):
    """Sets of modules that import each other, at whatever remove (Tarjan), each sorted."""
    index, low, stack, found = {}, {}, [], []

    def visit(name):
        index[name] = low[name] = len(index)
        stack.append(name)
        for other in sorted(edges.get(name, ())):
            if other not in index:
                visit(other)
            if other in stack:
                low[name] = min(low[name], low[other])
        if low[name] == index[name]:
            at = stack.index(name)
            if len(stack) - at > 1:
                found.append(sorted(stack[at:]))
            del stack[at:]

    for name in sorted(edges):
        if name not in index:
            visit(name)
    return found


@pytest.mark.parametrize("floor", FLOORS)
def test_no_module_of_a_floor_imports_one_that_imports_it_back(floor):
    own = f"hwsched.{floor}"
    inside = {name for name in graph() if name == own or name.startswith(f"{own}.")}
    assert circles({name: graph()[name] & inside for name in inside}) == []


def test_a_circle_is_seen(tmp_path):
    """By a third module, inside a function, for the type checker, and by what a package takes of its own modules."""
    for name, text in {
        "__init__": "",
        "a": "from prog import b\n",
        "b": "import prog.c\n",
        "c": "def late():\n    from prog.a import x\n",
        "d": "from prog.a import x\nTYPE_CHECKING = False\nif TYPE_CHECKING:\n    from prog.e import y\n",
        "e": "from prog.d import x\n",
        "room/__init__": "from prog.room.f import f\n",
        "room/f": "from prog.room import g\n",
        "room/g": "",
        "hall/__init__": "from prog.hall.h import h\n",
        "hall/h": "from prog import hall\n",
    }.items():
        path = tmp_path / "prog" / f"{name}.py"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)
    found = graph(tmp_path / "prog")
    assert found["prog.room"] == {"prog.room.f"}
    assert found["prog.room.f"] == {"prog.room.g"}
    assert circles(found) == [["prog.a", "prog.b", "prog.c"], ["prog.d", "prog.e"], ["prog.hall", "prog.hall.h"]]


# --- the files of rules ---------------------------------------------------------------------------------------------


def test_nobody_but_the_table_of_contents_knows_the_file_of_a_rule():
    """Limits and verdicts are asked by identifier: no floor, and no other rule, imports the module of a rule."""
    rooms = tuple(f"hwsched.rules.{room}" for room in RULE_ROOMS)
    assert len(rooms) >= 15
    knowing = {
        name: sorted(each for each in others if each.startswith(rooms))
        for name, others in graph().items()
        if name != "hwsched.rules" and any(each.startswith(rooms) for each in others)
    }
    assert knowing == {}


def calls_of(name):
    """Calls of a function in the program: module, whether it stands inside a function, arguments."""
    for path in sorted(ROOT.rglob("*.py")):
        code = path.read_text(encoding="utf-8")
        if name not in code:
            continue
        tree = ast.parse(code)
        late = {
            id(inner)
            for node in ast.walk(tree)
            if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda)
            for inner in ast.walk(node)
        }
        for node in ast.walk(tree):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == name:
                yield name_of(path), id(node) in late, node.args


def test_a_rule_is_looked_up_once_when_its_reader_is_loaded():
    calls = list(calls_of("rule_named"))
    ids = {rule.id for rule in RULEBOOK}
    assert len(calls) > 10
    for module, late, (said,) in calls:
        assert not late, f"{module} looks a rule up at every call"
        assert isinstance(said, ast.Constant), module
        assert said.value in ids, module

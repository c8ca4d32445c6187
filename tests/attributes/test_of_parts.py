"""Names under which attributes of parts are read are those that kinds declare, of the type that they say."""

import ast
from pathlib import Path

import pytest

import hwsched
from hwsched.attributes import of_parts
from hwsched.catalogue import KINDS

ROOT = Path(hwsched.__file__).parent
TYPES = {"NumberName": {"length", "number", "integer"}, "TextName": {"text", "choice"}, "FlagName": {"flag"}}


def declared():
    """Constant, type and text of each name."""
    for node in ast.parse(Path(of_parts.__file__).read_text(encoding="utf-8")).body:
        if isinstance(node, ast.AnnAssign) and isinstance(node.value, ast.Call):
            yield node.target.id, node.value.func.id, node.value.args[0].value


NAMES = list(declared())
KINDS_OF: dict[str, set[str]] = {}
for _kind in KINDS:
    for _attribute in _kind.attributes:
        KINDS_OF.setdefault(_attribute.name, set()).add(_attribute.kind)


@pytest.mark.parametrize(("constant", "of", "name"), NAMES, ids=[each[0] for each in NAMES])
def test_a_name_is_declared_by_a_kind(constant, of, name):
    assert constant == name.upper()
    assert KINDS_OF[name] <= TYPES[of]


def test_each_name_is_read_somewhere():
    read = "".join(path.read_text(encoding="utf-8") for path in ROOT.rglob("*.py") if path.name != "of_parts.py")
    assert [constant for constant, _, _ in NAMES if constant not in read] == []

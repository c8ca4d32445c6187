"""Small things of texts that people read: one is said as one, and what is left out is shown by one sign."""

import ast
from pathlib import Path

import pytest

import hwsched

ROOT = Path(hwsched.__file__).parent
SAID = ("desktop", "rules", "fitting", "work", "documents", "operations")
"""Floors whose texts people read on screen or paper."""


def texts(folder):
    """Every text of a floor that is no docstring, with where it stands."""
    for path in sorted((ROOT / folder).rglob("*.py")):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        told = {
            id(node.body[0].value)
            for node in ast.walk(tree)
            if isinstance(node, (ast.Module, ast.ClassDef, ast.FunctionDef)) and node.body
            and isinstance(node.body[0], ast.Expr)
        }  # fmt: skip
        for node in ast.walk(tree):
            if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in told:
                yield f"{path.relative_to(ROOT)}:{node.lineno}", node.value


@pytest.mark.parametrize("folder", SAID)
def test_nothing_is_said_to_be_one_or_many(folder):
    """By its number it is known which: "1 hole", "2 holes", never both in one."""
    found = [f"{where}: {text}" for where, text in texts(folder) if "(s)" in text or "(es)" in text]
    assert not found, "\n".join(found)


def test_the_window_says_by_one_sign_that_more_is_asked_or_done():
    found = [f"{where}: {text}" for where, text in texts("desktop") if "..." in text]
    assert not found, "\n".join(found)


@pytest.mark.parametrize("folder", ["model", "exchange"])
def test_nothing_says_by_itself_that_nothing_was_changed(folder):
    """What was written is noted and said once, by `said_of`; who says it in an error says it twice, or wrongly."""
    assert not [where for where, text in texts(folder) if "nothing was changed" in text.lower()]


_IDENTIFIED = frozenset({"rule", "rule_id"})
_AS_IDENTIFIERS = {
    "rules/__init__.py", "operations/findings/waivers.py", "operations/opening/what_if.py",
    "operations/opening/fit_differences.py", "operations/project/lists.py", "desktop/findings/finding_lines.py",
    "desktop/findings/rulebook_window.py",
}  # fmt: skip
"""Modules that say back what a person typed, tell lines apart, name limits, or put an identifier beside its title."""


def identified(folder):
    """Yield each place of a text into which the identifier of a rule is put as it is, with its module."""
    for path in sorted((ROOT / folder).rglob("*.py")):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        for node in ast.walk(tree):
            values = [node.value] if isinstance(node, ast.FormattedValue) else []
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "phrase":
                values = [each.value for each in node.keywords]
            if {getattr(each, "attr", getattr(each, "id", "")) for each in values} & _IDENTIFIED:
                yield str(path.relative_to(ROOT)), node.lineno


def test_a_rule_is_called_by_its_title_in_what_people_read():
    found = {each for folder in (*SAID, "wiring") for each in identified(folder)}
    assert not [each for each in found if each[0] not in _AS_IDENTIFIERS]
    assert {module for module, _ in found} == _AS_IDENTIFIERS, "each exception is needed"

"""Every member of a family is registered, named as its file, and says what a reader needs."""

import importlib
import pkgutil
from pathlib import Path

import pytest

import hwsched.rules
from hwsched.calc.calculators import CALCULATORS
from hwsched.cli import ENTRIES
from hwsched.documents.documents import DOCUMENTS
from hwsched.rules import OPENINGS, RECORDS, RULEBOOK, RULES, SUPPLIES, Rule
from hwsched.values import DISCIPLINES

ROOT = Path(hwsched.rules.__file__).parent


def rule_modules():
    for folder in sorted(path for path in ROOT.iterdir() if path.is_dir() and path.name != "__pycache__"):
        for module in pkgutil.iter_modules([str(folder)]):
            found = importlib.import_module(f"hwsched.rules.{folder.name}.{module.name}")
            if isinstance(getattr(found, "RULE", None), Rule):
                yield folder.name, module.name, found.RULE


def test_every_rule_file_is_registered_under_its_name():
    modules = list(rule_modules())
    assert {id(rule) for _, _, rule in modules} == {id(rule) for rule in RULEBOOK}
    for folder, name, rule in modules:
        assert rule.id == name.replace("_", "-")
        assert rule.subject is {"circuits": SUPPLIES, "records": RECORDS}.get(folder, OPENINGS)
        assert rule.subject is not OPENINGS or rule.discipline == folder.replace("_", "-")


def test_rules_cover_every_discipline():
    assert {rule.discipline for rule in RULES} == set(DISCIPLINES)
    assert len(RULES) >= 25


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_a_rule_says_its_basis_and_cure(rule):
    assert rule.title
    assert rule.basis
    assert rule.cure
    assert all(limit.source and limit.text for limit in rule.limits)


@pytest.mark.parametrize("calculator", CALCULATORS, ids=lambda calculator: calculator.name)
def test_a_calculator_answers_its_own_example(calculator):
    answer = calculator.run(calculator.example)
    assert set(answer) <= {field.name for field in calculator.outputs} | {"error"}
    assert "error" not in answer
    stated = {field.name.split(".")[0].split("[")[0] for field in calculator.inputs}
    assert set(calculator.example) <= stated


def test_names_are_unique():
    for family in (
        [c.name for c in CALCULATORS],
        [entry.spelling for entry in ENTRIES],
        [spelt for entry in ENTRIES for spelt in entry.earlier],
        [d.name for d in DOCUMENTS],
        [r.id for r in RULEBOOK],
    ):
        assert len(family) == len(set(family))

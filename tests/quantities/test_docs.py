"""The examples in the docstrings hold, every module is covered, and what is public is listed."""

import doctest
import importlib
import pkgutil
import subprocess
import sys
from pathlib import Path

import pytest

import hwsched.quantities as package

MODULES = sorted(module.name for module in pkgutil.iter_modules(package.__path__))


@pytest.mark.parametrize("name", MODULES)
def test_examples(name: str) -> None:
    assert doctest.testmod(importlib.import_module(f"hwsched.quantities.{name}")).failed == 0


@pytest.mark.parametrize("name", MODULES)
def test_every_module_has_its_tests(name: str) -> None:
    assert Path(__file__).with_name(f"test_{name}.py").exists()


def test_public_names_are_there_and_sorted_as_ruff_sorts() -> None:
    assert all(hasattr(package, name) for name in package.__all__)
    assert len(set(package.__all__)) == len(package.__all__)


def test_pint_is_loaded_only_when_a_unit_must_be_converted() -> None:
    code = (
        "import sys, hwsched.quantities as q\n"
        "q.read_length('3 ft', None); q.parse_quantity('12 VDC', 'voltage', None); q.parse_gauge('18 AWG')\n"
        "assert 'pint' not in sys.modules\n"
        "assert q.parse_quantity('350 mA', 'current', None) == 0.35\n"
        "assert 'pint' in sys.modules\n"
    )
    subprocess.run([sys.executable, "-c", code], check=True, timeout=60)

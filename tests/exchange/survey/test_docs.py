"""The examples in docstrings are true."""

import doctest
import importlib
import pkgutil

import pytest

from hwsched.exchange import survey

MODULES = [module.name for module in pkgutil.iter_modules(survey.__path__)]


@pytest.mark.parametrize("name", MODULES)
def test_examples(name):
    assert doctest.testmod(importlib.import_module(f"hwsched.exchange.survey.{name}")).failed == 0

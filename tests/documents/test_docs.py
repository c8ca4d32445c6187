"""The examples in the docstrings hold."""

import doctest
import importlib
import pkgutil

import pytest

import hwsched.documents as package

MODULES = sorted(module.name for module in pkgutil.walk_packages(package.__path__, f"{package.__name__}."))


@pytest.mark.parametrize("name", MODULES)
def test_examples(name):
    assert doctest.testmod(importlib.import_module(name)).failed == 0

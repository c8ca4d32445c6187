import doctest
import importlib
import pkgutil

import pytest

import hwsched.drawings
import hwsched.render

MODULES = [
    module.name
    for package in (hwsched.drawings, hwsched.render)
    for module in pkgutil.walk_packages(package.__path__, f"{package.__name__}.")
]


@pytest.mark.parametrize("name", MODULES)
def test_examples_in_docstrings_hold(name):
    assert doctest.testmod(importlib.import_module(name)).failed == 0

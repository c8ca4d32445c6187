"""The examples in the docstrings hold, and what is public is listed."""

import doctest
import importlib
import pkgutil

import pytest

import hwsched.query as package

MODULES = sorted(module.name for module in pkgutil.iter_modules(package.__path__))


@pytest.mark.parametrize("name", MODULES)
def test_examples(name):
    assert doctest.testmod(importlib.import_module(f"hwsched.query.{name}")).failed == 0


def test_public_names_are_there():
    assert all(hasattr(package, name) for name in package.__all__)
    assert len(set(package.__all__)) == len(package.__all__)

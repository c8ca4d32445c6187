"""Ratios are measured as people run the program: Python looks for garbage as often as it does by itself."""

import gc

import pytest

from tests.conftest import USUAL_THRESHOLD


@pytest.fixture(scope="session", autouse=True)
def garbage_is_looked_for_as_usual():
    """What tests set aside would let the bare reading, against which all is measured, run quicker than it ever does."""
    eased = gc.get_threshold()
    gc.unfreeze()
    gc.set_threshold(*USUAL_THRESHOLD)
    yield
    gc.set_threshold(*eased)

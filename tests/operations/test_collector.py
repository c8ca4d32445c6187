"""What a person works in is set aside from the collector, and given back to it."""

import gc

import pytest

from hwsched.operations import collector


@pytest.fixture
def as_in_a_window(monkeypatch):
    """As it is where nobody else has set things aside; what the run itself did is done again hereafter."""
    gc.unfreeze()
    monkeypatch.setattr(collector, "SET_ASIDE", False)
    yield
    collector.take_back()
    gc.freeze()


def test_values_of_an_open_project_are_looked_through_no_more_until_it_is_closed(as_in_a_window):
    held = [[n] for n in range(1000)]
    collector.set_aside()
    assert gc.get_freeze_count() > 1000
    before = gc.get_freeze_count()
    with collector.collector_paused():
        more = [[n] for n in range(1000)]
    assert gc.get_freeze_count() >= before + 1000, "what is read hereafter joins it"
    collector.take_back()
    assert gc.get_freeze_count() == 0
    assert gc.isenabled()
    assert (len(held), len(more)) == (1000, 1000)


def test_what_somebody_else_has_set_aside_stays_so(as_in_a_window, monkeypatch):
    gc.freeze()
    monkeypatch.setattr(collector, "SET_ASIDE", True)
    before = gc.get_freeze_count()
    collector.set_aside()
    collector.take_back()
    assert gc.get_freeze_count() >= before - 10
    assert collector.SET_ASIDE

"""What slots remember: facts that they do not read cost nothing, and what is remembered is what would be found anew."""

from dataclasses import replace

import pytest

from hwsched.fitting import fit, fit_with_facts, locks, units
from hwsched.values.facts_memory import FactsMemory
from tests.fitting.door import door
from tests.rules.scenario import item, leaf, lock


def standing_at(up_mm):
    return door(lf=leaf(undercut_mm=10.0), lk=lock(cylinder_height_mm=up_mm))


@pytest.fixture
def counted(monkeypatch):
    """How often locks are put together, units judged alone, and places looked for."""
    counts = {}

    def count(module, name):
        made = getattr(module, name)

        def counting(*words):
            counts[name] = counts.get(name, 0) + 1
            return made(*words)

        monkeypatch.setattr(module, name, counting)

    count(locks, "_put_together")
    count(units, "_alone")
    count(units, "_stands")
    return counts


def test_at_another_height_only_places_are_looked_for_anew(counted):
    memory = FactsMemory()
    first, _ = fit_with_facts(standing_at(1000.0), memory)
    assert first.status == "fits"
    once = dict(counted)
    assert min(once.values()) > 0
    for up_mm in (1001.0, 1010.5, 950.0):
        found, _ = fit_with_facts(standing_at(up_mm), memory)
        assert found == fit(standing_at(up_mm))
        assert found.placement != first.placement
    remembered = {name: counted[name] for name in ("_put_together", "_alone")}
    again = {name: 3 * count for name, count in once.items() if name in remembered}
    # Those that were asked anew for comparison, without a memory, and no more.
    assert remembered == {name: once[name] + again[name] for name in remembered}
    assert counted["_stands"] > once["_stands"] * 4


def test_a_thicker_leaf_is_worked_out_anew(counted):
    memory = FactsMemory()
    first = standing_at(1000.0)
    fit_with_facts(first, memory)
    once = dict(counted)
    thicker = replace(first, leaves=tuple(replace(each, thickness_mm=50.8) for each in first.leaves))
    assert fit_with_facts(thicker, memory)[0] == fit(thicker)
    assert counted["_put_together"] == 3 * once["_put_together"]


def test_what_stands_round_a_unit_is_asked_for_though_it_is_refused_alone():
    """Its place is unknown besides, and nothing of that is lost where the unit is refused for what it is."""
    beside = door(lf=leaf(undercut_mm=10.0), items=(item("pull", face="inside", x=None),))
    memory = FactsMemory()
    assert fit_with_facts(beside, memory)[0] == fit(beside) == fit_with_facts(beside, memory)[0]

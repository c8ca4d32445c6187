"""What a project decides."""

import pytest

from hwsched.model import errors
from hwsched.model.queries import read_settings
from hwsched.operations.project import settings
from hwsched.operations.project.history import undo
from hwsched.operations.project.settings import set_settings
from hwsched.rules import Limit, Rule
from hwsched.values import Settings

LOW = Limit("low_mm", 864.0, "", "common practice", unit="mm", low=100.0, high=2000.0)
RULES = tuple(
    Rule(name, name, "egress", "note", "common practice", "", lambda given, fit, limits: (), limits=limits)
    for name, limits in (("reach", (LOW,)), ("width", ()))
)


@pytest.fixture(autouse=True)
def two_rules(monkeypatch):
    monkeypatch.setattr(settings, "RULEBOOK", RULES)


def held(project):
    with project.reading() as connection:
        return read_settings(connection)


def test_each_is_set_and_the_others_stay(project):
    set_settings(project, who="ann", limits={"reach.low_mm": 900.0})
    set_settings(project, who="ann", rules_off={"width": True, "reach": True})
    set_settings(project, who="ann", prefer="holes", length_style="mm")
    assert held(project) == Settings("mm", {"reach.low_mm": 900.0}, frozenset({"reach", "width"}), "holes")
    set_settings(project, who="ann", limits={"reach.low_mm": None}, rules_off={"width": False})
    assert held(project) == Settings("mm", {}, frozenset({"reach"}), "holes")
    undo(project, who="ann")
    assert held(project).limits == {"reach.low_mm": 900.0}


def test_name_and_units_are_seen_by_the_open_project(project):
    set_settings(project, who="ann", name=" New \n yard ", length_style="decimal-inch", bare_unit="mm")
    assert (project.title, project.length_style, project.bare_unit) == ("New yard", "decimal-inch", "mm")
    set_settings(project, who="ann", bare_unit="")
    assert project.bare_unit is None
    undo(project, who="ann")
    undo(project, who="ann")
    assert (project.title, project.length_style, project.bare_unit) == ("Yard", "fraction", "in")


def test_without_a_difference_there_is_no_step(project):
    assert set_settings(project, who="ann").number is None
    assert set_settings(project, who="ann", name="Yard", length_style="fraction").number is None


@pytest.mark.parametrize("bound", [100.0, 2000.0])
def test_a_bound_itself_is_accepted(project, bound):
    set_settings(project, who="ann", limits={"reach.low_mm": bound})
    assert held(project).limits == {"reach.low_mm": bound}


@pytest.mark.parametrize(
    ("wrong", "word"),
    [
        ({"name": " "}, "name"),
        ({"length_style": "cubits"}, "cubits"),
        ({"bare_unit": "yd"}, "yd"),
        ({"prefer": "luck"}, "luck"),
        ({"limits": {"reach.high_mm": 1.0}}, r"reach\.low_mm"),
        ({"limits": {"reach.low_mm": float("nan")}}, "nan"),
        ({"limits": {"reach.low_mm": -5.0}}, "-5 is no limit; accepted: 100 to 2000 mm"),
        ({"limits": {"reach.low_mm": 2000.1}}, "2000.1 is no limit; accepted: 100 to 2000 mm"),
        ({"rules_off": {"nothing": True}}, "nothing"),
    ],
)
def test_what_there_is_not_is_refused_whole(project, wrong, word):
    before = held(project)
    with pytest.raises(errors.ValueRefusedError, match=word):
        set_settings(project, who="ann", **{"prefer": "holes", **wrong})
    assert held(project) == before

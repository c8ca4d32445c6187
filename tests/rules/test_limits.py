"""Limits of rules: what a project may set, and what cannot be meant."""

from dataclasses import replace

import pytest

from hwsched.rules import RULEBOOK, RULES, Limit
from hwsched.rules.wording import length
from hwsched.values import Settings
from tests.rules.rows import run
from tests.rules.scenario import given
from tests.rules.test_rulebook import all_rows

EVERY = [(rule, limit) for rule in RULEBOOK for limit in rule.limits]
UNITS = {"mm": "mm", "deg": "deg", "c": "C", "s": "s", "n": "N", "va": "VA", "days": "days", "hours": "h"}
"""Endings of names that say a unit."""


@pytest.mark.parametrize(("rule", "limit"), EVERY, ids=lambda each: getattr(each, "id", None) or each.name)
def test_the_unit_is_the_one_that_the_name_says(rule, limit):
    assert limit.unit == UNITS.get(limit.name.rpartition("_")[2], "")


@pytest.mark.parametrize(("rule", "limit"), EVERY, ids=lambda each: getattr(each, "id", None) or each.name)
def test_nothing_but_a_temperature_can_lie_below_nothing(rule, limit):
    assert limit.low >= 0 or limit.unit == "C"
    assert limit.low < limit.high


IN_MM = [(rule, limit) for rule, limit in EVERY if limit.unit == "mm"]
THINGS = {"drill_radius_mm", "drill_long_mm", "bit_mm", "bit_long_mm", "shank_mm", "blade_mm", "blade_long_mm",
          "hand_wide_mm", "hand_high_mm", "hand_long_mm"}  # fmt: skip
"""Sizes of tools and hands, that are never nothing."""
THREAD = {("thread-pitch", "pitch_mm"), ("thread-pitch", "diameter_mm")}
"""And those of a thread."""
FROM_ONE = {"margin", "ageing", "peukert", "most_storeys", "operations", "conductors", "at_once", "days", "rated_hours",
            "load_people", "ibc_people", "nfpa_people"}  # fmt: skip
"""What is counted from one on, and factors that must take nothing away."""


@pytest.mark.parametrize(("rule", "limit"), IN_MM, ids=lambda each: getattr(each, "id", None) or each.name)
def test_a_distance_may_be_set_to_nothing_and_ends_at_a_round_number(rule, limit):
    """The page of the rule says "A project may set 0 to 200 mm"; only what has a size cannot be nothing."""
    assert (limit.low > 0.0) == (limit.name in THINGS or (rule.id, limit.name) in THREAD)
    assert limit.high % 5 == 0


@pytest.mark.parametrize(("rule", "limit"), EVERY, ids=lambda each: getattr(each, "id", None) or each.name)
def test_what_a_project_may_set_ends_at_a_round_number(rule, limit):
    """A multiple of five; a factor or share at a small whole one; later openings at 64, as many as can be asked for."""
    most = 64.0 if rule.id == "supply-growth" else 3.0
    assert limit.high % 5 == 0 or (limit.high <= most and limit.high == int(limit.high))


def test_a_share_ends_at_the_whole_and_what_is_counted_begins_at_one():
    assert {limit.high for _, limit in EVERY if limit.name in ("share", "end_share")} == {1.0}
    assert {limit.low for _, limit in EVERY if limit.name in FROM_ONE} == {1.0}


@pytest.mark.parametrize("value", [-0.1, 10.1, float("nan")])
def test_a_rule_s_own_limit_lies_within_its_bounds(value):
    with pytest.raises(ValueError, match="does not lie in 0 to 10"):
        Limit("reach_mm", value, "Reach.", "of the test", unit="mm", low=0.0, high=10.0)


def test_bounds_are_a_number_each():
    with pytest.raises(ValueError, match="does not lie"):
        Limit("reach_mm", 1.0, "Reach.", "of the test", unit="mm", low=0.0, high=float("inf"))


@pytest.mark.parametrize(
    ("style", "mm", "said"),
    [
        ("fraction", 0.02, 'less than 1/64"'),
        ("mm", 0.02, "less than 0.1 mm"),
        # Half a ten-thousandth of an inch is 0.00127 mm; the next step that is written is a thousandth.
        ("decimal-inch", 0.001, 'less than 0.001"'),
    ],
)
def test_what_is_short_by_a_hair_is_not_short_by_nothing(style, mm, said):
    assert length(given(settings=Settings(length_style=style)), mm) == said


# --- both ends of each limit ----------------------------------------------------------------------------------------

WHOLE = ("holds", "conductors", "most_storeys", "turns_beyond", "load_people", "ibc_people", "nfpa_people")
"""What is counted."""
COARSE = {("frame-stop-clear", "pin_mm"): 0.5}
"""Limits that move what they decide by a share of themselves only."""
BEHIND = {("tool-room", "drill_long_mm"), ("tool-room", "hand_long_mm")}
"""Where a drill or a hand ends behind decides nothing: whatever stands that far out has met its front already."""
BY_OTHERS = {"tool-room": ("tool-room", "long-tool"), "nut-room": ("nut-room", "head-clear")}
"""Rules whose limits others take from them too."""


def ends():
    """Each limit of a rule of openings with a little more, and with a little less where that can be set."""
    for rule in RULES:
        for limit in (each for each in rule.limits if (rule.id, each.name) not in BEHIND):
            step = 1.0 if limit.name in WHOLE else COARSE.get((rule.id, limit.name), 0.01 * limit.value)
            if limit.unit == "mm" and limit.value >= 1.0:
                # Three times what is measured.
                step = max(step, 0.15)
            for to in (limit.value + (step or 0.5), limit.value - step):
                if limit.low <= to <= limit.high and to != limit.value:
                    yield pytest.param(rule.id, limit.name, to, id=f"{rule.id} {limit.name} {to:g}")


def notices(row, name, to):
    """Whether a row expects something else where a limit is moved."""
    settings = row.given.settings
    if name in settings.limits:
        return False
    moved = replace(row.given, settings=replace(settings, limits={**settings.limits, name: to}))
    try:
        run(replace(row, given=moved))
    except (AssertionError, KeyError):
        return True
    return False


@pytest.mark.parametrize(("rule", "name", "to"), list(ends()))
def test_each_limit_decides_at_both_its_ends(rule, name, to):
    """Of the rows that test a rule one stands at each end of each of its limits, so near that it sees it moved."""
    rows = (row for each in BY_OTHERS.get(rule, (rule,)) for row in all_rows()[each])
    assert any(notices(row, f"{rule}.{name}", to) for row in rows)

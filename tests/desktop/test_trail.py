"""Where a person was in the window: back, forward, what is forgotten; told without a screen."""

import pytest

from hwsched.desktop.frame.trail import Station, Trail


@pytest.fixture
def trail():
    made = Trail()
    for each in ("openings", "power", "cost"):
        made.go(each)
    return made


def places(trail):
    return [each.place if each is not None else None for each in (trail.before, trail.here, trail.after)]


def test_nothing_leads_anywhere_at_first():
    trail, moved = Trail(), []
    trail.moved.connect(lambda: moved.append(True))
    trail.back()
    trail.forward()
    assert (trail.before, trail.here, trail.after, moved) == (None, None, None, [])


def test_back_and_forward_lead_along_the_stations(trail):
    assert places(trail) == ["power", "cost", None]
    trail.back()
    trail.back()
    assert places(trail) == [None, "openings", "power"]
    trail.back()
    assert places(trail) == [None, "openings", "power"]
    trail.forward()
    assert places(trail) == ["openings", "power", "cost"]


def test_who_goes_elsewhere_after_back_has_no_way_forward(trail):
    trail.back()
    trail.go("survey")
    assert places(trail) == ["power", "survey", None]


def test_the_place_that_is_shown_is_no_new_station_and_is_told_again(trail):
    moved = []
    trail.moved.connect(lambda: moved.append(True))
    trail.go("cost")
    assert places(trail) == ["power", "cost", None]
    assert moved == [True]
    trail.go("cost", "of M004")
    assert trail.before == Station("cost")


def test_what_was_looked_at_comes_back_with_its_place(trail):
    trail.go("openings", ("a",))
    trail.note(("b", "c"))
    trail.go("power")
    trail.back()
    assert trail.here == Station("openings", ("b", "c"))


def test_a_closed_page_is_forgotten_and_the_one_before_it_is_shown(trail):
    moved = []
    trail.moved.connect(lambda: moved.append(trail.here.place))
    trail.forget(lambda each: each.place == "openings")
    assert (places(trail), moved) == (["power", "cost", None], [])
    trail.forget(lambda each: each.place == "cost")
    assert (places(trail), moved) == ([None, "power", None], ["power"])


def test_two_visits_between_which_a_page_was_closed_are_one(trail):
    trail.go("power")
    trail.forget(lambda each: each.place == "cost")
    assert places(trail) == ["openings", "power", None]


def test_it_does_not_grow_without_end():
    trail = Trail()
    for each in range(250):
        trail.go(f"place {each}")
    walked = 0
    while trail.before is not None:
        trail.back()
        walked += 1
    assert walked == 99

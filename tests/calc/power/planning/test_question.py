"""What a question of a plan may hold: each limit at both its ends, and the field that is named."""

from dataclasses import replace

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.power.planning.question import (
    Drawn,
    PlanOpening,
    PlanPlace,
    Question,
    Size,
    Wire,
    check_question,
)

LARGEST = 1e9
"""Our own: no ampere, volt, ohm, price or metre of a building is more."""


def question(size=(), place=(), wire=(), drawn=(), **more):
    """Two openings, a closet and two wires, with something changed of the first of each."""
    asked = Question(
        (
            replace(
                PlanPlace("closet", (replace(Size("S", "12 V", 5.0, 11.4, 100.0), **dict(size)),), 1), **dict(place)
            ),
        ),
        (
            PlanOpening("1", {"12 V": replace(Drawn(0.3, 0.1, 0.3, 10.0), **dict(drawn))}),
            PlanOpening("2", {"12 V": Drawn(0.3, 0.1, 0.3, 10.0)}),
        ),
        (replace(Wire("thin", 0.1, 1.0), **dict(wire)), Wire("thick", 0.03, 1.5)),
        [[10.0], [20.0]],
        [[None, 10.0], [10.0, None]],
    )
    return replace(asked, **more)


@pytest.mark.parametrize(
    "changed",
    [
        {},
        {"size": {"left_a": 0.0}},
        {"size": {"left_a": LARGEST}},
        {"size": {"terminals_v": 0.0}},
        {"size": {"cost": 0.0}},
        {"place": {"warmth": 100.0}},
        {"place": {"warmth": 0.01}},
        {"place": {"at_once": 0}},
        {"wire": {"ohm_per_m": 1e-9}},
        {"wire": {"ohm_per_m": LARGEST}},
        {"wire": {"cost_per_m": 0.0}},
        {"drawn": {"held_a": 0.0, "rest_a": 0.0, "work_a": 0.0, "needed_v": 0.0}},
        {"to_place_m": [[LARGEST], [None]]},
        # Beside each other: no way at all from one to the other.
        {"between_m": [[0.0, 0.0], [0.0, 0.0]]},
        {"between_m": ()},
        {"most_on_leg": 1},
    ],
)
def test_what_can_be_asked(changed):
    check_question(question(**changed))


@pytest.mark.parametrize(
    ("changed", "field"),
    [
        ({"size": {"left_a": -0.01}}, "places[0].sizes"),
        ({"size": {"left_a": LARGEST + 1}}, "places[0].sizes"),
        ({"size": {"terminals_v": -0.01}}, "places[0].sizes"),
        ({"size": {"cost": -0.01}}, "places[0].sizes"),
        ({"size": {"cost": float("nan")}}, "places[0].sizes"),
        ({"place": {"warmth": 0.0}}, "places[0].warmth"),
        ({"place": {"warmth": 100.5}}, "places[0].warmth"),
        ({"place": {"at_once": -1}}, "places[0].at_once"),
        ({"wire": {"ohm_per_m": 0.0}}, "wires[0].ohm_per_m"),
        ({"wire": {"ohm_per_m": LARGEST + 1}}, "wires[0].ohm_per_m"),
        ({"wire": {"cost_per_m": -0.01}}, "wires[0].cost_per_m"),
        ({"wire": {"id": "thick"}}, "wires[1].id"),
        *(({"drawn": {name: -0.01}}, "openings[0].drawn") for name in ("held_a", "rest_a", "work_a", "needed_v")),
        ({"places": ()}, "places"),
        ({"openings": ()}, "openings"),
        ({"wires": ()}, "wires"),
        # A run of no length cannot be laid.
        ({"to_place_m": [[10.0], [0.0]]}, "to_place_m[1][0]"),
        ({"to_place_m": [[10.0], [-1.0]]}, "to_place_m[1][0]"),
        ({"to_place_m": [[LARGEST + 1], [10.0]]}, "to_place_m[0][0]"),
        ({"to_place_m": [[10.0]]}, "to_place_m"),
        ({"to_place_m": [[10.0], [10.0, 20.0]]}, "to_place_m[1]"),
        ({"between_m": [[None, -1.0], [10.0, None]]}, "between_m[0][1]"),
        ({"between_m": [[None, 10.0]]}, "between_m"),
        ({"between_m": [[None, 10.0], [10.0]]}, "between_m[1]"),
        ({"most_on_leg": 0}, "most_on_leg"),
    ],
)
def test_what_cannot_be_asked_is_named(changed, field):
    with pytest.raises(InputError) as refused:
        check_question(question(**changed))
    assert refused.value.field == field

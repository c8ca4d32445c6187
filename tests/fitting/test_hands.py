"""Room for hands decides where a unit stands: another place is taken, a fact asked for, or the nut named in the way.

Of the usual unit, 80 x 160, straight behind the cylinder at 69.85, 1000 the plate stands from 29.85 and 940. Lengths in
mm; a socket is 3/4 in across, fingers about a turn 1 1/2 in, from memory.
"""

import pytest

from hwsched.fitting import fit
from hwsched.rules.judging import check
from tests.fitting.door import door, item, stock
from tests.fitting.test_gate import gate

ON_FACES = stock(drop=("EDGE",))
SOCKET, GAP = 19.05, 3 / 16 * 25.4


def pull(y, x=69.85, **facts):
    """One on the key face, bolted 15 from its ends, 60 high."""
    return item("pull", x, y, 20.0, 60.0, **{"face": "key", **facts})


def placed(*items, cat=ON_FACES):
    found = fit(door(cat=cat, items=items))
    return found, found.placement


def test_a_unit_keeps_off_nuts_beside_which_it_can_stand():
    # At 115 the sockets reach from 105.475 on: the plate, which may stand from 3.175 to 59.85, ends before it.
    found, there = placed(pull(1040.0, 115.0))
    assert found.status == "fits"
    assert there.x_mm + 80.0 <= 115.0 - SOCKET / 2 + 1e-6
    # It is as near to its old place as they let it.
    assert there.x_mm == pytest.approx(115.0 - SOCKET / 2 - 80.0)
    _, old = placed()
    assert old.x_mm == pytest.approx(29.85)
    assert not [
        each for each in check(door(cat=ON_FACES, items=[pull(1040.0, 115.0)]), found) if each.rule == "nut-room"
    ]


def test_behind_nuts_on_its_own_line_no_unit_stands_and_one_in_the_edge_does():
    """With bolts at 1045 and 1075 the plate, which must cover 69.85, 1000, covers one whatever its place."""
    # Below the lock stands something else, or a channel would come up into its pocket from there.
    below = item("other", 69.85, 780.0, 160.0, 180.0, projection_mm=20.0)
    found, _ = placed(pull(1060.0), below)
    assert found.status == "does-not-fit"
    found, there = placed(pull(1060.0), below, cat=stock())
    assert (found.status, there.face) == ("fits", "edge")
    # One with its own pull, or with a push plate before the bolts, has no nuts; then these are what the unit keeps off.
    for over in (item("push-plate", 69.85, 1060.0, 40.0, 90.0), pull(1060.0, face="inside")):
        found, _ = placed(pull(1060.0), over)
        assert "nut-room" not in {each.rule for each in found.refused}


def test_where_only_nuts_that_nobody_measured_are_in_the_way_they_are_asked_for():
    found, _ = placed(pull(1060.0, bolt_inset_mm=None))
    assert (found.status, [need.fact for need in found.needs]) == ("to-measure", ["existing_item.bolt_inset_mm"])
    # Not where another place or another unit serves whatever they are.
    assert placed(pull(1040.0, 115.0, bolt_inset_mm=None))[0].status == "fits"
    # And a face that nobody told is asked for in the same way, though other ways have places that are refused.
    found, _ = placed(item("other", 69.85, 1060.0, 20.0, 120.0, face=None))
    assert (found.status, [need.fact for need in found.needs]) == ("to-measure", ["existing_item.face"])


def test_beside_a_thumb_turn_a_unit_leaves_room_for_it_as_it_is_turned():
    # 20 x 50 at 120: 25 to each side as it is turned, and 3/16 in.
    found, there = placed(item("thumb-turn", 120.0, 1060.0, 20.0, 50.0))
    assert found.status == "fits"
    assert there.x_mm + 80.0 == pytest.approx(120.0 - 25.0 - GAP)


def test_a_gate_lock_is_not_bolted_where_a_pull_stands_on_its_nuts():
    # Its case is 90 x 150 about 69.85, 1000; its nuts stand 12.7 within, the upper ones at 1062.3.
    on_nuts = item("pull", 100.0, 1100.0, 25.0, 160.0, bolt_inset_mm=0.0)
    found = fit(gate(items=[on_nuts]))
    assert found.status == "does-not-fit"
    assert "head-clear" in {each.rule for each in found.refused}
    beside = item("pull", 69.85, 1200.0, 25.0, 160.0, bolt_inset_mm=0.0)
    assert fit(gate(items=[beside])).status == "fits"

"""Truth table of hands: trade convention as charted in SDI 111 (read in secondary copies; facts 3.4)."""

import pytest

from hwsched.drawings.handing import FACES, HANDS, lock_edge_left, swings_toward_viewer
from hwsched.rules.reading import stop_side
from tests.drawings.openings import opening

# hand: (hinges left seen from the key side, swings toward the key side)
TABLE = {"LH": (True, False), "RH": (False, False), "LHR": (True, True), "RHR": (False, True)}


@pytest.mark.parametrize("hand", HANDS)
def test_from_the_key_side_the_lock_edge_is_opposite_the_hinges(hand):
    hinges_left, toward = TABLE[hand]
    assert lock_edge_left(hand, "key") is not hinges_left
    assert swings_toward_viewer(hand, "key") is toward


@pytest.mark.parametrize("hand", HANDS)
def test_from_the_other_side_left_and_right_and_toward_and_away_flip_together(hand):
    assert lock_edge_left(hand, "inside") is not lock_edge_left(hand, "key")
    assert swings_toward_viewer(hand, "inside") is not swings_toward_viewer(hand, "key")


@pytest.mark.parametrize("hand", HANDS)
def test_the_leaf_closes_with_the_face_that_it_swings_away_from(hand):
    face = stop_side(opening(hand=hand))
    assert face in FACES
    assert not swings_toward_viewer(hand, face)

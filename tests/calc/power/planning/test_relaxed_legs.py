"""Legs without some of what a leg must be: what the way to their end still bears."""

import numpy as np
import pytest

from hwsched.calc.power.planning.legs import Weights, outlets_of, ways_of
from hwsched.calc.power.planning.question import Drawn, PlanOpening, PlanPlace, Question, Size, Wire
from hwsched.calc.power.planning.relaxed_legs import RelaxedLegs


@pytest.mark.parametrize(("at_once", "together"), [(0, True), (1, False), (2, False)])
def test_a_branch_is_left_off_where_its_end_itself_takes_what_is_to_be_lost(at_once, together):
    """Doors at 5 and 10 m of 0.1 ohm; the far one bears 1 V and takes 0.1 A at rest, 0.9 A as it operates.

    Operating it takes 0.9 V itself, and the near one's 0.5 A would take 0.25 V more; at rest it takes 0.1 V.
    """
    question = Question(
        (PlanPlace("closet", (Size("S", "12 V", 5.0, 11.4, 100.0),), at_once),),
        (
            PlanOpening("near", {"12 V": Drawn(0.5, 0.5, 0.5, 9.95)}),
            PlanOpening("far", {"12 V": Drawn(0.9, 0.1, 0.9, 10.4)}),
        ),
        (Wire("thin", 0.1, 1.0),),
        [[5.0], [10.0]],
        [[None, 5.0], [5.0, None]],
    )
    (outlet,) = outlets_of(question)
    legs, _ = RelaxedLegs(outlet, ways_of(question, Weights(1.0, 0.0)), 0).paying(np.array([100.0, 100.0]))
    branching = [leg.order for leg in legs if leg.junctions and leg.order[-1] == 1]
    assert ((0, 1) in branching) == together

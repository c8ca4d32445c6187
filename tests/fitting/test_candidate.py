"""What is asked for because a candidate might be better than the best that is known to serve."""

import pytest

from hwsched.fitting.candidate import Judged, judged, missing_for_better
from hwsched.values import Fit, Refusal
from tests.fitting.door import door, item, opening
from tests.rules.scenario import fit, fp

NARROW, BOND, SEALED = (Fit("to-measure", parts=(fp("unit", number),)) for number in ("NARROW", "BOND", "SEALED"))
"""Units at 220, 240 and 280."""
WIDTH, HEIGHT, HAND = "leaf.width_mm", "leaf.height_mm", "opening.hand"


@pytest.mark.parametrize(
    ("others", "asked"),
    [
        # Of two that would be cheaper, the facts of the one that lacks fewest; of equally many, the first by name.
        ([(NARROW, (HEIGHT, WIDTH)), (BOND, (HAND,))], (HAND,)),
        ([(NARROW, (WIDTH,)), (BOND, (HEIGHT,))], (HEIGHT,)),
        # What costs as much or more cannot win whatever its facts turn out to be.
        ([(SEALED, (HAND,))], ()),
        # A second visit brings no attribute of the catalogue.
        ([(NARROW, ("part NARROW.screws", HAND))], (HAND,)),
        ([(NARROW, ("part NARROW.screws",))], ()),
        ([], ()),
    ],
)
def test_what_is_missing_to_know_a_better_one(others, asked):
    given = door()
    good = [Judged(SEALED, (), ()), Judged(Fit("to-measure", parts=(fp("unit", "UNIT"),)), (), ())]
    assert missing_for_better(given, good, [Judged(fit, (), needs) for fit, needs in others]) == asked


def test_nothing_is_asked_for_what_is_refused_or_where_nothing_serves():
    given = door()
    refused = Judged(NARROW, (Refusal("NARROW", "unit", "unit-weather", "Outside."),), (HAND,))
    assert missing_for_better(given, [Judged(SEALED, (), ())], [refused]) == ()
    assert missing_for_better(given, [], [Judged(NARROW, (), (HAND,))]) == ()


def test_a_refusal_names_a_role_as_people_say_it():
    """A transfer of one conductor: `power-transfer` is the word of machines."""
    transfer = item("power-transfer", face="edge", conductors=1)
    given = door(opening(power_wish="supply", supply_distance_m=12.0), items=[transfer])
    said = judged(given, fit(power="supply", without=("power-transfer",)), "power", "", "power-transfer")
    (refusal,) = [each for each in said.refusals if each.rule == "power-crosses-hinge"]
    assert refusal.reason.startswith("power transfer: It has one conductor; 2 are needed")

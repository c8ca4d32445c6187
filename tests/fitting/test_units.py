"""The unit's slot: where another place of hole and plate may do what the best one does not."""

import pytest

from hwsched.fitting.candidate import Judged
from hwsched.fitting.units import _by_its_holes
from hwsched.values import Fit, Refusal


@pytest.mark.parametrize(
    ("rules", "needs", "another"),
    [
        (("hole-clear",), (), True),
        (("hole-clear", "screw-clear"), (), True),
        # There a fact may be missing too, and nothing speaks against it.
        (("hole-clear",), ("leaf.stile_mm",), True),
        # What stands round it, or the part itself, no other hole mends.
        (("hole-clear", "trim-clear"), (), False),
        (("trim-clear",), (), False),
        (("unit-weather", "hole-clear"), (), False),
        # Nothing speaks against it at all.
        ((), (), False),
        ((), ("leaf.stile_mm",), False),
    ],
)
def test_whether_another_place_is_tried(rules, needs, another):
    refusals = tuple(Refusal("UNIT", "unit", rule, "It does not.") for rule in rules)
    assert _by_its_holes(Judged(Fit("to-measure"), refusals, needs)) is another

"""What costs something else: what comes, what goes and what changes, of what is known; by hand."""

from decimal import Decimal

import pytest

from hwsched.calc.parts.cost import Cost, Unknown
from hwsched.operations.parts.cost_since import CostChange, changed_costs, whole_change

FIVE, EIGHT = Cost(Decimal("4.5"), Decimal("0.5")), Cost(Decimal(8))
LACKING = Cost(Decimal(8), unknown=(Unknown("U-7", Decimal(1), ("list price",)),))


@pytest.mark.parametrize(
    ("before", "now", "change", "surely"),
    [
        (FIVE, EIGHT, "3", True),
        (EIGHT, FIVE, "-3", True),
        (None, EIGHT, "8", True),
        (EIGHT, None, "-8", True),
        (None, None, "0", True),
        (FIVE, LACKING, "3", False),
        (LACKING, FIVE, "-3", False),
        (None, LACKING, "8", False),
        (LACKING, None, "-8", False),
    ],
)
def test_what_was_not_there_cost_nothing(before, now, change, surely):
    found = CostChange("A", before, now)
    assert (found.change, found.surely) == (Decimal(change), surely)


def test_all_that_costs_something_else_is_told_the_largest_change_first():
    before = {"gone": FIVE, "same": EIGHT, "less": EIGHT, "lacks now": EIGHT}
    now = {"same": EIGHT, "less": FIVE, "new": EIGHT, "lacks now": LACKING}
    assert [(each.key, each.change) for each in changed_costs(before, now)] == [
        ("new", 8), ("gone", -5), ("less", -3), ("lacks now", 0)
    ]  # fmt: skip
    # 5 + 8 + 8 + 8 before, 8 + 5 + 8 + 8 now.
    whole = whole_change(before, now)
    assert (whole.change, whole.surely) == (Decimal(0), False)

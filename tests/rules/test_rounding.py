"""What is right by the rounding of the survey alone: which lengths are to be measured again, and no others.

A length in whole millimetres may be half of one off, one in inches is exact; a rule names those that enter its sum.
"""

import pytest

from hwsched.rules import judge, rule_named
from hwsched.rules.rounding import rounding_mm
from tests.rules.rows import speaks
from tests.rules.scenario import catalogue, fit, given, leaf, lock, opening, place
from tests.rules.test_cable_and_holes import EDGE
from tests.rules.test_placement import IN_INCHES

THICK, STILE, WIDE = "leaf: Leaf thickness", "leaf: Lock stile width", "leaf: Leaf width"
STOP, CASE = "opening: Frame stop on the leaf", "existing item: Lock case thickness"
WIDE_LEAF = leaf(width_mm=915.0)
DEEP_POCKET = catalogue(EDGE={"pocket_depth_mm": 44.846875})

ROWS = [
    # 36 - 17.4625 leaves 9.269 a side of 9.525.
    (speaks("pocket-walls", given(lf=leaf(thickness_mm=36.0)), EDGE, off_mm=0.256), (THICK,)),
    # 44.846875 (1 49/64 in) deep and 6.35 behind it are 51.197.
    (
        speaks(
            "pocket-walls",
            given(lf=leaf(construction="narrow-stile", stile_mm=51.0), cat=DEEP_POCKET),
            EDGE,
            off_mm=0.197,
        ),
        (STILE,),
    ),
    # Without a stile the whole leaf is behind it.
    (
        speaks(
            "pocket-walls",
            given(lf=leaf(construction="flush", width_mm=51.0), cat=DEEP_POCKET),
            EDGE,
            off_mm=0.197,
        ),
        (WIDE,),
    ),
    # A case of 3 33/64 in.
    (
        speaks(
            "gate-stile",
            given(lf=leaf(stile_mm=89.0), lk=lock("gate"), cat=catalogue(GATE={"case_width_mm": 89.296875})),
            fit(lock_number="GATE", role="lock"),
            off_mm=0.297,
        ),
        (STILE,),
    ),
    # By the lock edge 30 - 27 = 3 of 3.175, however wide the leaf is.
    (
        speaks(
            "frame-stop-clear", given(opening(hand="LHR", frame_stop_mm=27.0), WIDE_LEAF, cat=IN_INCHES), fit(),
            off_mm=0.175,
        ),
        (STOP,),
    ),
    # By the hinge edge 915 - 27 - (805 + 80) = 3.
    (
        speaks(
            "frame-stop-clear",
            given(opening(hand="LHR", frame_stop_mm=27.0, form="pair"), WIDE_LEAF, cat=IN_INCHES),
            fit(placement=place(805.0)),
            off_mm=0.175,
        ),
        (STOP, WIDE),
    ),
    # 29.75 are left of the tailpiece, 29.55 is the most in a case of 12.
    (
        speaks(
            "tail-reach",
            given(lk=lock("rim", case_width_mm=12.0), cat=catalogue(RIM={"tail_length_mm": 77.375})),
            fit(lock_number="RIM", without=("cam", "collar")),
            off_mm=0.2,
        ),
        (CASE,),
    ),
    # 45 - 25.4 + 9.525 = 29.125 of a tailpiece of 1 9/64 in; the whole of what the thickness is off counts.
    (
        speaks(
            "tail-reach",
            given(lf=leaf(thickness_mm=45.0), lk=lock("rim"), cat=catalogue(RIM={"tail_length_mm": 28.971875})),
            fit(lock_number="RIM", without=("cam", "collar")),
            off_mm=0.153,
            rounding_mm=0.5,
        ),
        (THICK,),
    ),
]  # fmt: skip


@pytest.mark.parametrize(
    ("mm", "half"),
    # A length in inches is exact; of three decimals it comes out of a calculation, and was read by nobody.
    [(44.0, 0.5), (-44.0, 0.5), (40.0, 0.5), (44.5, 0.05), (44.55, 0.005), (44.555, 0.0), (44.45, 0.0), (0.0, 0.0)],
)
def test_half_of_the_last_digit_that_was_written(mm, half):
    assert rounding_mm(mm) == pytest.approx(half, abs=1e-12)


@pytest.mark.parametrize(("row", "named"), ROWS, ids=str)
def test_what_is_to_be_measured_again_is_named(row, named):
    (said,) = judge(rule_named(row.rule), row.given, row.fit, settings=row.given.settings)
    assert said.severity == "note"
    assert {name: said.values[name] for name in row.values} == pytest.approx(row.values, abs=0.001)
    assert {each.rpartition(":")[0] for each in said.cure.rstrip(".").split("; ")} == set(named)

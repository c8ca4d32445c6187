"""A tailpiece cut piece by piece, in whole units of 1/64 in."""

UNIT = 25.4 / 64


def random_case(rng):
    """A case in whole units."""
    least = rng.randint(8, 40)
    leaf, gap = rng.randint(80, 160), rng.choice((0, 8, 12))
    return {
        "leaf": leaf,
        "gap": gap,
        "back": rng.randint(-20, leaf + gap),
        "supplied": rng.randint(40, 260),
        "least": least,
        "most": rng.choice((None, least, least + rng.randint(0, 20))),
        "step": rng.choice((None, 8, 8, 16)),
    }


def to_input(case):
    """The same case as the calculator takes it."""
    return {
        "leaf_mm": case["leaf"] * UNIT,
        "case_gap_mm": case["gap"] * UNIT,
        "cylinder_back_mm": case["back"] * UNIT,
        "tailpiece_mm": case["supplied"] * UNIT,
        "minimum_engagement_mm": case["least"] * UNIT,
        "maximum_engagement_mm": None if case["most"] is None else case["most"] * UNIT,
        "break_off_mm": None if case["step"] is None else case["step"] * UNIT,
    }


def engagements(case):
    """Engagement after 0, 1, 2 ... pieces snapped off, down to nothing left."""
    reach = case["leaf"] + case["gap"] - case["back"]
    left = case["supplied"]
    while left > 0:
        yield left - reach
        if case["step"] is None:
            return
        left -= case["step"]

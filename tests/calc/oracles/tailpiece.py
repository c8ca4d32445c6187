"""A tailpiece cut piece by piece, in whole units of 1/64 in."""

UNIT = 25.4 / 64


def random_input(rng):
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


def to_input(given):
    """The same case as the calculator takes it."""
    return {
        "leaf_mm": given["leaf"] * UNIT,
        "case_gap_mm": given["gap"] * UNIT,
        "cylinder_back_mm": given["back"] * UNIT,
        "tailpiece_mm": given["supplied"] * UNIT,
        "minimum_engagement_mm": given["least"] * UNIT,
        "maximum_engagement_mm": None if given["most"] is None else given["most"] * UNIT,
        "break_off_mm": None if given["step"] is None else given["step"] * UNIT,
    }


def engagements(given):
    """Engagement after 0, 1, 2 ... pieces snapped off, down to nothing left."""
    reach = given["leaf"] + given["gap"] - given["back"]
    left = given["supplied"]
    while left > 0:
        yield left - reach
        if given["step"] is None:
            return
        left -= given["step"]

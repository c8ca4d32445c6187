"""Whole enumeration of cylinders, turns, collars and rings, in whole units, so that no decision rounds."""

from itertools import combinations_with_replacement


def random_input(rng):
    """A case in whole units and what a unit is in mm."""
    inch = rng.random() < 0.5
    unit = 25.4 / 128 if inch else 0.0005
    if inch:  # everything on the 1/64 in and 1/32 in grid: heads flush exactly, gaps of exactly one pitch
        leaf, pitch = 2 * rng.choice((88, 112, 128)), 4
        cylinders = [(16 * rng.randint(6, 14), rng.choice((0, 0, 4, -4))) for _ in range(rng.randint(0, 4))]
        collars = [2 * rng.randint(0, 20) for _ in range(rng.randint(0, 3))]
        rings = [2 * rng.randint(1, 12) for _ in range(rng.randint(0, 4))]
        trim, offset = 2 * rng.randint(0, 16), 2 * rng.randint(-8, 8)
        tolerance = rng.choice((None, 0, 4, 2, 8))
    else:
        leaf, pitch = 2 * rng.randint(30_000, 60_000), rng.randint(1000, 3000)
        cylinders = [(rng.randint(35_000, 90_000), rng.randint(-3000, 3000)) for _ in range(rng.randint(0, 4))]
        collars = [rng.randint(0, 12_000) for _ in range(rng.randint(0, 3))]
        rings = [rng.randint(600, 10_000) for _ in range(rng.randint(0, 4))]
        trim, offset = rng.randint(0, 24_000), rng.randint(-8000, 8000)
        tolerance = rng.choice((None, rng.randint(0, 4000)))
    return unit, {
        "leaf": leaf,
        "offset": offset,
        "trim": trim,
        "pitch": pitch,
        "turns": rng.choice((0, 1, 2, 2, 3)),
        "tolerance": tolerance,
        "max_rings": rng.randint(0, 3),
        "cylinders": cylinders,
        "collars": collars,
        "rings": [(h, rng.choice((None, None, 0, 1, 2))) for h in rings],
    }


def to_input(unit, given):
    """The same case as the calculator takes it."""
    data = {
        "leaf_mm": given["leaf"] * unit,
        "case_offset_mm": given["offset"] * unit,
        "trim_mm": given["trim"] * unit,
        "pitch_mm": given["pitch"] * unit,
        "max_turns_beyond": given["turns"],
        "max_rings": given["max_rings"],
        "max_fits": 100_000,
        "cylinders": [
            {"part": f"C{i}", "length_mm": length * unit, "cam_offset_mm": cam * unit}
            for i, (length, cam) in enumerate(given["cylinders"])
        ],
        "collars": [{"part": f"K{i}", "height_mm": h * unit} for i, h in enumerate(given["collars"])],
        "rings": [
            {"part": f"R{i}", "height_mm": h * unit, "available": available}
            for i, (h, available) in enumerate(given["rings"])
        ],
    }
    if given["tolerance"] is not None:
        data["tolerance_mm"] = given["tolerance"] * unit
    return data


def enumerate_all(given):
    """Every combination: (cylinder, collar, rings, turns, projection, gap) in units."""
    found = []
    multisets = [
        chosen
        for n in range(given["max_rings"] + 1)
        for chosen in combinations_with_replacement(range(len(given["rings"])), n)
        if all(available is None or chosen.count(i) <= available for i, (_, available) in enumerate(given["rings"]))
    ]
    collars = [(f"K{i}", h) for i, h in enumerate(given["collars"])] or [(None, 0)]
    for i, (length, cam) in enumerate(given["cylinders"]):
        for k in range(given["turns"] + 1):
            proud = length + cam - given["trim"] - (given["leaf"] // 2 - given["offset"]) - k * given["pitch"]
            for collar, height in collars:
                for chosen in multisets:
                    gap = proud - height - sum(given["rings"][r][0] for r in chosen)
                    found.append((f"C{i}", collar, tuple(f"R{r}" for r in chosen), k, proud, gap))
    return found


def band_distance(given, gap):
    """Units between a gap and the allowed band."""
    tolerance = given["pitch"] if given["tolerance"] is None else given["tolerance"]
    return max(0, -gap, gap - tolerance)

"""Euro-profile halves in whole half-millimetres, laid out as positions through the leaf."""

UNIT = 0.5


def random_input(rng):
    """A case in whole units; the leaf is even, so that its middle is a whole unit too."""
    half = rng.random() < 0.3
    return {
        "leaf": 2 * rng.randint(30, 70),
        "offset": rng.randint(-10, 10),
        "key_trim": rng.randint(0, 30),
        "inside_trim": rng.randint(0, 40),
        "key_limit": rng.choice((6, 0, 10)),
        "inside_limit": rng.choice((None, 6, 20)),
        "half": half,
        "sizes": [(10 * rng.randint(5, 14), 20 if half else 10 * rng.randint(5, 14)) for _ in range(rng.randint(0, 9))],
    }


def to_input(given):
    """The same case as the calculator takes it."""
    return {
        "leaf_mm": given["leaf"] * UNIT,
        "screw_offset_mm": given["offset"] * UNIT,
        "key_trim_mm": given["key_trim"] * UNIT,
        "inside_trim_mm": given["inside_trim"] * UNIT,
        "key_limit_mm": given["key_limit"] * UNIT,
        "inside_limit_mm": None if given["inside_limit"] is None else given["inside_limit"] * UNIT,
        "half": given["half"],
        "sizes": [{"part": f"E{i}", "a_mm": a * UNIT, "b_mm": b * UNIT} for i, (a, b) in enumerate(given["sizes"])],
    }


def suits(given):
    """Parts that suit, with both ends' places: z from the inside face, as (key past trim, inside past trim)."""
    screw = given["leaf"] // 2 + given["offset"]
    found = {}
    for i, (a, b) in enumerate(given["sizes"]):
        key_end, inside_end = screw + a, screw - b
        key_past = key_end - (given["leaf"] + given["key_trim"])
        if given["half"]:
            inside_past = -inside_end
            fits_b = inside_end >= 0
        else:
            inside_past = -given["inside_trim"] - inside_end
            fits_b = inside_past >= 0 and (given["inside_limit"] is None or inside_past <= given["inside_limit"])
        if 0 <= key_past <= given["key_limit"] and fits_b:
            found[f"E{i}"] = (key_past, inside_past)
    return found

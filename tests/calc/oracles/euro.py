"""Euro-profile halves in whole half-millimetres, laid out as positions through the leaf."""

UNIT = 0.5


def random_input(rng):
    """A case in whole units; the leaf is even, so that its middle is a whole unit too."""
    half = rng.random() < 0.3
    return {
        "leaf": 2 * rng.randint(30, 70),
        "offset": rng.randint(-10, 10),
        "key_trim": rng.randint(0, 30),
        "secured_trim": rng.randint(0, 40),
        "key_limit": rng.choice((6, 0, 10)),
        "secured_limit": rng.choice((None, 6, 20)),
        "half": half,
        "sizes": [(10 * rng.randint(5, 14), 20 if half else 10 * rng.randint(5, 14)) for _ in range(rng.randint(0, 9))],
    }


def to_input(given):
    """The same case as the calculator takes it."""
    return {
        "leaf_mm": given["leaf"] * UNIT,
        "screw_offset_mm": given["offset"] * UNIT,
        "key_trim_mm": given["key_trim"] * UNIT,
        "secured_trim_mm": given["secured_trim"] * UNIT,
        "key_limit_mm": given["key_limit"] * UNIT,
        "secured_limit_mm": None if given["secured_limit"] is None else given["secured_limit"] * UNIT,
        "half": given["half"],
        "sizes": [{"part": f"E{i}", "a_mm": a * UNIT, "b_mm": b * UNIT} for i, (a, b) in enumerate(given["sizes"])],
    }


def suits(given):
    """Parts that suit, with both ends' places: z from the secured face, as (key past trim, secured past trim)."""
    screw = given["leaf"] // 2 + given["offset"]
    found = {}
    for i, (a, b) in enumerate(given["sizes"]):
        key_end, secured_end = screw + a, screw - b
        key_past = key_end - (given["leaf"] + given["key_trim"])
        if given["half"]:
            secured_past = -secured_end
            fits_b = secured_end >= 0
        else:
            secured_past = -given["secured_trim"] - secured_end
            fits_b = secured_past >= 0 and (given["secured_limit"] is None or secured_past <= given["secured_limit"])
        if 0 <= key_past <= given["key_limit"] and fits_b:
            found[f"E{i}"] = (key_past, secured_past)
    return found

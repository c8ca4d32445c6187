"""How many there are of a thing, as the terminal says it."""


def counted(count: int, one: str, many: str = "") -> str:
    """Return a number with its word.

    Examples
    --------
    >>> counted(1, "opening"), counted(1200, "opening"), counted(2, "opening changes", "openings change")
    ('1 opening', '1200 openings', '2 openings change')
    """
    return f"{count} {one if count == 1 else many or one + 's'}"

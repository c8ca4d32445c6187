"""Words that stand by themselves begin with a capital, those that stand within a sentence elsewhere, too."""


def capital(said: str) -> str:
    """Begin with a capital; the rest stays as it is.

    Examples
    --------
    >>> capital("no part fits ARC-UN")
    'No part fits ARC-UN'
    """
    return said[:1].upper() + said[1:]

"""How the columns of a grid share the width that there is. No widgets."""

from collections.abc import Sequence


def shared_widths(
    usual: Sequence[int], free: Sequence[bool], growing: Sequence[bool], room: int, least: int
) -> list[int]:
    """Return how wide each column is [px].

    Room that is left is given to columns of words, where it would lie idle at the end while words are cut before it:
    by the square of their width, for sentences want it and marks do not. Where a little is wanting, the last one does
    with what the others leave; where more is, all are as wide as usual and scrolled to.

    Parameters
    ----------
    usual : sequence of int
        Widths as declared, or as a person made them [px].
    free : sequence of bool
        Whether nobody has made it so wide.
    growing : sequence of bool
        Whether it holds words: numbers stand better near one another.
    room : int
        Width that there is [px].
    least : int
        Width with which the last one can do [px].

    Examples
    --------
    >>> shared_widths([100, 50, 200], [True] * 3, [True, False, True], 650, 80)
    [160, 50, 440]
    >>> shared_widths([100, 50, 200], [True] * 3, [True, False, True], 300, 80)
    [100, 50, 150]
    >>> shared_widths([100, 50, 200], [True] * 3, [True, False, True], 200, 80)
    [100, 50, 200]
    """
    widths, spare = list(usual), room - sum(usual)
    if spare > 0:
        takers = [n for n in range(len(widths)) if free[n] and growing[n]]
        whole = sum(usual[n] ** 2 for n in takers)
        for n in takers:
            widths[n] += spare * usual[n] ** 2 // whole
    elif widths and free[-1] and least <= widths[-1] + spare:
        widths[-1] += spare
    return widths

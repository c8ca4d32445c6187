"""How the columns of a grid share the width that there is. No widgets."""

from collections.abc import Sequence
from itertools import accumulate
from typing import Final

_GIVES: Final = 0.45
"""So much of its width a sentence gives where columns would else be scrolled to."""


def shared_widths(
    usual: Sequence[int],
    free: Sequence[bool],
    growing: Sequence[bool],
    room: int,
    least: int,
    sentences: Sequence[bool] = (),
) -> list[int]:
    """Return how wide each column is [px].

    Room that is left is given to columns of words, where it would lie idle at the end while words are cut before it:
    by the square of their width, for sentences want it and marks do not. Where a little is wanting, the last one does
    with what the others leave; where that is not enough, sentences give of their width, since they are read whole below
    the table; where more is wanting, all are as wide as usual and scrolled to.

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
    sentences : sequence of bool, optional
        Whether sentences stand in it.

    Examples
    --------
    >>> shared_widths([100, 50, 200], [True] * 3, [True, False, True], 650, 80)
    [160, 50, 440]
    >>> shared_widths([100, 50, 200], [True] * 3, [True, False, True], 300, 80)
    [100, 50, 150]
    >>> shared_widths([100, 50, 200], [True] * 3, [True, False, True], 200, 80)
    [100, 50, 200]
    >>> shared_widths([100, 500, 100], [True] * 3, [True] * 3, 600, 80, [False, True, False])
    [100, 400, 100]
    """
    widths, spare = list(usual), room - sum(usual)
    if spare > 0:
        takers = [n for n in range(len(widths)) if free[n] and growing[n]]
        whole = sum(usual[n] ** 2 for n in takers)
        for n in takers:
            widths[n] += spare * usual[n] ** 2 // whole
    elif widths and free[-1] and least <= widths[-1] + spare:
        widths[-1] += spare
    elif spare < 0:
        givers = [n for n, said in enumerate(sentences) if said and free[n]]
        whole = sum(usual[n] for n in givers)
        if -spare <= whole * _GIVES:
            for n in givers:
                widths[n] += spare * usual[n] // whole
    return widths


def squeezed(widths: Sequence[int], least: Sequence[int], room: int) -> list[int]:
    """Return widths at which as many columns as can be are seen whole, and none in part; none is less than its least.

    Examples
    --------
    >>> squeezed([100, 300, 100], [50, 60, 100], 300)
    [65, 135, 100]
    >>> squeezed([100, 300, 100], [50, 60, 100], 200)
    [65, 135, 100]
    """
    seen = max(sum(total <= room for total in accumulate(least)), 1)
    return [*_filling(widths[:seen], least[:seen], room), *widths[seen:]]


def _filling(widths: Sequence[int], least: Sequence[int], room: int) -> list[int]:
    needed = sum(least)
    beyond = [max(width - each, 0) for width, each in zip(widths, least, strict=True)]
    spare, whole = room - needed, max(sum(beyond), 1)
    found = [each + spare * more // whole for each, more in zip(least, beyond, strict=True)]
    # What is left of whole pixels.
    widest = max(range(len(found)), key=found.__getitem__)
    found[widest] += room - sum(found)
    return found

"""What earlier imports say of the columns of a header: column by column, so that one more column costs nothing.

A file of exactly the same header is known by its fingerprint. Any other is laid beside the remembered header that it
has most columns in common with: a column is the same where its heading is, and of several with one heading the one that
stands between the same neighbours.
"""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from difflib import SequenceMatcher
from typing import Final, TypeVar

from hwsched.exchange.survey.facts import SurveyOptions
from hwsched.exchange.survey.mapping import RememberedMapping, fingerprint_of, header_keys, plain_word
from hwsched.quantities import BARE_UNITS, BareUnit

_FEWEST: Final = 2
"""Columns in common; one known word stands in many a header."""
_SHARE: Final = 0.6
"""Of the remembered columns that must be there again."""
_OF_ONE_FILE: Final = frozenset({"shifted"})
"""Cures of what went wrong in one file; the others are habits of a list, and found again in the next one."""
NO_CURES: Final = "none"
"""Said in place of cures: those of an earlier import are not made again."""
_Word = TypeVar("_Word")


def bare_unit_of(options: SurveyOptions, remembered: RememberedMapping | None) -> BareUnit | None:
    """Return what a number without a unit means: by what is said now, then was said of such a file, then is usual."""
    of_memory = next((unit for unit in BARE_UNITS if remembered and unit == remembered.bare_unit), None)
    return options.bare_unit or of_memory or options.usual_unit


def recall(
    memory: Mapping[str, RememberedMapping], headers: Sequence[str], plan: RememberedMapping | None = None
) -> RememberedMapping | None:
    """Return what is remembered of a header's columns, under the keys that they have in it.

    Parameters
    ----------
    memory : mapping of str to RememberedMapping
        By fingerprint of the header.
    headers : sequence of str
        The header now.
    plan : RememberedMapping, optional
        Goes before what is remembered, however little of it there is in the header.

    Returns
    -------
    RememberedMapping or None
        With what this header lacks in `gone`; None where no remembered header is near.

    Examples
    --------
    >>> known = RememberedMapping({"mark": "opening.mark", "x": "leaf.width_mm"}, headers=("mark", "x"))
    >>> recall({"f": known}, ["Mark", "Level", "X"]).columns
    {'mark': 'opening.mark', 'x': 'leaf.width_mm'}
    """
    if plan is not None:
        return _laid_beside(plan, headers)
    if not memory:
        return None
    exact = memory.get(fingerprint_of(headers))
    if exact is not None:
        return exact
    keys = {key for key in header_keys(headers) if key}
    best: tuple[int, RememberedMapping] | None = None
    for known in memory.values():
        common = len(keys & known.columns.keys())
        near = common >= _FEWEST and common >= _SHARE * len(known.columns)
        if near and (best is None or common >= best[0]):
            best = common, known
    return _laid_beside(best[1], headers) if best else None


def kept_cures(said: Collection[str], before: Collection[str]) -> tuple[str, ...]:
    """Return the cures that are kept of a list: those that are said now and those of earlier imports.

    Examples
    --------
    >>> kept_cures({"shifted", "run-together"}, ("wider-than-high",)), kept_cures({"none"}, ("wider-than-high",))
    (('run-together', 'wider-than-high'), ())
    """
    earlier = () if NO_CURES in said else before
    return tuple(sorted({*said, *earlier} - _OF_ONE_FILE - {NO_CURES}))


def _laid_beside(known: RememberedMapping, headers: Sequence[str]) -> RememberedMapping:
    now = header_keys(headers)
    was = header_keys(known.headers)
    renamed: dict[str, str] = {}
    if was:
        words = [plain_word(header) for header in headers]
        for block in SequenceMatcher(None, list(known.headers), words, autojunk=False).get_matching_blocks():
            for step in range(block.size):
                renamed[was[block.a + step]] = now[block.b + step]
    taken = set(renamed.values())
    for key in known.columns:
        # Moved to another place among the columns: its heading alone says which it is.
        if key not in renamed and key in now and key not in taken and not _is_one_of_several(key, now):
            renamed[key] = key
    return replace(
        known,
        columns=_under(renamed, known.columns),
        units=_under(renamed, known.units),
        dashes=_under(renamed, known.dashes),
        words=_under(renamed, known.words),
        gone=tuple(key for key, target in known.columns.items() if target and key not in renamed),
    )


def _is_one_of_several(key: str, keys: Sequence[str]) -> bool:
    return "#" in key or f"{key}#2" in keys


def _under(renamed: Mapping[str, str], told: Mapping[str, _Word]) -> dict[str, _Word]:
    return {renamed[key]: word for key, word in told.items() if key in renamed}

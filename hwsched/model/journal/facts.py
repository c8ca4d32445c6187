"""The facts of a row: its columns, and what stands within a column that holds a mapping or a list of words.

Two changes meet where they change the same fact; so settings and fields of the project's own, which share one column,
are compared, taken back and told one by one.
"""

from collections.abc import Mapping
from typing import Any

Path = tuple[str, ...]
"""A column, and the keys and words that lead to a value within it."""


def flat(row: Mapping[str, Any] | None) -> dict[Path, Any]:
    """Return the known facts of a row; of a list of words, each word as a fact of its own.

    Examples
    --------
    >>> flat({"hand": "LH", "rating": None, "settings": {"limits": {"a.b": 2.0}, "rules_off": ["c"]}})
    {('hand',): 'LH', ('settings', 'limits', 'a.b'): 2.0, ('settings', 'rules_off', 'c'): True}
    """
    found: dict[Path, Any] = {}

    def put(path: Path, value: Any) -> None:
        if isinstance(value, Mapping):
            for key, each in value.items():
                put((*path, key), each)
        elif isinstance(value, list):
            for each in value:
                # Each word a fact of its own: two people who switch off two different rules do not contradict each
                # other.
                put((*path, str(each)), True)
        elif value is not None:
            found[path] = value

    for name, value in (row or {}).items():
        put((name,), value)
    return found


def differing(first: Mapping[str, Any] | None, second: Mapping[str, Any] | None) -> set[Path]:
    """Return the facts that two states of a row do not share.

    Examples
    --------
    >>> differing({"extra": {"a": 1, "b": 2}}, {"extra": {"a": 1, "b": 3}})
    {('extra', 'b')}
    """
    before, after = flat(first), flat(second)
    return {path for path in before.keys() | after.keys() if before.get(path) != after.get(path)}


def turned_back(present: Any, after: Any, before: Any) -> Any:
    """Return a present value of which what a change made of it is taken back, and all else left.

    Parameters
    ----------
    present : value
        As it stands; where it is not a mapping or a list it must be as the change left it.
    after, before : value
        As the change left it, and as it found it.

    Examples
    --------
    >>> turned_back({"a": 1, "b": 2}, {"a": 1}, {})
    {'b': 2}
    >>> turned_back(["a", "b", "c"], ["a", "b"], ["a", "d"])
    ['a', 'c', 'd']
    """
    if present == after:
        return before
    if isinstance(present, Mapping):
        left, found = after if isinstance(after, Mapping) else {}, before if isinstance(before, Mapping) else {}
        result = dict(present)
        # Only what the change touched: what others wrote into the same column since stays.
        for key in left.keys() | found.keys():
            if left.get(key) != found.get(key):
                value = turned_back(present.get(key), left.get(key), found.get(key))
                result.pop(key, None)
                # An empty mapping or list says nothing; it goes with the last that stood in it.
                if value is not None and value not in ({}, []):
                    result[key] = value
        return result
    if isinstance(present, list):
        added, gone = set(after or ()), set(before or ())
        return sorted((set(present) - (added - gone)) | (gone - added))
    return before

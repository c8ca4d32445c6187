"""Texts that are kept in English, with their numbers in them, said in the language in force where they are shown.

Findings and titles of steps are compared, stored and sent to machines as they are: in English. A person sees them in
another language by the sentence from which they were made, which `resources/languages/sentences.csv` lists: it is
recognised, what stood in its places is put into its translation. What no sentence fits is shown as it is kept.
"""

import csv
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Final

from hwsched.language import FOLDER, in_english, phrase

LIST: Final = FOLDER / "sentences.csv"
STEPS: Final = "steps"
"""Of titles of steps; what a finding says is of its rule."""
GATE: Final = "gate"
"""Of what keeps an opening back; what rules say stands in its places."""
WORDS: Final = "words"
"""Of words inside sentences that are said by themselves."""
_SHARED: Final = "rules"
_ANY: Final = "any"
"""Whatever it is of: of two that fit it is the one that says more."""
_PLACE: Final = re.compile(r"\{(\w+)\}")


@dataclass(frozen=True, slots=True)
class _Sentence:
    text: str
    pattern: re.Pattern[str]
    letters: int
    """So much of it is said by itself: of two that fit it is the one that says more."""


def kept_phrase(text: str, of: str) -> str:
    """Say a text that is kept in English.

    Parameters
    ----------
    text : str
        As it is kept.
    of : str
        The rule whose finding it is, `STEPS`, or `GATE`.

    Examples
    --------
    >>> kept_phrase("Fit 26 openings", STEPS)
    'Fit 26 openings'
    """
    if in_english() or not text:
        return text
    groups = (STEPS,) if of == STEPS else (_ANY,) if of == GATE else (of, _SHARED)
    whole = _whole(text, groups)
    if whole is not None:
        return whole
    # What was put together is said piece by piece: a cure and who decides, steps that were made as one.
    for joint in (". ", "; "):
        head, found, tail = text.partition(joint)
        if found:
            head += "." if joint == ". " else ""
            first = _whole(head, groups)
            if first is not None:
                return f"{first}{joint.removeprefix('.')}{kept_phrase(tail, of)}"
    return text


def _whole(text: str, groups: tuple[str, ...]) -> str | None:
    for group in groups:
        for each in _sentences().get(group, ()):
            found = each.pattern.fullmatch(text)
            if found is not None:
                said = {name: _value(value, groups) for name, value in found.groupdict().items()}
                return phrase(each.text, **said)
    return None


def _value(text: str, groups: tuple[str, ...]) -> str:
    """Say what stood in a place of a sentence: names of facts and words are said, numbers and names of things stay."""
    bare = text.strip()
    if bare in _words():
        return text.replace(bare, phrase(bare))
    whole = _whole(bare, groups) if " " in bare else None
    if whole is not None:
        return text.replace(bare, whole)
    for joint in ("; ", ": ", ", "):
        head, found, tail = text.partition(joint)
        if found:
            return f"{_value(head, groups)}{joint}{_value(tail, groups)}"
    return text


@cache
def _rows() -> tuple[tuple[str, str], ...]:
    with LIST.open(encoding="utf-8", newline="") as file:
        return tuple((row["of"], row["text"]) for row in csv.DictReader(file))


@cache
def _words() -> frozenset[str]:
    return frozenset(text for of, text in _rows() if of == WORDS)


@cache
def _sentences() -> Mapping[str, tuple[_Sentence, ...]]:
    found: dict[str, list[_Sentence]] = {}
    for of, text in _rows():
        if of != WORDS:
            found.setdefault(of, []).append(_read(text))
    found[_ANY] = [each for of, sentences in found.items() if of != STEPS for each in sentences]
    return {of: tuple(sorted(each, key=lambda one: -one.letters)) for of, each in found.items()}


def _read(text: str) -> _Sentence:
    parts = _PLACE.split(text)
    pieces = [part.replace("{{", "{").replace("}}", "}") for part in parts[::2]]
    # Of two places with a blank between them the first takes what it can: a sentence before the name of a thing.
    apart = [bool(piece.strip()) or at == len(pieces) - 1 for at, piece in enumerate(pieces)]
    places = [f"(?P<{name}>.*{'?' if apart[at] else ''})" for at, name in enumerate(parts[1::2], start=1)]
    pattern = "".join(re.escape(piece) + place for piece, place in zip(pieces, (*places, ""), strict=True))
    return _Sentence(text, re.compile(pattern, re.DOTALL), sum(map(len, pieces)))

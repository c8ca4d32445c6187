"""Texts that are kept in English, with their numbers in them, said in the language in force where they are shown.

Findings and titles of steps are compared, stored and sent to machines as they are: in English. A person sees them in
another language by the sentence from which they were made, which `resources/languages/sentences.csv` lists: it is
recognised, what stood in its places is put into its translation. What no sentence fits is shown as it is kept.
"""

import csv
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache, lru_cache
from typing import Final

from hwsched.language import FOLDER, in_english, phrase

LIST: Final = FOLDER / "sentences.csv"
STEPS: Final = "steps"
"""Of titles of steps; what a finding says is of its rule."""
GATE: Final = "gate"
"""Of what keeps an opening back; what rules say stands in its places."""
FIT: Final = "fit"
"""Of why a part stands in a fit, and of its holes."""
ERRORS: Final = "errors"
"""Of what cannot be done, and why."""
WORDS: Final = "words"
"""Of words inside sentences that are said by themselves."""
_SHARED: Final = "rules"
_ANY: Final = "any"
"""Whatever it is of: of two that fit it is the one that says more."""
_GROUPS: Final[Mapping[str, tuple[str, ...]]] = {STEPS: (STEPS,), GATE: (_ANY,), FIT: (FIT,), ERRORS: (ERRORS,)}
_JOINTS: Final = (
    (". ", 1, 1),
    ("; ", 0, 2),
    (": ", 0, 2),
    (", ", 0, 2),
    ("' ", 1, 2),
    (" from ", 0, 1),
    (" of ", 0, 1),
    (" over ", 0, 1),
)
"""Between pieces that were put together; what begins behind the first number is the piece before, behind the second one
the piece after."""
_PLACE: Final = re.compile(r"\{(\w+)\}")


@dataclass(frozen=True, slots=True)
class _Sentence:
    text: str
    pattern: re.Pattern[str]
    letters: int
    """So much of it is said by itself: of two that fit it is the one that says more."""
    piece: str
    """The longest of what is said by itself."""


def kept_phrase(text: str, of: str) -> str:
    """Say a text that is kept in English.

    Parameters
    ----------
    text : str
        As it is kept.
    of : str
        The rule whose finding it is, `STEPS`, `GATE`, `FIT`, or `ERRORS`.

    Examples
    --------
    >>> kept_phrase("Fit 26 openings", STEPS)
    'Fit 26 openings'
    """
    if in_english() or not text:
        return text
    parsed = _parsed(text, _GROUPS.get(of, (of, _SHARED, FIT)))
    if of not in (STEPS, ERRORS) and parsed[1] > 1:
        # One rule may tell what another one said.
        parsed = min(parsed, _parsed(text, (_ANY,)), key=_unsaid)
    # Of what is known for a small part alone, English as a whole reads better than two languages in one sentence.
    return _spoken(parsed[0]) if of == STEPS or parsed[1] * 4 <= max(3 * sum(map(str.islower, text)), 4) else text


def kept_error(text: str) -> str:
    """Say what cannot be done, and why, as an error tells it, line by line; names and cells in it stay.

    Parameters
    ----------
    text : str
        In English.

    Examples
    --------
    >>> kept_error("backset: is no length")
    'backset: is no length'
    """
    return text if in_english() else "\n".join(kept_phrase(each, ERRORS) for each in text.split("\n"))


@dataclass(frozen=True, slots=True)
class _Known:
    """A sentence with what stands in its places."""

    text: str
    places: tuple[tuple[str, "_Tree"], ...] = ()
    otherwise: bool = False
    """It begins with a letter of the other case."""


_Tree = str | _Known | tuple["_Tree", ...]
"""What is left as it is; a sentence or a word that is known; several in a row."""
_Parsed = tuple[_Tree, int]
"""With how many letters of it stay unsaid."""


def _spoken(tree: _Tree) -> str:
    if isinstance(tree, str):
        return tree
    if isinstance(tree, tuple):
        return "".join(map(_spoken, tree))
    said = phrase(tree.text, **{name: _spoken(each) for name, each in tree.places})
    return said[:1].swapcase() + said[1:] if tree.otherwise else said


@lru_cache(maxsize=16_384)
def _parsed(text: str, groups: tuple[str, ...]) -> _Parsed:
    """Take a text apart so that the fewest letters stay unsaid.

    What was put together, a cure and who decides, steps that were made as one, is known piece by piece; a short
    sentence fits much that it was not made of, and then leaves more unsaid than a long one.
    """
    bare = text.strip().lstrip(";, ")
    if text != bare:
        tree, unsaid = _parsed(bare, groups) if bare else ("", 0)
        before, _, after = text.partition(bare) if bare else (text, "", "")
        return (before, tree, after), unsaid
    stop = "." if bare.endswith(".") else ""
    for word in (bare, bare.removesuffix(stop)):
        for spelt in (word, word[:1].swapcase() + word[1:]):
            if spelt in _words():
                return (_Known(spelt, otherwise=spelt != word), bare.removeprefix(word)), 0
    best: _Parsed = text, sum(map(str.islower, text))
    if not best[1]:
        return best
    for each, values in _fitting(text, groups):
        places = [(name, _parsed(value, groups)) for name, value in values.items()]
        known = _Known(each.text, tuple((name, one[0]) for name, one in places))
        best = min(best, (known, 1 + sum(one[1] for _, one in places)), key=_unsaid)
        if best[1] <= 1:
            return best
    for at, ends, begins in _joined(text):
        head, between, tail = text[: at + ends], text[at + ends : at + begins], text[at + begins :]
        blank = tail[: len(tail) - len(tail.lstrip())]
        first, rest = _parsed(head, groups), _parsed(tail.lstrip(), groups)
        best = min(best, ((first[0], between + blank, rest[0]), 1 + first[1] + rest[1]), key=_unsaid)
    if best[1] > 1 and text.endswith("."):
        # The full stop behind a piece that was put to the end.
        tree, left = _parsed(text[:-1], groups)
        best = min(best, ((tree, "."), left + 1), key=_unsaid)
    if best[1] > 1 and text[:1].isupper():
        # A sentence that begins with a name of its own.
        tree, left = _parsed(text[:1].lower() + text[1:], groups)
        if isinstance(tree, _Known) and left < best[1]:
            best = replace(tree, otherwise=True), left
    return best


def _joined(text: str) -> Iterator[tuple[int, int, int]]:
    """Yield where a text may have been put together: at each first joint, behind any of its sentences."""
    for joint, ends, begins in _JOINTS:
        at = text.find(joint)
        while at > 0:
            yield at, ends, begins
            at = text.find(joint, at + 1) if joint == ". " else -1


def _unsaid(parsed: _Parsed) -> int:
    return parsed[1]


def _fitting(text: str, groups: tuple[str, ...]) -> Iterator[tuple[_Sentence, Mapping[str, str]]]:
    """Yield the sentences that a text can have been made from with their places, those that say most first."""
    for group in groups:
        for each in _sentences().get(group, ()):
            # Most are ruled out by a look for their longest piece.
            found = each.pattern.fullmatch(text) if each.piece in text else None
            if found is not None:
                yield each, found.groupdict()


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
    found[_ANY] = [each for of, sentences in found.items() if of not in (STEPS, ERRORS) for each in sentences]
    return {of: tuple(sorted(each, key=lambda one: -one.letters)) for of, each in found.items()}


def _read(text: str) -> _Sentence:
    parts = _PLACE.split(text)
    pieces = [part.replace("{{", "{").replace("}}", "}") for part in parts[::2]]
    # Of two places with a blank between them the first takes what it can: a sentence before the name of a thing.
    apart = [bool(piece.strip()) or at == len(pieces) - 1 for at, piece in enumerate(pieces)]
    places = [f"(?P<{name}>.*{'?' if apart[at] else ''})" for at, name in enumerate(parts[1::2], start=1)]
    pattern = "".join(re.escape(piece) + place for piece, place in zip(pieces, (*places, ""), strict=True))
    return _Sentence(text, re.compile(pattern, re.DOTALL), sum(map(len, pieces)), max(pieces, key=len))

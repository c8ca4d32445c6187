"""The languages in which the program speaks to people: English in the code, every other one from a catalogue.

A text is written in English where it is said, `phrase("{count} openings left out", count=n)`, and is its own key. The
catalogues are those of gettext, which open tools read and write: `resources/languages/hwsched.pot` lists every text,
`resources/languages/LANGUAGE/LC_MESSAGES/hwsched.mo` holds a translation. Here belongs nothing of what is said.
"""

import gettext
import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from functools import cache
from typing import Any, Final, TypeVar

from hwsched.paths import RESOURCES

DOMAIN: Final = "hwsched"
FOLDER: Final = RESOURCES / "languages"
ENGLISH: Final = "en"
STRETCHED: Final = "stretched"
"""No language: English with accents, longer and in brackets, to see what is not translated or has no room."""
VARIABLE: Final = "HWSCHED_LANGUAGE"
"""Of the environment: a language for this start, whatever was chosen."""

_Text = TypeVar("_Text", bound=str)
_Catalogue = gettext.NullTranslations | None


def phrase(text: str, /, **values: Any) -> str:
    """Say a text in the language in force.

    Parameters
    ----------
    text : str
        In English; names in braces stand for values, with a format after a colon where need be.
    values
        By those names.

    Examples
    --------
    >>> phrase("{count:,} openings left out", count=1200)
    '1,200 openings left out'
    """
    catalogue = _in_force()
    if catalogue is None:
        return text.format(**values) if values else text
    return _filled(catalogue.gettext(text) if text else text, text, values)


def phrase_of_count(one: str, many: str, count: int, /, **values: Any) -> str:
    """Say a text that depends on how many there are; the number is the value `count`.

    Examples
    --------
    >>> phrase_of_count("{count} opening", "{count:,} openings", 1)
    '1 opening'
    """
    catalogue, values = _in_force(), {"count": count, **values}
    english = one if count == 1 else many
    return _filled(catalogue.ngettext(one, many, count) if catalogue is not None else english, english, values)


def to_phrase(text: _Text) -> _Text:
    """Mark a text that `phrase` says later, where it is shown: constants are made before a language is chosen."""
    return text


def languages() -> tuple[str, ...]:
    """Return the languages that there are: English, and those with a catalogue."""
    found = sorted(path.parent.parent.name for path in FOLDER.glob(f"*/LC_MESSAGES/{DOMAIN}.mo"))
    return (ENGLISH, *(each for each in found if each != ENGLISH))


def speak(language: str = "") -> str:
    """Let the whole process speak a language; the environment may ask for another one.

    Parameters
    ----------
    language : str
        One of `languages()`; empty, or one for which there is no catalogue: English.

    Returns
    -------
    str
        The language that is in force then.
    """
    wanted = os.environ.get(VARIABLE, "") or language or ENGLISH
    _spoken[0] = _catalogue(wanted)
    _spoken_name[0] = wanted if _spoken[0] is not None else ENGLISH
    return _spoken_name[0]


def spoken() -> str:
    """Return the language that the whole process speaks."""
    return _spoken_name[0]


def in_english() -> bool:
    """Tell whether texts are said as they stand in the code."""
    return _in_force() is None


@contextmanager
def in_language(language: str) -> Iterator[None]:
    """Let what is said inside, in this thread alone, be said in a language; empty: in that of the process."""
    token = _here.set((_catalogue(language),) if language else None)
    try:
        yield
    finally:
        _here.reset(token)


def english(say: Callable[[], str]) -> str:
    """Return in English what is said in the language in force: what is kept, compared or sent to machines.

    Examples
    --------
    >>> english(lambda: phrase("{count} openings left out", count=3))
    '3 openings left out'
    """
    with in_language(ENGLISH):
        return say()


class Stretched(gettext.NullTranslations):
    """Makes its translations itself."""

    def gettext(self, message: str) -> str:
        """Return the text longer, with accents and in brackets."""
        return stretched(message)

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        """Return the one that fits the number so."""
        return stretched(msgid1 if n == 1 else msgid2)


@cache
def stretched(text: str) -> str:
    """Return a text longer by two fifths, with accents and in brackets; names in braces and marks of keys stay.

    Examples
    --------
    >>> stretched("&Fit {count} openings")
    '[&Fîîţ {count} ööpééñîîñgš~~~]'
    """
    letters = sum(each.isalpha() for each in text)
    wanted, added, depth, out = -(-letters * 2 // 5), 0, 0, []
    for at, each in enumerate(text):
        depth += (each == "{") - (each == "}")
        other = _ACCENTS.get(each, each) if depth == 0 and text[at - 1 : at] != "&" else each
        twice = other != each and added < wanted and each in _VOWELS
        out.append(other + other.lower() if twice else other)
        added += twice
    return f"[{''.join(out)}{'~' * (wanted - added)}]"


_ACCENTS: Final = dict(zip("aeiouycnstAEIOUYCNST", "áéîöüýçñšţÁÉÎÖÜÝÇÑŠŢ", strict=True))
_VOWELS: Final = frozenset("aeiouyAEIOUY")
_spoken: Final[list[_Catalogue]] = [None]
_spoken_name: Final = [ENGLISH]
_here: Final[ContextVar[tuple[_Catalogue] | None]] = ContextVar("language", default=None)


def _in_force() -> _Catalogue:
    here = _here.get()
    return here[0] if here is not None else _spoken[0]


@cache
def _catalogue(language: str) -> _Catalogue:
    if language == ENGLISH:
        return None
    if language == STRETCHED:
        return Stretched()
    try:
        return gettext.translation(DOMAIN, FOLDER, [language.replace("-", "_")])
    except OSError:
        return None


def _filled(translated: str, english: str, values: dict[str, Any]) -> str:
    """Put the values in; what a translator wrote wrongly is said in English."""
    if not values:
        return translated
    try:
        return translated.format(**values)
    except (KeyError, IndexError, ValueError):
        return english.format(**values)

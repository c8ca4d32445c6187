"""How each kind of value is read: text, lengths, numbers, integers, choices, flags, dates.

Here belongs the reading of what is known; empty and unknown cells are sorted out in `reading` beforehand.
"""

import datetime as dt
import re
from collections.abc import Callable
from math import isfinite
from typing import Final

from hwsched.attributes.attribute import Attribute, Reading, Unclear
from hwsched.attributes.cell_error import CellError
from hwsched.attributes.emptiness import is_stroke, marks_emptiness
from hwsched.attributes.headers import normal
from hwsched.attributes.limits import Found, accepted_by, as_text, date_error
from hwsched.attributes.measures import Reader, integer_reader, length_reader, money_reader, number_reader
from hwsched.quantities import plain_text
from hwsched.telling.characters import hidden_in

_YES: Final = frozenset({"yes", "y", "true", "t", "x", "1", "on", "✓", "✔", "☑", "☒", "√", "●"})
_NO: Final = frozenset({"no", "n", "false", "f", "0", "off", "none", "nil", "☐", "○"})
_EXISTING: Final = re.compile(r"(?:\(e\)|\(ex\)|ex\.|exist\.?|existing|exstg\.?)\s+(\S.*)", re.IGNORECASE)
_WITH_DECIMAL: Final = re.compile(r"[0-9]+\.0")
_MONTHS: Final = (
    "january", "february", "march", "april", "may", "june",
    "july", "august", "september", "october", "november", "december",
)  # fmt: skip
_DAY_FIRST: Final = re.compile(r"([0-9]{1,2})\.? ([a-z]{3,9})\.?,? ([0-9]{4})")
_MONTH_FIRST: Final = re.compile(r"([a-z]{3,9})\.? ([0-9]{1,2}),? ([0-9]{4})")


def value_reader(attribute: Attribute, bare_unit: str | None) -> Reader:
    """Return the function that reads the known cells of an attribute."""
    return _READERS[attribute.kind](attribute, bare_unit)


def _text(attribute: Attribute, _bare_unit: str | None) -> Reader:
    def read(cell: object) -> Found:
        if isinstance(cell, str) and cell.isprintable():
            return cell, None, False
        if isinstance(cell, dt.date | dt.time | dt.timedelta):
            raise date_error(attribute, cell)
        if isinstance(cell, float) and not isfinite(cell):
            raise CellError(str(cell), "is no finite number", accepted_by(attribute))
        text = as_text(cell)
        if not text.isprintable():
            text = text.replace("\r\n", "\n").replace("\r", "\n")
            if unfit := unfit_character(attribute, text):
                message = f"holds a character that cannot be shown ({unfit})"
                raise CellError(text.encode("ascii", "backslashreplace").decode(), message, "text without it")
        return text, None, False

    return read


def unfit_character(attribute: Attribute, text: str) -> str:
    r"""Return the first character that a text may not hold, as ``U+001B``; empty where it may hold all of them.

    A mark, name or number stands on drawings, labels and screens for the thing itself: there a character that turns the
    direction of the text is refused too. In other text it belongs to the way some scripts are written.

    Examples
    --------
    >>> [unfit_character(Attribute(name, name), "A\u202e1") for name in ("mark", "notes")]
    ['U+202E', '']
    """
    for character in text:
        code = ord(character)
        steers = (code < 32 and character not in "\n\t") or 0x7F <= code < 0xA0 or 0xD800 <= code < 0xE000
        if steers or code in _NO_TEXT or (attribute.name in _STANDS_FOR_A_THING and hidden_in(character)):
            return f"U+{code:04X}"
    return ""


_NO_TEXT: Final = frozenset({0xFFFE, 0xFFFF})
_STANDS_FOR_A_THING: Final = frozenset({"mark", "name", "number"})


def _choice(attribute: Attribute, _bare_unit: str | None) -> Reader:
    words = choice_words(attribute)
    marks = {spelling.casefold(): choice.value for choice in attribute.choices for spelling in choice.synonyms}
    unclear = {normal(each.word): each.said for each in attribute.unclear}

    def read(cell: object) -> Found:
        if isinstance(cell, dt.date | dt.time | dt.timedelta):
            raise date_error(attribute, cell)
        text = as_text(cell)
        # A field of a project's own may declare a mark alone, such as -, of which nothing is left without punctuation.
        value = words.get(normal(text)) or marks.get(text.casefold())
        if value is None and (standing := without_existing(text)) != text:
            text = standing
            value = words.get(normal(text))
        if value is None and _WITH_DECIMAL.fullmatch(text):
            # As scripts write whole numbers.
            value = words.get(text.removesuffix(".0"))
        if value is None and not marks_emptiness(cell):
            if normal(text) in unclear:
                raise CellError(text, unclear[normal(text)], accepted_by(attribute))
            raise CellError(text, f"is none of the words for {attribute.label}", accepted_by(attribute))
        return value, None, False

    return read


def without_existing(text: str) -> str:
    """Return a word of a drawing without the mark that what it names stands already.

    Examples
    --------
    >>> [without_existing(text) for text in ("(E) HM", "EXIST. WD", "exit", "existing")]
    ['HM', 'WD', 'exit', 'existing']
    """
    match = _EXISTING.fullmatch(text.strip())
    return match[1] if match else text


def choice_words(attribute: Attribute) -> dict[str, str]:
    """Return the value by each normal spelling of a choice; labels win over values, and both over synonyms.

    Raises
    ------
    ValueError
        Where two values claim one spelling: the declaration has to be mended.
    """
    words: dict[str, str] = {}
    ranks: list[list[tuple[str, ...]]] = [
        [(choice.label,) for choice in attribute.choices],
        [(choice.value,) for choice in attribute.choices],
        [choice.synonyms for choice in attribute.choices],
    ]
    for rank in ranks:
        claimed: dict[str, str] = {}
        for choice, spellings in zip(attribute.choices, rank, strict=True):
            for word in filter(None, map(normal, spellings)):
                if claimed.setdefault(word, choice.value) != choice.value:
                    raise ValueError(f"{attribute.name}: {word} means {claimed[word]} as well as {choice.value}")
        words = claimed | words
    return words


def unclear_word(attribute: Attribute, cell: object) -> Unclear | None:
    """Return the unclear word that a cell holds; None for another."""
    word = normal(without_existing(as_text(cell))) if attribute.unclear else ""
    return next((each for each in attribute.unclear if normal(each.word) == word), None) if word else None


def reading_of(attribute: Attribute, meaning: str) -> Reading | None:
    """Return what an answer to a question of an unclear word says; None where it is a word of the choice itself."""
    told = normal(meaning)
    readings = (reading for each in attribute.unclear for reading in each.readings)
    return next((reading for reading in readings if told and normal(reading.label) == told), None)


def _flag(attribute: Attribute, _bare_unit: str | None) -> Reader:
    def read(cell: object) -> Found:
        if isinstance(cell, bool):
            return cell, None, False
        word = as_text(cell).casefold()
        if word in _YES or normal(word) in _YES:
            return True, None, False
        if word in _NO or normal(word) in _NO:
            return False, None, False
        if is_stroke(word):
            return None, None, False
        raise CellError(as_text(cell), "is neither yes nor no", "yes, y, x, true, 1; no, n, false, 0")

    return read


def _date(attribute: Attribute, _bare_unit: str | None) -> Reader:
    def read(cell: object) -> Found:
        if isinstance(cell, dt.datetime):
            return cell.date().isoformat(), None, False
        if isinstance(cell, dt.date):
            return cell.isoformat(), None, False
        text = as_text(cell)
        if is_stroke(text):
            return None, None, False
        found = _date_in_words(plain_text(text).lower()) if isinstance(cell, str) else None
        if found is None:
            message = "is no date, or one that can be read with the day or the month first"
            raise CellError(text, message, accepted_by(attribute))
        return found.isoformat(), None, False

    return read


def _date_in_words(text: str) -> dt.date | None:
    try:
        if re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}(?:[ t]00:00(?::00)?)?", text):
            return dt.date.fromisoformat(text[:10])
        if match := _DAY_FIRST.fullmatch(text):
            return dt.date(int(match[3]), _month(match[2]), int(match[1]))
        if match := _MONTH_FIRST.fullmatch(text):
            return dt.date(int(match[3]), _month(match[1]), int(match[2]))
    except ValueError:
        pass
    return None


def _month(word: str) -> int:
    """Return the month that a name or its beginning means; 0, which no date accepts, where it means none."""
    word = "sep" if word == "sept" else word
    return next((i for i, name in enumerate(_MONTHS, 1) if name.startswith(word)), 0)


_READERS: Final[dict[str, Callable[[Attribute, str | None], Reader]]] = {
    "text": _text,
    "length": length_reader,
    "number": number_reader,
    "integer": integer_reader,
    "choice": _choice,
    "flag": _flag,
    "date": _date,
    "money": money_reader,
}

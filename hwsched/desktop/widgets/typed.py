"""How a fact is said on the screen, and how what a person types into it would be taken, before it is. No widgets.

Words of choices are said in the language in force and read in it; what is written stays in the words of the survey.
"""

import re
from dataclasses import dataclass
from typing import Final

from hwsched.attributes import Attribute, CellError, Value, read_value, said_value, shown_unit
from hwsched.kept_sentences import kept_error
from hwsched.language import phrase, to_phrase
from hwsched.quantities import LengthStyle, format_length

_BARE: Final = re.compile(r"[-+−]?[\d.,/ ½¼¾]*\d[\d.,/ ½¼¾]*")
"""A number without a unit."""
_FLAG = (to_phrase("yes"), to_phrase("no"))


@dataclass(frozen=True, slots=True)
class Understood:
    """What a text means for a fact."""

    value: Value
    words: str
    """The value as it would be shown; of a refused text why, and what is accepted."""
    refused: bool = False


def words_among(attribute: Attribute) -> tuple[str, ...] | None:
    """Return the words among which a fact chooses, as the survey has them; None for one that is typed."""
    if attribute.kind == "flag":
        return _FLAG
    return tuple(each.label for each in attribute.choices) if attribute.kind == "choice" else None


def plain_word(attribute: Attribute, text: str) -> str:
    """Return what is written for a word that was said in the language in force; other texts as they are."""
    wanted = text.strip().casefold()
    return next((each for each in words_among(attribute) or () if phrase(each).casefold() == wanted), text)


def with_unit(attribute: Attribute, text: str, style: LengthStyle) -> str:
    """Return a text with the unit in which the fact is shown, where that is not the one in which it is held.

    A number that is typed where feet are shown means feet; what says its unit itself is left as it is.

    Examples
    --------
    >>> rise = Attribute("rise_m", "Up to the cable way", "number", "m")
    >>> [with_unit(rise, text, "fraction") for text in ("10", "3 m", "")]
    ['10 ft', '3 m', '']
    >>> with_unit(rise, "10", "mm")
    '10'
    """
    said = text.strip()
    if attribute.unit != "m" or style == "mm" or not _BARE.fullmatch(said):
        return text
    return f"{said} {shown_unit(attribute, style)}"


def understood(attribute: Attribute, text: str, bare_unit: str | None, style: LengthStyle) -> Understood:
    """Read what is being typed.

    Parameters
    ----------
    attribute : Attribute
        The fact.
    text : str
        As typed so far; empty: unknown.
    bare_unit : str or None
        What a length without a unit means in the project.
    style : LengthStyle
        How the project shows lengths.

    Examples
    --------
    >>> backset = Attribute("backset_mm", "Backset", "length", "mm", low=10)
    >>> understood(backset, "5", "in", "fraction").words
    '5", 127 mm'
    >>> understood(backset, "wide", "in", "fraction").refused
    True
    """
    if not text.strip():
        return Understood(None, phrase("unknown"))
    text = with_unit(attribute, plain_word(attribute, text), style)
    try:
        value = read_value(attribute, text, bare_unit=bare_unit if attribute.kind == "length" else None).value
    except CellError as error:
        words = f"'{text}' {kept_error(error.message)}" + (
            phrase("; accepted: {accepted}", accepted=kept_error(error.accepted)) if error.accepted else ""
        )
        return Understood(None, words, refused=True)
    if value is None:
        return Understood(None, phrase("unknown"))
    if attribute.kind == "length" and isinstance(value, float):
        shown = format_length(value, style)
        # In both systems: a slip of the unit is seen before it is stored.
        return Understood(
            value, shown if style == "mm" else phrase("{shown}, {value:.4g} mm", shown=shown, value=value)
        )
    said = said_value(attribute, value, style)
    if attribute.unit == "m" and style != "mm" and isinstance(value, float):
        said = phrase("{said}, {value:.4g} m", said=said, value=value)
    return Understood(value, said)

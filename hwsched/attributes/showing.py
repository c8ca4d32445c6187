"""Writing the value of an attribute for people.

Here belongs the wording of one value. What is exchanged exactly stands with the exchange formats.
"""

from decimal import Decimal
from typing import Final

from hwsched.attributes.attribute import Attribute
from hwsched.attributes.limits import Value
from hwsched.language import phrase
from hwsched.quantities import LengthStyle, format_length, in_run_unit, run_unit
from hwsched.quantities.money import decimal_text

_SHOWN_UNITS: Final[dict[str, str]] = {"uA": "µA", "ohm": "Ω", "degC": "°C", "deg": "°"}


def unit_sign(unit: str) -> str:
    """Return a unit as people write it.

    Examples
    --------
    >>> unit_sign("deg"), unit_sign("mm")
    ('°', 'mm')
    """
    return _SHOWN_UNITS.get(unit, unit)


def shown_unit(attribute: Attribute, length_style: LengthStyle = "mm") -> str:
    """Return the unit in which an attribute is shown, as it stands in a table's heading.

    Examples
    --------
    >>> shown_unit(Attribute("standing_ua", "Standing current", "number", "uA"))
    'µA'
    >>> shown_unit(Attribute("rise_m", "Up to the cable way", "number", "m"), "fraction")
    'ft'
    """
    if attribute.kind == "length":
        return "mm" if length_style == "mm" else "in"
    if attribute.unit == "m":
        return run_unit(length_style)
    if attribute.unit == "share":
        return "%"
    return unit_sign(attribute.unit)


def show_value(
    attribute: Attribute, value: Value, length_style: LengthStyle = "mm", *, unknown: str = "", with_unit: bool = True
) -> str:
    r"""Write a value as people read it.

    Parameters
    ----------
    attribute : Attribute
        The declared fact.
    value : Value
        As held; None where unknown.
    length_style : LengthStyle
        How the project shows lengths.
    unknown : str
        What stands for an unknown value.
    with_unit : bool
        Whether the unit follows; without it for columns whose heading says it.

    Returns
    -------
    str
        Text in one piece.

    Examples
    --------
    >>> show_value(Attribute("backset_mm", "Backset", "length", "mm"), 69.85, "fraction")
    '2 3/4"'
    >>> show_value(Attribute("usable_share", "Usable share", "number", "share"), 0.8)
    '80 %'
    >>> show_value(Attribute("rise_m", "Up to the cable way", "number", "m"), 3.048, "fraction")
    '10 ft'
    >>> show_value(Attribute("stair", "Stair door", "flag"), None, unknown="unknown")
    'unknown'
    """
    if value is None:
        return unknown
    if attribute.kind == "flag":
        return "yes" if value else "no"
    if isinstance(value, str):
        choice = attribute.choice(value)
        return choice.label if choice else value
    if isinstance(value, Decimal):
        return decimal_text(value)
    if attribute.kind == "length":
        return format_length(float(value), length_style, with_unit=with_unit)
    number = float(value) * 100 if attribute.unit == "share" else float(value)
    if attribute.unit == "m" and length_style != "mm":
        # Nobody measures a way to less than an eighth of an inch.
        number = round(in_run_unit(number, length_style), 2)
    text = f"{number:.12g}"
    unit = shown_unit(attribute, length_style)
    if not unit or not with_unit:
        return text
    return f"{text}{unit}" if unit == "°" else f"{text} {unit}"


def said_value(attribute: Attribute, value: Value, style: LengthStyle = "mm", *, unknown: str = "") -> str:
    """Write a value as people read it on the screen: as `show_value`, a word among several in the language in force.

    Examples
    --------
    >>> said_value(Attribute("stair", "Stair door", "flag"), True)
    'yes'
    """
    shown = show_value(attribute, value, style, unknown=unknown)
    chosen = attribute.kind == "flag" or (isinstance(value, str) and attribute.choice(value) is not None)
    return phrase(shown) if chosen and value is not None else shown

"""How what a person types into a fact would be taken, said before it is. No widgets."""

from dataclasses import dataclass

from hwsched.attributes import Attribute, CellError, Value, read_value, show_value
from hwsched.language import phrase
from hwsched.quantities import LengthStyle, format_length


@dataclass(frozen=True, slots=True)
class Understood:
    """What a text means for a fact."""

    value: Value
    words: str
    """The value as it would be shown; of a refused text why, and what is accepted."""
    refused: bool = False


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
        return Understood(None, "unknown")
    try:
        value = read_value(attribute, text, bare_unit=bare_unit if attribute.kind == "length" else None).value
    except CellError as error:
        words = f"'{text}' {error.message}" + (
            phrase("; accepted: {accepted}", accepted=error.accepted) if error.accepted else ""
        )
        return Understood(None, words, refused=True)
    if value is None:
        return Understood(None, "unknown")
    if attribute.kind == "length" and isinstance(value, float):
        shown = format_length(value, style)
        # In both systems: a slip of the unit is seen before it is stored.
        return Understood(
            value, shown if style == "mm" else phrase("{shown}, {value:.4g} mm", shown=shown, value=value)
        )
    return Understood(value, show_value(attribute, value, style))

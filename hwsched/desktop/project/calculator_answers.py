"""A calculator's answer as people read it: sentences and tables, from the declared fields of what comes out."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Any, Final

from hwsched.attributes import said_value, show_value, shown_unit
from hwsched.calc.calculator import Calculator, Field
from hwsched.desktop.project.calculator_fields import (
    NESTED,
    attribute_of,
    in_words,
    is_vector,
    label_of,
    worded,
)
from hwsched.kept_sentences import FIT, kept_phrase
from hwsched.language import phrase
from hwsched.quantities import LengthStyle, in_run_unit

_XYZ: Final = "xyz"
"""Titles over the three lengths of a point: what has three is one [mm]."""


@dataclass(slots=True)
class Told:
    """An answer as people read it."""

    sentences: list[str] = field(default_factory=list)
    tables: list[tuple[str, list[str], list[list[str]]]] = field(default_factory=list)
    """Title, headings and rows."""


@dataclass(frozen=True, slots=True)
class _How:
    """How values are said."""

    style: LengthStyle
    typed: frozenset[str]
    """Texts that a person typed, names of parts for one: they stay as they are."""

    def text(self, text: str) -> str:
        """Say a text of an answer: a reason is kept in English, a name stays."""
        return text if text in self.typed else kept_phrase(text, FIT)


def told(
    calculator: Calculator, answer: Mapping[str, Any], style: LengthStyle, asked: Mapping[str, Any] | None = None
) -> Told:
    """Say an answer in sentences and tables; what stands in what was asked stays as it was typed."""
    found, how = Told(), _How(style, frozenset(_texts(asked)))
    for each in in_words(calculator.outputs):
        _tell(found, each, answer.get(each.name), how)
    # Facts that are missing are named as the form names them.
    words = worded((*calculator.inputs, *calculator.outputs), phrase)
    found.sentences = [words(each) for each in found.sentences]
    found.tables = [
        (title, headings, [[words(cell) for cell in row] for row in rows]) for title, headings, rows in found.tables
    ]
    return found


def _label(field_: Field) -> str:
    """Say what a field is called."""
    return phrase(label_of(field_))


def _tell(found: Told, field_: Field, value: Any, how: _How) -> None:
    label = _label(field_)
    if value is None or value == "":
        return
    if field_.kind == "list" and isinstance(value, list):
        _tell_list(found, field_, value, how, label)
    elif isinstance(value, Mapping) and field_.fields and field_.kind in NESTED:
        known = [each for each in field_.fields if value.get(each.name) not in (None, [], "")]
        rows = [[_label(each), _said(each, value.get(each.name), how)] for each in known]
        found.tables.append((label, [phrase("What"), phrase("Value")], rows))
    elif isinstance(value, Mapping) and field_.kind != "point":
        rows = [[str(name), _plain(each)] for name, each in value.items()]
        if rows:
            found.tables.append((label, [phrase("Which"), phrase("Value")], rows))
    elif isinstance(value, bool):
        found.sentences.append(phrase(field_.yes if value else field_.no))
    else:
        said = _said(field_, value, how)
        # A sentence of its own needs no heading.
        whole = field_.kind == "text" and said.endswith((".", "!"))
        found.sentences.append(said if whole else f"{label}: {said}.")


def _tell_list(found: Told, field_: Field, value: list[Any], how: _How, label: str) -> None:
    if not value:
        return
    if all(isinstance(each, Mapping) for each in value):
        shown = [each for each in field_.fields if any(row.get(each.name) not in (None, [], "") for row in value)]
        rows = [[_said(each, row.get(each.name), how) for each in shown] for row in value]
        found.tables.append((label, [_label(each) for each in shown], rows))
    elif all(isinstance(each, str) for each in value) and any(" " in each for each in value):
        found.sentences += [each if each.endswith(".") else f"{each}." for each in map(how.text, value)]
    elif all(isinstance(each, list) for each in value):
        across = max(map(len, value))
        where = all(len(row) == len(_XYZ) and all(isinstance(each, float) for each in row) for row in value)
        of_each = replace(field_, name="x", kind="number", fields=())
        rows = [[_said(of_each, each, how) if where else _plain(each) for each in row] for row in value]
        found.tables.append((label, list(_XYZ) if where else [str(n + 1) for n in range(across)], rows))
    else:
        found.sentences.append(f"{label}: {', '.join(_said(field_, each, how) for each in value)}.")


def _said(field_: Field, value: Any, how: _How) -> str:
    if value is None:
        return ""
    if isinstance(value, list | Mapping):
        held = list(value.values()) if isinstance(value, Mapping) else value
        if not held:
            return phrase("none")
        of_each = replace(field_, name="x", fields=()) if field_.kind == "point" and not is_vector(field_) else field_
        return ", ".join(_said(of_each, each, how) for each in held)
    attribute = attribute_of(field_)
    if isinstance(value, str):
        return how.text(value) if attribute.kind == "text" else said_value(attribute, value, how.style)
    if isinstance(value, bool):
        return phrase("yes") if value else phrase("no")
    if attribute.kind == "length":
        shown = show_value(attribute, float(value), how.style)
        return shown if how.style == "mm" else f"{shown} ({value:.4g} mm)"
    if isinstance(value, int) or attribute.kind == "integer":
        return f"{value:,}"
    # Four figures are more than anybody measures.
    unit = shown_unit(attribute, how.style) or phrase(spoken_unit(field_))
    number = in_run_unit(float(value), how.style) if attribute.unit == "m" else float(value)
    return f"{number:,.4g} {unit}".strip()


def spoken_unit(field_: Field) -> str:
    """Return the unit that a field's text tells in brackets, such as ``mAh``."""
    before, _, after = field_.text.partition("[")
    return after.partition("]")[0] if before and after else ""


def _texts(held: Any) -> Iterator[str]:
    """Yield every text in something as JSON has it."""
    if isinstance(held, str):
        yield held
    elif isinstance(held, Mapping):
        yield from (text for pair in held.items() for each in pair for text in _texts(each))
    elif isinstance(held, list | tuple):
        yield from (text for each in held for text in _texts(each))


def _plain(value: Any) -> str:
    return f"{value:,.4g}" if isinstance(value, float) else str(value)

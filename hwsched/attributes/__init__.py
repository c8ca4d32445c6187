"""Declared facts: what a field of the survey, of a part or of a project's own is called, measured in and limited to.

Import and export sheets, forms, validation, tables and reference pages all follow from these declarations.
"""

from hwsched.attributes.attribute import Attribute, AttributeKind, Choice, Reading, Unclear, Unit
from hwsched.attributes.cell_error import CellError
from hwsched.attributes.headers import normal, split_unit
from hwsched.attributes.limits import Value, accepted_by, as_text, within_limits
from hwsched.attributes.reading import CellReader, Read, read_value, reader_of
from hwsched.attributes.showing import said_value, show_value, shown_unit
from hwsched.attributes.values import reading_of, unclear_word, unfit_character

__all__ = [
    "Attribute",
    "AttributeKind",
    "CellError",
    "CellReader",
    "Choice",
    "Read",
    "Reading",
    "Unclear",
    "Unit",
    "Value",
    "accepted_by",
    "as_text",
    "normal",
    "read_value",
    "reader_of",
    "reading_of",
    "said_value",
    "show_value",
    "shown_unit",
    "split_unit",
    "unclear_word",
    "unfit_character",
    "within_limits",
]

"""Declared facts: what a field of the survey, of a part or of a project's own is called, measured in and limited to.

Import and export sheets, forms, validation, tables and reference pages all follow from these declarations.
"""

from hwsched.attributes.attribute import Attribute, AttributeKind, Choice, Unit

__all__ = ["Attribute", "AttributeKind", "Choice", "Unit"]

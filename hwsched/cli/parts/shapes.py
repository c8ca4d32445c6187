"""What verbs of this room answer machines, where it is made of the records of operations.

Apart from the verbs, since their help must not wait for what the records are made of.
"""

from typing import TypedDict

from hwsched.cli.opening.shapes import DifferenceRecord


class EditedPart(TypedDict):
    """A part that was changed, or with --dry-run what that would change."""

    number: str
    marks: list[str]
    """Openings with a choice or a row that the step touched; their fits are made by `opening fit`."""
    differences: list[DifferenceRecord]
    """Of a dry run: openings that would be different."""

"""The label on the frame beside that on the leaf: the opening is rated as both say, where they say the same.

A frame's label alone says nothing of its leaf, and of two that differ only a person at the door, and the authority
there, can say what holds: then the rating stays unknown, which is named.
"""

from typing import Final

from hwsched.exchange.problems import row_ranges
from hwsched.exchange.survey.facts import Assumption
from hwsched.exchange.survey.mapping import Target
from hwsched.exchange.survey.sheet import SheetFacts
from hwsched.exchange.survey.words import FRAME_RATING

RATING: Final = Target("opening", "rating")


def settle_frame_rating(sheet: SheetFacts) -> None:
    """Lay what a sheet says of the frames' labels beside what it says of the leaves'."""
    of_frame = sheet.columns.pop(FRAME_RATING, None)
    if of_frame is None:
        return
    of_leaf = sheet.columns.get(RATING) or [None] * len(of_frame)
    alone = [entry for entry, told in enumerate(of_frame) if told is not None and of_leaf[entry] is None]
    apart = [
        entry
        for entry, told in enumerate(of_frame)
        if told is not None and of_leaf[entry] is not None and of_leaf[entry] != told
    ]
    if apart:
        sheet.columns[RATING] = [None if entry in set(apart) else told for entry, told in enumerate(of_leaf)]
    for entries, text in (
        (alone, "the frame's label alone says nothing of the leaf: fire rating left unknown"),
        (apart, "leaf and frame are labelled otherwise: fire rating left unknown until somebody says which holds"),
    ):
        if entries:
            rows = row_ranges([sheet.rows[entry] + 1 for entry in entries])
            sheet.assumptions.append(Assumption(sheet.grid.sheet, "", "", f"{text}, rows {rows}", len(entries)))

"""The label on the frame beside one that says that the leaf is not rated: nobody takes the opening for not rated by it.

Leaf and frame are facts of their own, and a rule lays them beside each other. Only what would make a labelled frame
one that may be cut is not taken in silence: the rating stays unknown, which is named, until somebody says which holds.
"""

from typing import Final

from hwsched.exchange.problems import row_ranges
from hwsched.exchange.survey.facts import Assumption
from hwsched.exchange.survey.mapping import Target
from hwsched.exchange.survey.sheet import SheetFacts

RATING: Final = Target("opening", "rating")
FRAME_RATING: Final = Target("opening", "frame_rating")


def settle_frame_rating(sheet: SheetFacts) -> None:
    """Lay what a sheet says of the frames' labels beside what it says of the leaves'."""
    of_leaf, of_frame = sheet.columns.get(RATING), sheet.columns.get(FRAME_RATING)
    if of_leaf is None or of_frame is None:
        return
    labelled = [told not in (None, "none") for told in of_frame]
    apart = [entry for entry, told in enumerate(of_leaf) if told == "none" and labelled[entry]]
    if apart:
        sheet.columns[RATING] = [None if entry in set(apart) else told for entry, told in enumerate(of_leaf)]
        rows = row_ranges([sheet.rows[entry] + 1 for entry in apart])
        text = f"a frame with a label about a leaf that is not rated: fire rating left unknown, rows {rows}"
        sheet.assumptions.append(Assumption(sheet.grid.sheet, "", "", text, len(apart)))

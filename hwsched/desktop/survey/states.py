"""The states of openings as the desktop calls and colours them."""

from functools import lru_cache
from typing import Final

from PySide6.QtCore import QSize
from PySide6.QtGui import QColor, QGuiApplication, QPixmap

from hwsched.desktop.looks.icons import state_icon
from hwsched.desktop.looks.tokens import ICON, State, Text, colour, dark_now, scaled
from hwsched.desktop.looks.tokens import STATES as LOOKS
from hwsched.desktop.survey.ahead import Ahead
from hwsched.language import phrase, to_phrase
from hwsched.operations.findings.checked import Checked

STATES: Final = (
    to_phrase("Fits"),
    to_phrase("Held"),
    to_phrase("Does not fit"),
    to_phrase("To measure"),
    to_phrase("Not worked out yet"),
    to_phrase("Earlier version"),
)
BEING_CHECKED: Final = to_phrase("Being checked")
"""While nobody knows yet."""
_FITS: Final = {
    "fits": to_phrase("Fits"),
    "does-not-fit": to_phrase("Does not fit"),
    "to-measure": to_phrase("To measure"),
}
_ROLES: Final[dict[str, Text]] = {
    "Fits": "fits",
    "Held": "held",
    "Does not fit": "not-fits",
    "To measure": "to-measure",
    "Not worked out yet": "stale",
    "Earlier version": "stale",
}


def status_word(status: str) -> str:
    """Return how a status of a fit is called on the screen; what is none stays as it is."""
    return phrase("Held" if status == "held" else _FITS.get(status, status))


def state_of(checked: Checked) -> str:
    """Return one of STATES, or that it is being checked, in English: who shows it says it."""
    if isinstance(checked, Ahead):
        return BEING_CHECKED
    if checked.fit is None:
        return "Earlier version" if checked.standing == "earlier-version" else "Not worked out yet"
    if checked.kept_back:
        return "Held"
    return _FITS[checked.fit.status]


def state_colour(state: str) -> QColor | None:
    """Return the colour of a state's word, readable on the present palette."""
    role = _ROLES.get(state)
    return None if role is None else colour(role)


def state_shape(state: str) -> QPixmap | None:
    """Return the shape of a state, so that it is not told by its colour alone."""
    role = _ROLES.get(state)
    found: State | None = next((name for name, look in LOOKS.items() if look.role == role), None)
    ratio = QGuiApplication.primaryScreen().devicePixelRatio()
    return None if found is None else _painted(found, scaled(ICON), ratio, dark=dark_now())


@lru_cache(maxsize=64)
def _painted(state: State, side: int, ratio: float, *, dark: bool) -> QPixmap:
    """Return a shape as it is seen; drawn anew in every row of a grid it would take longer than all else."""
    return state_icon(state).pixmap(QSize(side, side), ratio)

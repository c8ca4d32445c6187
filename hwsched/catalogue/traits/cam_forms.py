"""Forms of cams and tailpieces, and what they are fixed to; values equal to those of the survey."""

from typing import Final

from hwsched.attributes import Attribute, Choice

CAMS: Final[tuple[Choice, ...]] = (
    Choice("straight", "Straight cam", ("standard", "std")),
    Choice("clover", "Clover cam", ("cloverleaf", "clover leaf")),
    Choice("hook", "Hooked cam", ("hooked",)),
    Choice("long", "Long cam", ("extended",)),
)
EURO_CAM: Final = Choice("euro", "Euro-profile cam", ("din cam",))
TAILS: Final[tuple[Choice, ...]] = (
    Choice("flat-tail", "Flat tailpiece", ("flat", "tailpiece", "flat blade")),
    Choice("cross-tail", "Cross tailpiece", ("cross", "cruciform")),
)

TAIL_FORM: Final = Attribute(
    "tail_form", "Tailpiece form", "choice", choices=TAILS, synonyms=("tailpiece", "tail"), required=True
)
TAIL_STEP: Final = Attribute(
    "tail_step_mm",
    "Break-off step",
    "length",
    "mm",
    synonyms=("tail step", "score spacing"),
    low=0.5,
    high=50,
    note="Distance between the scores at which the tailpiece is broken off; empty where it is cut anywhere.",
)
FITS: Final = Attribute(
    "fits",
    "Fits cam fixing",
    synonyms=("fits", "cam fixing", "for cam fixing"),
    required=True,
    note="Name of the fixing pattern of the cylinders that it is screwed to; rim for a rim cylinder.",
)

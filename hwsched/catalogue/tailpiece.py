"""Part kind: tailpieces."""

from hwsched.attributes import Attribute
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.cam_forms import FITS, TAIL_FORM

TAILPIECE = PartKind(
    "tailpiece",
    "Tailpieces",
    (
        FITS,
        TAIL_FORM,
        Attribute("length_mm", "Length", "length", "mm", low=5, high=250, required=True),
        Attribute("step_mm", "Break-off step", "length", "mm", low=0.5, high=50),
    ),
    note="Tailpieces and conversions that are screwed on in place of a cam.",
)

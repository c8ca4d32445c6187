"""Part kind: cams."""

from hwsched.attributes import Attribute
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.cam_forms import CAMS, FITS

CAM = PartKind(
    "cam",
    "Cams",
    (
        FITS,
        Attribute("cam_form", "Cam form", "choice", choices=CAMS, required=True),
        Attribute("radius_mm", "Radius", "length", "mm", low=3, high=60),
    ),
    note="What the cylinder turns in a lock's case.",
)

"""Part kind: mortise cylinders."""

from hwsched.attributes import Attribute
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.lead import LEAD
from hwsched.catalogue.traits.place import EXPOSURE, FIRE_LISTED

MORTISE_CYLINDER = PartKind(
    "mortise-cylinder",
    "Mortise cylinders",
    (
        Attribute(
            "length_mm",
            "Shell length",
            "length",
            "mm",
            low=10,
            high=120,
            required=True,
            note="Under the head, without the cam.",
        ),
        Attribute(
            "cam_offset_mm",
            "Cam plane from rear",
            "length",
            "mm",
            low=-10,
            high=30,
            required=True,
            note="From the shell's rear, toward the case.",
        ),
        Attribute("thread_pitch_mm", "Thread pitch", "length", "mm", low=0.3, high=3, required=True),
        Attribute("thread_diameter_mm", "Thread diameter", "length", "mm", low=15, high=50),
        Attribute("head_diameter_mm", "Head diameter", "length", "mm", low=15, high=80),
        Attribute("cam_fixing", "Cam fixing", required=True, note="Name of the pattern by which cams are screwed on."),
        *LEAD,
        EXPOSURE,
        FIRE_LISTED,
    ),
    note="Threaded cylinders for mortise locks, with the reader in the head.",
)

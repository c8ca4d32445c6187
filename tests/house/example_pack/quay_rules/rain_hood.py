"""Part kind: rain hoods."""

from hwsched.attributes import Attribute
from hwsched.catalogue import kind

RAIN_HOOD = kind.PartKind(
    "rain-hood",
    "Rain hoods",
    (Attribute("overhang_mm", "Overhang", "length", "mm", low=5, high=300, required=True),),
    note="Stand over a unit outside.",
)

"""Part kind: fasteners."""

from hwsched.attributes import Attribute, Choice
from hwsched.attributes.walls import WALLS
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.leaf_materials import LEAF_MATERIALS
from hwsched.catalogue.traits.pieces import PIECES

FASTENER = PartKind(
    "fastener",
    "Fasteners",
    (
        Attribute(
            "form",
            "Form",
            "choice",
            choices=(
                Choice("wood-screw", "Wood screw"),
                Choice("sheet-metal-screw", "Sheet-metal screw"),
                Choice("machine-screw", "Machine screw"),
                Choice("through-bolt", "Through bolt"),
                Choice("adhesive", "Adhesive pad"),
                Choice("screw-and-plug", "Screw with plug"),
                Choice("hollow-wall-anchor", "Hollow-wall anchor"),
            ),
            required=True,
        ),
        Attribute("size", "Size", required=True, note="Such as #6."),
        Attribute("length_mm", "Length", "length", "mm", low=1, high=300),
        Attribute(
            "security_drive", "Security drive", "flag", note="A head that no common screwdriver or spanner turns."
        ),
        Attribute(
            "head",
            "Head",
            "choice",
            choices=(
                Choice("countersunk", "Countersunk", ("flat head", "csk")),
                Choice("pan", "Pan or button", ("button", "round head", "dome")),
                Choice("hexagon", "Hexagon", ("hex", "hex head")),
                Choice("carriage", "Round, with a square neck", ("carriage", "coach", "cup square")),
            ),
            note="A square neck beds into wood; in steel it needs a square hole.",
        ),
        Attribute(
            "turned_by",
            "Turned by",
            "choice",
            choices=(
                Choice("socket", "Socket"),
                Choice("spanner", "Open spanner", ("spanner", "open-ended spanner", "wrench", "open-end wrench")),
                Choice("ring", "Ring spanner", ("ring", "box wrench", "12-point ring", "offset ring")),
            ),
            note="What turns its hexagon, head or nut; blank: a socket, or a spanner where that has the room.",
        ),
        Attribute(
            "leaf_material",
            "For leaf material",
            "choice",
            choices=LEAF_MATERIALS,
            note="Empty for one that holds in a wall.",
        ),
        Attribute("wall_build", "For wall", "choice", choices=WALLS, note="Empty for one that holds in a leaf."),
        PIECES,
    ),
    note="Screws, bolts and pads by the leaf material or the wall that they are for.",
)

"""Facts of a leaf."""

from hwsched.attributes import Attribute, Choice, Reading, Unclear
from hwsched.survey.entity import Entity

POSITIONS = (
    Choice("single", "Single", ("only", "1", "sgl")),
    Choice("active", "Active", ("a", "act", "active leaf")),
    Choice("inactive", "Inactive", ("i", "inact", "standing", "passive", "inactive leaf")),
)
MATERIALS = (
    Choice(
        "wood", "Wood, solid core", ("solid core", "sc/wd", "wd/sc", "scw", "scwd", "solid wood", "timber", "sc wood")
    ),
    Choice("mineral-core", "Wood, mineral core", ("mineral core", "mc", "wd mineral", "fire core")),
    Choice("hollow-metal", "Hollow metal", ("hm", "hmd", "steel", "hollow metal door")),
    Choice("aluminium", "Aluminium", ("al", "alum", "aluminum", "storefront")),
    Choice("glass", "Glass", ("gl", "all glass", "tempered glass", "frameless glass")),
    Choice("composite", "Composite", ("frp", "fibreglass", "fiberglass")),
    Choice("steel-gate", "Steel gate", ("gate steel", "steel tube", "bar gate")),
)
_SOLID = Reading("wood, solid core", "wood")
_HOLLOW = Reading("wood, hollow core", None, (("core", "honeycomb"),))
"""No material of its own: what the faces are says nothing of what holds a lock."""
_SHEET = (Reading("hollow metal door", "hollow-metal"), Reading("steel gate", "steel-gate"))
# From published drafting lists, where each of these has several meanings; wood by itself is common practice of both.
UNCLEAR_MATERIALS = (
    *(Unclear(word, "is wood, of a solid or a hollow core", (_SOLID, _HOLLOW)) for word in ("WD", "WD flush", "FWD")),
    Unclear("STL", "is steel: a hollow metal door, or a gate", _SHEET),
    Unclear("SC", "may be a solid core or a self-closing door", (_SOLID, Reading("self-closing"))),
    Unclear("HC", "is a hollow core, or handicapped", (_HOLLOW, Reading("accessible"))),
    *(
        Unclear(word, "is wood with a hollow core, which is none of the materials", (_HOLLOW,))
        for word in ("HC/WD", "WD/HC", "HCW", "HCWD", "hollow core", "hollow core wood")
    ),
    *(
        Unclear(word, f"is {steel} steel: a hollow metal door, or a gate", _SHEET)
        for word, steel in (("SS", "stainless"), ("SST", "stainless"), ("GALV", "galvanised"))
    ),
    *(
        Unclear(
            word,
            "may be full glass or fibreglass",
            (Reading("full glass", "glass"), Reading("fibreglass", "composite")),
        )
        for word in ("FG", "FGL")
    ),
)
CONSTRUCTIONS = (
    Choice("flush", "Flush", ("f",)),
    Choice("stile-and-rail", "Stile and rail", ("s&r", "stile rail", "panel")),
    Choice("narrow-stile", "Narrow stile", ("narrow", "ns")),
    Choice("frameless", "Frameless glass", ("no stile", "glass", "all-glass")),
)
UNUSED_HOLES = (
    Choice("none", "None", ("no", "n")),
    Choice("steel", "Filled with steel fasteners", ("steel fasteners", "steel screws", "steel")),
    Choice("same-material", "Filled with the leaf's own material", ("same material", "wood plug", "welded")),
    Choice("listed", "Filled with a listed material", ("listed", "listed filler")),
    Choice("filler", "Filled with putty or body filler", ("putty", "filler", "caulk", "body filler")),
    Choice("covered", "Covered by a plate", ("plate", "cover plate", "covered")),
    Choice("open", "Open", ("not filled", "unfilled")),
)
CORES = (
    Choice("solid", "Solid wood or particleboard", ("particleboard", "staved", "structural composite", "lumber")),
    Choice("mineral", "Mineral, temperature rise", ("mineral", "temperature rise", "gypsum")),
    Choice("honeycomb", "Honeycomb", ("kraft", "paper honeycomb")),
    Choice("foam", "Foam", ("polystyrene", "polyurethane")),
    Choice("steel-stiffened", "Steel-stiffened", ("steel ribs", "stiffened")),
    Choice("empty", "Empty tube or frame", ("hollow", "tube")),
)

LEAF = Entity(
    "leaf",
    "Leaf",
    (
        Attribute(
            "position",
            "Leaf",
            "choice",
            choices=POSITIONS,
            synonyms=("leaf", "leaf position", "active/inactive"),
        ),
        Attribute(
            "width_mm",
            "Leaf width",
            "length",
            "mm",
            synonyms=("width", "door width", "w"),
            low=150,
            high=3000,
        ),
        Attribute(
            "height_mm",
            "Leaf height",
            "length",
            "mm",
            synonyms=("height", "door height", "h"),
            low=150,
            high=4500,
        ),
        Attribute(
            "thickness_mm",
            "Leaf thickness",
            "length",
            "mm",
            synonyms=("thickness", "thk", "t", "door thickness"),
            low=6,
            high=120,
        ),
        Attribute(
            "material",
            "Leaf material",
            "choice",
            choices=MATERIALS,
            unclear=UNCLEAR_MATERIALS,
            synonyms=("material", "door material", "leaf mat", "door mat", "matl", "mat'l", "door matl", "leaf matl"),
        ),
        Attribute(
            "construction",
            "Leaf construction",
            "choice",
            choices=CONSTRUCTIONS,
            synonyms=("construction", "elevation", "door type"),
        ),
        Attribute(
            "stile_mm",
            "Lock stile width",
            "length",
            "mm",
            synonyms=("stile", "stile width"),
            low=15,
            high=400,
            note="Face width of the stile that holds the lock, without the glass stop.",
        ),
        Attribute(
            "undercut_mm",
            "Undercut",
            "length",
            "mm",
            synonyms=("undercut", "uc"),
            low=0,
            high=2500,
            note="From finished floor to the bottom of the leaf; for a gate or a cabinet too, however high it hangs.",
        ),
        Attribute(
            "self_closes",
            "Closes and latches by itself",
            "flag",
            synonyms=("self closing", "closes and latches", "self-closing", "closes by itself"),
            note="Let go from any position: the closer or the spring hinges bring it shut, and it latches.",
        ),
        Attribute(
            "unused_holes",
            "Unused holes",
            "choice",
            choices=UNUSED_HOLES,
            synonyms=("old holes", "abandoned holes"),
            note="Of hardware that is gone, and how they are filled.",
        ),
        Attribute(
            "core",
            "Leaf core",
            "choice",
            choices=CORES,
            synonyms=("core", "door core", "core type"),
            note="What stands between the faces: it decides whether a wire can be brought across inside the leaf.",
        ),
        Attribute(
            "raceway",
            "Way for a wire across the leaf",
            "flag",
            synonyms=("raceway", "wire way across the leaf", "prepared for power"),
            note="Yes where the leaf has one from the hinge edge to the lock already, free for another wire.",
        ),
    ),
)

"""Steps that put a unit onto a face of the leaf or onto a wall, and connect the lead."""

from hwsched.language import phrase
from hwsched.values import FitPart
from hwsched.work import cautions, tools
from hwsched.work.situation import Situation
from hwsched.work.step import StepKind
from hwsched.work.steps.gate import bolts


def _on_face(s: Situation) -> bool:
    return s.has("unit") and (s.surface or s.on_wall)


def screws(s: Situation) -> tuple[FitPart, ...]:
    """Return what holds the unit."""
    taken = bolts(s)
    return tuple(part for part in s.parts("fastener") if part not in taken)


def _plate(s: Situation) -> str:
    held = ", ".join(f"{part.quantity:g} × {part.description or part.part}" for part in screws(s))
    gasket = phrase(" Lay the gasket under it.") if s.of_form("mounting", "gasket") else ""
    more = ", ".join(part.description or part.part for part in s.parts("mounting") if part not in _gaskets(s))
    other = phrase(" With it: {more}.", more=more) if more else ""
    place = phrase("on the wall behind the reader") if s.on_wall else phrase("over the access hole, as drawn")
    if not s.inside_leaf and not s.on_wall:
        place = phrase("where the drawing shows")
    return phrase(
        "Hold the unit by its plate {place}, lead {part}through its window, level.{gasket} Screw it "
        "down{part_2}, pinching nothing.{other}",
        place=place,
        part=phrase("and wire ") if s.on_supply else "",
        gasket=gasket,
        part_2=phrase(" with {held}", held=held) if held else "",
        other=other,
    )


def _gaskets(s: Situation) -> tuple[FitPart, ...]:
    return s.of_form("mounting", "gasket")


def _plug(s: Situation) -> str:
    sealed = phrase(" Press until no gap shows round it: a plug half in lets water to its pins.") if s.exterior else ""
    return phrase(
        "With the cover open push the lead's plug in, square and to its full depth, without turning it.{sealed}",
        sealed=sealed,
    )


def _cover(s: Situation) -> str:
    gasket = phrase(" See that the cover's gasket lies in its groove all round.") if s.exterior else ""
    spare = phrase("Lay the slack of the lead {part}inside", part=phrase("and wire ") if s.on_supply else "")
    if s.spare_lead:
        spare = phrase(
            "Lay the lead's spare {length}{part} flat in the unit",
            length=s.spare_lead,
            part=phrase(" and the wire's") if s.on_supply else "",
        )
    return phrase(
        "{spare}, under no edge.{gasket} Close the cover without force, by its own screws.",
        spare=spare,
        gasket=gasket,
    )


UNIT_ON_FACE = (
    StepKind(
        "glass-clean",
        "inside",
        "Clean the glass with alcohol where the unit comes, and let it dry.",
        when=lambda s: s.bonded,
        after=("lock-in",),
        tools=lambda s: (tools.ALCOHOL,),
        cautions=(cautions.GLASS,),
    ),
    StepKind(
        "bond-on",
        "inside",
        "Mark the unit's lower edge with tape, level. Put the pad on the unit, take its foil off and press the unit on, "
        "as long as the pad's maker asks; lead through its window.",
        when=lambda s: s.bonded and _on_face(s),
        after=("polarity", "glass-clean"),
        parts=lambda s: (*s.parts("unit", "mounting"), *screws(s), *s.of_form("consumable", "adhesive-pad")),
        tools=lambda s: (tools.LEVEL, tools.TAPE),
        cautions=(cautions.STATIC, cautions.GLASS),
        brings="unit-on",
        tasks=("bond-to-glass",),
    ),
    StepKind(
        "plate-on",
        lambda s: "wall" if s.on_wall else "inside",
        _plate,
        when=lambda s: not s.bonded and _on_face(s),
        after=("lock-in", "polarity"),
        parts=lambda s: (*s.parts("unit", "mounting"), *screws(s)),
        tools=lambda s: (tools.LEVEL, *tools.drivers(s, screws(s))),
        cautions=(cautions.STATIC,),
        brings="unit-on",
        tasks=("mount-unit-surface", "mount-unit-wall"),
    ),
    StepKind(
        "plug-in",
        lambda s: "wall" if s.on_wall else "inside",
        _plug,
        when=lambda s: _on_face(s) and s.fit.cable is not None,
        after=("unit-on",),
        cautions=(cautions.STATIC, cautions.COIN),
        brings="connected",
    ),
    StepKind(
        "cover",
        lambda s: "wall" if s.on_wall else "inside",
        _cover,
        when=_on_face,
        after=("try-key",),
        tools=lambda s: (tools.COVER_DRIVER,),
        brings="closed",
    ),
)

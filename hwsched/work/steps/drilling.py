"""Steps that mark, drill, clean and line the holes; what they are made with follows from the leaf's material."""

from collections.abc import Callable
from typing import Final

from hwsched.language import phrase, phrase_of_count
from hwsched.rules.network.across_leaf import THROUGH
from hwsched.rules.wording import aside_words
from hwsched.values import Hole
from hwsched.work import cautions, tools
from hwsched.work.situation import Situation
from hwsched.work.step import StepKind, Tool, Where

_SOLID = ("wood", "mineral-core", "composite")
_STEEL = ("hollow-metal", "steel-gate")
_SAFE = (cautions.DRILL, cautions.DUST)
_LININGS = ("sleeve", "grommet")


def numbers(holes: tuple[Hole, ...]) -> str:
    """Name holes by their numbers in the hole table."""
    shown = [str(hole.order) for hole in holes]
    if len(shown) == 1:
        return f"hole {shown[0]}"
    return phrase("holes {shown} and {shown_2}", shown=", ".join(shown[:-1]), shown_2=shown[-1])


def _lead_holes(s: Situation) -> tuple[Hole, ...]:
    return tuple(hole for hole in s.holes("cable") if hole.face != "key")


def _holes_behind(s: Situation) -> tuple[Hole, ...]:
    """Return those for the lead that a gate lock's case hides, on the side on which it is bolted."""
    return tuple(hole for hole in s.holes("cable") if hole.face == "key")


def _channels(s: Situation) -> tuple[Hole, ...]:
    return tuple(hole for hole in s.holes("channel") if hole.face != "lock-edge")


def _bridges(s: Situation) -> tuple[Hole, ...]:
    return tuple(hole for hole in s.holes("channel") if hole.face == "lock-edge")


def _only(purpose: str) -> Callable[[Situation], tuple[Hole, ...]]:
    return lambda s: s.holes(purpose)


def _made(found: Callable[[Situation], tuple[Hole, ...]]) -> Callable[[Situation], tuple[Tool, ...]]:
    return lambda s: tools.of_holes(s, found(s))


def _mark(s: Situation) -> str:
    if s.leaf is None:
        high = s.lock.cylinder_height_mm if s.lock is not None else None
        return phrase(
            "Mark the reader's centre: {high} above the floor, sideways {aside}. Let the owner see it before drilling.",
            high=phrase("unknown height") if high is None else s.length(high),
            aside=aside_words(s.given),
        )
    if all(hole.by_template for hole in s.fit.holes):
        return phrase("Mark where the unit's plate comes, from the cylinder's centre line and the edge.")
    each = phrase(", each on its own face") if _marked_at(s) == "door" else ""
    centre = phrase("the cylinder's centre line") if s.by_cylinder else phrase("the lock's centre")
    named = f" {', '.join(s.templates)}" if s.templates else ""
    if s.paged:
        return phrase(
            "Mark the centres of the hole table from {centre} and the edge{each}; before drilling lay on the "
            "true-size template{named}.",
            centre=centre,
            each=each,
            named=named,
        )
    return phrase(
        "Mark the centres of the hole table from {centre} and the edge{each}; before drilling lay on the "
        "true-size template{named} (page in its list).",
        centre=centre,
        each=each,
        named=named,
    )


def practice(s: Situation, holes: tuple[Hole, ...]) -> str:
    """Say how the leaf's material is drilled, for holes of these depths."""
    stopped = any(hole.depth_mm is not None for hole in holes)
    through = any(hole.depth_mm is None for hole in holes)
    if s.material in _SOLID:
        said = phrase(" Use the depth stop.") if stopped else ""
        if any(hole.tool == "hole-saw" and hole.depth_mm is not None for hole in holes):
            # A saw leaves what is within it standing.
            said += phrase(" Lever the core out with a screwdriver.")
        sawn = phrase(" on one pilot") if any(hole.tool == "hole-saw" for hole in holes) else ""
        return (
            phrase("{said} From both faces{sawn}, so that neither splinters.", said=said, sawn=sawn)
            if through
            else said
        )
    if s.leaf is None:
        return _wall_practice(s)
    if s.material not in (*_STEEL, "aluminium"):
        return ""
    piloted = any(hole.pilot_mm is not None for hole in holes)
    first = phrase("Punch, drill the pilot, then open it up") if piloted else phrase("Punch, then drill")
    wet = phrase("slowly, with wax") if s.material == "aluminium" else phrase("with a drop of oil")
    end = phrase("; stop behind the sheet") if stopped else phrase(", through both walls")
    return f" {first} {wet}{end}. Deburr{'' if s.material == 'aluminium' else phrase(' and touch up')}."


_AT: Final[dict[str, Where]] = {
    "inside": "inside", "key": "key side", "lock-edge": "lock edge", "hinge-edge": "hinge edge", "edge": "lock edge"
}  # fmt: skip


def _marked_at(s: Situation) -> Where:
    """Return where holes are marked: at the face where each is drilled; at the door where they are on several."""
    if s.leaf is None:
        return "wall"
    faces = {hole.face for hole in s.fit.holes if not hole.by_template}
    if not faces and s.fit.placement is not None:
        # Only the plate's place is marked.
        faces = {s.fit.placement.face}
    return _AT.get(next(iter(faces)), "inside") if len(faces) == 1 else "door"


def _wall_practice(s: Situation) -> str:
    """Say how the hole for a reader goes through what carries it."""
    return {
        "masonry": phrase(" With a core bit in masonry, no hammer where it comes out."),
        "steel": phrase(" Punch, then saw slowly with a drop of oil. Deburr and touch up."),
        "hollow": phrase(" Find studs, pipes and cables first."),
        "wood": phrase(" Slowly at the end, so that the far face does not splinter."),
    }.get(s.given.opening.wall_build or "", "")


def _lead(s: Situation) -> str:
    holes = _lead_holes(s)
    if any(hole.up_deg or hole.edge_deg for hole in holes):
        jig = phrase(" with the jig on the bolt holes") if s.lock_form == "bored" else phrase(" with the jig")
        return phrase(
            "Drill {numbers} for the lead{jig}, at the angle in the table; begin square, then lean the bit.",
            numbers=numbers(holes),
            jig=jig,
        )
    return phrase("Drill {numbers} for the lead.{practice}", numbers=numbers(holes), practice=practice(s, holes))


def _lock(s: Situation) -> str:
    holes = s.holes("function")
    if s.leaf is None:
        return phrase("Make {numbers} for the reader.{practice}", numbers=numbers(holes), practice=practice(s, holes))
    return phrase("Saw {numbers} for the new lock.{practice}", numbers=numbers(holes), practice=practice(s, holes))


def _pocket(s: Situation) -> str:
    cut = phrase("Mill or saw and file") if s.material == "aluminium" else phrase("Mortise")
    return phrase(
        "{cut} {numbers}, the unit's pocket, to its size and depth.", cut=cut, numbers=numbers(s.holes("pocket"))
    )


def hollow(s: Situation) -> str:
    """Name what is hollow at the lock: there a wire across the leaf comes out."""
    if s.cased:
        return phrase("the lock's pocket")
    return phrase("the cross bore") if s.lock_form == "bored" else phrase("the access hole behind the unit")


def _raceway(s: Situation) -> str:
    if _bored(s):
        return phrase(
            "Bore {numbers} from the hinge edge with the fixture: free-hand the bit wanders and leaves "
            "through a face. Stop in {goal}.",
            numbers=numbers(s.holes(THROUGH)),
            goal=hollow(s),
        )
    return phrase(
        "Drill {numbers} in the hinge edge. Past a panel or a lite the wire goes by the rail or the end channel.",
        numbers=numbers(s.holes(THROUGH)),
    )


def _bored(s: Situation) -> bool:
    """Tell whether the wire's way is bored through the leaf: no bit of that length comes at a hinge edge that hangs."""
    return any(hole.tool == "installer-bit" for hole in s.holes(THROUGH))


def _pilots(s: Situation) -> str:
    holes = s.holes("fixing")
    count = sum(hole.count for hole in holes)
    if s.in_edge:
        held = phrase_of_count(
            "Mark the screw centre through the empty housing's plate",
            "Mark the {count} screw centres through the empty housing's plate",
            count,
        )
    else:
        held = phrase_of_count(
            "Hold the unit's plate alone as drawn, level. Mark its screw",
            "Hold the unit's plate alone as drawn, level. Mark its {count} screws",
            count,
        )
    return phrase("{held}, put it away and drill the pilots, {numbers}.", held=held, numbers=numbers(holes))


def _clean(s: Situation) -> str:
    where = phrase("the lock's pocket and every hole") if s.cased else phrase("every hole")
    if s.on_wall:
        where = phrase("the hole")
    return phrase("Vacuum the chips out of {where}: they short electronics and cut a lead.", where=where)


DRILLING = (
    StepKind(
        "mark",
        _marked_at,
        _mark,
        when=lambda s: s.drills,
        after=("bare",),
        tools=lambda s: (tools.RULE, tools.PENCIL, tools.LEVEL),
    ),
    StepKind(
        "drill-bores",
        "key side",
        lambda s: phrase(
            "Open up {numbers} with the jig clamped on, to the sizes in the table.", numbers=numbers(s.holes("bore"))
        ),
        when=lambda s: bool(s.holes("bore")),
        after=("mark",),
        holes=_only("bore"),
        tools=_made(_only("bore")),
        cautions=_SAFE,
        brings="drilled",
    ),
    StepKind(
        "drill-bolts",
        "key side",
        lambda s: phrase(
            "Drill {numbers}, the bolt holes, with the {part} as template.{practice}",
            numbers=numbers(s.holes("bolt")),
            part=phrase("case") if s.lock_form == "gate" else phrase("jig"),
            practice=practice(s, s.holes("bolt")),
        ),
        when=lambda s: bool(s.holes("bolt")),
        after=("drill-bores",),
        holes=_only("bolt"),
        tools=_made(_only("bolt")),
        cautions=_SAFE,
        brings="drilled",
    ),
    StepKind(
        "drill-lock",
        lambda s: "wall" if s.leaf is None else "key side",
        _lock,
        when=lambda s: bool(s.holes("function")),
        after=("mark",),
        holes=_only("function"),
        tools=_made(_only("function")),
        cautions=_SAFE,
        brings="drilled",
    ),
    StepKind(
        "drill-pocket",
        "lock edge",
        _pocket,
        when=lambda s: bool(s.holes("pocket")),
        after=("mark",),
        holes=_only("pocket"),
        tools=_made(_only("pocket")),
        cautions=_SAFE,
        brings="drilled",
        tasks=("cut-edge-pocket",),
    ),
    StepKind(
        "drill-behind",
        "key side",
        lambda s: phrase(
            "Drill {numbers} for the lead, where the case will stand.{practice}",
            numbers=numbers(_holes_behind(s)),
            practice=practice(s, _holes_behind(s)),
        ),
        when=lambda s: bool(_holes_behind(s)),
        after=("drill-bolts",),
        holes=_holes_behind,
        tools=_made(_holes_behind),
        cautions=_SAFE,
        brings="drilled",
        tasks=("drill-access-hole",),
    ),
    StepKind(
        "drill-lead",
        "inside",
        _lead,
        when=lambda s: bool(_lead_holes(s)),
        # A jig for a slanted hole stands on the bolt holes.
        after=("drill-behind",),
        holes=_lead_holes,
        tools=_made(_lead_holes),
        cautions=_SAFE,
        brings="drilled",
        tasks=("drill-access-hole", "drill-compound-bore"),
    ),
    StepKind(
        "drill-channel",
        "inside",
        lambda s: phrase(
            "From the bottom of the square bore drill {numbers}, the channel, with the jig, at the angle in the "
            "table: lean the bit slowly, it cuts its slot.",
            numbers=numbers(_channels(s)),
        ),
        when=lambda s: bool(_channels(s)),
        after=("drill-lead",),
        holes=_channels,
        tools=_made(_channels),
        cautions=_SAFE,
        brings="drilled",
        tasks=("drill-channel",),
    ),
    StepKind(
        "drill-bridge",
        "lock edge",
        lambda s: phrase(
            "Drill {numbers} through the bridge to the lock's pocket, the long bit leaning in the unit's pocket.",
            numbers=numbers(_bridges(s)),
        ),
        when=lambda s: bool(_bridges(s)),
        after=("drill-pocket",),
        holes=_bridges,
        tools=_made(_bridges),
        cautions=_SAFE,
        brings="drilled",
        tasks=("drill-channel",),
    ),
    StepKind(
        "leaf-off",
        "door",
        "With a second person take the leaf off its hinges, lay it on padded trestles and clamp the boring fixture to its "
        "hinge edge.",
        when=_bored,
        after=("mark",),
        tools=lambda s: (tools.TRESTLES, tools.SCREWDRIVERS),
    ),
    StepKind(
        "drill-raceway",
        "hinge edge",
        _raceway,
        when=lambda s: bool(s.holes(THROUGH)),
        after=("leaf-off",),
        holes=_only(THROUGH),
        tools=_made(_only(THROUGH)),
        cautions=_SAFE,
        brings="drilled",
        tasks=("bore-raceway", "pull-leaf-wire"),
    ),
    StepKind(
        "leaf-hung",
        "door",
        "With the second person hang the leaf again, every hinge screw in its own hole. It swings and closes as before; wedge "
        "it open again.",
        when=_bored,
        after=("drill-raceway",),
        tools=lambda s: (tools.SCREWDRIVERS, tools.WEDGES),
        brings="drilled",
    ),
    StepKind(
        "drill-pilots",
        lambda s: "lock edge" if s.in_edge else "inside",
        _pilots,
        when=lambda s: bool(s.holes("fixing")),
        after=("drill-lock", "drill-channel", "try-housing"),
        holes=_only("fixing"),
        tools=lambda s: (*tools.of_holes(s, s.holes("fixing")), *(() if s.in_edge else (tools.LEVEL,))),
        cautions=(*_SAFE, cautions.STATIC),
        brings="drilled",
    ),
    StepKind(
        "clean",
        lambda s: "wall" if s.leaf is None else "door",
        _clean,
        when=lambda s: s.drills,
        after=("drilled",),
        tools=lambda s: (tools.VACUUM,),
        cautions=(cautions.DUST,),
    ),
    StepKind(
        "line-holes",
        "inside",
        lambda s: (
            phrase("Press in where the lead passes, each in the hole of its size: ")
            + "; ".join(part.description or part.part for part in s.of_form("consumable", *_LININGS))
            + "."
        ),
        when=lambda s: bool(s.of_form("consumable", *_LININGS)),
        after=("clean",),
        parts=lambda s: s.of_form("consumable", *_LININGS),
    ),
)

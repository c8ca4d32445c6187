"""The plan of the work, against what hands, tools and solids allow: worked out here from the bodies of each fit.

Nothing of what the steps declare about their order is read. What each step does to the door is said once, in DOES; what
must then come before what follows from where holes, lead, case, plate and head are.
"""

import os
import random
from collections import Counter
from dataclasses import replace
from itertools import pairwise

import pytest

from hwsched.attributes.of_parts import FORM
from hwsched.calc.opening.bore import Rod
from hwsched.calc.opening.solid import apart_mm, bounds
from hwsched.fitting.tasks import tasks_of
from hwsched.rules.solid.bodies import existing_bodies, head_bodies, screws_of, slot_of, solid_of
from hwsched.values import Catalogue, FitPart, Item, Part
from hwsched.work import tools as kinds
from hwsched.work.checks import without_power
from hwsched.work.plan import plan
from hwsched.work.steps import STEPS
from hwsched.work.steps.drilling import numbers, practice
from hwsched.work.tools import of_holes
from tests.work.conftest import situation_of

RANDOM = max(250, int(os.environ.get("HWSCHED_FUZZ", "0")) // 25)
"""Fits put together at random in every run; 2,000 in full."""

# What a step does to the door, in the words of this test.
DOES = {
    "key": {"program", "try-key", "try-reader", "test"},
    "unfed": {"feed-off"},
    "fed": {"bench-power", "pack-in", "power-on"},
    "old off": {
        "mortise-cylinder-off", "euro-cylinder-off", "rim-lock-off", "bored-lock-off", "cabinet-bolt-off",
        "gate-latch-off",
    },
    "case out": {"case-out"},
    "case in": {"case-back"},
    "lead drawn": {"lead-through"},
    "wire drawn": {"wire-in"},
    "new in": {
        "mortise-cylinder-in", "euro-cylinder-in", "rim-cylinder-in", "bored-lock-in", "cabinet-bolt-in",
        "gate-lock-in", "reader-in",
    },
    "over the head": {"dress-head"},
    "on": {"plate-on", "bond-on", "unit-into-edge"},
    "plugged": {"plug-in", "connect-in-hand"},
    "wired": {"connect-supply"},
    "measured": {"polarity"},
    "fed here": {"pack-in", "power-on"},
    "on face": {"plate-on", "bond-on"},
    "closed": {"cover", "unit-into-edge"},
    "cleaned": {"clean"},
    "lined": {"line-holes"},
}  # fmt: skip
LEAD_ABOUT_MM = 3.0
"""A lead is as good as in a hole whose axis it keeps to within this."""


def at(found, what):
    """Numbers of the steps that do something; those of holes by the hole's name."""
    return [step.number for step in found.steps if step.name in DOES[what]]


def one(found, what):
    """Number of the one step that does it; None where none does."""
    numbers = at(found, what)
    assert len(numbers) < 2, (what, numbers)
    return numbers[0] if numbers else None


def drilled_at(found):
    return {id(hole): step.number for step in found.steps for hole in step.holes}


def before(a, b):
    """Whether one step comes before another; what is not done at all comes before nothing and after nothing."""
    return a is None or b is None or a < b


def check_parts(s, found):
    wanted = Counter(id(part) for part in s.fit.parts if part.role != "tool")
    taken = Counter(id(part) for step in found.steps for part in step.parts)
    assert taken == wanted, [part.part for part in s.fit.parts if wanted[id(part)] != taken[id(part)]]


def check_holes(s, found):
    assert Counter(id(hole) for step in found.steps for hole in step.holes) == Counter(id(h) for h in s.fit.holes)
    when = drilled_at(found)
    last = max(when.values(), default=0)
    # Chips fall from every hole: then all is cleaned, and only then comes what they spoil.
    assert before(last or None, one(found, "cleaned"))
    if s.fit.holes:
        assert one(found, "cleaned") is not None
        for what in ("lead drawn", "wire drawn", "new in", "on", "plugged", "lined", "over the head"):
            assert before(one(found, "cleaned"), one(found, what)), what
    for hole in s.fit.holes:
        if hole.from_depth_mm > 0:
            # It begins at the bottom of another one, at the same place.
            (first,) = [h for h in s.fit.holes if (h.x_mm, h.y_mm) == (hole.x_mm, hole.y_mm) and h is not hole
                        and not h.by_template and h.from_depth_mm == 0]  # fmt: skip
            assert when[id(first)] < when[id(hole)]


def check_case(s, found):
    """Nothing is drilled against a case that stands in the leaf, and nothing led through one that does not."""
    thick = s.leaf.thickness_mm if s.leaf is not None else None
    if thick is None:
        return
    bodies = [body.solid for body in existing_bodies(s.given, s.fit) if body.kind == "case"]
    out, back, when = one(found, "case out"), one(found, "case in"), drilled_at(found)
    for hole in s.fit.holes:
        solid = solid_of(hole, thick)
        if solid is not None and any(apart_mm(solid, each) < 1.0 for each in bodies):
            assert out is not None
            assert out < when[id(hole)] < back
    assert (out is None) == (back is None)
    assert before(one(found, "old off"), out)
    path = s.fit.cable.points_mm if s.fit.cable is not None else ()
    # The lead begins in the case, and its cylinder is held by it: it stands there first.
    if path and any(apart_mm(Rod(path[0], path[0], 0.1), each) < 0 for each in bodies):
        assert before(back, one(found, "lead drawn"))
        assert before(back, one(found, "new in"))
    # A wire that is pulled into the pocket is out of the way before the case closes it.
    assert before(one(found, "wire drawn"), back)


def passes(path, solid):
    """Whether a way of points runs in a hole for some of its length."""
    for a, b in pairwise(path):
        for share in (0.0, 0.25, 0.5, 0.75, 1.0):
            point = tuple(p + share * (q - p) for p, q in zip(a, b, strict=True))
            spot = Rod(point, point, 0.02)
            if apart_mm(spot, solid) < -LEAD_ABOUT_MM / 2:
                return True
    return False


def check_lead(s, found):
    drawn, new, plugged, when = (
        one(found, "lead drawn"), one(found, "new in"), one(found, "plugged"), drilled_at(found)
    )  # fmt: skip
    assert (drawn is None) == (s.fit.cable is None)
    if drawn is None:
        return
    thick = s.leaf.thickness_mm if s.leaf is not None else None
    for hole in s.fit.holes:
        # The lead is what holes of these purposes are for; others it passes where they lie on its way.
        own = hole.purpose in ("cable", "channel", "function")
        solid = solid_of(hole, thick) if thick is not None else None
        if own or (solid is not None and passes(s.fit.cable.points_mm, solid)):
            assert when[id(hole)] < drawn, hole.name
    # It hangs on the new lock: collar and rings go over it while its end is free, and it is drawn before the lock
    # closes the hole behind it.
    assert before(one(found, "over the head"), drawn)
    assert before(drawn, new)
    assert before(one(found, "lined"), drawn)
    assert before(drawn, plugged)
    # A threaded cylinder turns its lead: the end is free until it stands.
    assert before(new, plugged)


def over(rect, hole):
    cut = slot_of(hole)
    return cut.x0 < rect[2] and cut.x1 > rect[0] and cut.y0 < rect[3] and cut.y1 > rect[1]


def check_covered(s, found):
    """What a plate or a head stands over is drilled before it comes, and what is closed is entered no more."""
    when, on, closed = drilled_at(found), one(found, "on"), one(found, "closed")
    place = s.fit.placement
    if place is not None:
        rect = (place.x_mm, place.y_mm, place.x_mm + place.width_mm, place.y_mm + place.height_mm)
        for hole in s.fit.holes:
            face = "lock-edge" if place.face == "edge" else place.face
            if hole.face == face and (hole.by_template or over(rect, hole)):
                assert before(when[id(hole)], on), hole.name
    thick = s.leaf.thickness_mm if s.leaf is not None else None
    if thick is not None:
        if screws_of(s.given, s.fit, thick):
            assert any(hole.purpose == "fixing" and when[id(hole)] < on for hole in s.fit.holes)
        for head in head_bodies(s.given, s.fit):
            box = bounds(head.solid)
            for hole in s.fit.holes:
                rect = (box.low[0], box.low[1], box.high[0], box.high[1])
                if hole.face == head.face and over(rect, hole):
                    assert before(when[id(hole)], one(found, "new in")), hole.name
    for what in ("lead drawn", "plugged", "wired", "measured", "new in"):
        number = one(found, what)
        assert number is None or before(number, closed), what
    if "unit-into-edge" not in {step.name for step in found.steps}:
        assert before(on, one(found, "plugged"))
    assert before(one(found, "measured"), on)
    assert before(one(found, "measured"), one(found, "wired"))
    assert before(one(found, "wire drawn"), one(found, "measured"))


def check_power(s, found):
    """No key is shown to a unit that only its coin cell feeds, and each is tried before it is closed."""
    live, states = False, {}
    for step in found.steps:
        live = (live or step.name in DOES["fed"]) and step.name not in DOES["unfed"]
        states[step.name] = live
    if s.unit is None or s.fit.power == "none":
        return
    for step in found.steps:
        if step.name in DOES["key"]:
            assert states[step.name], step.name
    if closed := one(found, "closed"):
        assert any(step.name in ("try-key", "try-reader") and step.number < closed for step in found.steps)
    # Nothing is wired or plugged while it is fed.
    for what in ("plugged", "wired"):
        for number in at(found, what):
            assert not states[found.steps[number - 1].name]
    # The clock is kept by a coin cell from the bench on, or set at the door.
    kept, set_here = s.has("coin-cell"), found.step("set-clock") is not None
    assert kept != set_here


def check_order_of_visit(s, found):
    names = [step.name for step in found.steps]
    bench = [step.number for step in found.steps if step.where == "bench"]
    assert bench == list(range(1, len(bench) + 1))
    assert names[-1] in ("test", "hand-over")
    compare = names.index("compare") + 1
    for step in found.steps:
        if step.where != "bench" and step.number != compare:
            assert step.number > compare
    for number in drilled_at(found).values():
        assert before(one(found, "old off"), number)
    assert before(one(found, "old off"), one(found, "new in"))
    assert one(found, "new in") is not None or not s.has("cylinder", "lock", "reader")


FIRST = (
    # What a hand does before another thing, whatever the opening: names of this test, or of steps.
    ("lay-out-box", "compare"), ("coin-cell", "bench-power"), ("bench-power", "program"), ("program", "unfed"),
    ("try-old", "old off"), ("wedge", "old off"), ("supply-off", "old off"), ("supply-off", "wire drawn"),
    ("supply-mount", "measured"), ("wedge", "transfer"), ("supply-off", "transfer"), ("transfer", "wire drawn"),
    ("wedge", "raceway"), ("raceway", "wire drawn"), ("cleaned", "raceway"), ("lined", "wire drawn"),
    ("old off", "compare-cam"), ("old off", "compare-tail"), ("compare-cam", "mark"), ("compare-tail", "mark"),
    ("compare-tail", "cut-tail"), ("cut-tail", "new in"), ("cut-tail", "lead drawn"), ("drill-lock", "wall-fixings"),
    ("wall-fixings", "cleaned"), ("wall-fixings", "on"), ("try-reader", "controller"), ("controller", "test"),
    ("build-cylinder", "over the head"),
    ("build-cylinder", "new in"), ("old off", "mark"), ("case out", "mark"), ("compare-cam", "over the head"),
    ("mark", "drill-bores"), ("mark", "drill-bolts"), ("mark", "drill-lock"), ("mark", "drill-pocket"),
    ("mark", "drill-lead"), ("mark", "drill-channel"), ("mark", "drill-bridge"), ("mark", "drill-raceway"),
    ("mark", "drill-pilots"), ("mark", "leaf-off"), ("leaf-off", "drill-raceway"), ("drill-raceway", "leaf-hung"),
    ("leaf-hung", "cleaned"), ("leaf-hung", "transfer"), ("supply-mount", "polarity"),
    # A jig stands on what was drilled before; a plate is a template where its place is made.
    ("drill-bores", "drill-bolts"), ("drill-lead", "drill-channel"), ("drill-pocket", "drill-bridge"),
    ("drill-pocket", "try-housing"), ("drill-bridge", "try-housing"), ("try-housing", "drill-pilots"),
    ("drill-lead", "drill-pilots"), ("drill-channel", "drill-pilots"), ("drill-lock", "drill-pilots"),
    ("unfed", "try-housing"), ("try-housing", "connect-in-hand"),
    ("cleaned", "case in"), ("lined", "case in"), ("cleaned", "latch-in"), ("lined", "new in"),
    ("old off", "latch-in"), ("latch-in", "lead drawn"), ("latch-in", "new in"), ("new in", "try-levers"),
    ("try-levers", "on"), ("new in", "rim-case-back"), ("rim-case-back", "on"), ("case in", "over the head"),
    ("cleaned", "over the head"), ("wire drawn", "new in"), ("wire drawn", "latch-in"),
    ("new in", "glass-clean"), ("glass-clean", "on"), ("lined", "on"), ("new in", "on"),
    ("measured", "connect-in-hand"),
    ("on face", "wired"), ("new in", "wired"), ("plugged", "fed here"), ("wired", "fed here"), ("on face", "fed here"),
    ("new in", "fed here"), ("unfed", "fed here"), ("fed here", "set-clock"), ("set-clock", "try-key"),
    ("set-clock", "try-reader"), ("fed here", "closed"), ("closed", "seal"), ("new in", "seal"), ("closed", "added"),
    ("seal", "added"), ("closed", "test"), ("seal", "test"), ("new in", "test"), ("test", "hand-over"),
)  # fmt: skip


def check_hands(s, found):
    names = [step.name for step in found.steps]
    for a, b in FIRST:
        for first in DOES.get(a, {a}):
            for then in DOES.get(b, {b}):
                if first in names and then in names:
                    assert names.index(first) < names.index(then), (first, then)
    if s.new_lock == "bored-lever-lock" and "drill-lead" in names:
        # Its jig stands on the bolt holes.
        assert names.index("drill-bolts") < names.index("drill-lead")


def check_tools(s, found):
    listed = {(tool.form, tool.size_mm) for tool in found.tools}
    names = {tool.name for tool in found.tools}
    assert len(names) == len(found.tools)
    for hole in s.fit.holes:
        if hole.pilot_mm is not None:
            assert ("twist-drill", hole.pilot_mm) in listed
        if hole.tool:
            assert (hole.tool, hole.diameter_mm or None) in listed
    wants = {
        "screw": ("screwdrivers", "driver"), "measure at": ("voltmeter",), "measure and": (), "vacuum": ("vacuum",),
        "pull wire": ("pull wire",), "tape the lead flat": ("adhesive tape",), "program key": ("programming",),
        "punch": ("punch",), "plugs": ("hammer drill",), "anchors": ("anchors",), " tap the": ("tap of",),
        "pipes": ("detector",), "core bit": ("core bit",),
        "alcohol": ("alcohol",), "with wax": ("wax",), "drop of oil": ("oil",), "mark ": ("tape",),
        "level.": ("level",), "deburr": ("deburring",), "break": ("pliers",), "wedge": ("wedges",),
    }  # fmt: skip
    for step in found.steps:
        held = " ".join(tool.name for tool in found.tools)
        for word, tools in wants.items():
            if word in step.text.lower():
                assert not tools or any(tool in held for tool in tools), (word, step.text)
        for part in step.parts:
            known = s.given.catalogue.get(part.part)
            if part.role == "fastener" and known is not None and known.attributes.get("form") != "adhesive":
                assert any("driver" in tool.name or "wrench" in tool.name for tool in step.tools), step.name
            if part.role == "fastener" and known is not None and known.attributes.get("security_drive"):
                assert any("security" in tool.name for tool in step.tools)


def check_cautions(s, found):
    """Each stands where the hand is, at the first step that it is for."""
    holds = {step.name: {caution.name for caution in step.cautions} for step in found.steps}
    drills = [step for step in found.steps if step.holes]
    for step in drills:
        assert "drill" in holds[step.name]
        brick = s.leaf is None and s.given.opening.wall_build == "masonry"
        assert ("dust" in holds[step.name]) == (s.material == "mineral-core" or brick)
    opening = s.given.opening
    assert ("fire" in holds["compare"]) == (opening.rating != "none")
    assert ("egress" in holds["compare"]) == (opening.egress != "none")
    assert ("egress" in holds["test"]) == (opening.egress != "none")
    if s.material == "glass":
        assert "glass" in holds["compare"]
    for step in found.steps:
        if any(part.role in ("battery", "coin-cell") for part in step.parts):
            assert "cells" in holds[step.name]
        if step.name in {"wire-in", "polarity", "connect-supply", "power-on", "supply-mount"}:
            assert "low-voltage" in holds[step.name]
    said = [caution.name for step in found.steps for caution in found.new_cautions(step)]
    # Told once in full: what is repeated is not read.
    assert len(said) == len(set(said))
    assert set(said) == set().union(*holds.values())


def check_readings(s, found):
    readings = [r for step in found.steps for r in step.readings] + [c.reading for c in found.checks if c.reading]
    for reading in readings:
        if reading.low is None or reading.high is None:
            assert reading.needs
            assert reading.expected.startswith("unknown: needs")
        else:
            assert 0 < reading.low < reading.high
    assert all(check.expected for check in found.checks)
    if s.unit is not None and s.fit.power != "none":
        assert len(readings) >= 4


ARM_MM = 300.0
"""So far a drill with its bit comes into the gap between a leaf that hangs and its frame, at the very most."""


def check_leaf_off(s, found):
    """A bore from the hinge edge that is longer than any gap is made with the leaf off its hinges."""
    names = [step.name for step in found.steps]
    long = [h for h in s.fit.holes if h.face == "hinge-edge" and h.depth_mm is not None and h.depth_mm > ARM_MM]
    assert ("leaf-off" in names) == ("leaf-hung" in names) == bool(long)
    if long:
        at_bore = next(step.number for step in found.steps if step.holes and step.holes[0] is long[0])
        assert names.index("leaf-off") + 1 < at_bore < names.index("leaf-hung") + 1


def check_own_supply(s, found):
    """What still lies in the box is not switched off; both ends of its wire are connected, and somebody feeds it."""
    names = [step.name for step in found.steps]
    own = any(part.role == "supply" for part in s.fit.parts)
    assert ("supply-off" in names) == (s.fit.power == "supply" and s.unit is not None and not own)
    if (polarity := found.step("polarity")) is not None:
        assert "far end" in polarity.text
        assert ("licensed hands have connected its mains" in polarity.text) == own
        assert any("stripper" in tool.name for tool in polarity.tools)


def check_exit_device(s, found):
    """What works the latch is called by its name: a bar has no case that could be taken off."""
    said = " ".join(step.text for step in found.steps).lower()
    bar = s.lock_form == "rim" and any(item.kind == "exit-device" for item in s.given.items)
    assert ("exit device's head" in said) == bar
    assert ("rim lock's case" in said) == (s.lock_form == "rim" and not bar)


def check_words(s, found):
    """A step names only what there is at this opening."""
    said = " ".join(step.text for step in found.steps).lower()
    lines = " ".join(check.text for check in found.checks).lower()
    if s.leaf is None:
        here = f"{said} {lines} {' '.join(step.where for step in found.steps)}"
        assert not [word for word in ("lock edge", "hinge", "the leaf", "lever", "door", "old part") if word in here]
    if s.lock_form in ("gate", "cabinet") and not s.rated:
        assert "leaf" not in f"{said} {lines}"
    if s.material == "glass":
        assert "front plate" not in said
    assert "lead the lead" not in said
    if (dressed := found.step("dress-head")) is not None:
        assert ("in this order" in dressed.text) == (len(dressed.parts) > 1)
    if (mark := found.step("mark")) is not None and s.leaf is not None:
        faces = {hole.face for hole in s.fit.holes if not hole.by_template}
        at = {"inside": "inside", "key": "key side", "lock-edge": "lock edge", "hinge-edge": "hinge edge"}
        assert not faces or mark.where == (at[faces.pop()] if len(faces) == 1 else "door")
    assert ("wax" in said) == (s.material == "aluminium" and s.drills)
    assert ("inactive one bolted" in said) == (s.given.opening.form == "pair")
    assert ("second person inside" in said) == (s.leaf is not None and s.lock_form not in ("gate", "cabinet"))
    assert ("pocket" in said) <= (s.cased or s.in_edge)
    assert ("pull wire" in said) <= any(hole.purpose in ("cable", "channel") for hole in s.fit.holes)
    assert "one way in" not in said
    assert "-" not in [word for step in found.steps for word in step.text.split()]
    through = [h for h in s.fit.holes if h.depth_mm is None and h.face in ("inside", "key")]
    assert ("both faces" in said) == (bool(through) and s.material in ("wood", "mineral-core", "composite"))
    for step in found.steps:
        assert step.text.endswith("."), step.text
        assert "  " not in step.text
        assert "None" not in step.text


def role(s, *roles):
    return any(part.role in roles for part in s.fit.parts)


def of_form(s, kind, form):
    known = (s.given.catalogue.get(part.part) for part in s.fit.parts if part.role == kind)
    return any(each is not None and each.attributes.get("form") == form for each in known)


def cut_off(s):
    return s.fit.stack is not None and s.fit.stack.cut_off_mm > 0


def in_leaf(s):
    """Whether the lead goes through the leaf, and not flat along its face."""
    return any(hole.purpose in ("cable", "channel") for hole in s.fit.holes)


def in_pocket(s):
    """Whether the old lock's case stands in a pocket of the leaf."""
    return s.leaf is not None and s.lock is not None and s.lock.lock_form in ("mortise", "euro-profile")


def fed_from_afar(s):
    return s.fit.power == "supply"


def wet(s):
    """Whether rain may reach it; where nobody has said, it may."""
    return s.given.opening.exposure != "interior"


def slanted(s):
    return any(hole.up_deg or hole.edge_deg for hole in s.fit.holes if hole.purpose == "cable")


def long_way(s):
    """Whether the wire's way is bored through the leaf, and not drilled into its hinge edge alone."""
    return any(hole.face == "hinge-edge" and hole.tool == "installer-bit" for hole in s.fit.holes)


def spare_mm(s):
    """Return what is left of the lead; a loop of less than 3 mm need not lie anywhere."""
    left = s.fit.cable.available_mm - s.fit.cable.length_mm if s.fit.cable is not None else 0.0
    return left if left >= 3.0 else 0.0


def edge(s):
    return s.fit.placement is not None and s.fit.placement.face == "edge"


def wall(s):
    return s.fit.placement is not None and s.fit.placement.face == "wall"


def other_mounting(s):
    mounted = [part for part in s.fit.parts if part.role == "mounting"]
    known = [s.given.catalogue.get(part.part) for part in mounted]
    return any(each is None or each.attributes.get("form") != "gasket" for each in known)


# Words that a step says at some openings and not at others, with the openings at which whoever does it wants them.
SAID = (
    ("program", "set the clock", lambda s: role(s, "coin-cell")),
    ("feed-off", "the coin cell keeps time", lambda s: role(s, "coin-cell")),
    ("feed-off", "bench supply", fed_from_afar),
    ("feed-off", "Take the pack out", lambda s: not fed_from_afar(s)),
    ("bench-power", "Connect the unit to a bench supply", fed_from_afar),
    ("bench-power", "cells into the pack", lambda s: not fed_from_afar(s)),
    ("build-cylinder", "thread lock on its screws", lambda s: of_form(s, "consumable", "thread-lock")),
    ("build-cylinder", "off the tailpiece", cut_off),
    ("cut-tail", "at its notch", cut_off),
    ("cut-tail", "keeps its length", lambda s: not cut_off(s)),
    ("cut-tail", "Thread lock", lambda s: of_form(s, "consumable", "thread-lock")),
    ("lead-through", "Put the extension on the lead", lambda s: role(s, "lead-extension")),
    ("lead-through", "Push the pull wire in", lambda s: in_leaf(s) and not wall(s)),
    ("lead-through", "back through the case", lambda s: in_leaf(s) and in_pocket(s)),
    ("lead-through", "at the unit's pocket", lambda s: in_leaf(s) and edge(s)),
    ("lead-through", "at the access hole", lambda s: in_leaf(s) and not edge(s) and not wall(s)),
    ("lead-through", "lay it flat along the face", lambda s: not in_leaf(s) and s.leaf is not None
     and s.lock_form != "cabinet"),
    ("lead-through", "from the front", lambda s: not in_leaf(s) and s.lock_form == "cabinet"),
    ("lead-through", "not pinched under the edge of the lock's cover", lambda s: s.material == "glass"),
    ("wire-in", "Lay the wire from the supply to where the unit comes", lambda s: s.leaf is None),
    ("wire-in", "close the raceway", lambda s: role(s, "raceway")),
    ("wire-in", "across the leaf", lambda s: any(hole.face == "hinge-edge" for hole in s.fit.holes)),
    ("wire-in", "beside the case's place", lambda s: in_pocket(s)
     and any(hole.face == "hinge-edge" for hole in s.fit.holes)),
    ("wire-in", "to the lock's pocket", lambda s: in_pocket(s)
     and any(hole.face == "hinge-edge" for hole in s.fit.holes)),
    ("drill-raceway", "Stop in the lock's pocket", lambda s: in_pocket(s) and long_way(s)),
    ("drill-raceway", "Past a panel", lambda s: not long_way(s)),
    ("drill-bolts", "with the case as template", lambda s: s.lock_form == "gate"),
    ("drill-bolts", "with the jig as template", lambda s: s.lock_form != "gate"),
    ("mortise-cylinder-in", "turn the lead along with it", lambda s: s.fit.cable is not None),
    ("mortise-cylinder-in", "the lead flat beside it", lambda s: s.fit.cable is not None),
    ("supply-mount", "off the leaf", lambda s: s.leaf is not None),
    ("plug-in", "Press until no gap shows", wet),
    ("cover", "gasket lies in its groove", wet),
    ("cover", "the lead's spare", lambda s: spare_mm(s) > 0),
    ("cover", "the slack of the lead", lambda s: spare_mm(s) == 0),
    ("cover", "wire", fed_from_afar),
    ("plate-on", "lead and wire through", fed_from_afar),
    ("plate-on", "Lay the gasket under it", lambda s: of_form(s, "mounting", "gasket")),
    ("plate-on", "With it: ", other_mounting),
    ("plate-on", "on the wall behind the reader", wall),
    ("plate-on", "over the access hole", lambda s: in_leaf(s) and not wall(s)),
    ("plate-on", "where the drawing shows", lambda s: not in_leaf(s) and not wall(s)),
    ("unit-into-edge", "to spare", lambda s: spare_mm(s) > 0),
    ("mortise-cylinder-in", "flush with the collar", lambda s: role(s, "collar")),
    ("mortise-cylinder-in", "as the packet says", lambda s: not role(s, "collar")),
    ("mortise-cylinder-in", "patch's covers", lambda s: s.material == "glass"),
    ("mortise-cylinder-off", "patch's covers", lambda s: s.material == "glass"),
    ("drill-lead", "lean the bit", slanted),
    ("drill-lead", "with the jig on the bolt holes", lambda s: slanted(s) and s.lock_form == "bored"),
    ("drill-lock", "for the reader", lambda s: s.leaf is None),
    ("drill-lock", "for the new lock", lambda s: s.leaf is not None),
    ("drill-pocket", "Mill or saw and file", lambda s: s.material == "aluminium"),
    ("drill-pocket", "Mortise", lambda s: s.material != "aluminium"),
    ("drill-pilots", "the empty housing's plate", edge),
    ("drill-pilots", "level", lambda s: not edge(s)),
    ("clean", "the lock's pocket and every hole", in_pocket),
    ("clean", "of the hole:", wall),
    ("compare", "hand, ", lambda s: s.leaf is not None and s.lock_form != "cabinet"),
    ("compare", "what runs behind the reader", lambda s: s.leaf is None),
    ("wedge", "Wedge the leaf", lambda s: s.lock_form not in ("cabinet", "gate")),
    ("wedge", "tie it", lambda s: s.lock_form == "gate"),
    ("test", "the inactive one bolted", lambda s: s.leaf is not None and s.given.opening.form == "pair"),
    ("test", "second person inside", lambda s: s.leaf is not None and s.lock_form not in ("cabinet", "gate")),
    ("test", "with the gate open", lambda s: s.lock_form == "gate"),
    ("test", "with the door open", lambda s: s.lock_form == "cabinet"),
    ("hand-over", "Old parts and keys go to the owner", lambda s: s.leaf is not None),
)  # fmt: skip


def check_said(s, found):
    """What is said at some openings only is said at those."""
    for name, words, wanted in SAID:
        step = found.step(name)
        assert step is None or (words in step.text) == bool(wanted(s)), (name, words, step.text)


AT_UNIT = ("plate-on", "plug-in", "cover")


def check_where(s, found):
    """What is done at a unit is done where it stands; at one that stands in the edge, in the hand."""
    for name in (*AT_UNIT, "connect-supply", "pack-in", "power-on", "set-clock"):
        if (step := found.step(name)) is not None and s.fit.placement is not None:
            in_hand = name not in AT_UNIT and edge(s)
            assert step.where == ("wall" if wall(s) else "hand" if in_hand else "inside"), name
    for name, where in (
        ("wire-in", "hinge edge"), ("polarity", "inside"), ("drill-lock", "key side"), ("clean", "door"),
        ("seal", "door"), ("compare", "door"), ("test", "door"), ("hand-over", "door"),
    ):  # fmt: skip
        if (step := found.step(name)) is not None:
            at_reader = "reader" if name in ("compare", "test", "hand-over") else "wall"
            assert step.where == (where if s.leaf is not None else at_reader), name
    if (step := found.step("lead-through")) is not None:
        assert step.where == ("wall" if wall(s) else "lock edge" if edge(s) else "inside")
    if (step := found.step("drill-pilots")) is not None:
        assert step.where == ("lock edge" if edge(s) else "inside")


def lets_go(s):
    """Whether an electric strike or a magnet stays in the frame, or a new one comes."""
    kinds = [item.kind for item in s.given.items if item.disposition in (None, "keep", "move")]
    kinds += [s.given.catalogue.get(part.part).kind for part in s.fit.parts if part.role == "strike"]
    return bool({"electric-strike", "electromagnetic-lock"} & set(kinds))


SHEET = (
    # What is tried at the end, with the openings at which there is something to be tried.
    ("A key without permission is refused", lambda s: True),
    ("The programmed key, leaf open", lambda s: s.leaf is not None and s.lock_form not in ("gate", "cabinet")),
    ("The programmed key, gate open", lambda s: s.lock_form == "gate"),
    ("The programmed key, cabinet open", lambda s: s.lock_form == "cabinet"),
    ("The programmed key", lambda s: s.leaf is None),
    ("Bolt or latch, closed", lambda s: s.leaf is not None),
    # Who may have to leave finds the way with and without power; unknown counts as yes.
    ("From inside, powered", lambda s: s.leaf is not None and s.given.opening.egress != "none"),
    ("From inside, no power", lambda s: s.leaf is not None and s.given.opening.egress != "none"),
    ("The leaf let go anywhere", lambda s: s.leaf is not None and s.given.opening.rating != "none"
     and s.given.opening.form != "pair"),
    ("Both leaves let go, anywhere", lambda s: s.leaf is not None and s.given.opening.rating != "none"
     and s.given.opening.form == "pair"),
    ("What the controller does", lambda s: s.leaf is None and s.given.opening.controller_output not in (None, "none")),
    ("Fire service or alarm", lambda s: s.leaf is None and s.given.opening.controller_output not in (None, "none")),
    ("Fire label on leaf and frame", lambda s: s.leaf is not None and s.given.opening.rating != "none"),
    ("Cylinder head in its collar", lambda s: role(s, "collar")),
    ("Lead and cover", lambda s: s.fit.cable is not None),
    ("Volts at unit, at rest", lambda s: s.unit is not None and s.fit.power != "none"),
    ("Volts at unit, operating", lambda s: s.unit is not None and s.fit.power != "none"),
    ("Strike or magnet in the frame", lambda s: s.unit is not None and s.fit.power == "supply" and lets_go(s)),
    ("On loss of the supply", lambda s: s.unit is not None and s.fit.power == "supply"),
    ("Clock, and record of the tests", lambda s: s.unit is not None),
)  # fmt: skip


def check_sheet(s, found):
    assert sorted(check.text for check in found.checks) == sorted(text for text, wanted in SHEET if wanted(s))


CHECKS = (
    check_said, check_sheet, check_where, check_parts, check_holes, check_case, check_lead, check_covered, check_power,
    check_order_of_visit, check_hands, check_tools, check_cautions, check_readings, check_words, check_leaf_off,
    check_own_supply, check_exit_device,
)  # fmt: skip


@pytest.fixture(scope="session")
def plans(openings):
    return {name: (s, plan(s)) for name, s in openings.items()}


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.__name__.removeprefix("check_").replace("_", " "))
def test_every_fit_of_the_sample_can_be_done_as_printed(plans, check):
    for name, (s, found) in plans.items():
        try:
            check(s, found)
        except AssertionError as error:
            raise AssertionError(f"{name}: {error}") from error


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.__name__.removeprefix("check_").replace("_", " "))
def test_every_opening_of_the_quay_can_be_done_as_printed(quay, check):
    for view in quay.openings:
        if view.fit is not None and view.fit.status == "fits":
            s = situation_of(view.points[0])
            check(s, plan(s))


def any_fit(rng, openings):
    """Return a fit of the sample with things left out of it or another power, at another turn."""
    s = rng.choice(openings)
    parts = tuple(
        part
        for part in s.fit.parts
        if part.role not in ("coin-cell", "collar", "consumable", "mounting", "credential", "cam") or rng.random() < 0.7
    )
    power = s.fit.power if rng.random() < 0.6 or s.unit is None else rng.choice(("battery", "supply"))
    if power == "supply":
        parts = tuple(part for part in parts if part.role != "battery")
    opening = replace(
        s.given.opening,
        rating=rng.choice(("none", "90", None)),
        egress=rng.choice(("none", "exit", None)),
        exposure=rng.choice(("interior", "exterior", None)),
    )
    given = replace(s.given, opening=opening)
    fit = replace(s.fit, parts=parts, power=power, battery=None)
    return replace(s, given=given, fit=fit)


def test_fits_put_together_at_random_can_be_done_as_printed(openings, monkeypatch):
    """In whatever order the steps are declared: what must come first is said by the steps, not by their files."""
    rng, known, declared = random.Random(7), list(openings.values()), list(STEPS)
    for _ in range(RANDOM):
        rng.shuffle(declared)
        monkeypatch.setattr("hwsched.work.plan.STEPS", tuple(declared))
        s = any_fit(rng, known)
        found = plan(s)
        for check in CHECKS:
            check(s, found)


# --- single things --------------------------------------------------------------------------------------------------


def test_the_plan_takes_the_tasks_of_the_labour_table(openings):
    """Hours are reckoned from tasks, work is done in steps: each task of a fit has a step, no step an unknown task."""
    from hwsched.calc.project.labour import labour_table

    known = {task for task, _ in labour_table()}
    for name, s in openings.items():
        found = plan(replace(s, first=s.given.point.number == 1, last=s.given.point.number == 1))
        of_steps = {task for step in found.steps for task in step.tasks}
        assert of_steps <= known
        assert {task.task for task in tasks_of(s.given, s.fit)} <= of_steps, name


def test_a_threaded_cylinder_says_how_often_it_turns(quay, of_mark):
    """CYL is 1 in long with 32 threads to the inch, and its head stands 1/8 proud: 7/8 of it go in, 28 turns."""
    found = plan(situation_of(of_mark("WOOD").points[0]))
    step = found.step("mortise-cylinder-in")
    assert "about 28 turns" in step.text
    assert "turn the lead along with it" in step.text


def test_what_a_person_adds_by_hand_is_fitted_too(quay, of_mark):
    s = situation_of(of_mark("WOOD").points[0])
    extra = replace(s.fit.parts[0], role="strike", part="ADDED", kind="electric-strike", description="Strike")
    found = plan(replace(s, fit=replace(s.fit, parts=(*s.fit.parts, extra))))
    assert found.step("added").parts == (extra,)
    assert found.step("added").text.endswith(" Strike.")
    assert plan(s).step("added") is None


def test_a_pack_at_rest_gives_its_nominal_voltage_and_works_down_to_what_the_unit_does(quay, of_mark):
    """Six cells of 1.5 V: 9 V at rest; what UNIT works down to is what the catalogue says, and asked for where not."""
    s = situation_of(of_mark("WOOD").points[0])
    attributes = {**s.unit.attributes, "pack_low_v": 5.4, "pack_high_v": 12.0}
    parts = {**s.given.catalogue.parts, "UNIT": replace(s.unit, attributes=attributes)}
    told = replace(s, given=replace(s.given, catalogue=Catalogue(parts, "test")))
    assert plan(told).step("pack-in").readings[0].expected == "9 to 12 V"
    lines = {check.text: check.expected for check in plan(told).checks}
    assert lines["Volts at unit, operating"] == "5.4 to 12 V"
    asked = {check.text: check.expected for check in plan(s).checks}
    assert asked["Volts at unit, operating"].startswith("unknown: needs part UNIT, lowest and highest pack")


def test_a_lock_with_its_unit_inside_is_fed_and_tried_and_nothing_is_plugged(quay, of_mark):
    s = situation_of(of_mark("GATE").points[0])
    own = Part("OWN", "gate-lock", attributes={"own_unit": True, "mounting": "bolt-on"})
    lock = replace(s.fit.part("lock"), part="OWN")
    kept = tuple(part for part in s.fit.parts if part.role not in ("lock", "unit", "mounting", "lead-extension"))
    given = replace(s.given, catalogue=Catalogue({**s.given.catalogue.parts, "OWN": own}, "test"))
    holes = tuple(hole for hole in s.fit.holes if hole.purpose == "bolt")
    fit = replace(s.fit, parts=(lock, *kept), holes=holes, cable=None, placement=None)
    found = plan(replace(s, given=given, fit=fit))
    names = [step.name for step in found.steps]
    assert "plug-in" not in names
    assert names.index("gate-lock-in") < names.index("pack-in") < names.index("try-key") < names.index("test")


def test_names_of_steps_are_their_own():
    names = [kind.name for kind in STEPS]
    assert len(names) == len(set(names))
    said = set().union(*DOES.values())
    assert said <= set(names)
    assert {name for pair in FIRST for name in pair} <= set(names) | set(DOES)


def test_every_step_is_taken_by_some_opening(plans, quay):
    """What no opening takes is not tried by these tests."""
    done = {step.name for _, found in plans.values() for step in found.steps}
    for view in quay.openings:
        if view.fit is not None and view.fit.status == "fits":
            done |= {step.name for step in plan(situation_of(view.points[0])).steps}
    # Both have tests of their own: no survey brings what a person adds by hand.
    assert {kind.name for kind in STEPS} - done == {"added", "release-mount"}


@pytest.mark.parametrize(
    ("number", "mounted", "connected"),
    [
        ("ROP-K1", "cut the frame for strike ROP-K1", "the pair at the electric strike: plus to A, minus to B."),
        ("ROP-E6", "Fix strike ROP-E6 under the frame's head", "at the electromagnetic lock: plus and minus as its"),
    ],
)
def test_what_lets_the_leaf_go_is_mounted_wired_connected_and_tried(openings, number, mounted, connected):
    """A new strike in the frame: its pair comes over the hinge with the unit's, and is dead while it is connected."""
    s = openings["M016 1"]
    kind = s.given.catalogue.get(number).kind
    s = replace(s, fit=replace(s.fit, parts=(*s.fit.parts, FitPart("strike", number, kind, 1.0, "chosen"))))
    found = plan(s)
    for check in CHECKS:
        check(s, found)
    steps = {step.name: step for step in found.steps}
    assert mounted in steps["release-mount"].text
    assert connected in steps["release-connect"].text
    assert "unit's output for it" in steps["connect-supply"].text
    order = [
        steps[name].number for name in ("supply-off", "release-mount", "release-wire", "release-connect", "power-on")
    ]
    assert order == sorted(order)
    assert steps["power-on"].number < steps["release-try"].number < steps["cover"].number
    assert [part.part for part in steps["release-mount"].parts] == [number]


def test_what_stays_in_the_frame_is_connected_and_not_mounted(openings):
    names = {step.name for step in plan(openings["OF-1 1"]).steps}
    assert {"release-wire", "release-connect", "release-try"} <= names
    assert "release-mount" not in names
    assert not names & {step.name for step in plan(openings["M001 1"]).steps if step.name.startswith("release")}


WALL_TOOLS = {
    "masonry": ("hammer drill", "detector", "core bit", "dust extraction"),
    "hollow": ("anchors", "detector", "hole saw"),
    "steel": ("tap of", "cutting oil", "hole saw"),
    "wood": ("twist drill", "hole saw"),
}


@pytest.mark.parametrize(
    ("aside", "said"),
    [
        (152.4, '42" above the floor, sideways 6" right of the entrance\'s edge, as one faces it.'),
        (-152.4, '42" above the floor, sideways 6" left of the entrance\'s edge, as one faces it.'),
        (None, '42" above the floor, sideways unknown: needs opening: Reader right (minus: left) of the entrance.'),
    ],
)
def test_a_reader_at_a_lift_is_marked_both_ways(openings, aside, said):
    s = openings["LIFT-1 1"]
    here = replace(s, given=replace(s.given, opening=replace(s.given.opening, reader_aside_mm=aside)))
    assert said in plan(here).step("mark").text


@pytest.mark.parametrize("wall", WALL_TOOLS)
def test_at_a_wall_the_fixings_are_drilled_for_with_what_that_wall_takes(openings, wall):
    """Plugs, anchors and threads do not come by themselves: who stands before brick with a wood saw goes home again."""
    form = {"masonry": "screw-and-plug", "hollow": "hollow-wall-anchor", "steel": "machine-screw", "wood": "wood-screw"}
    s = openings["LIFT-1 1"]
    (number,) = (
        each.number
        for each in s.given.catalogue.of_kind("fastener")
        if each.attributes.get("wall_build") == wall and each.attributes.get("size") == s.unit_screw
    )
    part = s.given.catalogue.parts[number]
    assert part.attributes["form"] == form[wall]
    parts = tuple(
        replace(each, part=number, description=part.description) if each.role == "fastener" else each
        for each in s.fit.parts
    )
    saw = "core-bit" if wall == "masonry" else "hole-saw"
    holes = tuple(replace(hole, tool=saw) for hole in s.fit.holes)
    opening = replace(s.given.opening, wall_build=wall)
    here = replace(s, given=replace(s.given, opening=opening), fit=replace(s.fit, parts=parts, holes=holes))
    found = plan(here)
    for check in CHECKS:
        check(here, found)
    names = [tool.name for tool in found.tools]
    for wanted in WALL_TOOLS[wall]:
        assert any(wanted in name for name in names), (wanted, names)
    step = found.step("wall-fixings")
    assert f"{int(here.fit.part('fastener').quantity)} screw centres" in step.text


def test_what_the_controller_wants_is_left_to_who_may_connect_it(openings):
    s = openings["LIFT-1 1"]
    found = plan(s)
    assert "the elevator contractor" in found.step("controller").text
    assert "What the controller does" in [check.text for check in found.checks]
    alone = replace(s, given=replace(s.given, opening=replace(s.given.opening, controller_output="none")))
    assert plan(alone).step("controller") is None


def test_what_stands_through_a_case_is_named_as_it_was_found(openings):
    """A narrow stile with a thumb turn and no lever is not asked for its levers."""
    s = openings["A-02 1"]
    assert {item.kind for item in s.given.items} >= {"thumb-turn"}
    text = plan(s).step("case-out").text
    assert "thumb turn" in text
    assert "lever" not in text
    bare = replace(s, given=replace(s.given, items=()), lock=replace(s.lock, thumb_turn=None))
    assert "levers, turn and escutcheons" in plan(bare).step("case-out").text


STOP, BOTH = "Use the depth stop.", "so that neither splinters."
PRACTICE = (
    # Material, holes as depth, tool and pilot, and how it is drilled: common practice.
    ("wood", [(9.5, "spade-bit", None)], f" {STOP}"),
    ("wood", [(None, "spade-bit", None)], f" From both faces, {BOTH}"),
    ("mineral-core", [(None, "hole-saw", 6.35)], f" From both faces on one pilot, {BOTH}"),
    # Of holes made in one step some end in the leaf and some go through: both is said.
    ("wood", [(9.5, "spade-bit", None), (None, "twist-drill", None)], f" {STOP} From both faces, {BOTH}"),
    ("composite", [(None, "twist-drill", None), (9.5, "hole-saw", 6.35)],
     f" {STOP} Lever the core out with a screwdriver. From both faces on one pilot, {BOTH}"),
    # What a saw cuts through falls out by itself.
    ("wood", [(9.5, "spade-bit", None), (None, "hole-saw", 6.35)], f" {STOP} From both faces on one pilot, {BOTH}"),
    ("hollow-metal", [(6.0, "step-drill", None)],
     " Punch, then drill with a drop of oil; stop behind the sheet. Deburr and touch up."),
    ("hollow-metal", [(None, "step-drill", None), (6.0, "step-drill", 3.2)],
     " Punch, drill the pilot, then open it up with a drop of oil; stop behind the sheet. Deburr and touch up."),
    ("steel-gate", [(None, "hole-saw", None)],
     " Punch, then drill with a drop of oil, through both walls. Deburr and touch up."),
    ("aluminium", [(None, "step-drill", 3.2)],
     " Punch, drill the pilot, then open it up slowly, with wax, through both walls. Deburr."),
    ("glass", [(None, "hole-saw", None)], ""),
)  # fmt: skip


@pytest.mark.parametrize(("material", "holes", "said"), PRACTICE)
def test_how_a_material_is_drilled(quay, of_mark, material, holes, said):
    s = situation_of(of_mark("WOOD").points[0])
    here = replace(s, leaf=replace(s.leaf, material=material))
    made = tuple(
        replace(s.fit.holes[0], depth_mm=depth, tool=tool, pilot_mm=pilot, order=n + 3)
        for n, (depth, tool, pilot) in enumerate(holes)
    )
    assert practice(here, made) == said
    assert numbers(made[:1]) == "hole 3"
    assert numbers(made + made) == ("holes 3 and 3" if len(made) == 1 else "holes 3, 4, 3 and 4")


@pytest.mark.parametrize(
    ("wall", "said"),
    [("masonry", "core bit"), ("steel", "Deburr"), ("hollow", "studs"), ("wood", "splinter"), (None, "")],
)
def test_how_a_wall_is_drilled(openings, wall, said):
    s = openings["LIFT-1 1"]
    here = replace(s, given=replace(s.given, opening=replace(s.given.opening, wall_build=wall)))
    told = practice(here, s.fit.holes)
    assert said in told
    assert bool(told) == bool(wall)


def otherwise(s):
    """Return a lock point as it is and in other shapes that words follow from."""
    yield s
    few = tuple(part for part in s.fit.parts if part.role in ("unit", "cylinder", "lock", "tailpiece", "cam"))
    yield replace(s, fit=replace(s.fit, parts=few, power="supply"))
    lockers = [part.number for part in s.given.catalogue.of_kind("consumable") if part.text_of(FORM) == "thread-lock"]
    more = (
        FitPart("mounting", "ADAPTER", "mounting", 1.0, ""),
        FitPart("consumable", lockers[0], "consumable", 1.0, ""),
    )
    yield replace(s, fit=replace(s.fit, parts=(*few, *more)))
    if s.fit.cable is not None:
        yield replace(s, fit=replace(s.fit, cable=replace(s.fit.cable, length_mm=s.fit.cable.available_mm)))
    if s.fit.stack is not None:
        for cut_off_mm in (0.0, 5.0):
            yield replace(s, fit=replace(s.fit, stack=replace(s.fit.stack, cut_off_mm=cut_off_mm)))
    if s.leaf is not None:
        for material in ("wood", "aluminium"):
            yield replace(s, leaf=replace(s.leaf, material=material))
    # A bore that leans one way only, and a wire's way that is made with another tool.
    for lean in ({"up_deg": 0.0, "edge_deg": 15.0}, {"up_deg": 45.0, "edge_deg": 0.0}):
        holes = tuple(replace(hole, **lean) if hole.purpose == "cable" else hole for hole in s.fit.holes)
        yield replace(s, fit=replace(s.fit, holes=holes))
    for tool in ("installer-bit", "twist-drill"):
        holes = tuple(replace(hole, tool=tool) if hole.face == "hinge-edge" else hole for hole in s.fit.holes)
        yield replace(s, fit=replace(s.fit, holes=holes))
    yield replace(
        s, fit=replace(s.fit, cable=None, holes=tuple(hole for hole in s.fit.holes if hole.purpose != "cable"))
    )


def test_each_word_that_is_said_at_some_openings_is_said_at_one_and_not_at_another(plans, quay):
    """Else the check of these words could not tell the one from the other."""
    views = [view for view in quay.openings if view.fit is not None and view.fit.status == "fits"]
    found = {(name, words): set() for name, words, _ in SAID}
    # One of each lock form, of what feeds it and of where its unit stands; each in all shapes.
    shapes = {}
    for s in (*(situation_of(view.points[0]) for view in views), *(s for s, _ in plans.values())):
        here = s.lock_form, s.given.opening.form, s.material, s.fit.power, s.in_edge, in_leaf(s), role(s, "raceway")
        shapes.setdefault(here, s)
    for each in shapes.values():
        for s in otherwise(each):
            made = plan(s)
            check_said(s, made)
            check_sheet(s, made)
            check_where(s, made)
            for name, words, _ in SAID:
                if (step := made.step(name)) is not None:
                    found[name, words].add(words in step.text)
    assert {key: told for key, told in found.items() if told != {True, False}} == {}


def test_without_power_an_opening_does_what_its_parts_and_what_stays_are_said_to_do(quay, of_mark):
    """A strike that stays says its fail mode, one that is taken away does not; of none at all it is asked for."""
    s = situation_of(of_mark("WOOD").points[0])
    assert without_power(s) == "inside as before, key side unknown: needs its maker's word"
    for disposition, said in (
        ("keep", "fail-safe"),
        ("remove", "inside as before, key side unknown: needs its maker's word"),
    ):
        strike = Item("strike", kind="electric-strike", disposition=disposition, fail="fail-safe")
        assert without_power(replace(s, given=replace(s.given, items=(*s.given.items, strike)))) == said
    reader = situation_of(of_mark("LIFT").points[0])
    assert without_power(reader) == "unknown: needs the fail mode of what the reader opens"


def test_what_cuts_and_what_the_cutting_wants_is_carried(quay, of_mark):
    """Dust of mineral core and of masonry is drawn off; steel wants oil, aluminium wax, and both a file."""
    s = situation_of(of_mark("WOOD").points[0])
    wanted = {
        "wood": set(), "composite": set(), "mineral-core": {"EXTRACTION"}, "hollow-metal": {"OIL", "FILE"},
        "steel-gate": {"OIL", "FILE"}, "aluminium": {"WAX", "FILE"},
    }  # fmt: skip
    for material, names in wanted.items():
        found = of_holes(replace(s, leaf=replace(s.leaf, material=material)), s.fit.holes)
        assert {name for name in ("EXTRACTION", "OIL", "WAX", "FILE") if getattr(kinds, name) in found} == names
    hole = replace(s.fit.holes[0], jig="boring jig", by_template=False)
    assert "boring jig" in [tool.name for tool in of_holes(s, (hole,))]
    assert "boring jig" not in [tool.name for tool in of_holes(s, (replace(hole, by_template=True),))]

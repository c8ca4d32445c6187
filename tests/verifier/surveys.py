"""Draws a catalogue and a survey from a seed: each truth whole, each size from a realistic range, some near the limits.

All is invented. Sizes of leaves, locks and preparations follow common practice as gathered from trade pages; catalogue
sizes are our own.
"""

from collections.abc import Iterator
from random import Random
from typing import Final

from tests.verifier.bodies import circle_meets, rects_meet
from tests.verifier.cells import Cells, Opening
from tests.verifier.held import IN_LEAF, ON_FACE
from tests.verifier.shops import INCH, most_operations
from tests.verifier.standing import footprint

FORMS: Final = (
    ("mortise", 22),
    ("bored", 16),
    ("rim", 12),
    ("narrow", 16),
    ("euro", 8),
    ("exit", 8),
    ("cabinet", 6),
    ("gate", 6),
    ("patch", 3),
    ("wall", 3),
)
"""What kind of opening is drawn, and how often of a hundred."""


def inches(rng: Random, low: float, high: float, parts: int = 16) -> float:
    """Draw a length in whole parts of an inch [mm]."""
    return rng.randint(round(low * parts), round(high * parts)) * INCH / parts


# --- the survey -----------------------------------------------------------------------------------------------------


def survey(rng: Random, parts: dict[str, Cells], count: int, first: int = 1, blanks: float = 0.06) -> list[Opening]:
    """Draw openings of whoever asks this shop; a share of them with cells left open."""
    lasting = {warm: most_operations(parts, warm) for warm in (True, False)}
    names = [name for name, _ in FORMS]
    weights = [weight for _, weight in FORMS]
    openings = []
    for i in range(count):
        form = rng.choices(names, weights)[0]
        drawn = _DRAW[form](rng, f"{form[:2].upper()}{first + i:05d}")
        drawn.items = list(_possible(drawn))
        _as_most_are(rng, drawn)
        if drawn.facts["power_wish"] != "Remote supply" and rng.random() < 0.93:
            # Nobody asks for cells at a door so busy that none lasts; a few are wrong, and to be found.
            drawn.facts["operations"] = min(drawn.facts["operations"], lasting[drawn.facts["cold"] >= 20.0])
        turned = drawn.lock.get("thumb_turn") == "yes"
        if drawn.lock.get("function") == "Deadlock" and not turned and rng.random() < 0.9:
            # Where people leave, a deadlock had its turn; a few are wrong, and to be found.
            drawn.facts["egress"] = "Not on an egress path"
            drawn.facts.pop("way_out", None)
        if form == "mortise" and not any(item["kind"] == "Lever or knob" for item in drawn.items):
            # Where trim stands nothing would say where it ends.
            drawn.lock["trim_inside"] = drawn.lock["trim_key"] = 0.0
        _handled(drawn)
        _fronted(drawn)
        _fixed(drawn)
        if rng.random() < blanks:
            _leave_open(rng, drawn)
        openings.append(drawn)
    return openings


def _as_most_are(rng: Random, opening: Opening) -> None:
    """Leave only some of what no shop could fit: such as a rated leaf that would have to be cut on site."""
    facts, leaf, lock = opening.facts, opening.leaf(), opening.lock
    # Leaves that are to be fed were ordered with a way for the wire; whoever surveys sees whether there is one.
    led = facts["power_wish"] == "Remote supply" and leaf and leaf["material"] != "Glass" and rng.random() < 0.6
    if leaf:
        leaf["raceway"] = "yes" if led else "no"
    if facts["rating"] == "Not rated" or rng.random() < 0.1:
        return
    # Listed leaves of wood take no way for a wire on site; a round preparation of a listed leaf came with it.
    if leaf and leaf["material"] != "Hollow metal":
        facts["rating"] = "Not rated"
    elif "cross_bore" in lock:
        lock["cross_bore"], lock["edge_bore"] = 53.975, 25.4


def _possible(opening: Opening) -> Iterator[Cells]:
    """Leave out what could not have stood beside the old lock's head or rose, or beside what was drawn before it."""
    x, y = opening.lock.get("backset") or 0.0, opening.lock["y"]
    # Head of an old mortise or rim cylinder 1-3/8 in, rose of an old bored knob 2-5/8 in: trade usage, from memory.
    radius = 1.3125 * INCH if opening.lock["lock"].startswith("Bored") else 0.6875 * INCH
    kept: list[Cells] = []
    for item in opening.items:
        own = item["kind"] in ("Thumb turn", "Trim or escutcheon", "Exit device", "Other")
        if not own and item["face"] != "Inside" and circle_meets(x, y, radius, footprint(item)):
            continue
        if not own and any(_same_face(item, each) and rects_meet(footprint(item), footprint(each)) for each in kept):
            continue
        kept.append(item)
        yield item


def _fixed(opening: Opening) -> None:
    """Tell how what stands there is fixed in the leaf, and what kind of exit device it is; some of it left open.

    From the mark alone, so that what else is drawn stays as it was.
    """
    rng = Random(f"fixed {opening.mark}")
    for i, item in enumerate(opening.items):
        insets = _INSETS.get(item["kind"])
        if insets is None:
            continue
        item["bolts"] = rng.choice(insets)
        if item["kind"] == "Exit device":
            item["device"] = rng.choice((*4 * ("Rim, latch on the face",), ON_FACE, IN_LEAF))
            if item["device"] in (ON_FACE, IN_LEAF):
                item["rod_x"] = rng.choice((25.4, 31.75, 127.0) if item["device"] == ON_FACE else (22.225, 25.4))
                item["rod_ends"] = rng.choice(("Up and down", "Up only"))
        if rng.random() < 0.03:
            opening.blank.add(f"item{i}.{rng.choice([name for name in _OF_FIXED if name in item])}")


def _fronted(opening: Opening) -> None:
    """Tell of most cases how long and wide their front in the lock edge is; from the mark alone."""
    rng = Random(f"front {opening.mark}")
    lock = opening.lock
    if lock.get("case_height") is None or lock["lock"].startswith("Rim") or rng.random() < 0.3:
        return
    longer = rng.choice((0.0, 0.0, 25.4, 50.8, 76.2))
    lock["front_height"] = lock["case_height"] + longer
    lock["front_width"] = rng.choice((20.0, 24.0, 25.4, 31.75))


def _handled(opening: Opening) -> None:
    """Let some gates have a pull beside or over the lock's place, and a few lock edges a guard; from the mark alone."""
    rng = Random(f"handled {opening.mark}")
    x, y = opening.lock.get("backset") or 0.0, opening.lock["y"]
    if opening.mark.startswith("GA") and rng.random() < 0.3:
        up, face = rng.choice((-260.0, -180.0, -90.0, 150.0, 220.0)), rng.choice(("Inside", "Key side"))
        opening.items.append(_item("Pull", face, x, y + up, 25.4, 160.0, 45.0))
    elif opening.mark.startswith(("MO", "EU")) and rng.random() < 0.03:
        opening.items.append(_item("Other", "Lock edge", 0.0, y + rng.choice((0.0, 200.0, -300.0)), 20.0, 150.0, 3.0))
    for item in opening.items:
        item["on_leaf"] = opening.leaf().get("leaf")


_INSETS: Final = {
    "Pull": (12.7, 15.875, 19.05, 25.4),
    "Lever or knob": (0.0, 0.0, 9.525),
    "Closer": (0.0, 12.7),
    "Exit device": (0.0, 9.525, 12.7),
}
"""From the ends of what they hold to bolts or screws, where any enter the leaf; from memory."""
_OF_FIXED: Final = ("bolts", "device", "rod_x", "rod_ends")


def _same_face(a: Cells, b: Cells) -> bool:
    return "Both faces" in (a["face"], b["face"]) or a["face"] == b["face"]


def _leave_open(rng: Random, opening: Opening) -> None:
    choices = [f"lock.{name}" for name, value in opening.lock.items() if name != "lock" and value is not None]
    choices += [f"leaf.{name}" for name in opening.leaf() if name in ("thick", "stile", "undercut", "height")]
    choices += [
        f"opening.{name}" for name in ("stop", "hand", "cold", "distance") if opening.facts.get(name) is not None
    ]
    choices += [
        f"item{i}.{name}" for i, item in enumerate(opening.items) for name in ("iy", "iw", "face") if item.get(name)
    ]
    opening.blank |= set(rng.sample(choices, k=min(len(choices), rng.choice((1, 1, 2)))))


def _facts(rng: Random, **more: object) -> Cells:
    facts: Cells = {
        "form": "Single door",
        "hand": rng.choice(("LH", "RH", "LHR", "RHR")),
        "rating": rng.choice((*5 * ("Not rated",), "20 min", "45 min", "90 min")),
        "egress": rng.choice(("Not on an egress path", "Not on an egress path", "On an egress path")),
        "accessible": rng.choice(("yes", "no")),
        "exposure": "Interior",
        "operations": rng.choice((5, 5, 20, 20, 40, 60, 60, 150, 600)),
        "power_wish": rng.choice(("Whatever serves", "Battery", "Remote supply")),
        "distance": rng.choice((5.0, 10.0, 18.0, 18.0, 40.0)) if rng.random() < 0.93 else 90.0,
        "frame": "Hollow metal",
        "stop": rng.choice((12.7, 15.875, 19.05)),
        "cold": rng.choice((15.0, 21.0, 21.0, 21.0)),
        "way_out": "Towards the key side",
        "wall": rng.choice(("Masonry or concrete", "Board on studs", "Steel sheet or post", "Wood")),
        "building": "Verify House",
        "level": "1",
        "room": "Store",
    }
    if rng.random() < 0.2:
        facts["exposure"] = "Exterior"
        facts["cold"] = rng.choice((-25.0, -15.0, -15.0, -5.0, -5.0, 5.0))
    facts.update(more)
    if facts["egress"] == "Not on an egress path":
        facts.pop("way_out")
    return facts


def _leaf(rng: Random, **more: object) -> Cells:
    leaf: Cells = {
        "leaf": "Single",
        "width": rng.choice((32, 34, 36, 42)) * INCH,
        "height": rng.choice((80, 84, 96)) * INCH,
        "thick": rng.choice((1.375, 1.75, 1.75, 1.75, 2.25)) * INCH,
        "material": rng.choice(("Wood, solid core", "Wood, solid core", "Hollow metal", "Hollow metal", "Composite")),
        "construction": "Flush",
        "undercut": rng.choice((0.0, 6.35, 12.7)),
    }
    leaf.update(more)
    if leaf["material"] == "Wood, solid core" and rng.random() < 0.2:
        leaf["construction"] = "Stile and rail"
        leaf["stile"] = inches(rng, 4.5, 5.5) if rng.random() < 0.85 else inches(rng, 3.5, 4.5)
    if rng.random() < 0.3:
        leaf["raceway"] = "yes"
    leaf["core"] = _CORES.get(str(leaf["material"]), "Empty tube or frame")
    return leaf


_CORES: Final = {
    "Wood, solid core": "Solid wood or particleboard",
    "Hollow metal": "Honeycomb",
    "Composite": "Foam",
    "Mineral core": "Mineral, temperature rise",
}


def _item(kind: str, face: str, x: float, y: float, w: float, h: float, proud: float, fate: str = "Keep") -> Cells:
    return {
        "kind": kind,
        "on_leaf": "Single",
        "face": face,
        "ix": x,
        "iy": y,
        "iw": w,
        "ih": h,
        "proud": proud,
        "fate": fate,
    }


def _others(rng: Random, leaf: Cells, x: float, y: float, reach: float) -> list[Cells]:
    """Draw what else stands on a leaf, some of it near the lock, which reaches so far from its edge."""
    found: list[Cells] = []
    wide, high = leaf["width"], leaf["height"] + leaf["undercut"]
    if rng.random() < 0.15:
        found.append(_item("Closer", "Inside", wide - 5 * INCH, high - 2 * INCH, 10 * INCH, 2.5 * INCH, 60.0))
    if rng.random() < 0.15:
        found.append(_item("Kick plate", "Key side", wide / 2, leaf["undercut"] + 6 * INCH, wide - 50, 250.0, 1.5))
    if rng.random() < 0.15:
        # Beside the case or the bore that is there, or above it.
        near = max(reach + inches(rng, 0.125, 2.5), leaf.get("stile") or 0.0) + 2.5 * INCH
        found.append(_item("Lite or vision panel", "Both faces", near, y + inches(rng, 0, 14), 127.0, 500.0, 6.0))
    if rng.random() < 0.12:
        up = inches(rng, 4.5, 7)
        found.append(_item("Deadbolt", "Both faces", x, y + up, 63.5, 63.5, 20.0))
    if rng.random() < 0.12:
        found.append(_item("Pull", "Key side", x + inches(rng, -0.5, 2), y + inches(rng, -4, 8), 50.8, 203.2, 50.0))
    if rng.random() < 0.1:
        found.append(_item("Fire label", "Inside", x + inches(rng, 0, 2), y + inches(rng, 4, 10), 50.8, 25.4, 0.5))
    return found


def _mortise(rng: Random, mark: str) -> Opening:
    leaf = _leaf(rng)
    x, y = inches(rng, 2.5, 2.75, 4), inches(rng, 38, 44)
    turn = rng.random() < 0.3
    lock: Cells = {
        "lock": "Mortise, threaded cylinder",
        "function": rng.choice(("Office or entry", "Storeroom", "Classroom", "Deadlock")),
        "backset": x,
        "y": y,
        "case_height": inches(rng, 5.75, 6.25),
        "case_depth": inches(rng, 4, 4.25),
        "case_width": rng.choice((22.225, 25.4)),
        "case_above": inches(rng, 1, 2.5),
        "case_offset": rng.choice((0.0, 0.0, 0.0, 1.5875, -1.5875)),
        "trim_key": rng.choice((0.0, 1.5875, 3.175, 6.35)),
        # Of trim whose reach nobody measured the program asks: here none stands proud on the inside.
        "trim_inside": 0.0,
        "thumb_turn": "yes" if turn else "no",
        "cam": rng.choice(("Straight cam", "Clover cam")),
    }
    items = []
    below = inches(rng, 2.25, 3.75) if rng.random() < 0.9 else 1.75 * INCH
    items.append(_item("Lever or knob", "Both faces", x, y - below, 127.0, 2.25 * INCH, 60.0))
    if turn:
        up = rng.choice((0.0, 0.0, inches(rng, 2.5, 4)))
        items.append(_item("Thumb turn", "Inside", x, y + up, 25.4, 2 * INCH, 25.0))
    items += _others(rng, leaf, x, y, lock["case_depth"])
    return _paired(rng, Opening(mark, _facts(rng), [leaf], lock, items))


def _paired(rng: Random, opening: Opening) -> Opening:
    """Make some a pair, with a transfer that stays on one leaf or the other."""
    if rng.random() < 0.85:
        return opening
    leaf = opening.leaves[0]
    leaf["leaf"] = "Active"
    opening.facts["form"] = "Pair"
    opening.leaves.append(leaf | {"leaf": "Inactive"})
    for item in opening.items:
        item["on_leaf"] = "Active"
    if rng.random() < 0.5:
        transfer = _item("Power transfer", "Lock edge", leaf["width"] - 10.0, 1000.0, 25.4, 228.6, 0.0)
        transfer |= {"conductors": rng.choice((2, 4)), "pair_ohm": rng.choice((0.1, 0.4))}
        opening.items.append(transfer | {"on_leaf": rng.choice(("Active", "Inactive"))})
    return opening


def _narrow(rng: Random, mark: str) -> Opening:
    x = rng.choice((31 / 32, 1.125, 1.125, 1.5)) * INCH
    # Behind the centre of its cylinder an old lock of 1-1/2 in had its head and a part of its case.
    stile = rng.choice((2.5, 3.5) if x > 30.0 else (2.0, 2.125, 2.125, 2.5)) * INCH
    leaf = _leaf(
        rng, material="Aluminium", construction="Narrow stile", stile=stile, thick=rng.choice((1.75, 1.75, 2.0)) * INCH
    )
    y = inches(rng, 38, 44)
    lock: Cells = {
        "lock": "Mortise, threaded cylinder",
        "function": "Deadlock",
        "backset": x,
        "y": y,
        "case_height": inches(rng, 5.5, 6),
        "case_depth": x + inches(rng, 0.5, 0.875),
        "case_width": rng.choice((22.225, 25.4)),
        "case_above": inches(rng, 1.25, 1.75),
        "case_offset": 0.0,
        "trim_key": 0.0,
        "trim_inside": 0.0,
        "thumb_turn": "yes" if rng.random() < 0.8 else "no",
        "cam": "Straight cam",
    }
    items = []
    if lock["thumb_turn"] == "yes":
        items.append(_item("Thumb turn", "Inside", x, y, 25.4, 38.1, 25.0))
    if rng.random() < 0.3:
        items.append(_item("Pull", "Key side", x + inches(rng, 0, 0.5), y + inches(rng, -4, 6), 25.4, 228.6, 50.0))
    facts = _facts(rng, frame="Aluminium", rating="Not rated", stop=rng.choice((9.525, 12.7, 15.875)))
    if facts["hand"] in ("LH", "RH"):
        # The stop stands on the key face, and the old head of 1-3/8 in had its place beside it.
        facts["stop"] = (x - 0.6875 * INCH) * rng.choice((0.2, 0.3, 0.3, 0.4, 0.4, 0.5, 0.5, 0.6, 0.95))
    return Opening(mark, facts, [leaf], lock, items)


def _bored(rng: Random, mark: str) -> Opening:
    leaf = _leaf(rng)
    x, y = rng.choice((60.325, 69.85)), inches(rng, 36, 42)
    lock: Cells = {
        "lock": "Bored lever or knob",
        "function": rng.choice(("Office or entry", "Storeroom", "Classroom", "Passage")),
        "backset": x,
        "y": y,
        "cross_bore": rng.choice((53.975, 53.975, 38.1, 50.8)),
        "edge_bore": rng.choice((25.4, 22.225)),
    }
    items = _others(rng, leaf, x, y, x + (lock["cross_bore"] / 2 if rng.random() < 0.15 else 1.75 * INCH))
    if rng.random() < 0.02:
        items.append(
            _item("Exit device", "Inside", leaf["width"] / 2, y + inches(rng, -3, 3), leaf["width"] - 60, 70.0, 70.0)
        )
    if rng.random() < 0.04:
        items.append(_item("Lever or knob", "Both faces", x, y + inches(rng, 3, 5), 127.0, 57.15, 60.0))
    facts = _facts(rng)
    if rng.random() < 0.9:
        # Beside an old rose the stop had its place; new ones may be wider.
        facts["stop"] = min(facts["stop"], x - 1.75 * INCH)
    return Opening(mark, facts, [leaf], lock, items)


def _rim(rng: Random, mark: str) -> Opening:
    leaf = _leaf(rng)
    if leaf["thick"] < 40.0 and rng.random() < 0.85:
        # Rim locks of doors with cylinders of 1 in stand on leaves that are thick enough for them.
        leaf["thick"] = 1.75 * INCH
    x, y = inches(rng, 2.25, 2.75), inches(rng, 40, 48)
    lock: Cells = {
        "lock": "Rim, cylinder with tailpiece",
        "function": rng.choice(("Storeroom", "Deadlock")),
        "backset": x,
        "y": y,
        "case_height": inches(rng, 3, 4),
        "case_depth": x + inches(rng, 0.5, 1.25),
        "case_width": inches(rng, 0.5625, 1.125) if rng.random() < 0.9 else inches(rng, 0.375, 0.5),
        "case_above": inches(rng, 1.25, 2),
        "trim_key": rng.choice((0.0, 1.5875, 3.175)),
        "trim_inside": 0.0,
        "thumb_turn": "yes",
        "cam": rng.choice(("Flat tailpiece", "Cross tailpiece")),
    }
    items = _others(rng, leaf, x, y, lock["case_depth"])
    if rng.random() < 0.4:
        items.append(_item("Lever or knob", "Both faces", 69.85, y - inches(rng, 3, 6), 127.0, 57.15, 60.0))
    return Opening(mark, _facts(rng), [leaf], lock, items)


def _exit(rng: Random, mark: str) -> Opening:
    leaf = _leaf(rng)
    if leaf["thick"] < 40.0 and rng.random() < 0.85:
        leaf["thick"] = 1.75 * INCH
    x, y = rng.choice((60.325, 69.85)), inches(rng, 38, 44)
    # Chassis of narrow and standard devices are a little less and a little more than 2 in high, their covers higher.
    high = inches(rng, 2.25, 4)
    lock: Cells = {
        "lock": "Rim, cylinder with tailpiece",
        "function": "Exit device with key outside",
        "backset": x,
        "y": y,
        "case_height": high,
        "case_depth": x + inches(rng, 2, 5),
        "case_width": inches(rng, 1, 2),
        "case_above": high / 2 + inches(rng, -0.25, 0.25),
        "trim_key": 3.175,
        "trim_inside": 0.0,
        "thumb_turn": "no",
        "cam": "Flat tailpiece",
    }
    wide = leaf["width"]
    # What was measured as the device's footprint holds its case, from the lock edge on.
    top = y + lock["case_above"] + rng.choice((0.0, 3.0))
    low = y + lock["case_above"] - high - rng.choice((0.0, 3.0))
    long = wide - rng.choice((1.0, 2.0)) * INCH
    items = [_item("Exit device", "Inside", long / 2, (top + low) / 2, long, top - low, 75.0)]
    items += _others(rng, leaf, x, y, lock["case_depth"])
    return Opening(mark, _facts(rng, egress="Egress, panic hardware required"), [leaf], lock, items)


def _euro(rng: Random, mark: str) -> Opening:
    leaf = _leaf(
        rng, thick=rng.choice((40.0, 44.0, 54.0, 68.0)), material=rng.choice(("Wood, solid core", "Hollow metal"))
    )
    x, y = rng.choice((55.0, 65.0)), rng.choice((978.0, 1000.0, 1050.0))
    lock: Cells = {
        "lock": "Euro profile",
        "function": rng.choice(("Office or entry", "Storeroom", "Deadlock")),
        "backset": x,
        "y": y,
        "case_height": 165.0,
        "case_depth": x + 34.0,
        "case_width": rng.choice((14.0, 15.0)),
        "case_above": rng.choice((100.0, 118.0)),
        "case_offset": 0.0,
        "trim_key": rng.choice((2.0, 8.0, 10.0)),
        "trim_inside": 0.0,
        "thumb_turn": rng.choice(("yes", "yes", "no")),
        "cam": "Euro-profile cam",
    }
    items = [_item("Lever or knob", "Both faces", x, y + 72.0, 140.0, 52.0, 55.0)]
    items.append(_item("Trim or escutcheon", "Both faces", x, y + 36.0, 40.0, 230.0, 8.0))
    return Opening(mark, _facts(rng, rating="Not rated"), [leaf], lock, items)


def _cabinet(rng: Random, mark: str) -> Opening:
    leaf = _leaf(
        rng,
        width=rng.choice((300.0, 450.0, 600.0)),
        height=rng.choice((400.0, 700.0)),
        thick=rng.choice((12.7, 15.875, 19.05, 19.05, 25.4)),
        undercut=700.0,
        material=rng.choice(("Wood, solid core", "Wood, solid core", "Hollow metal")),
        construction="Flush",
    )
    leaf.pop("stile", None)
    leaf["construction"] = "Flush"
    y = leaf["undercut"] + rng.choice((80.0, leaf["height"] / 2, leaf["height"] - 80.0))
    lock: Cells = {
        "lock": "Cabinet bolt",
        "function": "Deadlock",
        "backset": inches(rng, 1, 1.5),
        "y": y,
        "thumb_turn": "no",
    }
    facts = _facts(
        rng, form="Cabinet", rating="Not rated", egress="Not on an egress path", power_wish="Battery", frame="Wood"
    )
    facts.pop("stop")
    return Opening(mark, facts, [leaf], lock, [])


def _gate(rng: Random, mark: str) -> Opening:
    leaf = _leaf(
        rng,
        width=rng.choice((900.0, 1100.0)),
        height=rng.choice((1000.0, 1800.0)),
        thick=rng.choice((40.0, 50.8)),
        material="Steel gate",
        construction="Stile and rail",
        stile=rng.choice((80.0, 101.6, 101.6, 120.0, 120.0)),
        undercut=rng.choice((50.0, 100.0)),
    )
    lock: Cells = {
        "lock": "Gate lock or latch",
        "function": "Storeroom",
        "backset": rng.choice((30.0, 50.8)),
        "y": rng.choice((900.0, 950.0, 1000.0)),
    }
    facts = _facts(
        rng, form="Gate", rating="Not rated", frame="No frame", stop=0.0, exposure="Exterior", power_wish="Battery"
    )
    facts["cold"] = rng.choice((-25.0, -15.0, -15.0, -10.0, -10.0, 5.0))
    if rng.random() < 0.6:
        # Gates on a way out are few.
        facts["egress"] = "Not on an egress path"
        facts.pop("way_out", None)
    return Opening(mark, facts, [leaf], lock, [])


def _patch(rng: Random, mark: str) -> Opening:
    leaf = _leaf(rng, thick=rng.choice((10.0, 12.0)), material="Glass", construction="Frameless glass")
    leaf.pop("stile", None)
    leaf["construction"] = "Frameless glass"
    # Plates of a patch fitting stand so far proud that halves of 30 or 35 end in them; of 25.0 none of whole fives may.
    trim = rng.choice((23.0, 23.0, 25.0, 28.0))
    lock: Cells = {
        "lock": "Euro profile",
        "function": "Deadlock",
        "backset": 55.0,
        "y": leaf["undercut"] + rng.choice((80.0, 1000.0)),
        "case_height": 160.0,
        "case_depth": 100.0,
        "case_width": 10.0,
        "case_above": 80.0,
        "case_offset": 0.0,
        "trim_key": trim,
        "trim_inside": trim,
        "thumb_turn": "yes",
        "cam": "Euro-profile cam",
        "ix": 80.0,
        "iw": 160.0,
        "ih": 160.0,
    }
    lock["iy"] = lock["y"]
    # Wires across glass are seldom wished for.
    wish = rng.choice(("Whatever serves", "Whatever serves", "Battery", "Battery", "Remote supply"))
    facts = _facts(rng, rating="Not rated", frame="No frame", stop=0.0, power_wish=wish)
    return Opening(
        mark, facts, [leaf], lock, [_item("Trim or escutcheon", "Both faces", 80.0, lock["y"], 160.0, 160.0, trim)]
    )


def _wall(rng: Random, mark: str) -> Opening:
    form = rng.choice(("Reader at a lift", "Reader at a turnstile"))
    facts = _facts(rng, form=form, rating="Not rated", egress="Not on an egress path", frame="No frame")
    for name in ("hand", "stop"):
        facts.pop(name)
    lock: Cells = {"lock": "Reader only, no lock", "y": inches(rng, 36, 48)}
    return Opening(mark, facts, [], lock, [])


_DRAW: Final = {
    "mortise": _mortise,
    "narrow": _narrow,
    "bored": _bored,
    "rim": _rim,
    "exit": _exit,
    "euro": _euro,
    "cabinet": _cabinet,
    "gate": _gate,
    "patch": _patch,
    "wall": _wall,
}

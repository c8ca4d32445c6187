"""Steps, cautions and tests of a packet, each with the condition under which it is printed.

The texts are common practice in our own words. Cautions defer to the label, the code in force, the authority that has
jurisdiction and licensed practice.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from hwsched.rules.across_leaf import THROUGH
from hwsched.values import Fit, Item, Leaf, OpeningInput


@dataclass(frozen=True, slots=True)
class Situation:
    """What decides which texts apply: the facts of a lock point, and its turn among those of its opening."""

    given: OpeningInput
    fit: Fit
    leaf: Leaf | None
    lock: Item | None
    first: bool = True
    """Whether it is the opening's first lock point, or the only one."""
    last: bool = True
    new_leaf: bool = True
    """Whether no earlier one is on its leaf."""

    @property
    def lock_form(self) -> str:
        """Form of the existing lock; empty when none was found."""
        return (self.lock.lock_form or "") if self.lock else ""

    @property
    def material(self) -> str:
        """Material of the leaf; empty when there is no leaf."""
        return (self.leaf.material or "") if self.leaf else ""

    @property
    def rated(self) -> bool:
        """Whether the opening carries a fire rating, or may: unknown counts as rated here."""
        return self.given.opening.rating != "none"

    @property
    def egress(self) -> bool:
        """Whether people may have to leave through it; unknown counts as yes here."""
        return self.given.opening.egress != "none"

    @property
    def in_edge(self) -> bool:
        """Whether the unit stands in the edge of the leaf."""
        return self.fit.placement is not None and self.fit.placement.face == "edge"

    @property
    def surface(self) -> bool:
        """Whether the unit stands on a face."""
        return self.fit.placement is not None and self.fit.placement.face in ("inside", "key")

    @property
    def drills(self) -> bool:
        """Whether any hole is made."""
        return bool(self.fit.holes)

    def has(self, role: str) -> bool:
        """Whether the fit has a part in a role."""
        return self.fit.part(role) is not None


@dataclass(frozen=True, slots=True)
class Text:
    """One sentence or two, and when it is printed."""

    text: str
    when: Callable[[Situation], bool]
    turn: Literal["each", "first", "leaf", "last"] = "each"
    """At each lock point of an opening, at its first or last one only, or at the first one on a leaf."""

    def at(self, situation: Situation) -> bool:
        """Tell whether it is printed."""
        due = {"each": True, "first": situation.first, "leaf": situation.new_leaf, "last": situation.last}
        return due[self.turn] and self.when(situation)


def _always(_: Situation) -> bool:
    return True


CAUTIONS: tuple[Text, ...] = (
    Text(
        "Fire door. Read the label on leaf and frame before any tool is taken out. Drill only what the adopted edition "
        "of NFPA 80 lists as job-site preparation: round, not over 1 in unless it is a cylinder hole or both listings "
        "say more. Anything else waits for written permission from the listing laboratory. Keep the label readable and "
        "write down every hole.",
        lambda s: s.rated,
    ),
    Text(
        "Unused fastener holes in a rated leaf or frame are filled by a method that the standard names, not covered.",
        lambda s: s.rated,
    ),
    Text(
        "Egress. From inside the door must open with one ordinary movement: no key, code, card or second action, with "
        "power on, power off and battery dead. Do not leave the opening before this is tested.",
        lambda s: s.egress,
    ),
    Text(
        "Mineral core makes respirable silica dust. Use extraction at the drill and a respirator as the employer's "
        "safety rules ask.",
        lambda s: s.material == "mineral-core" and s.drills,
    ),
    Text("Do not drill glass. Tempered glass bursts when it is cut or drilled.", lambda s: s.material == "glass"),
    Text(
        "Wear eye protection; clamp jigs; keep the second hand out of the line of the drill. Disconnect power tools "
        "before a bit is changed.",
        lambda s: s.drills,
    ),
    Text(
        "Low-voltage wiring only, by people allowed to do it at this place. The supply is never mounted on the leaf; "
        "its mains connection is licensed work. Keep the wiring apart from mains wiring.",
        lambda s: s.fit.power == "supply",
    ),
    Text(
        "Cells: do not mix old and new, do not short, do not charge primary cells, watch polarity, take spent cells "
        "back for disposal as the place requires.",
        lambda s: s.has("battery") or s.has("coin-cell"),
    ),
)

STEPS: tuple[Text, ...] = (
    Text(
        "Compare mark, hand, leaf thickness and existing lock with this packet. Stop and report if one differs.",
        _always,
    ),
    Text("Lay out the box contents and tick them off before anything is taken from the door.", _always, "first"),
    Text(
        "Program key and unit with each other at the bench, and set the clock, before work on the door starts.",
        lambda s: s.has("unit"),
    ),
    Text("Wedge the leaf open and protect the floor under it.", lambda s: s.leaf is not None, "leaf"),
    Text(
        "Loosen the cylinder's set screw at the lock edge, unscrew the old cylinder and keep it for the owner.",
        lambda s: s.lock_form == "mortise",
    ),
    Text(
        "Take off the rim lock's case, pull the old cylinder with its back plate and keep both for the owner.",
        lambda s: s.lock_form == "rim",
    ),
    Text(
        "Turn the key about 15 degrees, take out the cylinder's retaining screw at the edge and draw out the old cylinder.",
        lambda s: s.lock_form == "euro-profile",
    ),
    Text("Take off the old lever or knob set and its latch.", lambda s: s.lock_form == "bored"),
    Text("Take the old bolt out of the cabinet door.", lambda s: s.lock_form == "cabinet"),
    Text("Take the old latch off the gate.", lambda s: s.lock_form == "gate"),
    Text(
        "Mark every centre from the drawing, measured from the cylinder's centre line and the lock edge; check with the template before drilling.",
        lambda s: s.drills,
    ),
    Text(
        "Drill from both faces, or with a block behind, so that the veneer does not break out.",
        lambda s: s.material in ("wood", "mineral-core", "composite") and s.drills,
    ),
    Text(
        "Centre-punch, drill the pilot, then step up; a drop of oil in steel. Deburr both sides and touch up bare steel.",
        lambda s: s.material == "hollow-metal" and s.drills,
    ),
    Text(
        "Centre-punch and drill slowly with wax; deburr, and set a sleeve in every hole that the lead passes.",
        lambda s: s.material in ("aluminium", "steel-gate") and s.drills,
    ),
    Text(
        "Make the holes of the hole table in its order. Vacuum chips out of the lock pocket before anything electronic comes near.",
        lambda s: s.drills,
    ),
    Text(
        "Clean the glass with alcohol, let it dry, and bond the mounting pad where the drawing shows; press as long as its maker asks.",
        lambda s: s.material == "glass" and s.surface,
    ),
    Text(
        "Fit the cam or tailpiece named in the box contents to the new cylinder, screws with thread lock.",
        lambda s: s.has("cam") or s.has("tailpiece"),
    ),
    Text(
        "Lead first: draw the lead through the lock pocket and the access hole with a pull wire; no kink, no sharp edge, nothing moving near it.",
        lambda s: s.fit.cable is not None,
    ),
    Text(
        "Slide collar and rings on in the order of the stack, screw the cylinder in until its head is flush with the collar, keyway upright, cam free; tighten the set screw.",
        lambda s: s.lock_form == "mortise" and s.has("cylinder"),
    ),
    Text(
        "Break the tailpiece to the stated length, fit the rim cylinder with its back plate, and put the lock's case back.",
        lambda s: s.lock_form == "rim" and s.has("cylinder"),
    ),
    Text(
        "Push the cylinder into the lock case with the cam upright, set the retaining screw by hand and tighten it only so far that the cam still turns freely.",
        lambda s: s.lock_form == "euro-profile" and s.has("cylinder"),
    ),
    Text(
        "Fit the new latch, then the lever set square through its bores; tighten both bolts evenly.",
        lambda s: s.lock_form == "bored" and s.has("lock"),
    ),
    Text("Plug the lead into the unit with the cover open; the plug has only one way in.", lambda s: s.surface),
    Text(
        "Connect the lead to the unit in the hand, then slide the unit into its pocket while the slack of the lead is guided beside it.",
        lambda s: s.in_edge,
    ),
    Text(
        "Put the plate over its access hole where the drawing shows, drill the pilots through it, and screw it down with the named screws.",
        lambda s: s.surface and s.material != "glass",
    ),
    Text(
        "Bore the way for the wire from the hinge edge with the leaf clamped in a fixture; free-hand the bit wanders and leaves through a face. Stop in the lock's pocket, clear the chips, pull the wire with a leader.",
        lambda s: any(hole.purpose == THROUGH and hole.tool == "installer-bit" for hole in s.fit.holes),
    ),
    Text(
        "Drill the hinge edge, push a pointed rod through the hollow leaf to the lock's pocket and pull the wire after it; a grommet where it passes the sheet. Past a panel or a lite it goes by the rail or the end channel.",
        lambda s: any(hole.purpose == THROUGH and hole.tool != "installer-bit" for hole in s.fit.holes),
    ),
    Text(
        "Fit the raceway level over the inside face from the hinge edge to the unit, lay the wire in it and close it; nothing is drilled through the leaf for it.",
        lambda s: s.has(THROUGH),
    ),
    Text(
        "Run the wire from the supply over the power transfer, leave the loop that the hinge side needs, and check polarity before the unit is connected.",
        lambda s: s.fit.power == "supply",
    ),
    Text(
        "Put in the battery pack before the first key is presented: a key put in while only the coin cell is fitted drains it.",
        lambda s: s.has("battery"),
    ),
    Text("Fit the coin backup cell last, positive side as marked in the unit.", lambda s: s.has("coin-cell")),
    Text(
        "Test everything on the test sheet with the leaf open, then with the leaf closed and a second person inside.",
        lambda s: s.leaf is not None,
    ),
    Text("Test everything on the test sheet.", lambda s: s.leaf is None),
    Text("Fill in serial numbers, readings and what was found different, and sign.", _always, "last"),
)

TESTS: tuple[Text, ...] = (
    Text("The programmed key works the lock ten times running, leaf open", lambda s: s.leaf is not None),
    Text("The programmed key works the reader ten times running", lambda s: s.leaf is None),
    Text("A key without permission is refused", _always),
    Text("Bolt or latch runs fully out and fully back, without drag, leaf closed", lambda s: s.leaf is not None),
    Text("From inside: one ordinary movement opens, unit powered", lambda s: s.egress and s.leaf is not None),
    Text("From inside: one ordinary movement opens, unit without power", lambda s: s.egress and s.leaf is not None),
    Text("The leaf closes and latches by itself from any position", lambda s: s.rated and s.leaf is not None),
    Text("Fire label on leaf and frame can be read", lambda s: s.rated and s.leaf is not None, "leaf"),
    Text("Cylinder head stands flush with its collar, not recessed", lambda s: s.has("collar")),
    Text("No lead is pinched, cover closes without force", lambda s: s.fit.cable is not None),
    Text("Voltage at the unit, nothing operating", lambda s: s.has("unit")),
    Text("Voltage at the unit while it operates", lambda s: s.has("unit")),
    Text("On loss of the supply the opening does what its fail mode says", lambda s: s.fit.power == "supply"),
    Text("Clock shows the right time; the unit's record shows the tests just made", lambda s: s.has("unit")),
)


def chosen(texts: tuple[Text, ...], situation: Situation) -> tuple[str, ...]:
    """Return the texts that apply, in order."""
    return tuple(text.text for text in texts if text.at(situation))

"""What decides which steps a lock point has: its facts and its fit, and its turn among those of its opening."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from hwsched.attributes.of_parts import FORM, LENGTH_MM, SCREW_SIZE, THREAD_PITCH_MM
from hwsched.language import phrase
from hwsched.rules.reading import by_cylinder, entry, lock_part, on_leaf, remains, unit_part
from hwsched.rules.wording import length
from hwsched.values import Fit, FitPart, Hole, Item, Leaf, OpeningInput, Part


@dataclass(frozen=True, slots=True)
class Situation:
    """A lock point with what is worked out for it, and its turn among those of its opening."""

    given: OpeningInput
    fit: Fit
    leaf: Leaf | None
    lock: Item | None
    first: bool = True
    """Whether it is the opening's first lock point, or the only one."""
    last: bool = True
    new_leaf: bool = True
    """Whether no earlier one is on its leaf."""
    bench: frozenset[tuple[str, str]] = frozenset()
    """What is on record as done at the bench: role of the piece, and built, programmed or tested."""
    templates: tuple[str, ...] = ()
    """Names of its true-size templates; none where nobody names them."""
    paged: bool = False
    """Whether the names say on which page each template stands."""

    # --- what stands there ---

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
    def exterior(self) -> bool:
        """Whether it stands in the weather, or may."""
        return self.given.opening.exposure != "interior"

    @property
    def cased(self) -> bool:
        """Whether the existing lock stands with its case in a pocket of the leaf."""
        return self.lock_form in ("mortise", "euro-profile") and self.leaf is not None

    @property
    def by_cylinder(self) -> bool:
        """Whether all is measured from a cylinder; a whole lock or a reader has a centre of its own."""
        return by_cylinder(self.given)

    @property
    def leaf_word(self) -> str:
        """What people call what swings here."""
        names = {"gate": phrase("gate"), "cabinet": phrase("cabinet door")}
        return names.get(self.lock_form, phrase("leaf"))

    @property
    def exit_device(self) -> bool:
        """Whether the existing lock is worked by an exit device that stays on the leaf."""
        return any(
            item.kind == "exit-device" and remains(item) and (self.leaf is None or on_leaf(item, self.leaf))
            for item in self.given.items
        )

    # --- what comes in ---

    @property
    def in_edge(self) -> bool:
        """Whether the unit stands in the edge of the leaf."""
        return self.fit.placement is not None and self.fit.placement.face == "edge"

    @property
    def surface(self) -> bool:
        """Whether the unit stands on a face."""
        return self.fit.placement is not None and self.fit.placement.face in ("inside", "key")

    @property
    def on_wall(self) -> bool:
        """Whether the unit stands on a wall."""
        return self.fit.placement is not None and self.fit.placement.face == "wall"

    @property
    def bonded(self) -> bool:
        """Whether the unit is bonded to glass."""
        return self.surface and self.material == "glass"

    @property
    def drills(self) -> bool:
        """Whether any hole is made."""
        return bool(self.fit.holes)

    @property
    def case_out(self) -> bool:
        """Whether the lock's case has to come out of the leaf before it is drilled."""
        return self.cased and self.drills

    @property
    def on_supply(self) -> bool:
        """Whether a supply feeds the unit."""
        return self.fit.power == "supply" and self.unit is not None

    @property
    def inside_leaf(self) -> bool:
        """Whether the lead runs inside the leaf, and not along its face."""
        return any(hole.purpose in ("cable", "channel") for hole in self.fit.holes)

    @property
    def unit(self) -> Part | None:
        """Catalogue entry of the control unit."""
        return unit_part(self.given, self.fit)

    @property
    def new_lock(self) -> str:
        """Kind of the new cylinder, lock or reader; empty where there is none."""
        part = lock_part(self.given, self.fit)
        return part.kind if part is not None else ""

    @property
    def unit_screw(self) -> str:
        """Size of the screws that the unit takes; empty where the catalogue does not say it."""
        return (self.unit.text_of(SCREW_SIZE) or "") if self.unit is not None else ""

    def has(self, *roles: str) -> bool:
        """Whether the fit has a part in one of some roles."""
        return any(part.role in roles for part in self.fit.parts)

    def parts(self, *roles: str) -> tuple[FitPart, ...]:
        """Return the parts in some roles, in the order of the fit."""
        return tuple(part for part in self.fit.parts if part.role in roles)

    def called(self, part: FitPart) -> str:
        """Return a part as a step calls it: what it is and its number, by which the box list describes it."""
        word = f"{phrase(part.role)} {part.part}"
        return f"{part.quantity:g} × {word}" if part.quantity > 1 else word

    def of_form(self, role: str, *forms: str) -> tuple[FitPart, ...]:
        """Return the parts in a role whose form in the catalogue is one of some."""
        return tuple(part for part in self.parts(role) if self.text_of(part) in forms)

    def text_of(self, part: FitPart) -> str:
        """Return the form of a part as the catalogue names it; empty where it names none."""
        known = entry(self.given, part)
        return (known.text_of(FORM) or "") if known is not None else ""

    def holes(self, *purposes: str) -> tuple[Hole, ...]:
        """Return the holes made for some purposes, in the order in which they are made."""
        return tuple(sorted((hole for hole in self.fit.holes if hole.purpose in purposes), key=lambda hole: hole.order))

    def length(self, mm: float) -> str:
        """Write a length as the project writes lengths."""
        return length(self.given, mm)

    @property
    def spare_lead(self) -> str:
        """What of the lead is left, in words; empty where nothing is."""
        spare = spare_lead_mm(self.fit)
        return "" if spare is None else self.length(spare)

    @property
    def turns(self) -> int | None:
        """Turns by which a threaded cylinder goes in until its head stands where it must; None while unknown."""
        part, stack = lock_part(self.given, self.fit), self.fit.stack
        if part is None or stack is None:
            return None
        long, pitch = part.number_of(LENGTH_MM), part.number_of(THREAD_PITCH_MM)
        if long is None or not pitch:
            return None
        return round((long - stack.projection_mm) / pitch)


_LEAST_SPARE_MM: Final = 3.0
"""Less of a lead than this is no loop that has to lie anywhere."""


def spare_lead_mm(fit: Fit) -> float | None:
    """Return what of the lead is left when it is laid [mm]; None where nothing is, or nobody knows."""
    spare = fit.cable.available_mm - fit.cable.length_mm if fit.cable is not None else 0.0
    return spare if spare >= _LEAST_SPARE_MM else None


When = Callable[[Situation], bool]


def always(_: Situation) -> bool:
    """Hold for every lock point."""
    return True

"""The lock's slot: which cylinder, lock or reader, with which cam or tailpiece, collar and rings.

Geometry is calculated in `calc`, and whether a candidate will do is said by the rules of the slot.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from functools import lru_cache
from itertools import chain, groupby, islice
from typing import Final

from hwsched.attributes.of_parts import (
    CAM_FIXING,
    CAM_FORM,
    CAM_OFFSET_MM,
    FITS,
    HEAD_DIAMETER_MM,
    HEIGHT_MM,
    INNER_DIAMETER_MM,
    INSIDE_HALF_MM,
    KEY_HALF_MM,
    LENGTH_MM,
    TAIL_FORM,
    THREAD_DIAMETER_MM,
    THREAD_PITCH_MM,
    TextName,
)
from hwsched.calc.calculator import InputError
from hwsched.calc.opening.stack import StackCollar, StackCylinder, StackFit, StackMiss, StackRing, stacks_by_rings
from hwsched.fitting.candidate import (
    Judged,
    chosen_by,
    fit_part,
    judged,
    judged_on,
    missing_for_better,
    numbers_in,
    offered,
    rank_of,
    with_parts,
    worth,
)
from hwsched.fitting.slots import Slots
from hwsched.quantities.money import ZERO, summed
from hwsched.rules import limits_of, rule_named, rules_in_slot
from hwsched.rules.reading import KIND_OF_FORM, LOCK_ROLES, lock_form, lock_item, lock_leaf
from hwsched.rules.rounding import EQUAL_MM, MEASURE_MM
from hwsched.rules.solid.tails import reach_off, tail_cut, tail_size, tail_way
from hwsched.rules.solid.threaded import stack_allowance
from hwsched.rules.ways_out import keeps_in
from hwsched.rules.wording import length
from hwsched.values import Fit, FitPart, Item, Leaf, OpeningInput, Part, Role, Stack

_CYLINDER_FLUSH: Final = rule_named("cylinder-flush")
_TAIL_REACH: Final = rule_named("tail-reach")

_ROLES: dict[str, Role] = {
    "mortise-cylinder": "cylinder",
    "rim-cylinder": "cylinder",
    "euro-cylinder": "cylinder",
    "cabinet-lock": "lock",
    "bored-lever-lock": "lock",
    "gate-lock": "lock",
    "fixed-reader": "reader",
}
_OF_STACK: Final = frozenset(
    rule.id
    for rule in (
        *(_CYLINDER_FLUSH, rule_named("collar-bore"), rule_named("cam-match"), _TAIL_REACH),
        *(rule_named("head-clear"), rule_named("head-clear-of-stop"), rule_named("head-on-leaf")),
    )
)
"""Rules that ask what goes with a cylinder, and not the cylinder alone."""
_OF_PLACE: Final = frozenset(
    (
        *("head-clear", "head-clear-of-stop", "head-on-leaf", "case-within-leaf"),
        *("rated-lock-listed", "lock-function", "lock-weather", "gate-release"),
    )
)
"""Rules that ask where on which leaf the lock stands, or what the door is for."""
_ALIKE: Final = tuple(rule for rule in rules_in_slot("lock") if rule.id not in _OF_PLACE)
"""Rules that say the same of many openings: they ask for lock, trim and thickness only."""
_REST: Final = tuple(rule for rule in rules_in_slot("lock") if rule.id in _OF_PLACE)
_MOST_RINGS = 3
"""Rings on one cylinder; our own."""
_MOST_STACKS = 60
"""Stacks of one cylinder that are tried; our own: the rules refuse none that stands right but for bore or cam."""
_SHAPE = (
    "connector",
    "trim_diameter_mm",
    "thread_diameter_mm",
    "case_width_mm",
    "case_height_mm",
    "cross_bore_mm",
    "hole_mm",
    "depth_mm",
    "body_length_mm",
    "inside_half_mm",
    "mounting",
)
"""Attributes of the lock on which the unit's place, and what goes with it, depend."""
_REACH = ("lead_mm", "cam_offset_mm")
"""Attributes on which, besides, depends how far its lead goes."""


@dataclass(frozen=True, slots=True)
class LockSlot:
    """All candidates of the lock's slot."""

    good: tuple[Judged, ...]
    """Best first; of those that leave the unit the same, the best only."""
    others: tuple[Judged, ...]
    needs: tuple[str, ...]
    """Facts of the survey without which a better candidate can be neither taken nor refused."""


def chosen_by_hand(given: OpeningInput) -> bool:
    """Tell whether a person chose the cylinder, lock or reader."""
    return any(choice.role in LOCK_ROLES for choice in given.chosen)


def lock_slot(slots: Slots) -> LockSlot:
    """Judge every cylinder, lock or reader that may take the existing lock's place."""
    given = slots.given
    good: list[Judged] = []
    others: list[Judged] = []
    for part, role in _offered(given):
        found = _best(slots, part, role)
        (good if found.good else others).append(found)
    # What stands right only by the rounding of coarse measures is a last resort.
    good = [found for found in good if not _owes(given, found.fit)] or good
    # What keeps people in passes only where a person accepts it: it comes after what has a turn. By number where equal,
    # so that the order of the catalogue decides nothing.
    good.sort(key=lambda found: (keeps_in(given, found.fit), rank_of(given, found.fit), numbers_in(found.fit)))
    first: dict[tuple[object, ...], Judged] = {}
    for found in good:
        # Locks alike for the unit differ in price only: the dearer ones could never win, but would be searched to the
        # end.
        first.setdefault((*shape_of(given, found.fit), *_reach_of(given, found.fit)), found)
    return LockSlot(tuple(first.values()), tuple(others), missing_for_better(given, good, others))


def _best(slots: Slots, part: Part, role: Role) -> Judged:
    """Return a part's first combination that nothing speaks against; else one that lacks facts, else the nearest."""
    found: list[Judged] = []
    # They come in the stated order, so that the first that will do is the best.
    for each in _tried(slots, part, role):
        if each.good:
            return each
        found.append(each)
        # What no collar, ring, cam or tailpiece mends refuses the part whatever is tried besides.
        if _beyond_mending(each):
            break
    return min(found, key=lambda each: (bool(each.refusals), each.miss()))


def _beyond_mending(found: Judged) -> bool:
    return any(refusal.rule not in _OF_STACK for refusal in found.refusals)


def _tried(slots: Slots, part: Part, role: Role) -> Iterator[Judged]:
    """Yield every way in which a part can be put together, in the stated order, with what speaks against it."""
    given = slots.given
    # As far as most need it, it is shared by openings that are alike in lock, trim and thickness.
    alike, more = slots.of(
        ("put-together", part.number, role), None, lambda inner: _put_together(inner.given, part, role)
    )
    for each in alike:
        yield judged_on(given, each, "lock", part.number, role, _REST)
    for partial in islice(_built(given, part, role), len(alike), None) if more else ():
        yield judged(given, partial, "lock", part.number, role)


def _put_together(given: OpeningInput, part: Part, role: Role) -> tuple[tuple[Judged, ...], bool]:
    """Return the first ways to put a part together, up to one that will do or that none can mend, and whether more."""
    found: list[Judged] = []
    for partial in _built(given, part, role):
        found.append(judged(given, partial, "lock", part.number, role, rules=_ALIKE))
        if found[-1].good or _beyond_mending(found[-1]):
            return tuple(found), True
    return tuple(found), False


def _owes(given: OpeningInput, fit: Fit) -> bool:
    """Tell whether a head stands right only by more rounding than a survey in tenths of a millimetre has."""
    if fit.stack is None or fit.stack.form != "threaded":
        return False
    most = limits_of(_CYLINDER_FLUSH, given.settings)["tolerance_mm"]
    return not -MEASURE_MM - EQUAL_MM <= fit.stack.gap_mm <= most + MEASURE_MM + EQUAL_MM


def _offered(given: OpeningInput) -> list[tuple[Part, Role]]:
    for choice in given.chosen:
        if choice.role in LOCK_ROLES and (part := given.catalogue.get(choice.part)) is not None:
            role: Role = next((known for known in _ROLES.values() if known == choice.role), "cylinder")
            # Of several choices for the lock the first counts: a lock point has one cylinder.
            return [(part, role)]
    kind = KIND_OF_FORM.get(lock_form(given) or "")
    if kind is None:
        return []
    return [(part, _ROLES[kind]) for part in given.catalogue.of_kind(kind) if not part.superseded_by]


def shape_of(given: OpeningInput, fit: Fit) -> tuple[object, ...]:
    """Return what of a lock decides where a unit can stand: equal for locks that leave a unit the same places."""
    part = given.catalogue.get(fit.parts[0].part)
    return tuple(part.attributes.get(name) for name in _SHAPE) if part is not None else ()


def _reach_of(given: OpeningInput, fit: Fit) -> tuple[object, ...]:
    part = given.catalogue.get(fit.parts[0].part)
    turns = fit.stack.turns if fit.stack is not None else 0
    return (turns, *(part.attributes.get(name) for name in _REACH)) if part is not None else ()


def _built(given: OpeningInput, part: Part, role: Role) -> Iterator[Fit]:
    """Yield every way in which a part can be put together, in the stated order; one at least."""
    leaf, lock = lock_leaf(given), lock_item(given)
    reason = f"the existing lock is of the form {lock_form(given) or 'unknown'}"
    bare = Fit("to-measure", parts=(fit_part(given, role, part, reason),))
    if leaf is None or lock is None:
        yield bare
    elif part.kind == "mortise-cylinder":
        yield from _threaded(given, bare, part, leaf, lock)
    elif part.kind == "rim-cylinder":
        yield from _rim(given, bare, part, lock)
    elif part.kind == "euro-cylinder":
        yield _euro(given, bare, part, leaf, lock)
    else:
        yield bare


# --- threaded cylinders -------------------------------------------------------------------------------------------


def _threaded(given: OpeningInput, bare: Fit, part: Part, leaf: Leaf, lock: Item) -> Iterator[Fit]:
    """Yield every stack with every cam or tailpiece: fewest rings, least projection, least gap, then least cost."""
    carried = _carried(given, part, lock)
    thick, trim = leaf.thickness_mm, lock.trim_key_mm
    if thick is None or trim is None:
        yield from (with_parts(bare, *cam) for cam in carried)
        return
    stacks = _stacks(given, part, thick, trim, lock.case_offset_mm or 0.0)
    try:
        first = next(stacks, None)
    except InputError as error:
        yield replace(with_parts(bare, *carried[0]), stack=Stack("threaded", 0.0, impossible=str(error)))
        return
    if first is None:
        yield from (with_parts(bare, *cam) for cam in carried)
        return
    for found in chain((first,), stacks):
        for cam in carried:
            yield _stacked(given, (*bare.parts, *cam), part, found, thick, trim)


def _stacked(
    given: OpeningInput,
    with_cam: tuple[FitPart, ...],
    part: Part,
    found: StackFit | StackMiss,
    thick: float,
    trim: float,
) -> Fit:
    stands = length(given, found.projection_mm)
    turns = (
        "on the case's centre"
        if not found.turns
        else f"{found.turns} turn beyond the case's centre"
        if found.turns == 1
        else f"{found.turns} turns beyond the case's centre"
    )
    head = replace(
        with_cam[0],
        reason=f"{with_cam[0].reason}; in a leaf of {length(given, thick)} under {length(given, trim)} of trim "
        f"its cam lies {turns} and its head stands {stands} proud",
    )
    added: list[FitPart] = []
    if found.collar is not None and (collar := given.catalogue.get(found.collar)) is not None:
        added.append(fit_part(given, "collar", collar, f"the head stands {stands} proud of the trim"))
    # Sorted, so that equal stacks are listed the same way.
    for number, count in sorted(Counter(found.rings).items()):
        ring = given.catalogue.get(number)
        if ring is not None:
            added.append(fit_part(given, "ring", ring, f"fills what the collar leaves of {stands}", count))
    # The nearest miss goes on as if it fitted: the rule refuses it and says by how much.
    short = found.distance_mm if isinstance(found, StackMiss) else 0.0
    stack = Stack("threaded", found.projection_mm, found.gap_mm, found.turns, found.rings, short_mm=short)
    tail = next((given.catalogue.get(each.part) for each in with_cam if each.role == "tailpiece"), None)
    if tail is not None:
        stack = _cut(given, stack, part, tail)
    return Fit("to-measure", parts=(head, *with_cam[1:], *added), stack=stack)


def _stacks(
    given: OpeningInput, part: Part, thick: float, trim: float, case_offset: float
) -> Iterator[StackFit | StackMiss]:
    """Yield the stacks that stand right, best first, or the nearest miss; raises InputError before the first.

    Nearly always the first will do: the others are worked out when they are asked for.
    """
    long, offset, pitch = (part.number_of(name) for name in (LENGTH_MM, CAM_OFFSET_MM, THREAD_PITCH_MM))
    if long is None or offset is None or pitch is None:
        return
    limits = limits_of(_CYLINDER_FLUSH, given.settings)
    collars, rings = _under(given, part, "collar"), _under(given, part, "ring")
    rounded = stack_allowance(given, part, ()).mm
    miss: StackMiss | None = None
    # First with what no survey tells; only where nothing stands right so, with all that the survey leaves open.
    for measure in dict.fromkeys((min(rounded, MEASURE_MM), rounded)):
        stands = False
        for result in stacks_by_rings(
            thick,
            trim,
            [StackCylinder(part.number, long, offset)],
            [_collar(each.number, high) for each, high in collars],
            # The calculation refuses a ring without height, and with it the whole stack.
            [_ring(each.number, high) for each, high in rings if high > 0],
            case_offset_mm=case_offset,
            pitch_mm=pitch,
            max_turns_beyond=int(limits["turns_beyond"]),
            tolerance_mm=limits["tolerance_mm"],
            max_rings=_MOST_RINGS,
            max_fits=_MOST_STACKS,
            measure_mm=measure + EQUAL_MM,
        ):
            if isinstance(result, StackMiss):
                miss = result
            elif result:
                stands = True
                yield from _in_stated_order(given, result)
        if stands:
            return
    if miss is not None:
        yield miss


# One for each part of the catalogue: every cylinder is asked with all of them.
_collar: Final = lru_cache(1024)(StackCollar)
_ring: Final = lru_cache(1024)(StackRing)


def _in_stated_order(given: OpeningInput, fits: Sequence[StackFit]) -> Iterable[StackFit]:
    """Of fits with equally many rings: least projection, nearest to flush; of equals the cheapest, then by number."""
    if len(fits) == 1:
        return fits
    exchange = given.exchange
    prices: dict[str, tuple[bool, Decimal]] = {}

    def price(number: str) -> tuple[bool, Decimal]:
        if number not in prices:
            part = given.catalogue.get(number)
            prices[number] = (False, ZERO) if part is None else worth(part, exchange)
        return prices[number]

    def stands(found: StackFit) -> tuple[float, float]:
        return round(found.projection_mm, 3), round(abs(found.gap_mm), 3)

    def dear(found: StackFit) -> tuple[object, ...]:
        numbers = (*([found.collar] if found.collar is not None else []), *sorted(found.rings))
        priced = [price(number) for number in numbers]
        return sum(lacking for lacking, _ in priced), summed(price for _, price in priced), numbers

    equals = (list(group) for _, group in groupby(sorted(fits, key=stands), key=stands))
    return (found for group in equals for found in (sorted(group, key=dear) if len(group) > 1 else group))


def _under(given: OpeningInput, part: Part, role: Role) -> list[tuple[Part, float]]:
    """Return the collars or rings with their heights; those that are known not to suit thread and head only alone."""
    every = [(each, high) for each in offered(given, role, role) if (high := each.number_of(HEIGHT_MM)) is not None]
    thread, head = part.number_of(THREAD_DIAMETER_MM), part.number_of(HEAD_DIAMETER_MM)

    def suits(each: Part) -> bool:
        bore = each.number_of(INNER_DIAMETER_MM)
        if bore is None:
            return True
        return (thread is None or bore >= thread - EQUAL_MM) and (head is None or bore <= head - EQUAL_MM)

    return [(each, high) for each, high in every if suits(each)] or every


def _carried(given: OpeningInput, part: Part, lock: Item) -> list[list[FitPart]]:
    """Return every cam, and every tailpiece conversion, that the lock's case needs and the cylinder takes.

    Cams first, of each the cheapest first; where there is none, that there is none.
    """
    wanted, fixing, exchange = lock.cam_form, part.text_of(CAM_FIXING), given.exchange
    found: list[list[FitPart]] = []
    roles: tuple[tuple[Role, TextName], ...] = (("cam", CAM_FORM), ("tailpiece", TAIL_FORM))
    for role, attribute in roles:
        chosen = any(choice.role == role for choice in given.chosen)
        why = chosen_by(given, role) if chosen else f"the lock's case needs {str(wanted).replace('-', ' ')}"
        fitting = [
            each
            for each in offered(given, role, role)
            if chosen or (wanted is not None and each.text_of(FITS) == fixing and each.text_of(attribute) == wanted)
        ]
        if len(fitting) > 1:
            fitting.sort(key=lambda each: (*worth(each, exchange), each.number))
        found += [[fit_part(given, role, each, why)] for each in fitting]
        if chosen and fitting:
            # What a person chose stands in place of whatever else would do.
            return [[fit_part(given, role, each, why)] for each in fitting]
    return found or [[]]


# --- rim and euro-profile -----------------------------------------------------------------------------------------


def _rim(given: OpeningInput, bare: Fit, part: Part, lock: Item) -> Iterator[Fit]:
    """Yield the cylinder with its own tailpiece, then with each other one that the case needs, cheapest first."""
    trim = lock.trim_key_mm
    if trim is None:
        yield bare
        return
    chosen = any(choice.role == "tailpiece" for choice in given.chosen)
    tails = [
        each
        for each in offered(given, "tailpiece", "tailpiece")
        if chosen or (each.text_of(FITS) == "rim" and each.text_of(TAIL_FORM) == lock.cam_form)
    ]
    exchange = given.exchange
    tails.sort(key=lambda each: (*worth(each, exchange), each.number))
    stack = Stack("rim", trim)
    # Its own tailpiece stands first: it costs nothing where it reaches.
    if not (chosen and tails):
        own = part.text_of(TAIL_FORM) == lock.cam_form
        yield replace(bare, stack=_cut(given, stack, part, None) if own else stack)
    for tail in tails:
        why = f"the lock's case needs {lock.cam_form}, {tail.number_of(LENGTH_MM) or 0.0:g} mm long"
        built = with_parts(bare, fit_part(given, "tailpiece", tail, chosen_by(given, "tailpiece") if chosen else why))
        yield replace(built, stack=_cut(given, stack, part, tail))


def _cut(given: OpeningInput, stack: Stack, part: Part, tail: Part | None) -> Stack:
    """Write into a stack what is cut off its tailpiece, and what the tailpiece lacks."""
    limits = limits_of(_TAIL_REACH, given.settings)
    way, _ = tail_way(given, part, stack.turns, limits["case_sheet_mm"])
    long, step, _ = tail_size(part, tail)
    if way is None or long is None:
        return stack
    try:
        cut = tail_cut(way, long, step, limits["engagement_mm"], reach_off(given, part, long))
    except InputError:
        # The rule on the tailpiece's reach asks the same and refuses it with its numbers.
        return stack
    return replace(stack, cut_off_mm=cut.cut_off_mm, short_mm=max(stack.short_mm, cut.short_mm))


def _euro(given: OpeningInput, bare: Fit, part: Part, leaf: Leaf, lock: Item) -> Fit:
    key, inside = part.number_of(KEY_HALF_MM), part.number_of(INSIDE_HALF_MM)
    thick, trim = leaf.thickness_mm, lock.trim_key_mm
    if key is None or inside is None or thick is None or trim is None:
        return bare
    stands = key - (thick / 2 - (lock.case_offset_mm or 0.0) + trim)
    why = f"{bare.parts[0].reason}; {length(given, thick)} of leaf under {length(given, trim)} of trim"
    head = replace(bare.parts[0], reason=why)
    return Fit(
        "to-measure",
        parts=(head,),
        stack=Stack("euro-profile", stands, key_half_mm=key, inside_half_mm=inside, short_mm=max(0.0, -stands)),
    )

"""What a packet says of an opening, its leaf, its lock and its fit, each with a label."""

from typing import Final

from hwsched.documents import words
from hwsched.documents.view import OpeningView, ProjectView
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.quantities import LengthStyle
from hwsched.render.blocks import Facts
from hwsched.rules.reading import leaf_hand, leaf_name, lock_item, lock_leaf
from hwsched.rules.wording import aside_words
from hwsched.values import Fit
from hwsched.values.amounts import plain_amount
from hwsched.wiring.batteries import dues
from hwsched.work.checks import without_power
from hwsched.work.situation import Situation

_LEVEL_MM: Final = 0.2
"""Half of what the finest rule shows: less is not proud."""

CYLINDER_HEIGHT: Final = to_phrase("Cylinder above floor")
LOCK_HEIGHT: Final = to_phrase("Lock above floor")
_SERIALS: Final = {
    "fixed-reader": to_phrase("Reader serial number"),
    "bored-lever-lock": to_phrase("Lock serial number"),
    "gate-lock": to_phrase("Lock serial number"),
    "cabinet-lock": to_phrase("Lock serial number"),
}


def serial_label(situation: Situation) -> str:
    """Name what carries the serial number that is written down beside the unit's: cylinder, lock or reader."""
    return phrase(_SERIALS.get(situation.new_lock, to_phrase("Cylinder serial number")))


def situations(view: OpeningView) -> list[Situation]:
    """Return what decides the texts of each lock point: some steps are done once an opening or once a leaf."""
    found: list[Situation] = []
    leaves: list[str] = []
    for number, at in enumerate(view.points, start=1):
        leaf = lock_leaf(at.given) or next(iter(at.given.leaves), None)
        name = leaf_name(leaf) if leaf is not None else ""
        found.append(
            Situation(
                at.given,
                at.fit or Fit("to-measure"),
                leaf,
                lock_item(at.given),
                first=number == 1,
                last=number == len(view.points),
                new_leaf=name not in leaves,
                bench=frozenset((role, word) for point, role, word in view.bench if point == at.given.point.id),
            )
        )
        leaves.append(name)
    return found


def opening_facts(project: ProjectView, view: OpeningView) -> Facts:
    """Return what a packet says of an opening, and where it has one lock point all that it says of that."""
    opening = view.given.opening
    pairs = [
        (phrase("Location"), words.location(opening.room_from, opening.room_to) or phrase(words.UNKNOWN)),
        (
            (
                phrase("Form and hand"),
                f"{words.opening_word('form', opening.form)}, {opening.hand or phrase('hand unknown')}",
            )
            if view.given.leaves
            else (phrase("Form"), words.opening_word("form", opening.form))
        ),
        (phrase("Fire rating"), words.opening_word("rating", opening.rating)),
        (phrase("Egress role"), words.opening_word("egress", opening.egress)),
    ]
    if view.several:
        pairs.append((phrase("Lock points"), ", ".join(at.given.point.name for at in view.points)))
        if view.given.leaves:
            pairs.append((phrase("Frame"), words.opening_word("frame_material", opening.frame_material)))
    else:
        situation = situations(view)[0]
        pairs += leaf_facts(situation, project.length_style)
        if situation.leaf is not None:
            pairs.append((phrase("Frame"), words.opening_word("frame_material", opening.frame_material)))
        pairs += lock_facts(situation, project.length_style)
        if view.fit is not None and view.fit.status == "fits":
            pairs += fit_facts(situation, project.length_style)
    pairs += [(label, text or phrase(words.UNKNOWN)) for label, text in view.own]
    if opening.notes:
        pairs.append((phrase("Remarks"), opening.notes))
    return Facts(tuple(pairs), columns=3)


def leaf_facts(situation: Situation, style: LengthStyle) -> list[tuple[str, str]]:
    """Return what a packet says of a leaf; nothing where there is none."""
    leaf = situation.leaf
    if leaf is None:
        return []
    hand = leaf_hand(situation.given)
    own_hand = (
        [(phrase("Hand of this leaf"), hand or phrase("hand unknown"))] if hand != situation.given.opening.hand else []
    )
    return [
        *own_hand,
        (phrase("Leaf size"), words.size(leaf, style)),
        (phrase("Leaf thickness"), words.length(leaf.thickness_mm, style)),
        (
            phrase("Leaf"),
            f"{words.leaf_word('material', leaf.material)}, {words.leaf_word('construction', leaf.construction)}",
        ),
    ]


def lock_facts(situation: Situation, style: LengthStyle) -> list[tuple[str, str]]:
    """Return what a packet says of the existing lock; nothing where there is none."""
    lock = situation.lock
    if lock is None:
        return []
    if situation.leaf is None:
        # A reader on a wall has neither backset nor function.
        return [
            (phrase("Existing lock"), words.item_word("lock_form", lock.lock_form)),
            (phrase("Reader above floor"), words.length(lock.cylinder_height_mm, style)),
            (phrase("Reader sideways"), aside_words(situation.given)),
        ]
    return [
        (phrase("Existing lock"), words.item_word("lock_form", lock.lock_form)),
        (phrase("Function"), words.item_word("function", lock.function)),
        (phrase("Backset"), words.length(lock.backset_mm, style)),
        (
            phrase(CYLINDER_HEIGHT if situation.by_cylinder else LOCK_HEIGHT),
            words.length(lock.cylinder_height_mm, style),
        ),
    ]


def fit_facts(situation: Situation, style: LengthStyle) -> list[tuple[str, str]]:
    """Return what is worked out and has to be kept at the door: head, lead, unit, battery."""
    fit = situation.fit
    pairs = []
    if fit.stack is not None and fit.stack.form == "rim":
        pairs.append((phrase("Cylinder head"), phrase("lies on the trim")))
    elif fit.stack is not None and abs(fit.stack.projection_mm) < _LEVEL_MM and not fit.stack.turns:
        pairs.append((phrase("Cylinder head"), phrase("level with the trim")))
    elif fit.stack is not None:
        count = fit.stack.turns
        turns = phrase_of_count(
            ", cam plane {count} turn beyond centre", ", cam plane {count} turns beyond centre", count
        )
        turns = turns if count else ""
        pairs.append(
            (
                phrase("Cylinder head"),
                phrase(
                    "{length} proud of the trim{turns}",
                    length=words.length(fit.stack.projection_mm, style),
                    turns=turns,
                ),
            )
        )
    if fit.stack is not None and fit.stack.cut_off_mm:
        pairs.append((phrase("Break off the tailpiece"), words.length(fit.stack.cut_off_mm, style)))
    if fit.cable is not None:
        pairs.append(
            (
                phrase("Lead"),
                phrase(
                    "takes {length} of {length_2}",
                    length=words.length(fit.cable.length_mm, style),
                    length_2=words.length(fit.cable.available_mm, style),
                ),
            )
        )
    if fit.placement is not None:
        place = fit.placement
        where = {"inside": "on the inside", "key": "on the key side", "edge": "in the lock edge"}.get(
            place.face, phrase("on the wall")
        )
        pattern = "" if place.face == "edge" else f", {place.pattern}"
        pairs.append(
            (
                phrase("Unit"),
                f"{where}{pattern}{phrase(' (placed by hand)') if place.source == 'by-hand' else ''}",
            )
        )
    found = dues([(situation.given, fit)])
    cells = [f"{plain_amount(due.count)} × {due.designation or due.cell}" for due in found]
    if fit.battery is not None:
        pairs.append(
            (phrase("Battery"), ", ".join([*cells, phrase("{days} as surveyed", days=words.days(fit.battery.days))]))
        )
    elif cells:
        pairs.append((phrase("Battery"), ", ".join(cells)))
    # Of what a supply feeds the test sheet says it.
    if situation.unit is not None and not situation.on_supply:
        pairs.append((phrase("Without power"), without_power(situation)))
    for due in found:
        by = due.due_on.isoformat() if due.due_on else phrase("write down the day of installation")
        pairs.append((phrase("Change by"), by))
    return pairs

"""Survey sheets: one paper sheet a door, front and back, with room to write in what is not known.

Asked is what the rules read for openings and locks of this form; what decides there nothing is not on the sheet.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from typing import Any, Final

from hwsched.attributes import Attribute, show_value
from hwsched.attributes.showing import shown_unit
from hwsched.documents import words
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.drawings.survey.measuring import LETTERS, SKETCHES, SURROUNDINGS
from hwsched.language import phrase, to_phrase
from hwsched.quantities import LengthStyle
from hwsched.render.blocks import (
    Blank,
    Blanks,
    Block,
    Column,
    Document,
    Heading,
    Paragraph,
    Ruled,
    Section,
)
from hwsched.survey import INHERITED, ITEM, LEAF, OPENING, Entity
from hwsched.survey.asked import OF_KINDS, READERS, asked_of, asked_of_device, asked_of_lock, decides
from hwsched.values import Catalogue, Item, Leaf, Opening, OpeningInput
from hwsched.values.lock_points import is_lock, lock_items

WHERE: Final = ("building", "level", "room_from", "room_to", "form", "hand", "exposure")
FRAME: Final = ("frame_material", "frame_stop_mm", "frame_face_mm", "header_depth_mm", "wall_build", "reader_aside_mm")
SAFETY: Final = (
    "rating", "frame_rating", "stair", "accessible", "no_exit_confirmed", "egress", "egress_toward", "stair_release",
    "smoke_seal", "fire_recall",
)  # fmt: skip
OF_PAIR: Final = ("closes_first",)
USE: Final = (
    "temperature_low_c", "operations_per_day", "operations_day_off", "supply_distance_m", "rise_m", "power_wish",
    "access_policy", "controller_output", "connected_by",
)  # fmt: skip
OF_OFFICE: Final = frozenset(
    {
        "mark",
        "projection_mm",
        "plan_x_m",
        "plan_y_m",
        "wave",
        "priority",
        "difficulty",
        "installed_on",
        "notes",
        "position",
        "item_notes",
    }
)
"""What the office decides or reads off a plan, what the sheet has another place for, and what no rule reads."""
ONLY_TOLD: Final = frozenset({"frame_rating"})
"""Shown where somebody told them, and asked of nobody: most frames bear the label of their leaf."""
OF_LEAF: Final = (
    "width_mm", "height_mm", "thickness_mm", "undercut_mm", "stile_mm", "material", "self_closes", "construction",
    "core", "unused_holes", "raceway",
)  # fmt: skip
OF_LOCK: Final = (
    "lock_form", "function", "disposition", "latch_form", "cam_form", "thumb_turn", "backset_mm", "cylinder_height_mm",
    "case_height_mm", "case_depth_mm", "case_above_mm", "case_width_mm", "case_offset_mm",
    "front_height_mm", "front_width_mm", "trim_key_mm", "trim_inside_mm", "cross_bore_mm", "edge_bore_mm",
)  # fmt: skip
OF_ITEM: Final = ("kind", "leaf", "face", "x_mm", "y_mm", "width_mm", "height_mm", "disposition")
_SHORT: Final = {
    "x_mm": to_phrase("From edge"),
    "y_mm": to_phrase("Above floor"),
    "width_mm": to_phrase("Wide"),
    "height_mm": to_phrase("High"),
    "kind": to_phrase("Item"),
    "disposition": to_phrase("Stays or not"),
    "leaf": to_phrase("Leaf"),
    "face": to_phrase("Face"),
}
_SHARES: Final = {"kind": 2.3, "leaf": 1.3, "face": 1.2, "disposition": 1.2}
_SHARE_OF_SIZE: Final = 1.05
_ROWS: Final = 3
"""Rows to write further items into that there are at least."""
_MOST_WORDS: Final = 8
"""A choice of more words is written, not ticked."""
_MINUTES: Final = " min"
"""Behind each word of a rating; on paper it is said once, with the label."""
_NARROW: Final = 58
"""Letters of words to tick that one column holds in a few lines."""
_LONG: Final = 32
"""Letters of a label that one column holds in two lines, with no room for a third."""
BLANK_FORMS: Final = (
    ("single", "mortise"), ("single", "rim"), ("single", "euro-profile"), ("single", "bored"), ("pair", "mortise"),
    ("gate", "gate"), ("cabinet", "cabinet"), ("lift", "reader"), ("turnstile", "reader"),
)  # fmt: skip
"""Form of the opening and of its lock of which there is a blank sheet."""


Own = tuple[tuple[str, str], ...]
"""The project's own fields of an opening: label and value, empty where it is unknown."""


def build(project: ProjectView, _: OpeningView | None = None) -> Document:
    """Build the survey sheets of a project's openings."""
    sections: Iterable[Section] = (
        sheet(view.given, project.length_style, view.own) for view in project.openings
    )  # fmt: skip
    if not project.openings:
        sections = (Section((Paragraph(phrase("There is no opening to survey.")),)),)
    return _document(project.title, project.revision, project.date, tuple(sections))


def filled(title: str, date: str, openings: Iterable[tuple[OpeningInput, Own]], style: LengthStyle) -> Document:
    """Build the sheets of some openings without their fits: what a surveyor takes along needs none."""
    return _document(title, "", date, tuple(sheet(given, style, own) for given, own in openings))


def blank(title: str, date: str, style: LengthStyle, own: Own = ()) -> Document:
    """Build an empty sheet for each form of lock, and for a pair."""
    return _document(title, "", date, tuple(sheet(_nothing_known(*forms), style, own) for forms in BLANK_FORMS))


def _document(title: str, revision: str, date: str, sections: tuple[Section, ...]) -> Document:
    return Document(phrase("Survey sheet"), title, revision, date, sections)


def _nothing_known(form: str, lock_form: str) -> OpeningInput:
    positions = {"single": ("single",), "pair": ("active", "inactive")}.get(form, ("single",))
    leaves = () if lock_form == "reader" else tuple(Leaf(each, position=each) for each in positions)
    lock = Item("lock", kind="lock", lock_form=lock_form)
    return OpeningInput(Opening("blank", "", form=form), leaves, (lock,), Catalogue({}, ""))


def sheet(given: OpeningInput, style: LengthStyle, own: Own = ()) -> Section:
    """Return the sheet of one opening: sizes and words on its front, what else stands there on its back.

    Parameters
    ----------
    given : OpeningInput
        As far as it is known.
    style : LengthStyle
        In which known lengths are shown; its unit stands behind what is written.
    own : tuple of (str, str)
        Fields of the project's own.
    """
    return Section((*_front(given, style, own), *_back(given, style)), given.opening.mark, whole_sheets=True)


def _front(given: OpeningInput, style: LengthStyle, own: Own) -> Iterator[Block]:
    opening, locks = given.opening, lock_items(given.leaves, given.items)
    named = [Blank(phrase("Mark"))] if not opening.mark else []
    where = [*named, *_opening_blanks(given, WHERE, style), *(Blank(label, value) for label, value in own)]
    yield Heading(phrase("Opening") if not opening.mark else phrase("Opening {mark}", mark=opening.mark), 2)
    yield Blanks(tuple(where))
    shown: set[str] = set()
    for number, leaf in enumerate(() if _on_wall(given) else given.leaves):
        yield Heading(_leaf_title(leaf) + (phrase(": what differs from the other") if number else ""), 2)
        asked = (name for name in OF_LEAF if asked_of(name, opening.form) and decides(name, opening, leaf))
        blanks = [_blank(LEAF, name, getattr(leaf, name), style, shown, brief=number > 0) for name in asked]
        yield Blanks((*blanks, *(_opening_blanks(given, OF_PAIR, style) if number else ())))
    for lock in locks or (Item("", kind="lock"),):
        yield Heading(_lock_title(lock, several=len(locks) > 1), 2)
        asked = (
            name for name in OF_LOCK if asked_of(name, opening.form) and asked_of_lock(name, lock.lock_form)
        )  # fmt: skip
        yield Blanks(tuple(_blank(ITEM, name, getattr(lock, name), style, shown) for name in asked))


def _back(given: OpeningInput, style: LengthStyle) -> Iterator[Block]:
    opening = given.opening
    yield Heading(phrase("Wall") if _on_wall(given) else phrase("Frame"), 2)
    yield Blanks((*_opening_blanks(given, FRAME, style), *_wall(given, style)))
    yield Heading(phrase("Fire and ways out"), 2)
    # What the building or the level says already is not asked again at each of its openings.
    rooms = tuple(name for name in INHERITED if getattr(opening, name) is None and name not in USE)
    yield Blanks(_opening_blanks(given, SAFETY, style))
    yield Heading(phrase("Use and power"), 2)
    yield Blanks(_opening_blanks(given, USE, style))
    if asked := _opening_blanks(given, rooms, style, brief=True):
        yield Heading(phrase("Of the building, where nobody has told it yet"), 2)
        yield Blanks(asked)
    if _on_wall(given):
        yield Heading(phrase("Notes"), 2)
        yield Ruled((Column(phrase("Notes")),), ((opening.notes,),) if opening.notes else (), least=_ROWS)
        return
    yield Heading(phrase("What else stands on the leaf and in the frame"), 2)
    yield Blanks((Blank(phrase("Notes"), opening.notes or "", sketch=SURROUNDINGS, span=4),))
    yield Paragraph(_of_kinds(given), "small")
    yield _items(given, style)


def _on_wall(given: OpeningInput) -> bool:
    """Tell whether a reader stands on a wall: no leaf is there to be measured."""
    return given.opening.form in READERS


def _wall(given: OpeningInput, style: LengthStyle) -> tuple[Blank, ...]:
    """Return the thickness of the wall that a lead goes through, which stands as the leaf's."""
    if not _on_wall(given):
        return ()
    leaf = next(iter(given.leaves), Leaf(""))
    asked = _blank(LEAF, "thickness_mm", leaf.thickness_mm, style, set())
    return (replace(asked, label=phrase("Thickness of wall or enclosure")),)


def _opening_blanks(
    given: OpeningInput, names: Iterable[str], style: LengthStyle, *, brief: bool = False
) -> tuple[Blank, ...]:
    opening, leaf = given.opening, next(iter(given.leaves), None)
    told = (name for name in names if name not in ONLY_TOLD or getattr(opening, name) is not None)
    asked = (name for name in told if asked_of(name, opening.form) and decides(name, opening, leaf))
    return tuple(_blank(OPENING, name, getattr(opening, name), style, set(), brief=brief) for name in asked)


def _blank(entity: Entity, name: str, value: Any, style: LengthStyle, shown: set[str], *, brief: bool = False) -> Blank:
    """Return a fact with its sketch, which stands once on a sheet; brief: words are written, not ticked."""
    attribute = entity.attribute(name)
    if attribute.unit == "m":
        # The workbook into which the sheet is typed asks it in metres, whatever the project's lengths.
        style = "mm"
    key = f"{entity.name}.{name}"
    sketch = SKETCHES.get(key) if key not in shown else None
    shown.add(key)
    ticked = _words(attribute) if not brief or attribute.kind == "flag" else ()
    letters = sum(len(word.removesuffix(_MINUTES)) + 3 for word in ticked)
    known = show_value(attribute, value, style, with_unit=False)
    # A long label takes two columns, too.
    span = max(1 + (letters > _NARROW and not known) + (letters > 2.5 * _NARROW and not known),
               1 + (len(attribute.label) > _LONG))  # fmt: skip
    label = phrase(attribute.label)
    if not known and any(word.endswith(_MINUTES) for word in ticked):
        label, ticked = f"{label},{_MINUTES}", tuple(word.removesuffix(_MINUTES) for word in ticked)
    return Blank(label, known, ticked, shown_unit(attribute, style), sketch, span)


def _words(attribute: Attribute) -> tuple[str, ...]:
    if attribute.kind == "flag":
        return phrase("yes"), phrase("no")
    if attribute.kind == "choice" and len(attribute.choices) <= _MOST_WORDS:
        return tuple(phrase(choice.label) for choice in attribute.choices)
    return ()


def _leaf_title(leaf: Leaf) -> str:
    return (
        phrase("Leaf")
        if leaf.position in (None, "single")
        else phrase("Leaf, {lower}", lower=words.leaf_word("position", leaf.position).lower())
    )


def _lock_title(lock: Item, *, several: bool) -> str:
    title = words.item_word("kind", lock.kind) if lock.kind else phrase("Lock")
    if several and lock.leaf in ("active", "inactive"):
        title += phrase(", {leaf} leaf", leaf=lock.leaf)
    return title


def _items(given: OpeningInput, style: LengthStyle) -> Ruled:
    """Return the table of what else stands there, known rows first, then rows to write in."""
    names = tuple(name for name in OF_ITEM if name != "leaf" or given.opening.form in ("pair", None))
    converted = {lock.id for lock in lock_items(given.leaves, given.items)}
    others = [item for item in given.items if item.id not in converted]
    rows = [(*(_item_cell(item, name, style) for name in names), _besides(given, item, style)) for item in others]
    columns = tuple(Column(_title(name, style), _SHARES.get(name, _SHARE_OF_SIZE)) for name in names)
    return Ruled((*columns, Column(phrase("Besides"), 2.0)), tuple(rows), least=_ROWS, fill=True)


def _title(name: str, style: LengthStyle) -> str:
    letter = LETTERS.get(name)
    attribute = ITEM.attribute(name)
    return (
        f"{letter} {phrase(_SHORT[name])}, {shown_unit(attribute, style)}"
        if letter
        else phrase(_SHORT.get(name, attribute.label))
    )


def _item_cell(item: Item, name: str, style: LengthStyle) -> str:
    return show_value(ITEM.attribute(name), getattr(item, name), style, with_unit=False)


def _besides(given: OpeningInput, item: Item, style: LengthStyle) -> str:
    """Return what is asked of items of that kind only, with what is known of it."""
    told = []
    for name in _asked_besides(given, item):
        attribute = ITEM.attribute(name)
        known = show_value(attribute, getattr(item, name), style)
        told.append(f"{phrase(_LETTERED.get(name, attribute.label))}: {known or '........'}")
    return "; ".join(told)


_LETTERED: Final[Mapping[str, str]] = {
    "cutout_height_mm": f"{LETTERS['cutout_height_mm']} cut-out",
    "device_form": to_phrase("its kind"),
    "rod_x_mm": f"{LETTERS['rod_x_mm']} rods",
    "rod_ends": to_phrase("up, down"),
    "bolt_inset_mm": f"{LETTERS['bolt_inset_mm']} fixings",
}


def _of_kinds(given: OpeningInput) -> str:
    """Return what is to be written besides, by the kind of item."""
    by_kind: dict[str, list[str]] = {}
    for choice in ITEM.attribute("kind").choices:
        for name in _asked_besides(given, Item("", kind=choice.value)):
            label = phrase(_LETTERED.get(name, _within(ITEM.attribute(name).label)))
            by_kind.setdefault(phrase(choice.label), []).append(label)
    kinds: dict[tuple[str, ...], list[str]] = {}
    for kind, labels in by_kind.items():
        kinds.setdefault(tuple(labels), []).append(kind)
    return phrase("Besides. ") + "; ".join(f"{', '.join(kinds[labels])}: {', '.join(labels)}" for labels in kinds) + "."


def _within(label: str) -> str:
    """Return a label as it stands inside a sentence."""
    return label if label[1:2].isupper() else label[:1].lower() + label[1:]


def _asked_besides(given: OpeningInput, item: Item) -> Iterator[str]:
    leaf = next(iter(given.leaves), None)
    for name, kinds in OF_KINDS.items():
        if item.kind not in kinds or not asked_of_device(name, item.device_form):
            continue
        if asked_of(name, given.opening.form) and decides(name, given.opening, leaf):
            yield name
    if is_lock(item) and item.kind != "exit-device":
        yield "thumb_turn"


SURVEY_SHEETS = DocumentKind("survey-sheets", to_phrase("Survey sheets"), ("pdf",), False, build)

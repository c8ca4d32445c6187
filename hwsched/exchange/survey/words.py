"""What a header of a survey sheet means: the fact it names and the unit it carries.

Labels and synonyms come from the declarations in `hwsched.survey`; here belong only what headings add to them: groups
over several columns, leaves and items named in front, units in brackets.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Final

from hwsched.attributes import Attribute
from hwsched.attributes import split_unit as split_bracketed_unit
from hwsched.exchange.survey.mapping import Target, plain_word
from hwsched.quantities import BARE_UNITS
from hwsched.survey import ENTITIES, ITEM, LEAF, OPENING
from hwsched.survey.item import KINDS

SIZE: Final = "size"
"""Of a leaf: width and height in one cell, for one leaf or for both of a pair."""
TYPE: Final = Target("opening", "of_type")
"""No fact of its own: the row of a table of types that says what the opening's own row does not."""
TYPE_ATTRIBUTE: Final = Attribute("of_type", "Type")
TYPE_WORDS: Final = frozenset(
    map(
        plain_word,
        (
            "type", "door type", "opening type", "leaf type", "type mark", "type no", "type number", "type id",
            "type code", "type name", "door type mark", "door type no", "door type code", "unit type", "assembly",
            "assembly type", "family", "style",
        ),
    )
)  # fmt: skip
"""Headings of a column of types; some of them name a fact where its words are understood."""
LOCK_FACTS: Final = frozenset(
    {
        "lock_form",
        "function",
        "backset_mm",
        "cylinder_height_mm",
        "case_height_mm",
        "case_depth_mm",
        "case_width_mm",
        "case_above_mm",
        "case_offset_mm",
        "front_height_mm",
        "front_width_mm",
        "trim_key_mm",
        "trim_inside_mm",
        "thumb_turn",
        "cross_bore_mm",
        "edge_bore_mm",
        "cam_form",
        "latch_form",
    }
)
"""Facts of an existing item that on an opening's own row describe its lock."""

_NAMED = (": name", ":name")
_SIZE_WORDS = ("size", "door size", "leaf size", "nominal size", "w x h", "width x height", "leaf w x h", "dimensions")
_BRACKETED = re.compile(r"^(.*?)\s*[(\[{]\s*([^()\[\]{}]*?)\s*[)\]}]\s*$")
# After a comma or "in" any unit; as a last word only what can be nothing else ("Trim in" is the inner trim).
_TRAILING = re.compile(
    r"^(.*?)(?:\s*[,;/]\s*|\s+in\s+)(in\.?|ins|inch|inches|ft\.?|foot|feet|mm|cm|m|met(?:er|re)s?|millimet(?:er|re)s?)$"
    r"|^(.*?)[\s-]+(inch|inches|feet|mm|cm|met(?:er|re)s|millimet(?:er|re)s)$",
    re.IGNORECASE,
)
_OTHER_MEASURES: Final = frozenset(
    map(
        plain_word,
        (
            "clear opening", "clear", "clear width", "net clear", "rough opening", "r.o.", "masonry opening", "m.o.",
            "structural opening", "wall opening", "frame size", "frame opening", "overall", "overall frame", "glass",
            "glazing size", "vision panel", "louver", "louvre", "lite", "side lite", "sidelite", "transom",
        ),
    )
)  # fmt: skip
"""Headings over widths and heights that are not the leaf's: common practice of door schedules."""
_LAST_WORD: Final = re.compile(r"(.*\S)[\s_.-]+(in|ft)\.?", re.IGNORECASE)
"""A unit that may be a word as well: it counts below the heading of a length that has no such word."""
_WORD: Final = re.compile(r"[^\W_]+")
_SHORT: Final = {
    "dr": "door", "drs": "door", "flr": "floor", "fl": "floor", "lvl": "level", "bldg": "building", "blg": "building",
    "ht": "height", "hgt": "height", "wdth": "width", "thk": "thickness", "thick": "thickness", "thkns": "thickness",
    "matl": "material", "mtl": "material", "mat": "material", "frm": "frame", "fr": "frame", "rtg": "rating",
    "rtng": "rating", "lbl": "label", "hdg": "handing", "opng": "opening", "opg": "opening", "num": "number",
    "nbr": "number",
    "rm": "room", "loc": "location", "const": "construction", "constr": "construction", "lf": "leaf",
    "mins": "min", "minutes": "min", "minute": "min", "func": "function", "rem": "remarks", "rmks": "remarks",
    "cmnt": "comment", "cmnts": "comments", "cmt": "comment",
    "typ": "type", "egr": "egress", "lk": "lock", "cyl": "cylinder", "bks": "backset",
}  # fmt: skip
"""Short words of headings by what they are written for: common practice of drafting lists and of old databases."""
_ENDINGS: Final = frozenset({"nm", "cd", "fl", "flg", "flag", "ind", "txt", "desc", "descr", "val", "dt"})
"""Of columns of databases: a name, a code, a flag, a text, a value, a date; common practice."""
_SHORT_BESIDE: Final = {"wd": "width", "w": "width", "h": "height", "t": "thickness", "#": "number"}
"""Those that are read so only beside another word: WD alone is wood as well."""
_NEUTRAL = frozenset(
    map(
        plain_word,
        (
            "", "dimensions", "dimension", "measurements", "measures", "size", "sizes", "general", "details", "survey",
            "data", "identification", "id", "location", "existing", "existing conditions", "as found", "door data",
            "information", "info", "description", "notes", "use", "duty", "site", "field survey", "key data",
            "fire", "fire protection", "life safety", "safety", "code",
        ),
    )
)  # fmt: skip
_GROUPS: Final[Mapping[str, str]] = {
    **{plain_word(w): "opening" for w in ("opening", "openings", "doorway", "frame and opening", "opening and frame")},
    **{
        plain_word(w): "leaf"
        for w in ("leaf", "leaves", "door", "door leaf", "door leaves", "each leaf", "both leaves")
    },
    **{
        plain_word(w): "existing_item"
        for w in ("existing item", "existing items", "item", "items", "hardware", "existing hardware", "found hardware")
    },
}
_BELOW_LEAF: Final = frozenset(
    {
        "building", "level", "room_from", "room_to", "hand", "rating", "egress", "accessible", "exposure", "notes",
        "wave", "priority",
    }
)  # fmt: skip
"""Facts of an opening that lists give below the heading Door: nothing else there is called so."""
_LEAF_SLOTS: Final[Mapping[str, str]] = {
    **{plain_word(w): "active" for w in ("active", "active leaf", "active door", "leaf active")},
    **{
        plain_word(w): "inactive"
        for w in ("inactive", "inactive leaf", "inactive door", "leaf inactive", "standing leaf", "passive leaf")
    },
}
# What a kind in front makes plain. The height of a closer can be its footprint's or its place: asked, not guessed.
_PLACES = frozenset({"face", "leaf", "x_mm", "y_mm", "projection_mm", "disposition", "item_notes"})
_SIZED_KINDS = frozenset({"lite", "louvre", "kick-plate", "push-plate", "label"})


@dataclass(frozen=True, slots=True)
class Meaning:
    """What a header says."""

    target: Target | None
    unit: str = ""


class Vocabulary:
    """All headers that can be understood: the declared facts and a project's own fields.

    Parameters
    ----------
    own_fields : mapping of str to Attribute
        Fields of the project's own by entity.
    """

    def __init__(self, own_fields: Mapping[str, tuple[Attribute, ...]] | None = None) -> None:
        own_fields = own_fields or {}
        self._known: dict[tuple[str, str], Meaning] = {}
        self._attributes: dict[tuple[str, str], Attribute] = {}
        self._own = {(name, each.name) for name, found in own_fields.items() for each in found}
        self._within: dict[str, dict[str, Target]] = {}
        for entity in ENTITIES:
            own = own_fields.get(entity.name, ())
            self._attributes |= {(entity.name, a.name): a for a in (*own, *entity.attributes)}
            # Earlier lists win: labels, then the project's own fields, then synonyms, then bare names.
            words: dict[str, Target] = {}
            _add(words, entity.name, ((a, (a.label,)) for a in entity.attributes))
            _add(words, entity.name, ((a, (a.label, a.name, *a.synonyms)) for a in own))
            _add(words, entity.name, ((a, a.synonyms) for a in entity.attributes))
            if entity is LEAF:
                words |= {plain_word(w): Target("leaf", SIZE) for w in _SIZE_WORDS if plain_word(w) not in words}
            self._within[entity.name] = words
        self._anywhere: dict[str, Target] = {}
        for entity in (OPENING, LEAF, ITEM):
            for word, target in self._within[entity.name].items():
                self._anywhere.setdefault(word, target)
        for entity in ENTITIES:
            # Inside a named group the stem is enough: width below Existing item is the item's.
            _add(
                self._within[entity.name],
                entity.name,
                ((a, (a.name, _stem(a.name), a.name.replace("item_", ""))) for a in entity.attributes),
            )
        self._attributes.setdefault((TYPE.entity, TYPE.attribute), TYPE_ATTRIBUTE)
        for word in TYPE_WORDS:
            self._anywhere.setdefault(word, TYPE)
        self._kinds = {plain_word(w): k.value for k in KINDS for w in (k.label, *k.synonyms)}

    def attribute(self, target: Target) -> Attribute | None:
        """Return the declaration behind a target, None where there is none (as for a size)."""
        return self._attributes.get((target.entity, target.attribute))

    def knows(self, target: Target) -> bool:
        """Tell whether a target exists."""
        return (target.entity, target.attribute) in self._attributes or target == Target("leaf", SIZE, target.slot)

    def is_own(self, target: Target) -> bool:
        """Tell whether a target is a field of the project's own."""
        return (target.entity, target.attribute) in self._own

    def kind_named(self, heading: str) -> str | None:
        """Return the kind of existing item that a heading names, in one or in several; None where it names none.

        Examples
        --------
        >>> Vocabulary().kind_named("Closers"), Vocabulary().kind_named("Closer type")
        ('closer', None)
        """
        word = plain_word(heading)
        return self._kinds.get(word) or self._kinds.get(word.removesuffix("s"))

    def meaning(self, child: str, parent: str = "") -> Meaning:
        """Understand a header, with the heading above it where one stands over several columns.

        Parameters
        ----------
        child : str
            The header as it stands.
        parent : str
            The heading above; empty where there is none.

        Examples
        --------
        >>> Vocabulary().meaning("Thickness (in)")
        Meaning(target=Target(entity='leaf', attribute='thickness_mm', slot=''), unit='in')
        >>> Vocabulary().meaning("Material", "Frame").target.attribute
        'frame_material'
        """
        known = self._known.get((child, parent))
        if known is None:
            known = self._known[child, parent] = self._meaning(child, parent)
        return known

    def _meaning(self, child: str, parent: str) -> Meaning:
        parent_name, parent_unit = split_unit(parent)
        if parent and is_unit(child):
            child = f"({child.strip('()[] ')})"
        # As it stands, then with the short words of the trade written out.
        child_name = without_ending(child)
        for group, heading in dict.fromkeys(
            (
                (parent_name, child),
                (written_out(parent_name), written_out(child)),
                (parent_name, child_name),
                (written_out(parent_name), written_out(child_name)),
            )
        ):
            for name, unit in _readings(heading):
                target = self._target(plain_word(name), plain_word(group))
                if target is not None:
                    return Meaning(target, unit or parent_unit)
            last = _LAST_WORD.fullmatch(heading)
            target = self._target(plain_word(last[1]), plain_word(group)) if last else None
            attribute = self.attribute(target) if target is not None else None
            if last and attribute is not None and attribute.kind == "length":
                return Meaning(target, last[2].casefold())
        return Meaning(None)

    def _target(self, word: str, parent: str) -> Target | None:
        if not word:
            return self._anywhere.get(parent) or self._target_with_prefix(parent) if parent else None
        if parent:
            return self._target_below(word, parent)
        return self._anywhere.get(word) or self._target_with_prefix(word)

    def _target_below(self, word: str, parent: str) -> Target | None:
        if parent in _LEAF_SLOTS:
            found = self._within["leaf"].get(word)
            return Target("leaf", found.attribute, _LEAF_SLOTS[parent]) if found else None
        if parent in _GROUPS:
            found = self._within[_GROUPS[parent]].get(word) or self._anywhere.get(parent + word)
            return found or (self._of_opening(word) if _GROUPS[parent] == "leaf" else None)
        if (combined := self._anywhere.get(parent + word)) is not None:
            return combined
        if parent in self._kinds:
            return self._of_kind(self._kinds[parent], word)
        if parent in _NEUTRAL or parent == word:
            return self._anywhere.get(word) or self._target_with_prefix(word)
        # A heading of its own (Rough opening, Glass) speaks of another thing than the leaf or the opening.
        return None

    def _of_opening(self, word: str) -> Target | None:
        """Return a fact of the opening that stands below the leaf's heading: Room or Fire rating below Door."""
        found = self._within["opening"].get(word)
        return found if found is not None and found.attribute in _BELOW_LEAF else None

    def _of_kind(self, kind: str, word: str) -> Target | None:
        found = self._within["existing_item"].get(word)
        if found is None or found.attribute == "kind":
            return None
        if kind == "lock" and found.attribute in LOCK_FACTS:
            return found
        if found.attribute in _PLACES or (found.attribute in ("width_mm", "height_mm") and kind in _SIZED_KINDS):
            return Target("existing_item", found.attribute, kind)
        return None

    def _target_with_prefix(self, word: str) -> Target | None:
        for prefix, slot in _LEAF_SLOTS.items():
            found = self._within["leaf"].get(word.removeprefix(prefix)) if word.startswith(prefix) else None
            if found is not None and found.attribute != "position":
                return Target("leaf", found.attribute, slot)
        for prefix, kind in self._kinds.items():
            if word.startswith(prefix) and len(word) > len(prefix):
                target = self._of_kind(kind, word.removeprefix(prefix))
                if target is not None and target.slot:
                    return target
        return None


def split_unit(header: str) -> tuple[str, str]:
    """Split the unit off a header.

    Examples
    --------
    >>> split_unit("Thickness (in)"), split_unit("Width, mm"), split_unit("Trim in")
    (('Thickness', 'in'), ('Width', 'mm'), ('Trim in', ''))
    """
    name, unit = split_bracketed_unit(header)
    if unit:
        return name, unit
    trailing = _TRAILING.match(header.strip())
    if trailing:
        name, unit = (trailing[1], trailing[2]) if trailing[2] else (trailing[3], trailing[4])
        return name, split_bracketed_unit(f"({unit})")[1]
    return header, ""


def is_of_another(heading: str) -> bool:
    """Tell whether widths and heights below a heading are another thing's than the leaf's.

    Examples
    --------
    >>> is_of_another("Clear opening (mm)"), is_of_another("Door")
    (True, False)
    """
    return plain_word(split_unit(heading)[0]) in _OTHER_MEASURES


def written_out(heading: str) -> str:
    """Return a heading with its short words written out.

    Examples
    --------
    >>> written_out("DR_HT"), written_out("Frm. Mat'l"), written_out("WD"), written_out("Door W")
    ('door height', 'frame material', 'WD', 'door width')
    """
    words = _WORD.findall(heading.replace("'", "").replace("\u2019", ""))
    short = {**_SHORT, **_SHORT_BESIDE} if len(words) > 1 else _SHORT
    full = [short.get(word.casefold(), word.casefold()) for word in words]
    return " ".join(full) if full != [word.casefold() for word in words] else heading


def without_ending(heading: str) -> str:
    """Return a heading of a database without the ending that says of which kind its column is.

    Examples
    --------
    >>> without_ending("BLDG_NM"), without_ending("ADA_FL"), without_ending("1ST FL")
    ('BLDG', 'ADA', '1ST FL')
    """
    name, line, ending = heading.strip().rpartition("_")
    return name if line and ending.casefold() in _ENDINGS else heading


def is_of_types(heading: str) -> bool:
    """Tell whether a heading is one of a column of types.

    Examples
    --------
    >>> is_of_types("Door type"), is_of_types("DR. TYPE"), is_of_types("Frame type")
    (True, True, False)
    """
    return plain_word(heading) in TYPE_WORDS or plain_word(written_out(heading)) in TYPE_WORDS


def is_neutral(heading: str) -> bool:
    """Tell whether a heading says nothing of what stands below it, such as Size or Details; an empty one says nothing.

    Examples
    --------
    >>> is_neutral("Sizes"), is_neutral(""), is_neutral("Frame")
    (True, True, False)
    """
    return plain_word(heading) in _NEUTRAL


def is_unit(text: str) -> bool:
    """Tell whether a text is a unit of lengths and nothing else, in brackets or not.

    Examples
    --------
    >>> is_unit("(mm)"), is_unit("in."), is_unit("W")
    (True, True, False)
    """
    name, unit = split_bracketed_unit(f"({text.strip('()[] ')})")
    return not name and unit in BARE_UNITS


def _readings(header: str) -> Iterable[tuple[str, str]]:
    """Yield the ways to take a header apart: as it stands, without its unit, without what its bracket explains."""
    header = " ".join(header.split())
    name, unit = split_unit(header)
    bracketed = _BRACKETED.match(header)
    if name == header or not bracketed:
        yield header, ""
    if name != header:
        yield name, unit
    elif bracketed:
        inner, unit = split_unit(bracketed[1])
        yield inner, unit
    # As drawing programs write it: From Room: Name beside From Room: Number.
    if header.casefold().endswith(_NAMED):
        yield header.rpartition(":")[0], ""


def _stem(name: str) -> str:
    return name.removesuffix("_mm").removesuffix("_c").removesuffix("_m")


def _add(words: dict[str, Target], entity: str, attributes: Iterable[tuple[Attribute, Iterable[str]]]) -> None:
    for attribute, spellings in attributes:
        for spelling in spellings:
            words.setdefault(plain_word(spelling), Target(entity, attribute.name))

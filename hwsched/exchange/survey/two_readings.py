"""Headings with more than one reading: FR over FD60 is the fire rating, over HM the frame's material.

Each such heading stands in a table with all that people write below it. What the cells say decides; where they do not,
it is asked once a column with the readings shown, and the column is not read until somebody answers. Headings that have
one reading stand in `words`; here belong those that have several, and ticks below the name of what is ticked.
"""

import re
from collections import Counter
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from hwsched.attributes import Attribute, CellError, CellReader, as_text, unclear_word
from hwsched.attributes.emptiness import is_stroke, marks_emptiness
from hwsched.attributes.reading import says_unknown
from hwsched.exchange.survey.grid import Grid
from hwsched.exchange.survey.mapping import MARK, MappedColumn, OpenColumn, Target, plain_word, target_of
from hwsched.exchange.survey.words import SIZE, TYPE, Vocabulary, is_neutral, split_unit
from hwsched.language import to_phrase
from hwsched.quantities import One, ReadingError, plain_text, read_length, side_in_digits
from hwsched.survey.item import KINDS

NOT_READ: Final = to_phrase("not read")
"""The answer that is taken until somebody gives another."""
TICKS: Final = frozenset({"x", "yes", "y", "true", "1", "\u2713", "\u2714", "\u2611", "\u2612", "\u221a", "\u25cf"})
_NO: Final = frozenset({"no", "n", "0", "false", "none", "\u2610", "\u25cb"})
_MOST_READ, _AHEAD, _FEWEST_READ = 0.6, 0.3, 0.25
"""Share of the different cells that one reading must hold, by how much more than any other; where no other holds any
at all, the share that suffices."""
_FAR_AHEAD: Final = 0.5
"""By how much more what is no fact must hold: what is left out is lost."""
_WORDS: Final = 200
"""Different cells of a column that are tried, the most frequent ones."""
_SHOWN: Final = 4
_UNITS: Final = ("in", "mm", "cm")
"""In which bare numbers are tried as lengths of leaves."""


@dataclass(frozen=True, slots=True)
class Reading:
    """One reading of a heading."""

    fact: str
    """Such as ``opening.rating``; empty where it is nothing that is kept of an opening."""
    called: str = ""
    """What people call it where the fact's own label does not."""
    like: str = ""
    """Pattern of the cells that speak for it, where they are no words that the fact declares."""
    tick: str = ""
    """What a tick below the heading says, as a word of the fact."""


@dataclass(frozen=True, slots=True)
class Heading:
    """Headings that are written alike, and all that they are written for. Source of each: common practice."""

    words: tuple[str, ...]
    readings: tuple[Reading, ...]
    usual: bool = False
    """Whether what the heading means by itself is taken where the cells fit several readings, or none."""
    names: bool = False
    """Whether a letter alone below it may be the name of a type, and is no abbreviation of a word."""
    storeys: bool = False
    """Whether a bare number below it may be that of a storey, whatever else it may be: 20, 45, 90."""


_CODE: Final = r"(?:[A-Z]{1,3}[-. ]?)?\d{1,3}[A-Z]?|[A-Z]{1,2}"
_STOREY: Final = r"(?:l(?:evel|vl)?\.?|b|p|m|floor)?\s*-?\d{1,2}|gf?|b|m|rf?|lg|ug|g/f|grd|ground"
_SET: Final = r"(?:hw|hdw|set|hs|group|grp)?[-#. ]*(?:no\.? ?)?\d{1,3}(?:\.\d{1,2})?[A-Z]?"
_SOUND: Final = r"(?:stc|rw|r'w|oitc|nrc)\W*\d+.*|\d+ ?db.*"
_WAY: Final = r"(?:in|out)(?:[- ]?sw(?:ing)?|wards?|s)?|i/?s|o/?s|d/?a|double.*"
_MOVES: Final = r".*(?:swing|slid|fold|roll|revolv|pivot|part|overhead|acting).*|[ds]/?a"
_OF_CYLINDER: Final = r"(?:sf|lf|fs)?ic\W*\d?|interch.*|remov.*|perm.*"
_RATING: Final = Reading(
    "opening.rating", like=r"fd ?\d{2,3} ?s?|\d{2,3} ?(?:min.*|m)|\d(?:[ .]\d+(?:/\d)?)? ?(?:hr|hour).*"
)
_FRAME: Final = Reading("opening.frame_material")
_MATERIAL: Final = Reading("leaf.material")
_CONSTRUCTION: Final = Reading("leaf.construction")
_HAND: Final = Reading("opening.hand")
_FUNCTION: Final = Reading("existing_item.function")
_LOCK: Final = Reading("existing_item.kind@lock", "Lock on the door", tick="Lock")
_OF_TYPE: Final = Reading("opening.of_type", like=_CODE)
_LEVEL: Final = Reading("opening.level", like=_STOREY)
_FRAME_TYPE: Final = Reading("", "a type of frame", r"[A-Z]{1,3}[-. ]?\d{1,3}[A-Z]?|[A-Z]|\d{1,2}")
HEADINGS: Final = (
    Heading(("fr",), (_RATING, _FRAME, Reading("", "a type of frame", r"[A-Z]{1,3}[-. ]?\d{1,3}[A-Z]?")), names=True),
    Heading(("frame", "frame type", "frm", "frm type", "fr type"), (_FRAME, _FRAME_TYPE), usual=True, names=True),
    Heading(("matl", "mtl", "mat", "material"), (_MATERIAL, _FRAME), usual=True),
    Heading(
        ("type", "door type", "dr type", "typ"),
        (Reading("opening.form"), _MATERIAL, _CONSTRUCTION, _RATING),
        usual=True,
        names=True,
    ),
    Heading(("elevation", "elev", "el"), (_CONSTRUCTION, _OF_TYPE), usual=True, names=True),
    Heading(("size", "sz", "door size"), (Reading("leaf.size"), Reading("leaf.width_mm")), usual=True),
    Heading(
        ("hdw", "hw", "hdwr", "hdwe", "hardware"),
        (Reading("existing_item.kind"), Reading("", "a set of hardware", _SET)),
        usual=True,
    ),
    Heading(
        ("cl", "cls"),
        (
            Reading("existing_item.kind@closer", "Closer on the door", tick="Closer"),
            _RATING,
            Reading("", "a clear width", r"\d.*"),
        ),
        names=True,
    ),
    Heading(
        ("h", "ht", "hgt"),
        (Reading("leaf.height_mm"), _HAND, Reading("", "a type of hardware", r"[A-Z]+[-. ]?\d{1,3}")),
        usual=True,
    ),
    Heading(("w", "wd"), (Reading("leaf.width_mm"), Reading("opening.wall_build"), _MATERIAL), usual=True),
    Heading(("t", "th"), (Reading("leaf.thickness_mm"), _OF_TYPE), usual=True, names=True),
    Heading(("l",), (_RATING, _LEVEL, _HAND), names=True, storeys=True),
    Heading(("fl",), (_LEVEL, _RATING, _CONSTRUCTION), usual=True, names=True, storeys=True),
    Heading(
        ("f",),
        (_RATING, _FRAME, _LEVEL, _FUNCTION, Reading("", "a finish", r"us ?\d.*|6\d\d[a-z]?")),
        names=True,
        storeys=True,
    ),
    Heading(
        ("gl", "glass", "glazing", "lite", "vp"),
        (Reading("existing_item.kind@lite", "Lite in the leaf", tick="Lite"), _LEVEL, _MATERIAL),
    ),
    Heading(("fin", "finish", "fn"), (_FUNCTION, Reading("", "a finish", r".*"))),
    Heading(("rating", "rtg", "rtng"), (_RATING, Reading("", "a rating of sound", _SOUND)), usual=True),
    Heading(
        ("loc", "location"), (Reading("opening.exposure"), Reading("opening.room_from", like=r".{3,}")), usual=True
    ),
    Heading(("lk", "lock"), (Reading("existing_item.lock_form"), _FUNCTION, _LOCK), usual=True),
    Heading(
        ("lockset", "lock set", "locks"),
        (
            Reading("existing_item.lock_form"),
            _FUNCTION,
            _LOCK,
            Reading("", "a code of the lock", r"(?=.*\d).+"),
        ),
    ),
    Heading(("group", "grp"), (Reading("opening.occupancy_group"), Reading("", "a set of hardware", _SET)), names=True),
    Heading(("code",), (Reading("opening.code"), Reading("", "a code of another kind", r"(?=\S*\d)\S+"))),
    Heading(("power",), (Reading("opening.power_wish"), Reading("", "what is fed", r"yes|no|y|n|\d.*"))),
    Heading(("latch",), (Reading("existing_item.latch_form"),)),
    Heading(("side",), (Reading("existing_item.face"),)),
    Heading(("prep",), (Reading("existing_item.lock_form"),)),
    Heading(
        ("gasket", "gaskets", "gasketing", "seal", "seals", "smoke seals"),
        (Reading("opening.smoke_seal"), Reading("", "a kind of seal", r".+")),
    ),
    Heading(
        ("wall", "wall type", "partition", "partition type"),
        (Reading("opening.wall_build"), Reading("", "a type of wall", r"(?=.*\d).+|[A-Z]{1,2}")),
        names=True,
    ),
    Heading(("traffic",), (Reading("opening.operations_per_day"), Reading("", "how busy it is, in words", r"[^\d]+"))),
    Heading(("operations",), (Reading("opening.operations_per_day"), Reading("", "the way it moves", _MOVES))),
    Heading(
        ("action", "operation", "door action", "door operation"),
        (Reading("existing_item.disposition"), Reading("opening.form"), Reading("", "the way it moves", _MOVES)),
    ),
    Heading(("pair",), (Reading("opening.form", "Pair", tick="Pair"),)),
    Heading(("sw", "swing"), (_HAND, Reading("", "the way of the swing", _WAY)), usual=True),
    Heading(("dir", "direction"), (_HAND, Reading("opening.egress_toward"))),
    Heading(
        ("stop",),
        (Reading("opening.frame_stop_mm"), Reading("", "a stop of the door", r"[^\d]+|[a-z]+[- ]?\d+")),
        usual=True,
    ),
    Heading(("core",), (Reading("leaf.core"), Reading("", "a core of the cylinder", _OF_CYLINDER)), usual=True),
    Heading(
        ("leaf", "lf", "lvs"),
        (Reading("leaf.position"), Reading("opening.form", "number of leaves", r"[12]"), Reading("leaf.size")),
        usual=True,
    ),
    Heading(
        ("panic", "panic hardware", "panic hdw", "ph"),
        (
            Reading("existing_item.kind@exit-device", "Exit device on the door", tick="Exit device"),
            Reading("opening.egress", "Egress, panic hardware required", tick="panic"),
        ),
    ),
)  # fmt: skip
_BY_WORD: Final[Mapping[str, Heading]] = {plain_word(word): each for each in HEADINGS for word in each.words}


@dataclass(slots=True)
class Settled:
    """What became of the columns."""

    columns: list[MappedColumn]
    asked: list[OpenColumn]
    notes: list[tuple[int, str]]
    """Column, from 0, and what it was taken for by its cells."""


def settle_headings(
    grid: Grid,
    last: int,
    texts: Sequence[str],
    found: Iterable[MappedColumn],
    vocabulary: Vocabulary,
    by_person: Collection[int],
    told: Collection[int],
) -> Settled:
    """Settle by their cells the columns whose headings have several readings.

    Parameters
    ----------
    grid : Grid
        The sheet.
    last : int
        Lowest row of its header, from 0.
    texts : sequence of str
        Heading of each column.
    found : iterable of MappedColumn
        What the headings say by themselves, and what somebody said of them.
    vocabulary : Vocabulary
        The declared facts.
    by_person : collection of int
        Columns, from 0, of which a person says now what they carry.
    told : collection of int
        Columns of which an earlier import or a plan says it: it holds unless no cell fits it and another reading does.
    """
    rows = range(last + 1, len(grid.rows))
    known = {column.index: column for column in found}
    entries = {index: each for index, text in enumerate(texts) if (each := _entry(text)) is not None}
    carried = {column.target for index, column in known.items() if index not in entries or index in by_person}
    settled = Settled([], [], [])
    for index, text in enumerate(texts):
        entry, column = entries.get(index), known.get(index)
        of_item = vocabulary.kind_named(text) is not None if column is None else column.target.attribute == "kind"
        if entry is None and not of_item:
            continue
        # A unit makes a length plain; over anything else it says that the heading means another fact.
        measured = column is not None and bool(column.unit) and not _is_choice(column.target, vocabulary)
        # What a project calls a field of its own is that field.
        clear = column is not None and (measured or column.target in (MARK, TYPE) or vocabulary.is_own(column.target))
        if entry is not None and clear and index not in by_person:
            continue
        cells = _counted(grid.rows[last + 1 :], index)
        if entry is None or index in by_person:
            ticked = _ticked(text, index, column, cells, vocabulary) if cells else None
            if ticked is not None:
                known[index] = ticked
            continue
        if not cells:
            continue
        known.pop(index, None)
        kept = _settle(entry, column, _Cells(cells, vocabulary, entry), carried, told=index in told)
        if kept.reading is not None and kept.reading.fact:
            target = target_of(kept.reading.fact)
            if column is None or column.target != target:
                column = MappedColumn(index, text, target, split_unit(text)[1])
            means = _means(kept.reading.tick, cells) if kept.reading.tick else ()
            known[index] = replace(column, means=means)
        elif kept.keep and column is not None:
            known[index] = column
        if kept.reading is not None and kept.changed:
            what = kept.reading.called or label_of(kept.reading.fact, vocabulary)
            settled.notes.append((index, f"taken as {what} by what stands below"))
        if kept.ask:
            answers = (
                (NOT_READ, ""),
                *((each.called or label_of(each.fact, vocabulary), each.fact) for each in kept.ask),
            )
            held = tuple(row for row in rows if _at(grid.rows[row], index))
            shown = ", ".join(f'"{cell}" ({count})' for cell, count in cells.most_common(_SHOWN))
            more = f" and {len(cells) - _SHOWN} more" if len(cells) > _SHOWN else ""
            settled.asked.append(OpenColumn(index, text, shown + more, tuple(row + 1 for row in held), answers))
        if index in known:
            carried.add(known[index].target)
    settled.columns = sorted(known.values(), key=lambda column: column.index)
    return settled


def _is_choice(target: Target, vocabulary: Vocabulary) -> bool:
    attribute = vocabulary.attribute(target)
    return attribute is not None and attribute.kind == "choice"


def fits_otherwise(text: str, cells: Iterable[str], fact: Target, vocabulary: Vocabulary) -> bool:
    """Tell whether cells below a heading hold another of its readings than a fact."""
    entry = _entry(text)
    if entry is None:
        return False
    held = _Cells(Counter(cells), vocabulary, entry)
    return any(held.share(each) >= _MOST_READ for each in entry.readings if each.fact and target_of(each.fact) != fact)


def _entry(text: str) -> Heading | None:
    """Return the table's line of a heading, also below one that says nothing such as Details."""
    name = split_unit(text)[0]
    first, _, lowest = name.rpartition(" ")
    return _BY_WORD.get(plain_word(name)) or (_BY_WORD.get(plain_word(lowest)) if first and is_neutral(first) else None)


def label_of(fact: str, vocabulary: Vocabulary) -> str:
    """Return what people call a fact."""
    target = target_of(fact)
    attribute = vocabulary.attribute(target)
    return attribute.label if attribute is not None else "Width by height"


@dataclass(frozen=True, slots=True)
class _Kept:
    reading: Reading | None = None
    keep: bool = False
    """Whether the column stays as it was."""
    changed: bool = False
    ask: tuple[Reading, ...] = ()


def _settle(
    entry: Heading, column: MappedColumn | None, cells: "_Cells", carried: Collection[Target], *, told: bool
) -> _Kept:
    facts = sorted((each for each in entry.readings if each.fact), key=cells.share, reverse=True)
    best, second = (cells.share(each) for each in (*facts, _NOTHING)[:2])
    other = max((each for each in entry.readings if not each.fact), key=cells.share, default=_NOTHING)
    own = next((each for each in facts if column is not None and target_of(each.fact) == column.target), None)
    held = None
    if (best >= _MOST_READ and best - second >= _AHEAD) or (best >= _FEWEST_READ and not second):
        held = facts[0]
    if cells.share(other) >= _MOST_READ and cells.share(other) - best >= _FAR_AHEAD:
        held = other
    if told:
        # What was said of such a list holds, but for a column that now says another thing altogether.
        if held is None or held is own or own is None or cells.share(own):
            return _Kept(own if own is not None and own.tick else None, keep=True)
        return _Kept(held, changed=True)
    if held is not None:
        return _Kept(held, changed=held is not own)
    near = [each for each in facts if cells.share(each) >= _FEWEST_READ]
    free = tuple(each for each in near if target_of(each.fact) not in carried)
    if entry.usual and (column is None or not near or own in free):
        return _Kept(keep=True)
    if near:
        return _Kept(ask=free or tuple(near))
    if column is None or not cells.any:
        return _Kept()
    return _Kept(ask=tuple(each for each in facts if target_of(each.fact) not in carried))


_NOTHING: Final = Reading("", like=r"(?!)")


class _Cells:
    """The different cells below a heading, and which share of them a reading holds."""

    def __init__(self, cells: Mapping[str, int], vocabulary: Vocabulary, entry: Heading) -> None:
        words = [cell for cell in cells if not marks_emptiness(cell) and not says_unknown(_CHOICE, cell)][:_WORDS]
        self.any = bool(words)
        texts: list[tuple[Reading, set[str]]] = []
        declared: set[str] = set()
        self._shares: dict[Reading, float] = {_NOTHING: 0.0}
        for reading in entry.readings:
            if reading.tick:
                self._shares[reading] = float(is_ticked(cells))
                continue
            like = re.compile(reading.like, re.IGNORECASE) if reading.like else None
            spoken = {cell for cell in words if like is not None and like.fullmatch(cell)}
            target = target_of(reading.fact) if reading.fact else None
            attribute = vocabulary.attribute(target) if target else None
            if target is None or (attribute is not None and attribute.kind == "text"):
                texts.append((reading, spoken))
                continue
            spoken |= set(_read(target, [c for c in words if not (entry.names and len(c) == 1)], vocabulary))
            declared |= spoken
            self._shares[reading] = len(spoken) / max(len(words), 1)
        for reading, spoken in texts:
            # A text can be anything: it is what is no word of another reading.
            others = {cell for cell in declared if not (entry.storeys and cell.isdecimal())}
            share = len(spoken - others) / max(len(words), 1)
            self._shares[reading] = share if share >= _MOST_READ else 0.0

    def share(self, reading: Reading) -> float:
        """Return the share of the different cells that are words of a reading."""
        return self._shares[reading]


_CHOICE: Final = Attribute("any", "Any", "choice")


def _read(target: Target, cells: Sequence[str], vocabulary: Vocabulary) -> Iterable[str]:
    """Return the cells that a fact can hold."""
    attribute = vocabulary.attribute(target)
    if target.attribute == SIZE:
        return [cell for cell in cells if _is_size(cell)]
    if attribute is None or attribute.kind == "text":
        return ()
    units = _UNITS if attribute.kind == "length" else (None,)
    readers = [CellReader(attribute, unit) for unit in units]
    spoken = max(([cell for cell in cells if _reads(reader, cell)] for reader in readers), key=len)
    if attribute.name in ("width_mm", "height_mm"):
        # 3-0 and 6/8 are no lengths anywhere else.
        spoken += [cell for cell in cells if cell not in spoken and side_in_digits(plain_text(cell)) is not None]
    return spoken


def _reads(reader: CellReader, cell: str) -> bool:
    try:
        return reader.read(cell).value is not None
    except CellError:
        return unclear_word(reader.attribute, cell) is not None


def _is_size(cell: str) -> bool:
    try:
        return not isinstance(read_length(cell, "in"), One)
    except ReadingError:
        return False


def _counted(rows: Sequence[Sequence[object]], index: int) -> Counter[str]:
    """Return the different filled cells of a column as texts, with how often each stands there."""
    # As they are first: ten thousand rows hold some tens of different cells.
    found: Counter[str] = Counter()
    for cell, count in Counter(row[index] for row in rows if index < len(row)).items():
        if text := as_text(cell).strip():
            found[text] += count
    return found


def _at(row: Sequence[object], index: int) -> str:
    return as_text(row[index]).strip() if index < len(row) else ""


def is_ticked(cells: Collection[str]) -> bool:
    """Tell whether cells hold ticks, their opposite and nothing else, and one tick at least.

    Examples
    --------
    >>> is_ticked(["X", "-", "no"]), is_ticked(["-"]), is_ticked(["X", "DC-1"])
    (True, False, False)
    """
    words = {cell.casefold() for cell in cells}
    return bool(words & TICKS) and all(word in TICKS or word in _NO or is_stroke(word) for word in words)


def _means(word: str, cells: Iterable[str]) -> tuple[tuple[str, str], ...]:
    return tuple((tick, word) for tick in sorted({cell.casefold() for cell in cells} & TICKS))


def _ticked(
    text: str, index: int, column: MappedColumn | None, cells: Collection[str], vocabulary: Vocabulary
) -> MappedColumn | None:
    """Return the column of an existing item that is ticked below its name; None where it is none.

    A column of which a person says that it is such an item, or what else a tick below its heading may say, as well.
    """
    if not is_ticked(cells):
        return None
    if column is not None:
        entry = _entry(text)
        said = next((each.tick for each in entry.readings if each.fact == column.target.text()), "") if entry else ""
        if column.target.slot and column.target.attribute == "kind":
            said = said or next((kind.label for kind in KINDS if kind.value == column.target.slot), "")
        return replace(column, means=_means(said, cells)) if said else None
    kind = vocabulary.kind_named(text)
    if kind is None:
        return None
    target = Target("existing_item", "kind", kind)
    label = next(each.label for each in KINDS if each.value == kind)
    return MappedColumn(index, text, target, "", means=_means(label, cells))

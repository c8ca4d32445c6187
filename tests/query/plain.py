"""Openings as plain dictionaries, questions as plain tuples, and what is true of them worked out in plain Python.

Nothing here knows the language: what is written as text and read by the program is judged a second time by these
lines. A question is ``("and", [..])``, ``("or", [..])``, ``("not", q)``, ``("word", w)`` or
``("fact", key, sign, values, every)``.
"""

import random

from hypothesis import strategies as st

from hwsched.attributes import Attribute, Choice
from hwsched.query import Askable

ASKABLE = Askable(
    own=(
        ("opening", Attribute("key_code", "Key code")),
        ("opening", Attribute("clear_width_mm", "Clear width", "length", "mm")),
        ("opening", Attribute("status", "State of the survey", "choice", choices=(Choice("open", "open"),))),
        ("existing_item", Attribute("cycles", "Cycles", "integer")),
    ),
    bare_unit="in",
    buildings=lambda: ("Mill House", "Boat Shed", "Annex"),
    levels=lambda: ("B", "1", "2", "10"),
    parts=lambda: ("ARC-M18", "TAB 7", "q1"),
    rules=lambda: ("frame-stop-clear", "leaf-known"),
)
INCH = 25.4

# Per fact: how people may call it, its kind, and values with the ways to write each.
TEXTS = {
    "Boiler room": ["Boiler room", "boiler ROOM"], "Hall": ["Hall"], "or": ["or", "OR"], '5"': ['5"'], "A(1)": ["A(1)"],
}  # fmt: skip
LENGTHS = {
    38.1: ["1 1/2", '1.5"', "38.1 mm", "1-1/2"],
    44.45: ["1 3/4", '1 3/4"', "1.75", "44.45mm"],
    50.8: ["2", "2 in", "50.8 mm"],
}
WIDTHS = {762.0: ["30", "2'-6\"", "762 mm"], 914.4: ["36", "3'-0\"", "0.9144 m"], 1000.0: ["1 m", "1000 mm"]}
RATINGS = {"none": ["none", "nr", "Not rated"], "20": ["20", "20 min"], "45": ["45", "c label"], "90": ["1 1/2 h", "B"]}
FACTS = {
    "mark": (["mark", "opening.mark", "door no"], "text", {m: [m, m.lower()] for m in ("M2", "M10", "A-1", "9E4")}),
    "building": (["building", "bldg"], "text", {b: [b, b.upper()] for b in ("Mill House", "Boat Shed")}),
    "level": (["level", "opening.level", "Floor"], "text", {n: [n] for n in ("1", "2", "10", "B")}),
    "room_from": (["room from", "room_from", "opening.room_from"], "text", TEXTS),
    "room_to": (["room_to", "Room to"], "text", TEXTS),
    "rating": (["rating", "Fire rating", "fire label"], "ranked", RATINGS),
    "hand": (["hand", "handing", "opening.Hand"], "choice", {"LH": ["LH", "left hand"], "RHR": ["rhr"]}),
    "stair": (["stair", "Stair door"], "flag", {True: ["yes", "y", "x", "TRUE"], False: ["no", "0"]}),
    "temperature_low_c": (["temperature_low", "min temp"], "number", {-5.0: ["-5", "23 °F"], 20.0: ["20", "20 degC"]}),
    "priority": (["priority", "prio"], "integer", {1: ["1"], 2: ["2"], 10: ["10"]}),
    "installed_on": (
        ["installed_on", "installation date"],
        "date",
        {"2031-02-03": ["2031-02-03", "3 Feb 2031"], "2031-11-30": ["30 November 2031"]},
    ),
    "key_code": (["key code", "opening.key_code"], "text", {"K-1": ["K-1"], "and": ["and"]}),
    "clear_width_mm": (["clear width", "clear_width"], "length", WIDTHS),
    "status_of_survey": (["opening.status", "State of the survey"], "choice", {"open": ["open"]}),
    "leaf.thickness_mm": (["leaf.thickness", "Leaf thickness", "thk", "leaf.thickness_mm"], "length", LENGTHS),
    "leaf.width_mm": (["leaf.width", "width", "door width"], "length", WIDTHS),
    "leaf.material": (["leaf.material", "door mat"], "choice", {"wood": ["wood", "SCW"], "glass": ["gl"]}),
    "item.kind": (["item.kind", "Item", "existing_item.kind"], "choice", {"closer": ["closer"], "lock": ["lockset"]}),
    "item.backset_mm": (["item.backset", "backset", "b/s"], "length", {69.85: ["2 3/4", '2.75"'], 127.0: ["5"]}),
    "item.thumb_turn": (["item.thumb_turn", "tt"], "flag", {True: ["yes"], False: ["no"]}),
    "item.cycles": (["cycles", "item.cycles"], "integer", {5: ["5"], 7: ["7"]}),
    "status": (["status"], "list", {s: [s] for s in ("fits", "stale", "to-measure", "does-not-fit", "not-judged")}),
    "uses": (["uses"], "list", {"arc-m18": ["ARC-M18", "arc-m18"], "tab 7": ["TAB 7"]}),
    "finding": (["finding"], "list", {"error": ["error", "Error"], "frame-stop-clear": ["frame-stop-clear"]}),
    "waived": (["waived"], "list", {"note": ["note"], "leaf-known": ["leaf-known"]}),
    "place": (["place"], "place", {"Mill House": ["mill house"], "Hall": ["Hall"], "10": ["10"]}),
}  # fmt: skip
RESERVED = {"and", "or", "not", "every", "uses", "is", "in", "contains", "between", "known", "unknown"}


def _values(key):
    return list(FACTS[key][2])


def _maybe(key, unknown=True):
    return st.sampled_from([*([None] if unknown else []), *_values(key)])


def _row(prefix):
    return st.fixed_dictionaries({k.partition(".")[2]: _maybe(k) for k in FACTS if k.startswith(f"{prefix}.")})


def _listed(key, incomplete):
    held = st.lists(st.sampled_from(_values(key)), max_size=2)
    return st.tuples(held, st.booleans() if incomplete else st.just(False))


OPENINGS = st.fixed_dictionaries(
    {
        **{k: _maybe(k, k != "mark") for k in FACTS if "." not in k and FACTS[k][1] not in ("list", "place")},
        "leaf": st.lists(_row("leaf"), max_size=2),
        "item": st.lists(_row("item"), max_size=3),
        "status": st.lists(st.sampled_from(_values("status")), min_size=1, max_size=2).map(lambda s: (s, False)),
        **{k: _listed(k, True) for k in ("uses", "finding", "waived")},
    }
)


def signs_of(key):
    sort = FACTS[key][1]
    signs = ["=", "!=", "in"]
    if sort not in ("choice", "flag", "list", "place"):
        signs += ["<", "<=", ">", ">=", "between"]
    if sort in ("text", "place"):
        signs.append("contains")
    return signs if sort in ("list", "place") else [*signs, "known", "unknown"]


@st.composite
def questions(draw, depth=3):
    """A question as plain tuples."""
    kind = draw(st.sampled_from(["fact"] * 4 + ["word"] + (["and", "or", "not"] * 2 if depth else [])))
    if kind == "not":
        return ("not", draw(questions(depth=depth - 1)))
    if kind in ("and", "or"):
        return (kind, draw(st.lists(questions(depth=depth - 1), min_size=2, max_size=3)))
    if kind == "word":
        return ("word", draw(st.sampled_from(["mill", "M", "1", "hall", "or", "boiler room", "zzz"])))
    key = draw(st.sampled_from(sorted(FACTS)))
    sort, sign = FACTS[key][1], draw(st.sampled_from(signs_of(key)))
    many = {"in": (1, 3), "between": (2, 2), "known": (0, 0), "unknown": (0, 0)}.get(sign, (1, 1))
    values = draw(st.lists(st.sampled_from(_values(key)), min_size=many[0], max_size=many[1]))
    if sign == "in" and sort not in ("list", "place") and draw(st.booleans()):
        values.append(None)
    if sign == "between":
        values.sort(key=lambda value: order(key, value))
    every = key.startswith(("leaf.", "item.")) and draw(st.booleans())
    return ("fact", key, sign, values, every)


# --- what is true, in plain Python ----------------------------------------------------------------------------------


def order(key, value):
    """How values of a fact follow each other: ratings by minutes, names as people count, numbers as numbers."""
    if FACTS[key][1] == "ranked":
        return {"none": 0}.get(value) or (0 if value == "none" else int(value))
    if FACTS[key][1] == "text":
        pieces, number = [], ""
        for c in value.lower() + "\0":
            if c in "0123456789":
                number += c
                continue
            if number:
                pieces.append((0, int(number), ""))
                number = ""
            if c != "\0":
                pieces.append((1, 0, c))
        return [*pieces, (-1, 0, "")]
    return value


def of_value(key, sign, values, held):
    """True, False or None (nobody knows) of one value."""
    if sign in ("known", "unknown"):
        return (held is None) == (sign == "unknown")
    if held is None:
        return True if sign == "in" and None in values else None
    lower = (lambda v: v.lower()) if isinstance(held, str) else (lambda v: v)
    same = [v is not None and lower(v) == lower(held) for v in values]
    if sign in ("=", "in"):
        return any(same)
    if sign == "!=":
        return not any(same)
    if sign == "contains":
        return values[0].lower() in held.lower()
    mine = order(key, held)
    if sign == "between":
        return order(key, values[0]) <= mine <= order(key, values[1])
    other = order(key, values[0])
    return {"<": mine < other, "<=": mine <= other, ">": mine > other, ">=": mine >= other}[sign]


def some(found):
    return True if True in found else None if None in found else False


def negated(found):
    return None if found is None else not found


def answer(question, opening):
    """True, False or None of an opening."""
    kind = question[0]
    if kind == "not":
        return negated(answer(question[1], opening))
    if kind == "or":
        return some([answer(each, opening) for each in question[1]])
    if kind == "and":
        return negated(some([negated(answer(each, opening)) for each in question[1]]))
    if kind == "word":
        names = [opening[each] for each in ("mark", "building", "room_from", "room_to")]
        return some([None if name is None else question[1].lower() in name.lower() for name in names])
    _, key, sign, values, every = question
    if FACTS[key][1] in ("list", "place"):
        if key == "place":
            held = [opening[each] for each in ("building", "level", "room_from", "room_to")]
        else:
            held = opening[key][0] + [None] * opening[key][1]
        if sign == "!=":
            return negated(some([of_value(key, "=", values, each) for each in held]))
        return some([of_value(key, sign, values, each) for each in held])
    thing, _, name = key.partition(".")
    if not name:
        return of_value(key, sign, values, opening[key])
    found = [of_value(key, sign, values, row[name]) for row in opening[thing] or [dict.fromkeys([name])]]
    return negated(some([negated(each) for each in found])) if every else some(found)


# --- the same as text, in one of the many ways to write it ----------------------------------------------------------


def quoted(text):
    return '"' + text.replace('"', '""') + '"'


def written(question, rng: random.Random, inside=""):
    """Write a question as a person might: any spelling, blanks and quotes where they are needed or not."""
    kind = question[0]
    if kind == "not":
        said = f"not {written(question[1], rng, 'not')}"
    elif kind in ("and", "or"):
        said = f" {rng.choice([kind, kind.upper()])} ".join(written(each, rng, kind) for each in question[1])
        if inside in ("not", "and") or inside == kind or rng.random() < 0.3:
            said = f"({said})"
    elif kind == "word":
        word = question[1]
        said = quoted(word) if " " in word or word in RESERVED or rng.random() < 0.3 else word
    else:
        said = _compared(question, rng)
    return said if rng.random() < 0.8 else f"( {said} )"


def _compared(question, rng):
    _, key, sign, values, every = question
    name = rng.choice(FACTS[key][0])
    if rng.random() < 0.2:
        name = quoted(name)
    name = f"every {name}" if every else name
    texts = [_value(key, value, rng) for value in values]
    if key == "uses" and sign == "=" and rng.random() < 0.7:
        return f"uses {texts[0]}"
    if sign in ("known", "unknown"):
        opposite = {"known": "!= unknown", "unknown": "= unknown"}[sign]
        return f"{name} {opposite}" if rng.random() < 0.3 else f"{name} is {sign}"
    if sign in ("in", "contains", "between"):
        return f"{name} {sign} {(' and ' if sign == 'between' else ' ,').join(texts)}"
    blank = rng.choice(["", " ", "  "])
    return f"{name}{blank}{sign}{blank}{texts[0]}"


def _value(key, value, rng):
    if value is None:
        return rng.choice(["unknown", "?", "tbd"])
    text = rng.choice(FACTS[key][2][value])
    bare = text.lower() not in ("and", "or") and not set(text) & set("(),")
    return text if bare and rng.random() < 0.8 else quoted(text)


class Table:
    """The openings as the columns that the program asks for."""

    def __init__(self, openings):
        self.openings = openings
        self.asked = []

    def __len__(self):
        return len(self.openings)

    def column(self, fact):
        self.asked.append(fact)
        name = fact.attribute.name
        if fact.entity == "result":
            if name == "place":
                return [tuple(o[n] for n in ("building", "level", "room_from", "room_to")) for o in self.openings]
            return [(*held, *([None] * more)) for held, more in (o[name] for o in self.openings)]
        if fact.entity == "opening":
            return [o["status_of_survey" if name == "status" else name] for o in self.openings]
        thing = {"leaf": "leaf", "existing_item": "item"}[fact.entity]
        return [tuple(row[name] for row in o[thing]) for o in self.openings]

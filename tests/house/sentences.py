"""Finds the sentences from which findings and steps of the journal are made: ``python -m tests.house.sentences``.

They are kept in English, with their numbers in them; `hwsched.kept_sentences` knows them again by this list.
"""

import ast
import csv
import io
import re
from collections.abc import Collection, Iterator
from functools import cache
from pathlib import Path
from typing import get_args

from hwsched.calc.tables import rows
from hwsched.catalogue import KINDS
from hwsched.fitting.candidate import BLOCKS
from hwsched.kept_sentences import ERRORS, FIT, GATE, LIST, STEPS, WORDS
from hwsched.paths import RESOURCES
from hwsched.rules import RULEBOOK
from hwsched.rules.rule import DEFERS
from hwsched.survey import ENTITIES, POWER_ENTITIES
from hwsched.values.fit import Role
from hwsched.values.place_words import FACE_WORDS, PATTERNS

ROOT = Path(__file__).parents[2]
RULES = "rules"
"""Of what several rules say, in the modules that they share."""
_SUMMARIES = {"change": 1, "change_prepared": 2, "change_and_fit": 2}
"""Calls that begin a step, and which argument its title is."""
_GATE = ("release/holding.py", "release/release_gate.py", "findings/of_circuit.py")
"""Modules of the release that say what keeps an opening back."""
_OWN_ERRORS = ("cli", "desktop")
"""Floors that say by themselves what they refuse."""
_THINGS = ("slack", "survey", "stile", "exit device", "order", "issue", "drill", "controller")
"""What findings are about, where no name of a fact says it."""
_FORMAT = re.compile(r"\{(\w+):[^}]*\}")
_TELL = ("_summary", "summary_of", "_sentence", "_took_off")
"""Functions that put titles of steps together."""


def sentence(node: ast.expr) -> str:
    """Return an expression as a text with names in braces; empty where it holds no text."""
    if isinstance(node, ast.Constant):
        return node.value.replace("{", "{{").replace("}", "}}") if isinstance(node.value, str) else ""
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add):
        parts: list[ast.expr] = [node.left, node.right]
    elif isinstance(node, ast.JoinedStr):
        parts = node.values
    else:
        return ""
    used: dict[str, int] = {}
    return "".join(_part(each, used) for each in parts)


def _part(node: ast.expr, used: dict[str, int]) -> str:
    if isinstance(node, ast.Constant):
        return sentence(node)
    if isinstance(node, ast.JoinedStr | ast.BinOp):
        return "".join(
            _part(each, used) for each in (node.values if isinstance(node, ast.JoinedStr) else (node.left, node.right))
        )
    name = _name(node.value if isinstance(node, ast.FormattedValue) else node)
    used[name] = used.get(name, 0) + 1
    return f"{{{name}_{used[name]}}}" if used[name] > 1 else f"{{{name}}}"


def _name(node: ast.expr) -> str:
    """Return what a value is called in a sentence: by the last name in it."""
    if isinstance(node, ast.Name):
        found = node.id
    elif isinstance(node, ast.Attribute):
        found = node.attr
    elif isinstance(node, ast.Subscript) and isinstance(node.slice, ast.Constant):
        found = str(node.slice.value)
    elif isinstance(node, ast.Call):
        found = _name(node.args[-1]) if node.args and _name(node.args[-1]) != "value" else _name(node.func)
    else:
        found = "value"
    return re.sub(r"[^a-z_]", "_", found.lower()).strip("_") or "value"


def _texts(node: ast.AST) -> Iterator[str]:
    """Yield what is said in a piece of code."""
    if isinstance(node, ast.FunctionDef):
        for part in node.body:
            yield from _texts(part)
        return
    if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
        # What is written about it.
        return
    if isinstance(node, ast.Compare | ast.Subscript | ast.Raise):
        return
    if isinstance(node, ast.Call) and getattr(node.func, "id", "") in ("phrase", "to_phrase", "phrase_of_count"):
        # Said where it is shown; what was kept of it in English is known by the same text.
        values = (each.value for each in node.args if isinstance(each, ast.Constant))
        yield from (_FORMAT.sub(r"{\1}", each) for each in values if isinstance(each, str))
        return
    if isinstance(node, ast.expr) and (found := sentence(node)):
        yield found
        return
    for each in ast.iter_child_nodes(node):
        yield from _texts(each)


def _words(node: ast.AST) -> Iterator[str]:
    """Yield the words of which one stands in a sentence."""
    for choice in (part for part in ast.walk(node) if isinstance(part, ast.IfExp)):
        for text in map(sentence, (choice.body, choice.orelse)):
            if re.fullmatch("[ ,]*[a-z][a-z' ]+", text):
                yield text.strip()
    for named in (part for part in ast.walk(node) if isinstance(part, ast.keyword) and part.arg == "about"):
        text = sentence(named.value)
        if re.fullmatch("[a-z][a-z ]+", text):
            yield text


def _told_in(path: Path) -> Iterator[str]:
    """Yield what a module says, in functions, classes and constants."""
    for node in ast.parse(path.read_text(encoding="utf-8")).body:
        if isinstance(node, ast.FunctionDef | ast.ClassDef):
            yield from filter(_worth, _texts(node))
        elif isinstance(node, ast.Assign | ast.AnnAssign) and node.value is not None:
            yield from filter(_worth, _texts(node.value))


def _under(*folders: str) -> Iterator[Path]:
    for each in folders:
        at = ROOT / "hwsched" / each
        yield from sorted(at.rglob("*.py")) if at.is_dir() else (at,)


def _begun(text: str) -> Iterator[str]:
    """Yield the last words of a text behind which something else is put."""
    if text.endswith(": "):
        yield re.split(r"[.;}] ", text)[-1].strip(" :")


def _worth(text: str) -> bool:
    letters = re.sub(r"\{[^}]*\}", "", text)
    return " " in text and sum(map(str.isalpha, letters)) > 1


def _named(node: ast.AST) -> Iterator[str]:
    """Yield what a table calls things."""
    for table in (part for part in ast.walk(node) if isinstance(part, ast.Dict)):
        for text in (each.value for each in table.values if isinstance(each, ast.Constant)):
            if isinstance(text, str) and re.fullmatch("[a-z][a-z' ]+", text):
                yield text


def of_rules() -> Iterator[tuple[str, str]]:
    """Yield what rules say, with the rule that says it."""
    known = {rule.id for rule in RULEBOOK}
    for path in sorted((ROOT / "hwsched" / "rules").rglob("*.py")):
        of = path.stem.replace("_", "-")
        if of in ("page", "rule"):
            continue
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if isinstance(node, ast.FunctionDef | ast.ClassDef):
                for text in _texts(node):
                    if _worth(text):
                        yield of if of in known else RULES, text
                yield from ((WORDS, word) for word in _words(node))
            elif isinstance(node, ast.AnnAssign) and getattr(node.target, "id", "").endswith("NAMES"):
                yield from ((WORDS, word) for word in _named(node))
    for rule in RULEBOOK:
        yield WORDS, rule.title
        yield rule.id, rule.cure.replace("{", "{{").replace("}", "}}")
    yield RULES, DEFERS
    yield from ((RULES, each.text("text")) for each in rows("cautions"))
    declared = [(each.name, each.attributes) for each in (*ENTITIES, *POWER_ENTITIES)]
    for name, attributes in (*declared, *((kind.name, kind.attributes) for kind in KINDS)):
        yield WORDS, name.replace("_", " ").replace("-", " ")
        for each in attributes:
            yield from ((WORDS, word) for word in (each.label, *(choice.label for choice in each.choices)))
            plain = {text for choice in each.choices for text in (choice.value, choice.value.replace("-", " "))}
            yield from ((WORDS, word) for word in plain if re.fullmatch("[a-z][a-z -]+", word))
    yield from ((WORDS, word) for word in BLOCKS.values())
    yield WORDS, "building or level"


def of_gate() -> Iterator[tuple[str, str]]:
    """Yield what keeps an opening back."""
    for name in _GATE:
        code = (ROOT / "hwsched" / "operations" / name).read_text(encoding="utf-8")
        for node in ast.parse(code).body:
            if isinstance(node, ast.FunctionDef):
                yield from ((GATE, text) for text in _texts(node) if _worth(text))


def of_fits() -> Iterator[tuple[str, str]]:
    """Yield why parts stand in fits, and what holes are for."""
    for path in _under(
        "fitting", "calc/opening", "calc/parts/cost.py", "wiring", "operations/opening/fit_differences.py"
    ):
        for text in _told_in(path):
            # What is named behind it stands in another piece.
            yield FIT, f"{text} {{what}}" if text.endswith((" of", " on", " at")) else text
            yield from ((WORDS, word) for word in _begun(text))
        yield from ((WORDS, word) for word in _words(ast.parse(path.read_text(encoding="utf-8"))))
    for path in sorted((RESOURCES / "practice").glob("*.csv")):
        with path.open(encoding="utf-8", newline="") as file:
            yield from ((FIT, row["reason"]) for row in csv.DictReader(file) if row.get("reason"))
    yield from ((WORDS, word) for word in (*PATTERNS, *FACE_WORDS.values(), *get_args(Role), *_THINGS))


def of_errors() -> Iterator[tuple[str, str]]:
    """Yield what is said of what cannot be done."""
    for path in sorted((ROOT / "hwsched").rglob("*.py")):
        if path.relative_to(ROOT / "hwsched").parts[0] in _OWN_ERRORS:
            continue
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Raise) and isinstance(node.exc, ast.Call):
                said = (*node.exc.args, *(each.value for each in node.exc.keywords))
                yield from ((WORDS, word) for word in map(sentence, said[:-1]) if re.fullmatch("[a-z][a-z ]+", word))
                yield from ((ERRORS, text) for each in said for text in _texts(each) if _worth(text))
    for path in _under("attributes", "quantities", "exchange", "model/journal/refusals.py"):
        yield from ((ERRORS, text) for text in _told_in(path))
        tree = ast.parse(path.read_text(encoding="utf-8"))
        yield from ((WORDS, word) for word in _words(tree))
        for node in (each for each in tree.body if isinstance(each, ast.AnnAssign)):
            if getattr(node.target, "id", "").endswith("WORDS"):
                yield from ((WORDS, word) for word in _named(node))
    yield from ((WORDS, word) for word in ("accepted", "empty", "none yet", "level", "building"))


def of_steps() -> Iterator[tuple[str, str]]:
    """Yield titles of steps."""
    for floor in ("operations", "model"):
        for path in sorted((ROOT / "hwsched" / floor).rglob("*.py")):
            code = path.read_text(encoding="utf-8")
            named = {"summary", "text"} if "change_and_fit(" in code else {"summary"}
            for node in ast.walk(ast.parse(code)):
                for each in _titles(node, named):
                    alone = isinstance(each, ast.Constant)
                    yield from ((STEPS, text) for text in _texts(each) if _worth(text) or (alone and text.istitle()))


def _titles(node: ast.AST, named: Collection[str]) -> Iterator[ast.AST]:
    """Yield what a piece of code gives a step as its title."""
    if isinstance(node, ast.Call):
        name = getattr(node.func, "attr", getattr(node.func, "id", ""))
        at = _SUMMARIES.get(name)
        if at is not None and len(node.args) > at:
            yield node.args[at]
        yield from (each.value for each in node.keywords if each.arg == "summary")
    elif isinstance(node, ast.Assign | ast.AugAssign):
        targets = node.targets if isinstance(node, ast.Assign) else [node.target]
        if any(getattr(each, "attr", getattr(each, "id", "")) in named for each in targets):
            yield node.value
    elif isinstance(node, ast.FunctionDef) and node.name in _TELL:
        yield node


@cache
def sentences() -> tuple[tuple[str, str], ...]:
    """Return all of them, each with what it is of; found once a process."""
    found = (*of_rules(), *of_gate(), *of_fits(), *of_errors(), *of_steps())
    return tuple(sorted({(of, text.strip().lstrip(";, ")) for of, text in found if "{{" not in text}))


def written() -> str:
    """Return the list as it is kept."""
    held = io.StringIO()
    rows = csv.writer(held, lineterminator="\n")
    rows.writerow(("of", "text"))
    rows.writerows(sentences())
    return held.getvalue()


if __name__ == "__main__":
    LIST.write_text(written(), encoding="utf-8")

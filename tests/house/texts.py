"""Writes the list of all texts that can be translated: ``python -m tests.house.texts``.

Texts stand where they are said, `phrase("...")`, or are declared: names of facts, words of choices, rules, documents.
"""

import ast
import csv
from collections.abc import Iterable, Iterator
from dataclasses import fields
from functools import cache
from pathlib import Path
from typing import get_args

from hwsched.calc.calculator import Field
from hwsched.calc.calculators import CALCULATORS
from hwsched.calc.parts.cost import LABOUR
from hwsched.calc.tables import rows
from hwsched.catalogue import KINDS
from hwsched.catalogue.traits.entry import ENTRY, ON_HAND
from hwsched.choices import PREFERENCES
from hwsched.desktop.project.calculator_answers import spoken_unit
from hwsched.desktop.project.calculator_fields import form_of, in_words, label_of, object_word
from hwsched.desktop.project.help_topics import titles
from hwsched.desktop.project.units import UNITS
from hwsched.drawings.layers import LAYERS
from hwsched.exchange.survey.decisions import KINDS as DIFFERENCES
from hwsched.language import DOMAIN, FOLDER
from hwsched.model.journal import fact_words
from hwsched.model.roles import ROLES
from hwsched.operations.opening import fit_differences
from hwsched.operations.release.issued_documents import PRINTS
from hwsched.paths import RESOURCES
from hwsched.quantities import BARE_UNITS
from hwsched.rules import RULEBOOK
from hwsched.survey import ENTITIES, PLACE_ENTITIES, POWER_ENTITIES
from hwsched.values import DISCIPLINES, SEVERITIES, Part
from hwsched.values.fit import Role
from hwsched.values.standing import WHY
from hwsched.work import cautions, tools
from hwsched.work.step import Caution, Tool, Where
from hwsched.work.steps import STEPS
from tests.house.sentences import sentences

ROOT = Path(__file__).parents[2]
LIST = FOLDER / f"{DOMAIN}.pot"
_HEAD = """# Every text of the program that can be said in another language; written by python -m tests.house.texts.
# Names in braces stay as they are, with what follows a colon in them; & stands before the letter of a key.
msgid ""
msgstr ""
"Content-Type: text/plain; charset=UTF-8\\n"
"Plural-Forms: nplurals=2; plural=(n != 1);\\n"
"""


@cache
def calls() -> tuple[tuple[Path, str, ast.Call], ...]:
    """Return where a text is said in the code: the module, by what, and the call; found once a process."""
    return tuple(
        (path, node.func.id, node)
        for path in sorted((ROOT / "hwsched").rglob("*.py"))
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Call)
        and isinstance(node.func, ast.Name)
        and node.func.id in ("phrase", "to_phrase", "phrase_of_count")
        and node.args
    )


def said() -> Iterator[tuple[str, ...]]:
    """Yield the texts that stand in the code, one form or two."""
    for _, by, call in calls():
        if by == "phrase_of_count":
            one, many = (_texts(each)[0] for each in call.args[:2])
            yield one, many
        else:
            yield from ((each,) for each in _texts(call.args[0]))


def _texts(node: ast.expr) -> list[str]:
    """Return the texts that an argument may be."""
    if isinstance(node, ast.Constant):
        return [str(node.value)] if isinstance(node.value, str) else []
    if isinstance(node, ast.IfExp):
        return [*_texts(node.body), *_texts(node.orelse)]
    if isinstance(node, ast.BoolOp):
        return [text for each in node.values for text in _texts(each)]
    return []


def declared() -> Iterator[str]:
    """Yield the texts that are declared, and said where they are shown."""
    for rule in RULEBOOK:
        yield rule.subject.text
        yield from (rule.title, rule.basis, rule.discipline.replace("-", " "))
        yield from (text for limit in rule.limits for text in (limit.text, limit.source, limit.unit))
    for severity in SEVERITIES:
        yield from (severity, severity.capitalize())
    yield from DISCIPLINES.values()
    yield from titles()
    yield from WHY.values()
    yield from LAYERS.values()
    yield from UNITS.values()
    yield from PREFERENCES
    yield from BARE_UNITS
    for role in get_args(Role):
        words = role.replace("-", " ")
        yield from (role, words, words.capitalize())
    yield LABOUR
    yield from (row.text("text") for row in rows("tasks", "labour"))
    for attribute in (*ENTRY, *ON_HAND):
        yield from (attribute.label, attribute.note)
    yield from (title for _name, title, _formats in PRINTS)
    for role in ROLES.values():
        yield from (role.name, role.does)
    for difference in DIFFERENCES:
        yield from (difference.title, *difference.answers.values())
    labelled = [(each.label, each.attributes) for each in (*ENTITIES, *PLACE_ENTITIES, *POWER_ENTITIES)]
    for label, attributes in (*labelled, *((kind.label, kind.attributes) for kind in KINDS)):
        yield label
        for attribute in attributes:
            yield from (attribute.label, attribute.note, *(choice.label for choice in attribute.choices))
    for kind in STEPS:
        yield from (kind.where if isinstance(kind.where, str) else "", kind.text if isinstance(kind.text, str) else "")
    yield from get_args(Where)
    for caution in (each for each in vars(cautions).values() if isinstance(each, Caution)):
        yield from (caution.title, caution.text)
    yield from (each.name for each in vars(tools).values() if isinstance(each, Tool))
    yield from tools.WORDS.values()
    with (RESOURCES / "service" / "faults.csv").open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            yield from (row["title"], row["look"])
    yield from (text for _of, text in sentences())
    yield from (each.name.replace("_", " ").capitalize() for each in fields(Part))
    yield from (*fact_words.said_words(), *fit_differences.said_words())
    for calculator in CALCULATORS:
        yield from (calculator.title, calculator.basis)
        yield from _of_form(form_of(calculator))
        yield from _of_answer(in_words(calculator.outputs))


def _of_answer(outputs: Iterable[Field]) -> Iterator[str]:
    """Yield what an answer of a calculator says of its fields: what they are called, and what is so or not."""
    for each in outputs:
        yield label_of(each)
        if each.kind == "flag":
            yield from (each.yes, each.no)
        yield spoken_unit(each)
        yield from _of_answer(each.fields)


def _of_form(section: object) -> Iterator[str]:
    """Yield what a form of a calculator says: headings, labels, notes, what holds where nothing is typed."""
    yield from (getattr(section, "title", ""), getattr(section, "about", ""))
    for item in (*getattr(section, "items", ()), *getattr(section, "columns", ())):
        attribute, field = getattr(item, "attribute", None), getattr(item, "field", None)
        if attribute is not None:
            yield from (attribute.label, attribute.note, *map(object_word, item.path[:-1]))
        if field is not None:
            yield field.default
            if getattr(item, "columns", ()):
                yield from (field.text.rstrip("."), field.about)
        yield from _of_form(item)


@cache
def texts() -> frozenset[tuple[str, ...]]:
    """Return all of them; found once a process."""
    found = {*said(), *((each,) for each in declared())} - {("",)}
    forms = {one for each in found if len(each) > 1 for one in each[:1]}
    return frozenset(each for each in found if len(each) > 1 or each[0] not in forms)


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n").replace("\t", "\\t") + '"'


def written() -> str:
    """Return the list as gettext has it."""
    entries = []
    for each in sorted(texts()):
        if len(each) == 1:
            entries.append(f'msgid {_quoted(each[0])}\nmsgstr ""\n')
        else:
            entries.append(f'msgid {_quoted(each[0])}\nmsgid_plural {_quoted(each[1])}\nmsgstr[0] ""\nmsgstr[1] ""\n')
    return "\n".join((_HEAD, *entries))


if __name__ == "__main__":
    LIST.parent.mkdir(parents=True, exist_ok=True)
    LIST.write_text(written(), encoding="utf-8")

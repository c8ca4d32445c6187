"""Writes what can be asked into the handbook's page on it, from the declarations: ``python -m tests.house.asking``."""

from collections.abc import Iterator
from pathlib import Path

from hwsched.attributes import Attribute, accepted_by
from hwsched.attributes.limits import LENGTH_EXAMPLES
from hwsched.query import STATUS, Askable, Fact

GUIDE = Path(__file__).parents[2] / "resources" / "handbook" / "asking.md"
_OF = {
    "opening": "Of the opening",
    "leaf": "Of each leaf",
    "existing_item": "Of each existing item",
    "result": "Put together",
}
_STATUSES = {
    "fits": "parts, places and holes are worked out, and all goes together",
    "does-not-fit": "nothing that the catalogue has goes together here",
    "to-measure": "a fact is missing",
    "not-judged": "no fit counts: it is stale, or was never worked out",
    "stale": "what was worked out does not count any more: facts changed, or an earlier version did it",
    "facts-changed": "something that the fit follows from has changed since",
    "earlier-version": "an earlier version of the program worked it out",
    "not-worked-out": "it was never worked out",
}


def values_of(attribute: Attribute) -> str:
    """Return what is accepted, in one cell of a table."""
    if attribute.choices:
        return ", ".join(f"`{choice.value}`" for choice in attribute.choices)
    if attribute.note and attribute.kind == "text" and attribute.name in ("uses", "finding", "waived", "place"):
        return attribute.note.rstrip(".").replace("|", "\\|")
    return accepted_by(attribute).replace(f" such as {LENGTH_EXAMPLES}", "").replace("|", "\\|")


def row(fact: Fact) -> str:
    signs = ", ".join(["`<`"] * fact.ordered + ["`contains`"] * fact.searched)
    return f"| `{fact.name}` | {fact.attribute.label} | {values_of(fact.attribute)} | {signs} |"


def facts() -> Iterator[str]:
    for entity, title in _OF.items():
        yield from ("", f"### {title}", "", "| name | label | value | also |", "|---|---|---|---|")
        yield from (row(fact) for fact in Askable(bare_unit="in").facts if fact.entity == entity)
    yield ""


def statuses() -> Iterator[str]:
    yield from ("", "| status | is |", "|---|---|")
    yield from (f"| `{choice.value}` | {_STATUSES[choice.value]} |" for choice in STATUS.attribute.choices)
    yield ""


def written(text: str) -> str:
    for name, lines in (("statuses", statuses()), ("facts", facts())):
        begin, end = f"<!-- {name}: written by tests/house/asking.py -->\n", f"<!-- end of {name} -->\n"
        before, rest = text.split(begin)
        text = before + begin + "\n".join(lines) + "\n" + end + rest.split(end)[1]
    return text


if __name__ == "__main__":
    GUIDE.write_text(written(GUIDE.read_text(encoding="utf-8")), encoding="utf-8")

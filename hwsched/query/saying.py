"""What a query means, in a sentence for people."""

from typing import Final

from hwsched.attributes import Value, show_value
from hwsched.quantities import LengthStyle
from hwsched.query.asking import Asked, Compare, Joined, Node, Not, Query, Words
from hwsched.query.facts import FINDING, STATUS, USES, WAIVED, Fact

_SIGNS: Final = {
    "=": "",
    "!=": "other than ",
    "<": "under ",
    "<=": "at most ",
    ">": "over ",
    ">=": "at least ",
    "in": "",
}
_EVERYTHING: Final = "all openings"


def said_in_words(query: Query, length_style: LengthStyle = "fraction") -> str:
    """Say what a query asks for.

    Parameters
    ----------
    query : Query
        As it was read.
    length_style : LengthStyle
        How the project shows lengths.

    Examples
    --------
    >>> from hwsched.query.facts import Askable
    >>> from hwsched.query.parsing import parse
    >>> said_in_words(parse("leaf.thickness > 1 3/4 and rating is known and not uses ARC-2", Askable(bare_unit="in")))
    'leaf thickness over 1 3/4", fire rating known, not: uses ARC-2'
    """
    if query.root is None:
        return _EVERYTHING
    if isinstance(query.root, Joined) and query.root.by == "and":
        return ", ".join(_said(part, length_style) for part in query.root.parts)
    return _said(query.root, length_style)


def _said(node: Node, style: LengthStyle) -> str:
    if isinstance(node, Words):
        words = [f"“{word}”" for word in node.words]
        return f"{_listed(words, 'and')} in mark, building or a room"
    if isinstance(node, Not):
        return f"not: {_part(node.of, style)}"
    if isinstance(node, Joined):
        return f" {node.by} ".join(_part(part, style) for part in node.parts)
    return _compared(node, style)


def _part(node: Node, style: LengthStyle) -> str:
    said = _said(node, style)
    return f"({said})" if isinstance(node, Joined) else said


def _compared(node: Compare, style: LengthStyle) -> str:
    values = [_value(node.fact, asked, style) for asked in node.values]
    if node.fact in (STATUS, USES, FINDING, WAIVED):
        before = {STATUS: "", USES: "uses ", FINDING: "finding ", WAIVED: "waived "}[node.fact]
        return f"{before}{_listed(values, 'or')}"
    label = node.fact.attribute.label
    name = label[:1].lower() + label[1:] if label[1:2].islower() else label
    begin = f"{name} of every {node.fact.entity.split('_')[-1]}" if node.every else name
    if node.sign in ("known", "unknown"):
        return f"{begin} {node.sign}"
    if node.sign == "contains":
        return f"“{values[0]}” in {begin}"
    if node.sign == "between":
        return f"{begin} from {values[0]} to {values[1]}"
    return f"{begin} {_SIGNS[node.sign]}{_listed(values, 'or')}"


def _value(fact: Fact, asked: Asked, style: LengthStyle) -> str:
    value: Value = asked.value
    said = show_value(fact.attribute, value, style, unknown="unknown")
    return said[:1].lower() + said[1:] if fact.attribute.kind == "choice" and said[1:2].islower() else said


def _listed(words: list[str], by: str) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} {by} {words[-1]}"

"""What a query says, as a tree, and the tree written as text again.

The tree does not hold where its pieces stood: two queries that say the same are equal.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Final, Literal, get_args

from hwsched.attributes import Value
from hwsched.quantities import LengthStyle
from hwsched.query.facts import KEYWORDS, USES, Fact, Source
from hwsched.query.refusal import Remark

Sign = Literal["=", "!=", "<", "<=", ">", ">=", "in", "contains", "between", "known", "unknown"]
ORDERING: Final[tuple[Sign, ...]] = ("<", "<=", ">", ">=", "between")
COMPARING: Final[tuple[Sign, ...]] = ("=", "!=", "in")
CONTAINS: Final[Sign] = "contains"
WORD_SIGNS: Final = frozenset({"is", "in", "contains", "between"})
"""Words that stand between a fact and what is asked of it."""
STOPS: Final = frozenset("(),=<>≤≥≠")
"""Characters of the language: what holds one is written in quotes."""
_KEPT: Final = frozenset(KEYWORDS)
_JOINING: Final = frozenset({"and", "or"})
"""All that ends a value: other words of the language can stand in one."""
_QUOTES: Final = frozenset("\"'“”")


@dataclass(frozen=True, slots=True)
class Asked:
    """A value that is asked for."""

    value: Value
    """In the form and unit that the fact holds; None asks for unknown."""
    text: str = field(compare=False)
    """As typed, without quotes."""


@dataclass(frozen=True, slots=True)
class Compare:
    """A fact compared with values: one for most signs, two for ``between``, any number for ``in``."""

    fact: Fact
    sign: Sign
    values: tuple[Asked, ...] = ()
    every: bool = False
    """Of a fact of leaves or items: true where it is so of all of them, not only of some."""


@dataclass(frozen=True, slots=True)
class Words:
    """Words that stand alone: each is looked for in mark, building and rooms."""

    words: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Not:
    """The opposite."""

    of: "Node"


@dataclass(frozen=True, slots=True)
class Joined:
    """Two or more joined by one word."""

    by: Literal["and", "or"]
    parts: tuple["Node", ...]


Node = Compare | Words | Not | Joined
SIGNS: Final[tuple[Sign, ...]] = get_args(Sign)


@dataclass(frozen=True, slots=True)
class Query:
    """A query that was read."""

    text: str
    """As typed."""
    root: Node | None
    """None asks for nothing: all openings are found."""
    remarks: tuple[Remark, ...] = ()
    """Names in it that the project does not have."""
    length_style: LengthStyle = "fraction"
    """How lengths are shown: as so they are compared."""

    @property
    def facts(self) -> frozenset[Fact]:
        """The facts that are compared."""
        return frozenset(node.fact for node in _walked(self.root) if isinstance(node, Compare))

    @property
    def searches(self) -> bool:
        """Whether words stand alone in it."""
        return any(isinstance(node, Words) for node in _walked(self.root))

    @property
    def sources(self) -> frozenset[Source]:
        """What has to be read before it can be judged."""
        return frozenset(fact.source for fact in self.facts)

    def __str__(self) -> str:
        return as_text(self.root)


def as_text(node: Node | None) -> str:
    """Write a tree as text, which reads as the same tree again.

    Examples
    --------
    >>> as_text(Joined("and", (Words(("mill", "fire door")), Not(Joined("or", (Words(("a",)), Words(("b",))))))))
    'mill "fire door" and not (a or b)'
    """
    if node is None:
        return ""
    if isinstance(node, Words):
        return " ".join(map(quoted_word, node.words))
    if isinstance(node, Not):
        return f"not {_within(node.of, 'not')}"
    if isinstance(node, Joined):
        return f" {node.by} ".join(_within(part, node.by) for part in node.parts)
    if node.fact == USES and node.sign == "=":
        return f"uses {quoted(node.values[0].text)}"
    begin = f"every {node.fact.name}" if node.every else node.fact.name
    texts = [quoted(each.text) for each in node.values]
    if node.sign in ("known", "unknown"):
        return f"{begin} is {node.sign}"
    return f"{begin} {node.sign} {(' and ' if node.sign == 'between' else ', ').join(texts)}"


def quoted(text: str) -> str:
    """Put a value into quotes where it could be taken for something else.

    Examples
    --------
    >>> [quoted(text) for text in ('1 3/4"', "fire door", "Or", 'the "old" door')]
    ['1 3/4"', '"fire door"', '"Or"', '"the ""old"" door"']
    """
    # A measure reads best as it is typed; words in a row are easier told from the language in quotes.
    words = text.split(" ")
    plain = len(words) == 1 or text[:1].isdigit()
    return text if plain and all(_bare(word, _JOINING) for word in words) else _in_quotes(text)


def quoted_word(text: str) -> str:
    """Put a word that stands alone into quotes where it could be taken for something else."""
    return text if _bare(text, _KEPT) else _in_quotes(text)


def _in_quotes(text: str) -> str:
    return '"' + text.replace('"', '""') + '"'


def _bare(word: str, kept: frozenset[str]) -> bool:
    """Tell whether a word is read as itself without quotes."""
    return (
        bool(word)
        and word[0] not in _QUOTES
        and word.casefold() not in kept
        and not any(character in STOPS or character.isspace() for character in word)
    )


def _within(node: Node, by: str) -> str:
    """Write a part of something larger, in brackets where it would be read otherwise without them."""
    bare = isinstance(node, Compare | Words | Not) or (by == "or" and node.by == "and")
    return as_text(node) if bare else f"({as_text(node)})"


def _walked(node: Node | None) -> Iterator[Node]:
    if node is None:
        return
    yield node
    for part in node.parts if isinstance(node, Joined) else (node.of,) if isinstance(node, Not) else ():
        yield from _walked(part)

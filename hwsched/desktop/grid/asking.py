"""What is typed into the query line, understood: words that are looked for, or a query with what it means. No widgets.

A text that compares no fact is looked for as it stands, word by word, in all that rows show. Once a fact is compared,
it is a query of `hwsched.query`, as `hwsched opening list --where` takes it.
"""

from dataclasses import dataclass
from typing import Final

from hwsched.kept_sentences import kept_error
from hwsched.language import phrase
from hwsched.query import (
    Askable,
    Fault,
    Joined,
    Node,
    Not,
    Query,
    QueryError,
    Words,
    as_text,
    completions,
    parse,
    said_in_words,
)

_SIGNS: Final = frozenset("=<>≤≥≠")
_TELLING: Final = frozenset({"uses", "between", "contains", "every"})
"""Words that say by themselves that a query is meant."""


@dataclass(frozen=True, slots=True)
class Chip:
    """A part of what is asked for, that can be taken away."""

    said: str
    without: str
    """The text that is left without it."""


@dataclass(frozen=True, slots=True)
class Understanding:
    """A text as it is understood."""

    text: str
    query: Query | None = None
    """None: words, or what cannot be read."""
    said: str = ""
    """What it means, in words; of what cannot be read why."""
    chips: tuple[Chip, ...] = ()
    fault: Fault | None = None
    """Why it cannot be read."""
    unfinished: bool = False
    """What is wrong is that the text is not at its end yet."""

    @property
    def words(self) -> str:
        """The text where it is looked for as it stands, else nothing."""
        return self.text if self.query is None and self.fault is None else ""


def understand(text: str, askable: Askable) -> Understanding:
    """Understand what was typed.

    Parameters
    ----------
    text : str
        Of the query line.
    askable : Askable
        What can be asked for.

    Examples
    --------
    >>> found = understand("hand = LH and width > 900 mm", Askable(length_style="mm"))
    >>> [chip.said for chip in found.chips], found.chips[0].without
    (['hand LH', 'leaf width over 900 mm'], 'leaf.width > 900 mm')
    >>> understand("not rated", Askable()).words
    'not rated'
    """
    if not text.strip():
        return Understanding(text)
    try:
        query = parse(text, askable)
    except QueryError as error:
        if not _meant(text):
            return Understanding(text, said=_looked_for(text))
        unfinished = error.fault.start >= len(text.rstrip())
        return Understanding(text, said=kept_error(str(error)), fault=error.fault, unfinished=unfinished)
    if query.root is None or _only_words(query.root):
        return Understanding(text, said=_looked_for(text))
    if query.searches and (fact := _begun(text, askable)):
        # Looked for as a word it would find nothing, until what is asked of the fact is typed too.
        return Understanding(
            text,
            said=phrase("what is asked of {fact}?", fact=fact),
            fault=Fault(len(text), len(text), "", ""),
            unfinished=True,
        )
    said = said_in_words(query, askable.length_style)
    remarks = "; ".join(map(str, query.remarks))
    return Understanding(text, query, f"{said}. {remarks}" if remarks else said, _chips(query, askable))


def _begun(text: str, askable: Askable) -> str:
    """Return the fact whose name is being typed at the end of a query; nothing where it is none."""
    found = completions(text, len(text), askable)
    begun = text[found.start :].strip()
    names = {fact.name: fact.attribute.label.lower() for fact in askable.facts}
    if not begun:
        # A whole name stands before what is offered: signs.
        fact = askable.fact(text.split()[-1]) if any(each.text in _SIGNS for each in found.offers) else None
        return fact.attribute.label.lower() if fact is not None else ""
    return next((names[each.text] for each in found.offers if each.text in names), "")


def _meant(text: str) -> bool:
    """Tell whether a text that cannot be read was meant as a query."""
    return bool(_SIGNS & set(text)) or bool(_TELLING & set(text.casefold().split())) or " is " in f"{text.casefold()} "


def _only_words(node: Node) -> bool:
    return isinstance(node, Words) or (isinstance(node, Not) and _only_words(node.of))


def _looked_for(text: str) -> str:
    return phrase("rows in which {value} stands", value=" and ".join(f"“{word}”" for word in text.split()))


def _chips(query: Query, askable: Askable) -> tuple[Chip, ...]:
    root = query.root
    parts = root.parts if isinstance(root, Joined) and root.by == "and" else (root,)
    chips = []
    for place, part in enumerate(parts):
        rest = tuple(each for n, each in enumerate(parts) if n != place and each is not None)
        left = "" if not rest else as_text(rest[0]) if len(rest) == 1 else as_text(Joined("and", rest))
        chips.append(Chip(said_in_words(Query("", part), askable.length_style), left))
    return tuple(chips)

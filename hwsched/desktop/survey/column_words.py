"""What a person can say of a column of a survey file, as the entries of lists: facts, meanings, suggestions."""

from collections.abc import Mapping, Sequence
from typing import Any, Final

from hwsched.attributes import Attribute
from hwsched.desktop.widgets.taken_box import TakenBox
from hwsched.exchange.survey.words import TYPE_ATTRIBUTE
from hwsched.language import phrase, to_phrase
from hwsched.survey import ITEM, LEAF, OPENING

AS_HEADED: Final = to_phrase("as the heading says")
_NOT_READ: Final = to_phrase("not read")
_BESIDES: Final[Mapping[str, tuple[str, str]]] = {
    "leaf.size": (LEAF.label, to_phrase("width by height")),
    "opening.of_type": (OPENING.label, TYPE_ATTRIBUTE.label),
}
"""What columns carry that is no single fact, with what it is of and how it is called."""
DECLARED: Final[dict[str, Attribute]] = {
    f"{entity.name}.{attribute.name}": attribute for entity in (OPENING, LEAF, ITEM) for attribute in entity.attributes
}


def fact_label(target: str) -> str:
    """Return what people call the fact that a column carries.

    Examples
    --------
    >>> fact_label("leaf.width_mm"), fact_label("")
    ('Leaf width', 'not read')
    """
    bare = target.partition("@")[0]
    attribute = DECLARED.get(bare)
    if attribute is not None:
        return phrase(attribute.label)
    if bare in _BESIDES:
        return ": ".join(map(phrase, _BESIDES[bare]))
    return target or phrase(_NOT_READ)


def facts() -> list[tuple[str, str | None]]:
    """Return what a column may carry: how it is called in the language in force, and how it is written."""
    declared: list[tuple[str, str | None]] = [
        (f"{phrase(entity.label)}: {phrase(attribute.label)}", f"{entity.name}.{attribute.name}")
        for entity in (OPENING, LEAF, ITEM)
        for attribute in entity.attributes
    ]
    return [(phrase(_NOT_READ), ""), *declared, *((fact_label(known), known) for known in _BESIDES)]


def fact_choices(target: str) -> list[tuple[str, str | None]]:
    """Return what a column may carry, that which it is read as first."""
    return [(f"{phrase(AS_HEADED)}: {fact_label(target)}", None), *facts()]


def meanings(attribute: Attribute | None) -> list[tuple[str, str]]:
    """Return what a word may mean for a fact: label and value."""
    if attribute is None or attribute.kind not in ("choice", "flag"):
        return []
    if attribute.kind == "flag":
        return [(phrase("yes"), "yes"), (phrase("no"), "no")]
    return [(phrase(choice.label), choice.value) for choice in attribute.choices]


def dash_meanings(target: str) -> list[tuple[str, str]]:
    """Return what a dash may mean in a column that carries a fact."""
    return [(phrase("unknown"), "unknown"), *meanings(DECLARED.get(target))]


def choice_box(entries: Sequence[tuple[str, Any]], held: Any) -> TakenBox:
    """Return a list to choose from, with the entry whose value is held."""
    box = TakenBox()
    for label, value in entries:
        box.addItem(label, value)
    box.setCurrentIndex(next((n for n, (_, value) in enumerate(entries) if value == held), 0))
    # A long entry does not make the list wider than its place.
    box.setMinimumContentsLength(12)
    return box

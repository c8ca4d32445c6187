"""What there is to read without a network: a page for each place, the handbook, a page for each rule. No widgets."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Final, Literal

from hwsched.language import phrase, to_phrase
from hwsched.paths import RESOURCES

if TYPE_CHECKING:
    from hwsched.rules.rule import AnyRule

Group = Literal["Places", "Handbook", "Rules"]
GROUPS: Final[tuple[Group, ...]] = (to_phrase("Places"), to_phrase("Handbook"), to_phrase("Rules"))
_HANDBOOK: Final = RESOURCES / "handbook"
_ORDER: Final = ("today", "survey", "openings", "power", "parts", "release")
"""Places in the order of the rail; others follow by their titles."""


@dataclass(frozen=True, slots=True)
class Topic:
    """One page to read."""

    name: str
    """By which it is asked for: "places/today", "handbook/office", "rules/RULE"."""
    group: Group
    title: str


def topics() -> tuple[Topic, ...]:
    """Return all pages, by group, in the order in which they are listed."""
    from hwsched.rules import RULEBOOK

    rules = (Topic(f"rules/{rule.id}", "Rules", phrase(rule.title)) for rule in RULEBOOK)
    return (*pages(), *sorted(rules, key=lambda each: each.title))


def pages() -> tuple[Topic, ...]:
    """Return the pages that are files, in the same order; nothing is loaded for them."""
    places = [_of_file(f"places/{path.stem}", "Places") for path in (_HANDBOOK / "places").glob("*.md")]
    first = {f"places/{name}": at for at, name in enumerate(_ORDER)}
    places.sort(key=lambda each: (first.get(each.name, len(first)), each.title))
    handbook = sorted(
        (_of_file(f"handbook/{path.stem}", "Handbook") for path in _HANDBOOK.glob("*.md")), key=lambda each: each.title
    )
    return (*places, *handbook)


def titles() -> tuple[str, ...]:
    """Return the titles of pages that are files, as they are written there."""
    files = [*(f"places/{path.stem}" for path in (_HANDBOOK / "places").glob("*.md"))]
    files += [f"handbook/{path.stem}" for path in _HANDBOOK.glob("*.md")]
    return tuple(map(_first_line, files))


def text_of(name: str) -> str:
    """Return the text of a page, by whose words it is found; pages that are files are Markdown.

    Raises
    ------
    LookupError
        When there is no such page.
    """
    from hwsched.rules.page import page_of

    rule = rule_of(name)
    if rule is not None:
        return page_of(rule)
    path = _path(name)
    if name.partition("/")[0] not in ("places", "handbook") or not path.is_file():
        raise LookupError(f"there is no page {name}")
    return path.read_text(encoding="utf-8")


def rule_of(name: str) -> AnyRule | None:
    """Return the rule whose page it is; None for any other page."""
    from hwsched.rules import in_rulebook

    group, _, rest = name.partition("/")
    return in_rulebook(rest) if group == "rules" else None


def place_topic(names: Iterable[str]) -> str:
    """Return the page of the first of these places that has one; that of the whole where none has."""
    return next((f"places/{name}" for name in names if _path(f"places/{name}").is_file()), "places/today")


def linked(name: str, target: str) -> str:
    """Return the page to which a link in a page leads; empty where it leads elsewhere.

    Examples
    --------
    >>> linked("places/today", "../office.md"), linked("places/today", "openings.md"), linked("handbook/office", "#a")
    ('handbook/office', 'places/openings', '')
    """
    if not target.endswith(".md") or "://" in target:
        return ""
    path = (_path(name).parent / target).resolve()
    known = {_path(each.name).resolve(): each.name for each in pages()}
    return known.get(path, "")


def _path(name: str) -> Path:
    group, _, rest = name.partition("/")
    return (_HANDBOOK / "places" if group == "places" else _HANDBOOK) / f"{rest}.md"


def _of_file(name: str, group: Group) -> Topic:
    return Topic(name, group, phrase(_first_line(name)))


@cache
def _first_line(name: str) -> str:
    with _path(name).open(encoding="utf-8") as lines:
        return next(lines).lstrip("# ").rstrip()

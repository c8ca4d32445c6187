"""What is left to be decided of a survey file as plain values that a project keeps, and back."""

from collections.abc import Mapping
from typing import Any

from hwsched.exchange.survey.difference import FactChange, Undecided
from hwsched.exchange.survey.facts import SurveyedItem, SurveyedLeaf, SurveyedOpening


def content_of(each: Undecided) -> dict[str, Any]:
    """Return what an undecided difference says beside its kind, mark and opening.

    Examples
    --------
    >>> content_of(Undecided("gone", "104", "o1", evidence="not in the file"))
    {'evidence': 'not in the file'}
    """
    found: dict[str, Any] = {}
    if each.known:
        found["known"] = each.known
    if each.evidence:
        found["evidence"] = each.evidence
    if each.fact is not None:
        found["fact"] = {name: getattr(each.fact, name) for name in FactChange.__slots__}
    if each.opening is not None:
        found["opening"] = _opening_content(each.opening)
    return found


def undecided_of(kind: str, mark: str, opening_id: str | None, content: Mapping[str, Any]) -> Undecided:
    """Return an undecided difference of what the project keeps of it."""
    fact, opening = content.get("fact"), content.get("opening")
    return Undecided(
        kind,
        mark,
        opening_id,
        str(content.get("known", "")),
        FactChange(**fact) if fact is not None else None,
        _opening(opening) if opening is not None else None,
        str(content.get("evidence", "")),
    )


def _opening_content(opening: SurveyedOpening) -> dict[str, Any]:
    return {
        "mark": opening.mark,
        "facts": dict(opening.facts),
        "leaves": [
            {"position": leaf.position, "facts": dict(leaf.facts), "origin": leaf.origin} for leaf in opening.leaves
        ],
        "items": [
            {"facts": dict(item.facts), "deduced": dict(item.deduced), "origin": item.origin} for item in opening.items
        ],
        "origin": opening.origin,
    }


def _opening(held: Mapping[str, Any]) -> SurveyedOpening:
    return SurveyedOpening(
        held["mark"],
        held["facts"],
        tuple(SurveyedLeaf(**leaf) for leaf in held["leaves"]),
        tuple(SurveyedItem(**item) for item in held["items"]),
        held["origin"],
    )

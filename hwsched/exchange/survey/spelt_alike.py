"""Marks of one file that are one but for their spelling: D-102 and D 102, 101 and 0101.

Each stays an opening of its own and is asked about; the cure makes one opening of them, where what they say agrees.
"""

from collections.abc import Collection, Sequence
from dataclasses import replace
from typing import Final

from hwsched.exchange.survey.facts import Facts, Oddity, SurveyedLeaf, SurveyedOpening, Value, agree
from hwsched.exchange.survey.renaming import alike_in_file
from hwsched.language import to_phrase

ALIKE: Final = "spelt-alike"
_QUESTION: Final = to_phrase("is each of these one opening, its mark spelt in two ways, in {count}?")
_CURE: Final = to_phrase(
    "what agrees becomes one opening under the spelling that stands first; what does not stays apart"
)


def ask_of_spellings(
    openings: Sequence[SurveyedOpening], cured: Collection[str]
) -> tuple[tuple[SurveyedOpening, ...], tuple[Oddity, ...]]:
    """Find the marks that are one but for their spelling, and make one opening of them where that is asked for.

    Parameters
    ----------
    openings : sequence of SurveyedOpening
        As they were read.
    cured : collection of str
        Identifiers of oddities, the cure of which was asked for.
    """
    left: list[str] = []
    made: dict[str, SurveyedOpening | None] = {}
    groups = alike_in_file([opening.mark for opening in openings])
    by_mark = {opening.mark: opening for opening in openings} if groups else {}
    for group in groups:
        whole = _joined([by_mark[mark] for mark in group]) if ALIKE in cured else None
        if whole is None:
            left += group
        else:
            made |= {**dict.fromkeys(group), group[0]: whole}
    kept = (made.get(opening.mark, opening) for opening in openings) if made else iter(openings)
    asked = (Oddity(ALIKE, _QUESTION, _CURE, tuple(left)),) if left else ()
    return tuple(opening for opening in kept if opening is not None), asked


def _joined(openings: Sequence[SurveyedOpening]) -> SurveyedOpening | None:
    """Return one opening of several; None where they do not say the same of a fact, or have other leaves."""
    first, *others = openings
    facts, leaves, items = dict(first.facts), list(first.leaves), list(first.items)
    for other in others:
        if [leaf.position for leaf in other.leaves] != [leaf.position for leaf in leaves]:
            return None
        if not _take(facts, {**other.facts, "mark": first.mark}):
            return None
        for place, leaf in enumerate(other.leaves):
            of_leaf = dict(leaves[place].facts)
            if not _take(of_leaf, leaf.facts):
                return None
            leaves[place] = SurveyedLeaf(leaf.position, of_leaf, leaves[place].origin)
        items += [item for item in other.items if all(item.facts != held.facts for held in items)]
    return replace(first, facts=facts, leaves=tuple(leaves), items=tuple(items))


def _take(held: dict[str, Value], told: Facts) -> bool:
    return all(agree(name, held.setdefault(name, value), value) for name, value in told.items())

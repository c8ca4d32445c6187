"""What a column of an unknown heading may hold: told by its cells, where they are words of one fact and of no other.

It is proposed and never taken: the heading may mean anything.
"""

import re
from collections.abc import Collection, Mapping
from typing import Final

from hwsched.attributes import Attribute, Choice
from hwsched.attributes.emptiness import marks_emptiness
from hwsched.attributes.headers import normal
from hwsched.attributes.values import choice_words
from hwsched.exchange.survey.mapping import Target
from hwsched.exchange.survey.words import Vocabulary
from hwsched.survey import ENTITIES, Entity

_FEWEST: Final = 2
"""Different words that must be read."""
_MOST_READ, _AHEAD = 0.6, 0.3
"""Share of the different cells that must be words of the fact, and by how much more than of any other."""
_WORDS: Final = 100
_SAYS_LITTLE: Final = re.compile(r"\W*|[\d.,/ -]+|[xyn01]|yes|no|none|true|false|tbd|n/?a", re.IGNORECASE)
"""Ticks, answers and bare numbers: they stand below headings of every kind."""


def likely_fact(
    heading: str, cells: Mapping[str, int], vocabulary: Vocabulary, carried: Collection[Target]
) -> Target | None:
    """Return the fact of which cells are words; None where they are of none, or of several.

    Parameters
    ----------
    heading : str
        Tells facts of the same words apart, such as the label of the leaf and that of the frame.
    cells : mapping of str to int
        The different filled cells of a column.
    vocabulary : Vocabulary
        The declared facts.
    carried : collection of Target
        Facts that other columns carry.

    Examples
    --------
    >>> known = Vocabulary()
    >>> likely_fact("Col. 7", {"45 min": 3, "20 MIN": 1, "-": 9}, known, ())
    Target(entity='opening', attribute='rating', slot='')
    >>> likely_fact("Col. 7", {"45": 3, "20": 1}, known, ()), likely_fact("Col. 7", {"yes": 3, "no": 2}, known, ())
    (None, None)
    """
    words = [cell for cell in list(cells)[:_WORDS] if not marks_emptiness(cell)]
    telling = [cell for cell in words if not _SAYS_LITTLE.fullmatch(cell.strip())]
    if len(words) < _FEWEST or not telling:
        return None
    shares: dict[tuple[Choice, ...], tuple[float, list[Attribute], Entity]] = {}
    for entity in ENTITIES:
        for attribute in entity.attributes:
            target = Target(entity.name, attribute.name)
            if attribute.kind != "choice" or target in carried or not vocabulary.knows(target):
                continue
            known = choice_words(attribute)
            read = sum(normal(cell) in known for cell in words)
            # Where no telling cell is a word of it, what is left are numbers and answers.
            if read >= _FEWEST and any(normal(cell) in known for cell in telling):
                shares.setdefault(attribute.choices, (read / len(words), [], entity))[1].append(attribute)
    if not shares:
        return None
    (best, facts, entity), *others = sorted(shares.values(), key=lambda each: -each[0])
    if best < _MOST_READ or any(best - share < _AHEAD for share, _, _ in others):
        return None
    said = set(plain_words(heading))
    own = max(facts, key=lambda each: len(said & set(plain_words(each.label))))
    return Target(entity.name, own.name)


def plain_words(text: str) -> list[str]:
    """Return the words of a heading or a label, for comparing."""
    return [word.removesuffix("'s") for word in text.casefold().split()]

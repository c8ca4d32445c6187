"""What is not known: missing facts ranked by how many openings each unblocks, and those of one opening."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from hwsched.rules.wording import FIT, label_of
from hwsched.values import Finding, Fit

_WORKED_OUT: Final = frozenset({FIT})
"""What others wait for and nobody finds at a door: it is worked out, and told where it is not."""


@dataclass(frozen=True, slots=True)
class MissingFact:
    """A fact that nobody knows yet, and what hangs on it."""

    fact: str
    """``entity.attribute``, or ``part NUMBER.attribute``."""
    label: str
    alone: tuple[str, ...]
    """Marks of the openings that need nothing else: finding it unblocks them."""
    needed: tuple[str, ...]
    """Marks of all openings that need it."""

    @property
    def of_catalogue(self) -> bool:
        """Whether the catalogue lacks it, and no visit finds it."""
        return self.fact.startswith("part ")


def missing_facts(openings: Iterable[tuple[str, Fit | None, Sequence[Finding]]]) -> tuple[MissingFact, ...]:
    """Rank missing facts: first those whose finding unblocks most openings, then those that most openings need.

    Parameters
    ----------
    openings : iterable of (mark, fit, findings)
        Fit None where none counts.

    Notes
    -----
    An opening is blocked where its fit is unknown, or where an error or warning that nobody waived says "unknown:
    needs"; notes block nothing.
    """
    alone: dict[str, list[str]] = {}
    needed: dict[str, list[str]] = {}
    for mark, fit, findings in openings:
        facts = needs_of(fit, findings)
        for fact in facts:
            needed.setdefault(fact, []).append(mark)
        if len(facts) == 1:
            alone.setdefault(facts[0], []).append(mark)
    found = [
        MissingFact(fact, label_of(fact), tuple(alone.get(fact, ())), tuple(marks)) for fact, marks in needed.items()
    ]
    # What unblocks most by itself first: a surveyor with one hour brings home most openings.
    return tuple(sorted(found, key=lambda each: (-len(each.alone), -len(each.needed), each.label)))


def needs_of(fit: Fit | None, findings: Sequence[Finding]) -> tuple[str, ...]:
    """Return the facts to be found out that block an opening, each once."""
    facts: dict[str, None] = {}
    if fit is not None and fit.status == "to-measure":
        facts.update((need.fact, None) for need in fit.needs)
    for finding in findings:
        # A note keeps nobody from work, so that nobody is sent out for its facts.
        if finding.needs and not finding.waived and finding.severity != "note":
            facts.update(dict.fromkeys(finding.needs))
    return tuple(fact for fact in facts if fact not in _WORKED_OUT)

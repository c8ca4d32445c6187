"""Judges openings, supplies and records by all rules that are not switched off.

How one rule speaks stands in `speaking`; waivers are laid over findings by an operation.
"""

from collections.abc import Hashable, Iterable, Sequence
from dataclasses import replace
from typing import Final

from hwsched.rules import CIRCUIT_RULES, OWN_RULES, RECORD_RULES, RULES
from hwsched.rules.impossible_facts import without_impossible
from hwsched.rules.rule import Inputs, OpeningRule
from hwsched.rules.solid.placeless import PlaceReadError, placeless
from hwsched.rules.speaking import RuleError, each_verdict, finding_of, judge
from hwsched.values import SEVERITIES, Finding, Fit, LockPoint, OpeningInput, Settings
from hwsched.values.facts_memory import FactsMemory
from hwsched.values.power import PowerFinding, SupplyResult
from hwsched.values.record import Record
from hwsched.values.watching import Watch

_RANK: Final = {severity: rank for rank, severity in enumerate(SEVERITIES)}
_ORDER: Final = {rule.id: place for place, rule in enumerate(RULES)}


def findings_of(members: Iterable[OpeningRule], given: OpeningInput, fit: Fit) -> tuple[Finding, ...]:
    """Judge a case and its fit by some rules; findings worst first, then in the order of the rules."""
    found = _said(members, given, without_impossible(given), fit)
    found.sort(key=lambda finding: _RANK[finding.severity])
    return tuple(found)


def _said(members: Iterable[OpeningRule], given: OpeningInput, sound: OpeningInput, fit: Fit) -> list[Finding]:
    return [finding_of(rule, verdict) for rule, verdict in each_verdict(members, given, sound, fit)]


_ALIKE: Final = tuple(rule for rule in RULES if rule in OWN_RULES and not rule.each_anew and not rule.sees_all)
"""What says the same of openings that differ in nothing that it reads; of rules from outside nobody knows."""
_ANEW: Final = tuple(rule for rule in RULES if rule not in _ALIKE)
_OF_PLACE: Final = frozenset(
    (
        *("head-clear", "head-clear-of-stop", "head-on-leaf", "bored-lead", "fixings-outside"),
        *("bend-radius", "lead-reaches", "wall-thickness-known"),
        *("rated-cut", "rated-hole-allowed", "rated-hole-size", "rated-raceway", "rated-seal"),
        *("supply-drop", "wire-across-leaf", "way-clear"),
        *("sleeve-fits", "template-known", "tool-known", "wall-fixings"),
    )
)
"""Rules of other disciplines than those of the place that ask all the same where lock and unit stand."""
_OF_NO_PLACE: Final = frozenset(
    (
        *("case-offset-taken", "clear-width", "known-before-issue", "leaf-count", "lock-converted", "moved-item"),
        "stile-told",
    )
)
"""Rules of the place's disciplines that do not ask where anything stands."""
_PLACED: Final = tuple(
    rule
    for rule in _ALIKE
    if rule.id in _OF_PLACE
    or (rule.discipline in ("survey", "accessibility", "placement", "holes") and rule.id not in _OF_NO_PLACE)
)
_WHEREVER: Final = tuple(rule for rule in _ALIKE if rule not in _PLACED)
"""What says the same of openings that get the same parts in other places."""
_VAIN: Final = 16
"""Answers of one fit of which none came again: no more are written down, since to watch costs more than to judge."""


class AlikeMemory:
    """What rules said, remembered by the facts that were read. One belongs to one thread."""

    def __init__(self) -> None:
        self._facts = FactsMemory()
        self._made: dict[Hashable, int] = {}
        """By what was asked: how often in turn it was worked out and written down."""
        self._hanging: set[Hashable] = set()
        """What was taken to hold wherever things stand, and does not."""

    def of(
        self, key: Hashable, given: OpeningInput, members: Sequence[OpeningRule], fit: Fit, common: Fit | None = None
    ) -> list[Finding]:
        """Return what some rules say.

        Parameters
        ----------
        key : hashable
            Equal where the rules find equal fits.
        given : OpeningInput
            The opening.
        members : sequence of Rule
            Who speaks.
        fit : Fit
            What is judged.
        common : Fit, optional
            What of it is equal wherever the key is; the fit itself when left out.
        """
        made = self._made.get(key)
        if made is None:
            # To write down what is read costs time: only where it is asked a second time.
            self._made[key] = 0
        if made is None or made >= _VAIN:
            return _said(members, given, given, fit)
        self._made[key] = 0

        def make(watch: Watch) -> list[Finding]:
            self._made[key] = made + 1
            return _said(members, watch.given, watch.given, fit if common is None else common)

        return self._facts.of(key, given, make)

    def wherever(self, key: Hashable, given: OpeningInput, fit: Fit) -> list[Finding]:
        """Return what rules say that ask for no place; key: equal for fits that differ in places alone."""
        if key not in self._hanging:
            try:
                return self.of(("wherever", key), given, _WHEREVER, fit, placeless(fit))
            except RuleError as error:
                if not isinstance(error.__cause__, PlaceReadError):
                    raise
                # One of them asks for a place after all.
                self._hanging.add(key)
        return _said(_WHEREVER, given, given, fit)


def check_alike(
    given: OpeningInput, fit: Fit, shared: Fit, key: Hashable, memory: AlikeMemory, common: Hashable = None
) -> tuple[Finding, ...]:
    """Do as `check`, with what was said of openings whose fits differ little.

    Parameters
    ----------
    given, fit : OpeningInput, Fit
        As for `check`.
    shared : Fit
        The fit without its battery.
    key : hashable
        Equal for equal shared fits only.
    memory : AlikeMemory
        Remembers by the facts that were read.
    common : hashable
        Equal for shared fits only that differ in nothing but the places of unit, lead and holes; the key when left out.
    """
    sound = without_impossible(given)
    alike = memory.wherever(key if common is None else common, sound, shared)
    found = [*alike, *memory.of(key, sound, _PLACED, shared), *_said(_ANEW, given, sound, fit)]
    found.sort(key=lambda finding: (_RANK[finding.severity], _ORDER[finding.rule]))
    return tuple(found)


def check(given: OpeningInput, fit: Fit) -> tuple[Finding, ...]:
    """Judge an opening and its fit by every rule that is not switched off.

    Parameters
    ----------
    given : OpeningInput
        Survey facts, catalogue and settings.
    fit : Fit
        As `hwsched.fitting.fit` built it, or as stored.

    Returns
    -------
    tuple of Finding
        Worst first; equal for equal cases. Waivers are not laid over yet.

    Raises
    ------
    RuleError
        When a rule falls over.
    """
    return findings_of(RULES, given, fit)


def judge_supply(result: SupplyResult, inputs: Inputs, settings: Settings) -> tuple[PowerFinding, ...]:
    """Judge a supply and its circuits by every rule that is not switched off.

    Parameters
    ----------
    result : SupplyResult
        As worked out.
    inputs : mapping
        Openings that it feeds, by identifier.
    settings : Settings
        Limits of the project, rules that are off.

    Raises
    ------
    RuleError
        When a rule falls over.
    """
    if not result.circuits:
        return ()
    return tuple(
        PowerFinding(finding_of(rule, verdict), result.supply.id, verdict.circuit_id, verdict.opening_ids)
        for rule in CIRCUIT_RULES
        if rule.id not in settings.rules_off
        for verdict in judge(rule, result, inputs, settings=settings)
    )


def judge_record(record: Record, settings: Settings) -> tuple[Finding, ...]:
    """Judge what is on record of an opening by every rule that is not switched off.

    Raises
    ------
    RuleError
        When a rule falls over.
    """
    return tuple(
        finding_of(rule, verdict)
        for rule in RECORD_RULES
        if rule.id not in settings.rules_off
        for verdict in judge(rule, record, settings=settings)
    )


def of_opening(said: Sequence[tuple[LockPoint, Sequence[Finding]]]) -> tuple[Finding, ...]:
    """Put together what the rules say of an opening's lock points: what is said of all of them stands once.

    Parameters
    ----------
    said : sequence of (LockPoint, findings)
        One entry a lock point.

    Returns
    -------
    tuple of Finding
        Worst first. What concerns some points only names them.
    """
    if len(said) == 1:
        return tuple(said[0][1])
    found: list[tuple[Finding, list[str]]] = []
    for point, findings in said:
        for finding in findings:
            # Twice at one lock point is two findings, though they read the same.
            held = next((names for each, names in found if each == finding and point.name not in names), None)
            if held is None:
                found.append((finding, [point.name]))
            else:
                held.append(point.name)
    named = []
    for finding, names in found:
        if len(names) == len(said):
            named.append(finding)
            continue
        where = ", ".join(names)
        named.append(replace(finding, message=f"{where[:1].upper()}{where[1:]}: {finding.message}", point=where))
    named.sort(key=lambda finding: _RANK[finding.severity])
    return tuple(named)

"""Which parts of the catalogue could take a role: which fit, which not and by how much, what else changes.

Each is tried as if a person chose it for the opening as it stands; nothing is written.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Final

from hwsched.fitting import fit
from hwsched.operations.findings.checked import Checked
from hwsched.quantities import LengthStyle, format_length
from hwsched.rules.judging import check
from hwsched.values import Chosen, Fit, OpeningInput, Part, Refusal

_ALIKE: Final = ({"surface-unit", "edge-unit"},)
"""Kinds that serve alike; parts of any other kind serve alike only among themselves."""
_NAMED: Final = 4


@dataclass(frozen=True, slots=True)
class Candidate:
    """One part, tried in a role."""

    part: str
    description: str
    present: bool
    """Whether it has the role now."""
    fits: bool
    unknown: bool = False
    """Whether facts are missing to tell."""
    short_mm: float | None = None
    """By how much it does not fit, where that is a length."""
    reasons: tuple[str, ...] = ()
    """Why it does not fit, with the numbers, or what is missing."""
    rules: tuple[str, ...] = ()
    cost: Decimal | None = None
    """Of the whole fit with it; None where it does not fit."""
    cost_change: Decimal | None = None
    """Against the fit as it stands; None where one of both is not known."""
    currency: str = ""
    stock: float | None = None
    changes: tuple[str, ...] = ()
    """What else would be otherwise."""


def candidates(
    checked: Checked,
    role: str,
    style: LengthStyle,
    number: int = 1,
    *,
    progress: Callable[[int, int], None] = lambda _done, _total: None,
    cancelled: Callable[[], bool] = lambda: False,
) -> tuple[Candidate, ...]:
    """Try every part that could take a role at a lock point.

    Parameters
    ----------
    checked : Checked
        The opening as it stands.
    role : str
        Of its fit.
    style : LengthStyle
        How lengths are written.
    number : int
        Of the lock point.
    progress, cancelled : callable
        How far it is, and whether it is to end early with what was tried so far.

    Returns
    -------
    tuple of Candidate
        Those that fit first, the cheapest before others; then those that cannot be judged, then the least short.
    """
    at = checked.point(number)
    now = at.fit or Fit("to-measure")
    parts = parts_for(at.given, now, role)
    found = []
    for done, part in enumerate(parts):
        if cancelled():
            break
        found.append(_tried(at.given, now, part, role, style))
        progress(done + 1, len(parts))
    return tuple(sorted(found, key=_rank))


def parts_for(given: OpeningInput, now: Fit, role: str) -> tuple[Part, ...]:
    """Return the parts that can be tried in a role: those of the kinds that have it, or were refused in it."""
    held = now.part(role)
    kinds = {held.kind} if held is not None else set()
    for refusal in now.refused:
        refused = given.catalogue.get(refusal.part)
        if refusal.role == role and refused is not None:
            kinds.add(refused.kind)
    for alike in _ALIKE:
        if kinds & alike:
            kinds |= alike
    return tuple(
        part for kind in sorted(kinds) for part in given.catalogue.of_kind(kind) if not part.superseded_by or
        (held is not None and part.number == held.part)
    )  # fmt: skip


def _tried(given: OpeningInput, now: Fit, part: Part, role: str, style: LengthStyle) -> Candidate:
    held = now.part(role)
    present = held is not None and held.part == part.number
    quantity = held.quantity if held is not None else 1.0
    others = tuple(each for each in given.chosen if each.role != role)
    asked = replace(given, chosen=(*others, Chosen(role, part.number, quantity)))
    tried = now if present else fit(asked)
    stands = tried.part(role)
    stood = {each.message for each in check(given, now) if each.severity == "error"}
    # A part that a person chooses is kept whatever speaks against it: then the rules say it as errors.
    errors = [each for each in check(asked, tried) if each.severity == "error" and each.message not in stood]
    good = tried.status == "fits" and stands is not None and stands.part == part.number and not errors
    against = [] if good else _against(now, tried, part.number, role)
    told = [(each.rule, each.reason, each.values) for each in against]
    told = told or [(each.rule, each.message, each.values) for each in errors if not each.needs]
    needs = () if good or told else tuple(dict.fromkeys(f"needs {need.label}" for need in tried.needs))
    short = [abs(values["short_mm"]) for _, _, values in told if "short_mm" in values]
    reasons = tuple(dict.fromkeys(reason for _, reason, _ in told)) or needs
    known = good and not tried.cost_needs and not now.cost_needs and tried.currency == now.currency
    return Candidate(
        part.number,
        part.description,
        present,
        good or present,
        unknown=bool(needs) and not present,
        short_mm=None if present else max(short, default=None),
        reasons=() if present else reasons or ("nothing else fits beside it",) if not good else (),
        rules=() if present else tuple(dict.fromkeys(rule for rule, _, _ in told)),
        cost=tried.cost if (good or present) and not tried.cost_needs else None,
        cost_change=tried.cost - now.cost if known and now.status == "fits" else None,
        currency=tried.currency,
        stock=part.stock,
        changes=tuple(_changes(now, tried, role, style)) if good and not present else (),
    )


def _against(now: Fit, tried: Fit, part: str, role: str) -> list[Refusal]:
    """Return what refuses a part: itself as the fit was built, or what could no longer be chosen beside it."""
    own = [each for fit_ in (tried, now) for each in fit_.refused if each.part == part and each.role == role]
    known = {(each.part, each.rule) for each in now.refused}
    return own or [each for each in tried.refused if (each.part, each.rule) not in known]


def _changes(now: Fit, tried: Fit, role: str, style: LengthStyle) -> Iterator[str]:
    """Say what else is otherwise with another part."""

    def of(made: Fit) -> dict[str, float]:
        counted: dict[str, float] = {}
        for each in made.parts:
            if each.role != role:
                counted[each.part] = counted.get(each.part, 0.0) + each.quantity
        return counted

    before, after = of(now), of(tried)
    new = [part for part in after if part not in before]
    gone = [part for part in before if part not in after]
    other = [part for part in after if part in before and abs(after[part] - before[part]) > 1e-9]
    for words, parts in (("also", new), ("no longer", gone)):
        if parts:
            more = f" and {len(parts) - _NAMED} more" if len(parts) > _NAMED else ""
            yield f"{words} {', '.join(parts[:_NAMED])}{more}"
    yield from (f"{after[part]:g} instead of {before[part]:g} {part}" for part in other)
    a, b = now.placement, tried.placement
    if (a is None) != (b is None):
        yield "no unit is placed" if b is None else "a unit is placed"
    elif a is not None and b is not None and (a.face, a.pattern) != (b.face, b.pattern):
        yield f"the unit stands on the {b.face} face, {b.pattern}"
    elif a is not None and b is not None and max(abs(a.x_mm - b.x_mm), abs(a.y_mm - b.y_mm)) > 0.05:
        x, y = format_length(b.x_mm, style), format_length(b.y_mm, style)
        yield f"the unit stands {x} from the lock edge, {y} above the floor"
    holes = sum(h.count for h in now.holes), sum(h.count for h in tried.holes)
    if holes[0] != holes[1]:
        yield f"{holes[1]} holes instead of {holes[0]}"
    if now.cable is not None and tried.cable is not None:
        spare = [each.available_mm - each.length_mm for each in (now.cable, tried.cable)]
        if abs(spare[0] - spare[1]) > 0.5:
            yield f"lead {format_length(spare[1], style)} to spare instead of {format_length(spare[0], style)}"


def _rank(each: Candidate) -> tuple[int, Decimal, float, str]:
    order = 0 if each.fits else 1 if each.unknown else 2
    far = each.short_mm if each.short_mm is not None else float("inf")
    return order, each.cost if each.cost is not None else Decimal("1e12"), 0.0 if each.fits else far, each.part

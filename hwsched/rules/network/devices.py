"""The devices of an opening that a circuit feeds, read from its fit and the catalogue."""

from dataclasses import fields, replace
from math import inf
from typing import Any, Final

from hwsched.attributes.of_parts import (
    CURRENT,
    DRAWS,
    FAIL,
    HOLDING_A,
    INRUSH_A,
    REST_A,
    SUPPLY_A,
    SUPPLY_CONDUCTORS,
    SUPPLY_HIGH_V,
    SUPPLY_INRUSH_A,
    SUPPLY_LOW_V,
    SUPPLY_REST_A,
    SUPPLY_V,
    TERMINAL_MINUS,
    TERMINAL_PLUS,
)
from hwsched.calc.power.supply_practice import mismatch, operating_window_v
from hwsched.calc.power.suppression import suppressor_for
from hwsched.rules.network.connected_opening import ConnectedOpening
from hwsched.rules.reading import RELEASES, entry, part_fact, remains
from hwsched.rules.wording import FIT
from hwsched.values import Fit, Item, OpeningInput, Part
from hwsched.values.power import Device, Problem

UNITS = ("surface-unit", "edge-unit")
COILS = {
    "electric-strike": "electric-strike",
    "electromagnetic-lock": "electromagnetic-lock",
    "electrified-lock": "electrified-lock",
}
"""Part kinds with a coil, and what they are in the table of suppressors."""
_BEHIND: Final = tuple(field.name for field in fields(Device))[2:]
_WHY: Final = {"does-not-fit": "no combination of parts fits it", "to-measure": "its fit waits for facts"}
"""Why an opening without a fit that holds draws what nobody knows."""
_NO_INRUSH: Final = "no more in the first moment than it draws in operation"
_NOT_HELD: Final = "no current at rest, as fail-secure means"
_HELD: Final = "held all the time, since it is not said whether it rests with current"


Known = dict[str, tuple[Any, ...]]
"""Units of one catalogue by number, as circuits see them: the fields of a `Device` behind opening and mark."""


def devices_at(
    connected: ConnectedOpening, known: Known | None = None
) -> tuple[tuple[Device, ...], tuple[Problem, ...]]:
    """Return what an opening brings to its circuit, all its lock points together, and what is not known of it.

    Where many openings of one catalogue are asked about, `known` takes what their units have in common.
    """
    devices: list[Device] = []
    problems: dict[Problem, None] = {}
    for at in connected.points:
        found, missing = devices_of(at.given, at.fit, known)
        leaf = connected.leaf_of(at)
        devices += [replace(device, leaf=leaf) for device in found] if leaf else found
        problems.update(dict.fromkeys(missing))
    return tuple(devices), tuple(problems)


def devices_of(
    given: OpeningInput, fit: Fit | None, known: Known | None = None
) -> tuple[tuple[Device, ...], tuple[Problem, ...]]:
    """Return what a lock point brings to its opening's circuit, and what is not known of it.

    Parameters
    ----------
    given : OpeningInput
        The lock point.
    fit : Fit or None
        Its fit; None where none counts.
    known : dict, optional
        As in `devices_at`.
    """
    opening = given.opening
    if fit is None or fit.status != "fits":
        why = "it has no fit that counts" if fit is None else _WHY[fit.status]
        text = f"what {opening.mark} draws is unknown: {why}"
        return (), (Problem("unknown", text, (FIT,), opening.id),)
    devices: list[Device] = []
    problems: list[Problem] = []
    for fit_part in fit.parts:
        part = entry(given, fit_part)
        if part is None or fit_part.role not in ("unit", "strike", "lock"):
            continue
        alike = known.get(part.number) if known is not None else None
        if alike is not None:
            devices += [Device(opening.id, opening.mark, *alike)] * max(1, round(fit_part.quantity))
            continue
        found = device_of(part, fit_part.role, opening.id, opening.mark)
        if found is None:
            continue
        if isinstance(found, Device):
            # Two strikes of a pair are two devices.
            devices += [found] * max(1, round(fit_part.quantity))
            if known is not None and part.kind in UNITS:
                known[part.number] = tuple(getattr(found, name) for name in _BEHIND)
        else:
            problems.append(found)
    # What stays at the opening stands there once, however many of its locks are converted.
    for item in releases_kept(given) if given.point.number == 1 else ():
        made = _kept(opening.id, opening.mark, item)
        if isinstance(made, Device):
            devices.append(made)
        else:
            problems.append(made)
    return tuple(devices), tuple(problems)


def device_of(part: Part, role: str, opening_id: str = "", mark: str = "") -> Device | Problem | None:
    """Return a part as a circuit sees it, or what the catalogue does not say of it; None for one that draws nothing."""
    if part.kind in UNITS:
        return _unit(opening_id, mark, part)
    return _coil(opening_id, mark, role, part) if part.kind in COILS else None


def releases_kept(given: OpeningInput) -> tuple[Item, ...]:
    """Return the electric strikes and electromagnetic locks that stay at an opening: its unit drives them."""
    return tuple(item for item in given.items if item.kind in RELEASES and remains(item))


def switched(given: OpeningInput, fit: Fit) -> int:
    """Count what a unit switches off its leaf: strikes and magnets in the frame, chosen or staying."""
    chosen = 0
    for fit_part in fit.parts:
        part = entry(given, fit_part) if fit_part.role == "strike" else None
        if part is not None and part.kind in RELEASES:
            chosen += max(1, round(fit_part.quantity))
    return chosen + (len(releases_kept(given)) if given.point.number == 1 else 0)


def unsuited(device: Device, part: Part | None, supply_v: float, supply_current: str) -> str | None:
    """Say why a device cannot be fed by a supply: wrong voltage, or wrong kind of current; None where it can."""
    current = (part.text_of(CURRENT) if part is not None else None) or device.current
    return mismatch(supply_v, supply_current, device.minimum_v, device.maximum_v, current)


def on_leaf(device: Device, part: Part | None) -> bool:
    """Tell whether a device sits on the leaf, beyond the opening's power transfer."""
    return device.role in ("unit", "lock") or (part is not None and part.kind == "electrified-lock")


def amps(device: Device, value: float, volts: float) -> float:
    """Turn what a device draws into amperes at a voltage."""
    if device.kind == "power":
        return value / volts
    if device.kind == "resistance":
        return 0.0 if value == float("inf") else volts / value
    return value


def _unit(opening_id: str, mark: str, part: Part) -> Device | Problem:
    low, high, held = (part.number_of(name) for name in (SUPPLY_LOW_V, SUPPLY_HIGH_V, SUPPLY_A))
    if low is None or high is None or held is None:
        facts = (("supply_low_v", low), ("supply_high_v", high), ("supply_a", held))
        return _missing(opening_id, mark, part, next(name for name, value in facts if value is None))
    rest, inrush = part.number_of(SUPPLY_REST_A), part.number_of(SUPPLY_INRUSH_A)
    assumed = []
    if rest is None:
        assumed.append("current at rest taken as the supply current")
    # A unit's sheet gives a window and one current; the middle of the window is where that current is taken to hold,
    # so as to turn it into watts or ohms.
    rated_v = (low + high) / 2
    kind = _kind(part, assumed)
    if inrush is None:
        assumed.append(_NO_INRUSH)
    if part.number_of(SUPPLY_CONDUCTORS) is None:
        assumed.append("fed by two conductors, plus and minus")
    holding, peak, first = (_value(kind, amount, rated_v) for amount in (held if rest is None else rest, held, inrush))
    return Device(
        opening_id, mark, part.number, "unit", kind, _sure(holding), _sure(peak), first, low, high,
        _terminals(part), assumed=tuple(assumed), least=None if rest is None else _sure(holding),
        **_untold(part, rated_v, low, high),
    )  # fmt: skip


def _coil(opening_id: str, mark: str, role: str, part: Part) -> Device | Problem:
    rated_v, held = part.number_of(SUPPLY_V), part.number_of(HOLDING_A)
    if rated_v is None or held is None:
        return _missing(opening_id, mark, part, "supply_v" if rated_v is None else "holding_a")
    assumed: list[str] = []
    low, high = part.number_of(SUPPLY_LOW_V), part.number_of(SUPPLY_HIGH_V)
    if low is None or high is None:
        window = operating_window_v(rated_v)
        low, high = window[0] if low is None else low, window[1] if high is None else high
        assumed.append(f"operating window taken as {low:g} to {high:g} V")
    # Electromagnetic locks are fail-safe by nature: without current nothing holds.
    fail = part.text_of(FAIL) or ("fail-safe" if part.kind == "electromagnetic-lock" else "")
    rest = part.number_of(REST_A)
    if rest is None and fail == "fail-secure":
        # It is energised to release only: that is what fail-secure means.
        rest = 0.0
        assumed.append(_NOT_HELD)
    told = rest is not None
    if rest is None:
        # Unknown whether it rests with current: taken as held all the time, which sizes supply and standby on the
        # safe side.
        rest = held
        if not fail:
            assumed.append(_HELD)
    kind = _kind(part, assumed)
    if part.text_of(CURRENT) is None:
        assumed.append("taken as one for DC")
    inrush = part.number_of(INRUSH_A)
    if inrush is None:
        assumed.append(_NO_INRUSH)
    holding, peak, first = (_value(kind, amount, rated_v) for amount in (rest, held, inrush))
    suppressor = suppressor_for(COILS[part.kind])
    return Device(
        opening_id, mark, part.number, role, kind, _sure(holding), _sure(peak), first, low, high, _terminals(part),
        suppressor.text if suppressor else "", fail, tuple(assumed), least=_sure(holding) if told else None,
        **_untold(part, rated_v, low, high),
    )  # fmt: skip


def _kept(opening_id: str, mark: str, item: Item) -> Device | Problem:
    """Read what stays there from its label."""
    what = f"the existing {(item.kind or 'strike').replace('-', ' ')}"
    facts = (("rated_v", item.rated_v), ("rated_a", item.rated_a), ("current_form", item.current_form))
    lacking = tuple(f"existing_item.{name}" for name, value in facts if value is None)
    if item.rated_v is None or item.rated_a is None or item.current_form is None:
        return Problem("unknown", f"what {what} at {mark} draws is unknown: read its label", lacking, opening_id, what)
    window = operating_window_v(item.rated_v)
    # Fail-secure it rests without current. Held all the time where nobody has read that, which is on the safe side for
    # drop and supply; for the highest voltage it is then reckoned without current.
    fail = item.fail or ("fail-safe" if item.kind == "electromagnetic-lock" else "")
    resting = 0.0 if fail == "fail-secure" else item.rated_a
    suppressor = suppressor_for(COILS[item.kind or "electric-strike"])
    return Device(
        opening_id, mark, what, "strike", "current", resting, item.rated_a, None, window[0], window[1],
        suppression=suppressor.text if suppressor else "", fail=fail,
        assumed=(
            f"operating window taken as {window[0]:g} to {window[1]:g} V", "taken as a constant current", _NO_INRUSH,
            *({"": (_HELD,), "fail-secure": (_NOT_HELD,)}.get(fail, ())),
        ),
        least=resting if fail else None, current=item.current_form,
    )  # fmt: skip


def _missing(opening_id: str, mark: str, part: Part, name: str) -> Problem:
    fact = part_fact(part, name)
    text = f"what {part.number} at {mark} draws is unknown: the catalogue does not say {fact}"
    return Problem("unknown", text, (fact,), opening_id, part.number)


def _kind(part: Part, assumed: list[str]) -> str:
    found = part.text_of(DRAWS)
    if found is None:
        # An assumption that the reader is told of, since it decides how the drop grows as the voltage falls.
        assumed.append("taken as a constant current")
    return found or "current"


def _untold(part: Part, rated_v: float, low: float, high: float) -> dict[str, Any]:
    """Return what is not stated of how a part draws, and how much more than a constant current that can be."""
    if part.text_of(DRAWS) is not None:
        return {}
    # Of constant power it draws most at its lowest voltage, as a resistance at its highest.
    share = max(rated_v / low if low > 0.0 else inf, high / rated_v)
    return {"untold": (part_fact(part, "draws"),), "most_share": share}


def _value(kind: str, amount: float | None, rated_v: float) -> float | None:
    """Turn a current at the rated voltage into the unit of its kind: A, W or ohm."""
    if amount is None:
        return None
    if kind == "power":
        return amount * rated_v
    if kind == "resistance":
        return rated_v / amount if amount > 0 else float("inf")
    return amount


def _sure(value: float | None) -> float:
    return 0.0 if value is None else value


def _terminals(part: Part) -> tuple[str, str]:
    return part.text_of(TERMINAL_PLUS) or "", part.text_of(TERMINAL_MINUS) or ""

"""Rule: what lets go by power does not keep the way out locked without it, and a magnet is never fail-secure."""

from collections.abc import Iterable, Iterator

from hwsched.attributes.of_parts import FAIL
from hwsched.rules.reading import entry, remains
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.ways_out import SIDE, holding, leaving_from, locked_on, on_exit
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _strikes(given: OpeningInput, fit: Fit) -> Iterator[tuple[str, str | None, str]]:
    """Yield each electric strike: what it is called, how it fails, and the fact that says so."""
    for item in given.items:
        if item.kind == "electric-strike" and remains(item):
            yield "electric strike", item.fail, "existing_item.fail"
    for fit_part in fit.parts:
        part = entry(given, fit_part)
        if fit_part.role == "strike" and part is not None and part.kind == "electric-strike":
            yield fit_part.part, part.text_of(FAIL), f"part {fit_part.part}.fail"


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    for item in given.items:
        if item.kind == "electromagnetic-lock" and remains(item) and item.fail == "fail-secure":
            yield Verdict("An electromagnetic lock holds by current alone and cannot be fail-secure.", about="magnet")
    if not on_exit(given):
        return
    faces = leaving_from(given)
    for name, fail, fact in _strikes(given, fit):
        if faces is None:
            yield unknown(("opening.egress_toward",), name)
            continue
        # A strike lets go of the latch whichever side asks; from a side that the lock leaves free it is not needed.
        shut = [face for face in faces if any(locked_on(lock, face)[0] for lock in holding(given))]
        if not shut:
            continue
        if fail is None:
            yield unknown((fact,), name)
        elif fail == "fail-secure":
            yield Verdict(
                f"Without power the fail-secure strike keeps the {SIDE[shut[0]]} locked, from which people leave.",
                about=name,
            )
        else:
            yield Verdict(
                f"With power on, the {SIDE[shut[0]]}, from which people leave, opens only by the strike: it is no free "
                "way out.",
                about=name,
                severity="warning",
            )


RULE = Rule(
    id="fail-by-side",
    title="Without power the way out is open",
    discipline="egress",
    severity="error",
    basis="NFPA 101, 7.2.1.5, secondary copies; fail-safe and fail-secure speak of the locked side, the egress side "
    "stays free in both; electromagnetic locks are fail-safe by nature (trade articles)",
    cure="Let the lock's own hardware open the side from which people leave; a strike or a magnet is no substitute.",
    judge=_judge,
    defers=True,
)

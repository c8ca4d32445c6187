"""Whether what is added to a rated opening is declared as listed for it. Which parts are asked is said by the rules."""

from collections.abc import Iterable, Sequence

from hwsched.attributes.of_parts import FIRE_LISTED
from hwsched.rules.reading import entry, rated
from hwsched.rules.rule import Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def judge_listed(given: OpeningInput, fit: Fit, roles: Sequence[str]) -> Iterable[Verdict]:
    """Judge the parts in some roles by their declared fire listing."""
    carries = rated(given)
    if carries is False:
        return
    for fit_part in fit.parts:
        if fit_part.role not in roles:
            continue
        # Unknown is not unrated: the label may just not have been read.
        if carries is None:
            yield unknown(("opening.rating",), fit_part.part)
            continue
        part = entry(given, fit_part)
        is_listed = part.flag_of(FIRE_LISTED) if part is not None else None
        if is_listed is None:
            yield unknown((f"part {fit_part.part}.fire_listed",), fit_part.part)
        # A UL 294 or UL 1034 mark says nothing of fire: every part that is added needs its own listing.
        elif not is_listed:
            yield Verdict(
                f"The opening is rated {given.opening.rating} min; this part is not declared as listed for "
                "rated leaves.",
                values={"rating_min": float(given.opening.rating or 0)},
                about=fit_part.part,
            )

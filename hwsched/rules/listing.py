"""Whether what is added to a rated opening is declared as listed for it. Which parts are asked is said by the rules."""

from collections.abc import Iterable, Sequence

from hwsched.rules.reading import entry, rated
from hwsched.rules.rule import Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Case, Fit


def judge_listed(case: Case, fit: Fit, roles: Sequence[str]) -> Iterable[Verdict]:
    """Judge the parts in some roles by their declared fire listing."""
    carries = rated(case)
    if carries is False:
        return
    for fitted in fit.parts:
        if fitted.role not in roles:
            continue
        if carries is None:
            yield unknown(("opening.rating",), fitted.part)
            continue
        part = entry(case, fitted)
        is_listed = part.flag_of("fire_listed") if part is not None else None
        if is_listed is None:
            yield unknown((f"part {fitted.part}.fire_listed",), fitted.part)
        elif not is_listed:
            yield Verdict(
                f"The opening is rated {case.opening.rating} min; this part is not declared as listed for "
                "rated leaves.",
                values={"rating_min": float(case.opening.rating or 0)},
                about=fitted.part,
            )

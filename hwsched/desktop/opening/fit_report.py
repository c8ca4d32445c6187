"""What fitting came to, as it stays to be read among the jobs. No widgets."""

from __future__ import annotations

from typing import TYPE_CHECKING

from hwsched.desktop.jobs.ran import Report
from hwsched.kept_sentences import kept_phrase
from hwsched.language import phrase, phrase_of_count
from hwsched.operations.changes import Changes
from hwsched.values import Fit

if TYPE_CHECKING:
    from hwsched.operations.opening.fitting_openings import FitOutcome


def report_of(done: tuple[Changes, list[FitOutcome]]) -> Report:
    """Say how many openings fit, and why the others do not."""
    outcomes = done[1]
    fit = sum(each.fit.status == "fits" for each in outcomes)
    kept = sum(each.kept for each in outcomes)
    words = phrase("{fit:,} of {count:,} openings fit", fit=fit, count=len(outcomes)) if outcomes else ""
    if kept:
        words += phrase_of_count(
            ", {count:,} released one keeps what an earlier version worked out",
            ", {count:,} released ones keep what an earlier version worked out",
            kept,
        )
    left = [(each.given.opening.mark, why_not(each.fit)) for each in outcomes if each.fit.status != "fits"]
    return Report(words, tuple(left), openings=tuple(each.given.opening.id for each in outcomes))


def why_not(fit: Fit) -> str:
    """Say in a line why an opening does not fit, or what is to be measured first."""
    from hwsched.rules.saying import label_said

    if fit.status == "to-measure":
        needed = dict.fromkeys(label_said(each.fact) for each in fit.needs)
        return phrase("to measure: {needed}", needed=", ".join(needed)) if needed else phrase("to measure")
    nearest = fit.nearest_miss or next(iter(fit.refused), None)
    if nearest is None:
        return phrase("does not fit")
    # What stands already has no number of its own to be named by.
    return (
        phrase("does not fit: {reason}", reason=kept_phrase(nearest.reason, nearest.rule))
        if ":" in nearest.part
        else phrase(
            "does not fit: {part}: {reason}", part=nearest.part, reason=kept_phrase(nearest.reason, nearest.rule)
        )
    )

"""Rules of records, one a file. The tuple below is their table of contents."""

from hwsched.rules.record_rule import RecordRule
from hwsched.rules.records import (
    fit_out_of_date,
    packet_out_of_date,
    waiver_lapsed,
    waiver_past,
    waiver_unneeded,
)

RECORD_RULES: tuple[RecordRule, ...] = (
    fit_out_of_date.RULE,
    packet_out_of_date.RULE,
    waiver_lapsed.RULE,
    waiver_past.RULE,
    waiver_unneeded.RULE,
)
OF_WAIVERS = frozenset({waiver_lapsed.RULE.id, waiver_past.RULE.id, waiver_unneeded.RULE.id})
"""Those that speak of waivers, so that nothing of them can be waived: taking back or giving anew mends them."""

__all__ = ["OF_WAIVERS", "RECORD_RULES"]

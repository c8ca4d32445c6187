"""Rules: one small file a rule, in a folder a discipline. The tuple below is their table of contents.

A rule of openings checks a stored fit and, in its slot, is a constraint while a fit is built; others judge supplies and
circuits, or what is on record. Geometry belongs to `calc`. Other floors know a rule by its identifier, never by
its file.
"""

from hwsched.outside import OutsideError, members
from hwsched.rules.accessibility import (
    clear_width,
    projection,
    reach_height,
)
from hwsched.rules.battery import (
    battery_cold,
    battery_end_voltage,
    battery_life,
    cell_count,
    cell_stocked,
    coin_cell_stocked,
)
from hwsched.rules.cable import (
    bend_radius,
    connectors_mate,
    lead_reaches,
    wall_thickness_known,
    way_for_lead,
)
from hwsched.rules.catalogue_and_stock import (
    attribute_missing,
    fastener_for_material,
    kit_known,
    part_known,
    price_known,
    superseded_part,
    tool_known,
    unit_window,
)
from hwsched.rules.circuits import (
    alarm_latching,
    alarm_release,
    circuit_apart,
    circuit_assumed,
    circuit_collapse,
    circuit_high_voltage,
    circuit_known,
    circuit_limiter,
    circuit_sound,
    circuit_suits,
    circuit_voltage,
    coil_suppression,
    fed_once,
    standby_capacity,
    supply_loading,
    supply_power_limited,
)
from hwsched.rules.commissioning import (
    coin_cell_drain,
    key_for_unit,
    programmed_before_work,
    programming_key,
)
from hwsched.rules.documents import (
    fit_complete,
    heading_facts,
)
from hwsched.rules.egress import (
    delayed_egress,
    egress_width,
    electromagnetic_lock,
    free_inside,
    one_motion,
    panic_hardware,
    stair_re_entry,
)
from hwsched.rules.fire_door import (
    rated_cut,
    rated_hole_allowed,
    rated_hole_size,
    rated_lock_listed,
    rated_old_holes,
    rated_power_listed,
    rated_raceway,
    rated_strike,
    rated_undercut,
    rated_unit_listed,
)
from hwsched.rules.holes import (
    bore_enters,
    bore_wall,
    hole_clear_of_glass,
    hole_clear_of_lock,
    hole_edge_distance,
    no_hole_in_glass,
    pocket_length,
    pocket_walls,
    screw_length,
)
from hwsched.rules.lock_and_cylinder import (
    bored_preparation,
    cabinet_grip,
    cam_match,
    collar_bore,
    cylinder_flush,
    cylinder_form,
    cylinder_projection,
    euro_projection,
    gate_mounting,
    gate_stile,
    lock_function,
    lock_weather,
    reader_in_leaf,
    tail_reach,
    thread_pitch,
    thumb_turn_kept,
)
from hwsched.rules.placement import (
    closer_clear,
    edge_unit_leaf,
    exit_device_clear,
    frame_stop_clear,
    glazing_clear,
    item_clear,
    label_clear,
    lever_clear,
    plate_covers_hole,
    plate_on_stile,
    plate_within_leaf,
    thumb_turn_clear,
    trim_clear,
    unit_for_glass,
    unit_for_no_glass,
    unit_on_inside,
    unit_place_known,
    unit_weather,
)
from hwsched.rules.power import (
    busy_on_supply,
    power_as_wished,
    power_crosses_hinge,
    supply_class_2,
    supply_distance_known,
    supply_drop,
    supply_off_leaf,
    supply_share,
    supply_voltage,
    unit_fed,
)
from hwsched.rules.records import (
    fit_out_of_date,
    packet_out_of_date,
    waiver_lapsed,
    waiver_past,
    waiver_unneeded,
)
from hwsched.rules.rule import (
    DEFERS,
    OPENINGS,
    RECORDS,
    SUPPLIES,
    AnyRule,
    Inputs,
    Limit,
    Limits,
    OpeningRule,
    Rule,
    Slot,
    Subject,
    UnknownRuleError,
    Verdict,
    rules_of,
)
from hwsched.rules.speaking import RuleError, finding_of, judge, limits_of, severity_of
from hwsched.rules.survey import (
    case_offset_taken,
    case_within_leaf,
    fact_in_range,
    items_apart,
    items_on_leaf,
    known_before_drill,
    known_before_issue,
    known_before_order,
    leaf_count,
    lock_within_leaf,
    moved_item,
)
from hwsched.values.power import SupplyResult
from hwsched.values.record import Record

OWN_RULES: tuple[AnyRule, ...] = (
    # survey
    case_offset_taken.RULE,
    case_within_leaf.RULE,
    fact_in_range.RULE,
    items_apart.RULE,
    items_on_leaf.RULE,
    known_before_drill.RULE,
    known_before_issue.RULE,
    known_before_order.RULE,
    leaf_count.RULE,
    lock_within_leaf.RULE,
    moved_item.RULE,
    # lock and cylinder
    bored_preparation.RULE,
    cabinet_grip.RULE,
    cam_match.RULE,
    collar_bore.RULE,
    cylinder_flush.RULE,
    cylinder_form.RULE,
    cylinder_projection.RULE,
    euro_projection.RULE,
    gate_mounting.RULE,
    gate_stile.RULE,
    lock_function.RULE,
    lock_weather.RULE,
    reader_in_leaf.RULE,
    tail_reach.RULE,
    thread_pitch.RULE,
    thumb_turn_kept.RULE,
    # placement
    closer_clear.RULE,
    edge_unit_leaf.RULE,
    exit_device_clear.RULE,
    frame_stop_clear.RULE,
    glazing_clear.RULE,
    item_clear.RULE,
    label_clear.RULE,
    lever_clear.RULE,
    plate_covers_hole.RULE,
    plate_on_stile.RULE,
    plate_within_leaf.RULE,
    thumb_turn_clear.RULE,
    trim_clear.RULE,
    unit_for_glass.RULE,
    unit_for_no_glass.RULE,
    unit_on_inside.RULE,
    unit_place_known.RULE,
    unit_weather.RULE,
    # cable
    bend_radius.RULE,
    connectors_mate.RULE,
    lead_reaches.RULE,
    wall_thickness_known.RULE,
    way_for_lead.RULE,
    # holes
    bore_enters.RULE,
    bore_wall.RULE,
    hole_clear_of_glass.RULE,
    hole_clear_of_lock.RULE,
    hole_edge_distance.RULE,
    no_hole_in_glass.RULE,
    pocket_length.RULE,
    pocket_walls.RULE,
    screw_length.RULE,
    # fire door
    rated_cut.RULE,
    rated_hole_allowed.RULE,
    rated_hole_size.RULE,
    rated_lock_listed.RULE,
    rated_old_holes.RULE,
    rated_power_listed.RULE,
    rated_raceway.RULE,
    rated_strike.RULE,
    rated_undercut.RULE,
    rated_unit_listed.RULE,
    # egress
    egress_width.RULE,
    electromagnetic_lock.RULE,
    delayed_egress.RULE,
    free_inside.RULE,
    one_motion.RULE,
    panic_hardware.RULE,
    stair_re_entry.RULE,
    # accessibility
    clear_width.RULE,
    projection.RULE,
    reach_height.RULE,
    # power
    busy_on_supply.RULE,
    power_as_wished.RULE,
    power_crosses_hinge.RULE,
    supply_class_2.RULE,
    supply_distance_known.RULE,
    supply_drop.RULE,
    supply_off_leaf.RULE,
    supply_share.RULE,
    supply_voltage.RULE,
    unit_fed.RULE,
    # battery
    battery_cold.RULE,
    battery_life.RULE,
    battery_end_voltage.RULE,
    cell_count.RULE,
    cell_stocked.RULE,
    coin_cell_stocked.RULE,
    # catalogue and stock
    attribute_missing.RULE,
    fastener_for_material.RULE,
    kit_known.RULE,
    part_known.RULE,
    price_known.RULE,
    superseded_part.RULE,
    tool_known.RULE,
    unit_window.RULE,
    # documents
    fit_complete.RULE,
    heading_facts.RULE,
    # commissioning
    coin_cell_drain.RULE,
    key_for_unit.RULE,
    programmed_before_work.RULE,
    programming_key.RULE,
    # supplies and circuits
    circuit_sound.RULE,
    circuit_known.RULE,
    circuit_suits.RULE,
    circuit_voltage.RULE,
    circuit_high_voltage.RULE,
    circuit_collapse.RULE,
    supply_loading.RULE,
    circuit_limiter.RULE,
    supply_power_limited.RULE,
    standby_capacity.RULE,
    coil_suppression.RULE,
    circuit_apart.RULE,
    circuit_assumed.RULE,
    fed_once.RULE,
    alarm_latching.RULE,
    alarm_release.RULE,
    # records
    fit_out_of_date.RULE,
    packet_out_of_date.RULE,
    waiver_lapsed.RULE,
    waiver_past.RULE,
    waiver_unneeded.RULE,
)
_SUBJECTS = tuple(dict.fromkeys(rule.subject for rule in OWN_RULES))
"""What rules judge, in the order of the table."""


def _from_outside() -> tuple[AnyRule, ...]:
    """Load what other packages add; raises OutsideError, also for a rule of which nobody would ask anything."""
    found = members("hwsched.rules", Rule, lambda rule: rule.id, OWN_RULES)
    for rule in found:
        if rule.subject not in _SUBJECTS:
            accepted = ", ".join(subject.name for subject in _SUBJECTS)
            raise OutsideError(f"rule {rule.id} judges '{rule.subject.name}'; accepted: {accepted}")
    return found


_EVERY: tuple[AnyRule, ...] = (*OWN_RULES, *_from_outside())

RULEBOOK: tuple[AnyRule, ...] = tuple(rule for subject in _SUBJECTS for rule in rules_of(subject, _EVERY))
"""All of it: rules of openings, of supplies and circuits, of records; in each our own, then those from outside."""
RULES: tuple[OpeningRule, ...] = rules_of(OPENINGS, RULEBOOK)
"""Rules of openings."""
CIRCUIT_RULES: tuple[Rule[SupplyResult, Inputs], ...] = rules_of(SUPPLIES, RULEBOOK)
"""Rules of supplies and their circuits."""
RECORD_RULES: tuple[Rule[Record], ...] = rules_of(RECORDS, RULEBOOK)
"""Rules of what is on record."""
OF_WAIVERS = frozenset({waiver_lapsed.RULE.id, waiver_past.RULE.id, waiver_unneeded.RULE.id})
"""Those that speak of waivers, so that nothing of them can be waived: taking back or giving anew mends them."""

_BY_ID: dict[str, AnyRule] = {rule.id: rule for rule in RULEBOOK}
_IN_SLOT: dict[str, tuple[OpeningRule, ...]] = {
    slot: tuple(rule for rule in RULES if rule.slot == slot) for slot in ("lock", "unit", "power", "whole")
}


def rules_in_slot(slot: Slot) -> tuple[OpeningRule, ...]:
    """Return the rules of openings that speak in a slot, in the order of the table of contents."""
    return _IN_SLOT[slot]


def rule_named(rule_id: str) -> AnyRule:
    """Return the rule of that identifier, whatever it judges.

    A module that reads a rule's limits, or lets it speak, asks for it once, when it is loaded: so a slip is found then,
    and no opening costs a look-up.

    Raises
    ------
    UnknownRuleError
        Where there is none.
    """
    found = _BY_ID.get(rule_id)
    if found is None:
        raise UnknownRuleError(f"there is no rule '{rule_id}'")
    return found


def in_rulebook(rule_id: str) -> AnyRule | None:
    """Return the rule of an identifier that a person or a project gave; None where there is none."""
    return _BY_ID.get(rule_id)


__all__ = [
    "CIRCUIT_RULES",
    "DEFERS",
    "OF_WAIVERS",
    "OPENINGS",
    "RECORDS",
    "RECORD_RULES",
    "RULEBOOK",
    "RULES",
    "SUPPLIES",
    "AnyRule",
    "Limit",
    "Limits",
    "OpeningRule",
    "Rule",
    "RuleError",
    "Slot",
    "Subject",
    "UnknownRuleError",
    "Verdict",
    "finding_of",
    "in_rulebook",
    "judge",
    "limits_of",
    "rule_named",
    "rules_in_slot",
    "rules_of",
    "severity_of",
]

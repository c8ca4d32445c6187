"""Rules: one small file a rule, in a folder a discipline. The lines below are their table of contents.

A rule of openings checks a stored fit and, in its slot, is a constraint while a fit is built; others judge supplies and
circuits, or what is on record. Geometry belongs to `calc`. Other floors know a rule by its identifier, never by
its file.
"""

from typing import Final

from hwsched.family import imported
from hwsched.outside import OutsideError, members
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
from hwsched.rules.rule_titles import TITLES
from hwsched.rules.speaking import RuleError, each_verdict, finding_of, judge, limits_of, severity_of
from hwsched.values.power import SupplyResult
from hwsched.values.record import Record

# Their order is that of the rulebook, and of findings that are equally bad.
# survey
from hwsched.rules.survey.case_offset_taken import RULE as CASE_OFFSET_TAKEN
from hwsched.rules.survey.front_taken import RULE as FRONT_TAKEN
from hwsched.rules.survey.case_within_leaf import RULE as CASE_WITHIN_LEAF
from hwsched.rules.survey.case_within_stile import RULE as CASE_WITHIN_STILE
from hwsched.rules.survey.fact_in_range import RULE as FACT_IN_RANGE
from hwsched.rules.survey.items_apart import RULE as ITEMS_APART
from hwsched.rules.survey.items_on_leaf import RULE as ITEMS_ON_LEAF
from hwsched.rules.survey.known_before_drill import RULE as KNOWN_BEFORE_DRILL
from hwsched.rules.survey.known_before_issue import RULE as KNOWN_BEFORE_ISSUE
from hwsched.rules.survey.known_before_order import RULE as KNOWN_BEFORE_ORDER
from hwsched.rules.survey.leaf_count import RULE as LEAF_COUNT
from hwsched.rules.survey.lite_clear_of_lock import RULE as LITE_CLEAR_OF_LOCK
from hwsched.rules.survey.lock_converted import RULE as LOCK_CONVERTED
from hwsched.rules.survey.lock_within_leaf import RULE as LOCK_WITHIN_LEAF
from hwsched.rules.survey.moved_item import RULE as MOVED_ITEM
from hwsched.rules.survey.one_place import RULE as ONE_PLACE
from hwsched.rules.survey.stile_told import RULE as STILE_TOLD

# lock and cylinder
from hwsched.rules.lock_and_cylinder.bored_lead import RULE as BORED_LEAD
from hwsched.rules.lock_and_cylinder.bored_preparation import RULE as BORED_PREPARATION
from hwsched.rules.lock_and_cylinder.cabinet_grip import RULE as CABINET_GRIP
from hwsched.rules.lock_and_cylinder.cam_match import RULE as CAM_MATCH
from hwsched.rules.lock_and_cylinder.collar_bore import RULE as COLLAR_BORE
from hwsched.rules.lock_and_cylinder.cylinder_flush import RULE as CYLINDER_FLUSH
from hwsched.rules.lock_and_cylinder.cylinder_form import RULE as CYLINDER_FORM
from hwsched.rules.lock_and_cylinder.cylinder_projection import RULE as CYLINDER_PROJECTION
from hwsched.rules.lock_and_cylinder.euro_projection import RULE as EURO_PROJECTION
from hwsched.rules.lock_and_cylinder.gate_bolts import RULE as GATE_BOLTS
from hwsched.rules.lock_and_cylinder.fixings_outside import RULE as FIXINGS_OUTSIDE
from hwsched.rules.lock_and_cylinder.gate_mounting import RULE as GATE_MOUNTING
from hwsched.rules.lock_and_cylinder.gate_stile import RULE as GATE_STILE
from hwsched.rules.lock_and_cylinder.head_clear import RULE as HEAD_CLEAR
from hwsched.rules.lock_and_cylinder.head_clear_of_stop import RULE as HEAD_CLEAR_OF_STOP
from hwsched.rules.lock_and_cylinder.head_on_leaf import RULE as HEAD_ON_LEAF
from hwsched.rules.lock_and_cylinder.lock_function import RULE as LOCK_FUNCTION
from hwsched.rules.lock_and_cylinder.lock_weather import RULE as LOCK_WEATHER
from hwsched.rules.lock_and_cylinder.magnet_mount import RULE as MAGNET_MOUNT
from hwsched.rules.lock_and_cylinder.reader_in_leaf import RULE as READER_IN_LEAF
from hwsched.rules.lock_and_cylinder.strike_fit import RULE as STRIKE_FIT
from hwsched.rules.lock_and_cylinder.spanner_room import RULE as SPANNER_ROOM
from hwsched.rules.lock_and_cylinder.tail_reach import RULE as TAIL_REACH
from hwsched.rules.lock_and_cylinder.thread_pitch import RULE as THREAD_PITCH
from hwsched.rules.lock_and_cylinder.thumb_turn_kept import RULE as THUMB_TURN_KEPT

# placement
from hwsched.rules.placement.closer_clear import RULE as CLOSER_CLEAR
from hwsched.rules.placement.edge_unit_leaf import RULE as EDGE_UNIT_LEAF
from hwsched.rules.placement.exit_device_clear import RULE as EXIT_DEVICE_CLEAR
from hwsched.rules.placement.frame_stop_clear import RULE as FRAME_STOP_CLEAR
from hwsched.rules.placement.glazing_clear import RULE as GLAZING_CLEAR
from hwsched.rules.placement.item_clear import RULE as ITEM_CLEAR
from hwsched.rules.placement.label_clear import RULE as LABEL_CLEAR
from hwsched.rules.placement.lever_clear import RULE as LEVER_CLEAR
from hwsched.rules.placement.nut_room import RULE as NUT_ROOM
from hwsched.rules.placement.plate_covers_hole import RULE as PLATE_COVERS_HOLE
from hwsched.rules.placement.plate_on_stile import RULE as PLATE_ON_STILE
from hwsched.rules.placement.plate_within_leaf import RULE as PLATE_WITHIN_LEAF
from hwsched.rules.placement.reader_beside_entrance import RULE as READER_BESIDE_ENTRANCE
from hwsched.rules.placement.thumb_turn_clear import RULE as THUMB_TURN_CLEAR
from hwsched.rules.placement.trim_clear import RULE as TRIM_CLEAR
from hwsched.rules.placement.unit_for_glass import RULE as UNIT_FOR_GLASS
from hwsched.rules.placement.unit_for_no_glass import RULE as UNIT_FOR_NO_GLASS
from hwsched.rules.placement.unit_on_inside import RULE as UNIT_ON_INSIDE
from hwsched.rules.placement.unit_place_known import RULE as UNIT_PLACE_KNOWN
from hwsched.rules.placement.unit_weather import RULE as UNIT_WEATHER

# cable
from hwsched.rules.cable.bend_radius import RULE as BEND_RADIUS
from hwsched.rules.cable.connectors_mate import RULE as CONNECTORS_MATE
from hwsched.rules.cable.lead_reaches import RULE as LEAD_REACHES
from hwsched.rules.cable.wall_thickness_known import RULE as WALL_THICKNESS_KNOWN
from hwsched.rules.cable.way_for_lead import RULE as WAY_FOR_LEAD

# holes
from hwsched.rules.holes.bore_enters import RULE as BORE_ENTERS
from hwsched.rules.holes.bore_in_stile import RULE as BORE_IN_STILE
from hwsched.rules.holes.bore_wall import RULE as BORE_WALL
from hwsched.rules.holes.bridge_drilled import RULE as BRIDGE_DRILLED
from hwsched.rules.holes.drill_stands import RULE as DRILL_STANDS
from hwsched.rules.holes.hole_clear import RULE as HOLE_CLEAR
from hwsched.rules.holes.hole_clear_of_glass import RULE as HOLE_CLEAR_OF_GLASS
from hwsched.rules.holes.hole_clear_of_lock import RULE as HOLE_CLEAR_OF_LOCK
from hwsched.rules.holes.hole_covered import RULE as HOLE_COVERED
from hwsched.rules.holes.hole_edge_distance import RULE as HOLE_EDGE_DISTANCE
from hwsched.rules.holes.hollow_core_holds import RULE as HOLLOW_CORE_HOLDS
from hwsched.rules.holes.long_tool import RULE as LONG_TOOL
from hwsched.rules.holes.no_hole_in_glass import RULE as NO_HOLE_IN_GLASS
from hwsched.rules.holes.pocket_length import RULE as POCKET_LENGTH
from hwsched.rules.holes.front_clear import RULE as FRONT_CLEAR
from hwsched.rules.holes.pocket_walls import RULE as POCKET_WALLS
from hwsched.rules.holes.screw_beside_hole import RULE as SCREW_BESIDE_HOLE
from hwsched.rules.holes.screw_clear import RULE as SCREW_CLEAR
from hwsched.rules.holes.screw_in_leaf import RULE as SCREW_IN_LEAF
from hwsched.rules.holes.screw_length import RULE as SCREW_LENGTH
from hwsched.rules.holes.tool_room import RULE as TOOL_ROOM

# fire door
from hwsched.rules.fire_door.frame_label import RULE as FRAME_LABEL
from hwsched.rules.fire_door.pair_closing_order import RULE as PAIR_CLOSING_ORDER
from hwsched.rules.fire_door.pair_inactive_latches import RULE as PAIR_INACTIVE_LATCHES
from hwsched.rules.fire_door.rated_closes import RULE as RATED_CLOSES
from hwsched.rules.fire_door.rated_cut import RULE as RATED_CUT
from hwsched.rules.fire_door.rated_hole_allowed import RULE as RATED_HOLE_ALLOWED
from hwsched.rules.fire_door.rated_hole_size import RULE as RATED_HOLE_SIZE
from hwsched.rules.fire_door.rated_latch import RULE as RATED_LATCH
from hwsched.rules.fire_door.rated_lite_stops import RULE as RATED_LITE_STOPS
from hwsched.rules.fire_door.rated_lock_listed import RULE as RATED_LOCK_LISTED
from hwsched.rules.fire_door.rated_old_holes import RULE as RATED_OLD_HOLES
from hwsched.rules.fire_door.rated_power_listed import RULE as RATED_POWER_LISTED
from hwsched.rules.fire_door.rated_raceway import RULE as RATED_RACEWAY
from hwsched.rules.fire_door.rated_seal import RULE as RATED_SEAL
from hwsched.rules.fire_door.rated_strike import RULE as RATED_STRIKE
from hwsched.rules.fire_door.rated_undercut import RULE as RATED_UNDERCUT
from hwsched.rules.fire_door.rated_unit_listed import RULE as RATED_UNIT_LISTED
from hwsched.rules.fire_door.rated_unused_holes import RULE as RATED_UNUSED_HOLES
from hwsched.rules.fire_door.transfer_hinge import RULE as TRANSFER_HINGE

# egress
from hwsched.rules.egress.egress_direction import RULE as EGRESS_DIRECTION
from hwsched.rules.egress.room_way_out import RULE as ROOM_WAY_OUT
from hwsched.rules.egress.egress_width import RULE as EGRESS_WIDTH
from hwsched.rules.egress.electromagnetic_lock import RULE as ELECTROMAGNETIC_LOCK
from hwsched.rules.egress.delayed_egress import RULE as DELAYED_EGRESS
from hwsched.rules.egress.fail_by_side import RULE as FAIL_BY_SIDE
from hwsched.rules.egress.free_inside import RULE as FREE_INSIDE
from hwsched.rules.egress.gate_release import RULE as GATE_RELEASE
from hwsched.rules.egress.one_motion import RULE as ONE_MOTION
from hwsched.rules.egress.pair_bolts import RULE as PAIR_BOLTS
from hwsched.rules.egress.panic_hardware import RULE as PANIC_HARDWARE
from hwsched.rules.egress.stair_re_entry import RULE as STAIR_RE_ENTRY
from hwsched.rules.egress.controller_output import RULE as CONTROLLER_OUTPUT

# accessibility
from hwsched.rules.accessibility.clear_width import RULE as CLEAR_WIDTH
from hwsched.rules.accessibility.projection import RULE as PROJECTION
from hwsched.rules.accessibility.reach_height import RULE as REACH_HEIGHT

# power
from hwsched.rules.power.busy_on_supply import RULE as BUSY_ON_SUPPLY
from hwsched.rules.power.power_as_wished import RULE as POWER_AS_WISHED
from hwsched.rules.power.power_crosses_hinge import RULE as POWER_CROSSES_HINGE
from hwsched.rules.power.supply_class_2 import RULE as SUPPLY_CLASS_2
from hwsched.rules.power.supply_distance_known import RULE as SUPPLY_DISTANCE_KNOWN
from hwsched.rules.power.supply_drop import RULE as SUPPLY_DROP
from hwsched.rules.power.supply_off_leaf import RULE as SUPPLY_OFF_LEAF
from hwsched.rules.power.supply_share import RULE as SUPPLY_SHARE
from hwsched.rules.power.supply_voltage import RULE as SUPPLY_VOLTAGE
from hwsched.rules.power.supply_assumed import RULE as SUPPLY_ASSUMED
from hwsched.rules.power.transfer_resistance import RULE as TRANSFER_RESISTANCE
from hwsched.rules.power.wire_conductors import RULE as WIRE_CONDUCTORS
from hwsched.rules.power.wire_across_leaf import RULE as WIRE_ACROSS_LEAF
from hwsched.rules.power.way_clear import RULE as WAY_CLEAR
from hwsched.rules.power.release_powered import RULE as RELEASE_POWERED
from hwsched.rules.power.unit_fed import RULE as UNIT_FED

# battery
from hwsched.rules.battery.battery_cold import RULE as BATTERY_COLD
from hwsched.rules.battery.battery_life import RULE as BATTERY_LIFE
from hwsched.rules.battery.battery_fresh_voltage import RULE as BATTERY_FRESH_VOLTAGE
from hwsched.rules.battery.battery_end_voltage import RULE as BATTERY_END_VOLTAGE
from hwsched.rules.battery.cell_count import RULE as CELL_COUNT
from hwsched.rules.battery.cell_stocked import RULE as CELL_STOCKED
from hwsched.rules.battery.coin_cell_stocked import RULE as COIN_CELL_STOCKED

# catalogue and stock
from hwsched.rules.catalogue_and_stock.attribute_missing import RULE as ATTRIBUTE_MISSING
from hwsched.rules.catalogue_and_stock.fastener_for_material import RULE as FASTENER_FOR_MATERIAL
from hwsched.rules.catalogue_and_stock.kit_known import RULE as KIT_KNOWN
from hwsched.rules.catalogue_and_stock.part_known import RULE as PART_KNOWN
from hwsched.rules.catalogue_and_stock.price_known import RULE as PRICE_KNOWN
from hwsched.rules.catalogue_and_stock.sleeve_fits import RULE as SLEEVE_FITS
from hwsched.rules.catalogue_and_stock.superseded_part import RULE as SUPERSEDED_PART
from hwsched.rules.catalogue_and_stock.template_known import RULE as TEMPLATE_KNOWN
from hwsched.rules.catalogue_and_stock.tool_known import RULE as TOOL_KNOWN
from hwsched.rules.catalogue_and_stock.unit_window import RULE as UNIT_WINDOW
from hwsched.rules.catalogue_and_stock.wall_fixings import RULE as WALL_FIXINGS

# documents
from hwsched.rules.documents.fit_complete import RULE as FIT_COMPLETE
from hwsched.rules.documents.heading_facts import RULE as HEADING_FACTS

# commissioning
from hwsched.rules.commissioning.access_policy import RULE as ACCESS_POLICY
from hwsched.rules.commissioning.coin_cell_drain import RULE as COIN_CELL_DRAIN
from hwsched.rules.commissioning.key_for_unit import RULE as KEY_FOR_UNIT
from hwsched.rules.commissioning.programmed_before_work import RULE as PROGRAMMED_BEFORE_WORK
from hwsched.rules.commissioning.programming_key import RULE as PROGRAMMING_KEY

# supplies and circuits
from hwsched.rules.circuits.circuit_sound import RULE as CIRCUIT_SOUND
from hwsched.rules.circuits.circuit_known import RULE as CIRCUIT_KNOWN
from hwsched.rules.circuits.circuit_proved import RULE as CIRCUIT_PROVED
from hwsched.rules.circuits.circuit_suits import RULE as CIRCUIT_SUITS
from hwsched.rules.circuits.circuit_voltage import RULE as CIRCUIT_VOLTAGE
from hwsched.rules.circuits.circuit_high_voltage import RULE as CIRCUIT_HIGH_VOLTAGE
from hwsched.rules.circuits.circuit_collapse import RULE as CIRCUIT_COLLAPSE
from hwsched.rules.circuits.supply_loading import RULE as SUPPLY_LOADING
from hwsched.rules.circuits.supply_growth import RULE as SUPPLY_GROWTH
from hwsched.rules.circuits.circuit_limiter import RULE as CIRCUIT_LIMITER
from hwsched.rules.circuits.supply_power_limited import RULE as SUPPLY_POWER_LIMITED
from hwsched.rules.circuits.standby_capacity import RULE as STANDBY_CAPACITY
from hwsched.rules.circuits.coil_suppression import RULE as COIL_SUPPRESSION
from hwsched.rules.circuits.circuit_apart import RULE as CIRCUIT_APART
from hwsched.rules.circuits.circuit_assumed import RULE as CIRCUIT_ASSUMED
from hwsched.rules.circuits.fed_once import RULE as FED_ONCE
from hwsched.rules.circuits.alarm_latching import RULE as ALARM_LATCHING
from hwsched.rules.circuits.alarm_release import RULE as ALARM_RELEASE

# records
from hwsched.rules.records.fit_out_of_date import RULE as FIT_OUT_OF_DATE
from hwsched.rules.records.packet_out_of_date import RULE as PACKET_OUT_OF_DATE
from hwsched.rules.records.waiver_lapsed import RULE as WAIVER_LAPSED
from hwsched.rules.records.waiver_past import RULE as WAIVER_PAST
from hwsched.rules.records.waiver_unneeded import RULE as WAIVER_UNNEEDED

OWN_RULES: Final[tuple[AnyRule, ...]] = imported(globals(), Rule)
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
OF_WAIVERS = frozenset({WAIVER_LAPSED.id, WAIVER_PAST.id, WAIVER_UNNEEDED.id})
"""Those that speak of waivers, so that nothing of them can be waived: taking back or giving anew mends them."""

_BY_ID: dict[str, AnyRule] = {rule.id: rule for rule in RULEBOOK}
TITLES.update((rule.id, rule.title) for rule in RULEBOOK)
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
    "each_verdict",
    "finding_of",
    "in_rulebook",
    "judge",
    "limits_of",
    "rule_named",
    "rules_in_slot",
    "rules_of",
    "severity_of",
]

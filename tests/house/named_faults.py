"""Faults of one line that an installer, a warehouse or an electrician would pay for, and the tests that catch them.

Each once passed the whole suite, or is of their kind. `test_named_faults` puts one after another into a copy of the
package and lets the tests run that must fail.
"""

from dataclasses import dataclass
from typing import Final

HOLES: Final = "tests/documents/release/test_packet.py::test_a_hole_is_told_by_place_size_depth_and_direction"
BOXES: Final = "tests/documents/release/test_packet.py::test_the_contents_of_every_piece_are_counted"
NESTED: Final = "tests/documents/release/test_packet.py::test_a_box_in_a_box_is_opened_too"
WAYS_OUT: Final = "tests/rules/test_ways_out.py"
PLACES: Final = "tests/operations/survey/test_places.py"
PICKED: Final = "tests/documents/stock/test_pick_list.py::test_quantities_of_openings_and_of_boxes_are_multiplied"


@dataclass(frozen=True, slots=True)
class Fault:
    """A text of the package, what a slip would make of it, and who must notice."""

    name: str
    file: str
    """Below the package's folder."""
    old: str
    """Stands in the file exactly once."""
    new: str
    caught_by: tuple[str, ...]
    """Tests, as pytest names them, of which at least one must fail."""


FAULTS: Final = (
    Fault(
        "every hole is through",
        "documents/release/packet_holes.py",
        'return ("through" if hole.depth_mm is None else words.length(hole.depth_mm, style)) + begins',
        'return "through" + begins',
        (HOLES,),
    ),
    Fault(
        "toward hinge and toward edge swapped",
        "documents/release/packet_holes.py",
        "phrase('toward hinge') if across > 0 else phrase('toward edge')",
        "phrase('toward edge') if across > 0 else phrase('toward hinge')",
        (HOLES,),
    ),
    Fault(
        "every hole is above the cylinder",
        "documents/release/packet_holes.py",
        "'above' if up > 0 else 'below'",
        "'above'",
        (HOLES,),
    ),
    Fault(
        "contents of boxes not multiplied in the packet",
        "documents/release/packet.py",
        "contents(project.catalogue, part.part, part.quantity)",
        "contents(project.catalogue, part.part, 1.0)",
        (BOXES,),
    ),
    Fault(
        "contents of boxes not multiplied in the pick list",
        "documents/stock/pick_list.py",
        "contents(project.catalogue, number, count)",
        "contents(project.catalogue, number, 1.0)",
        (PICKED,),
    ),
    Fault(
        "the source's own resistance left out of the greatest drop at peak",
        "calc/power/many_solutions.py",
        "found[0, 0] = source_ohm",
        "found[0, 0] = 0.0",
        (
            "tests/calc/power/test_circuit_states.py::test_what_only_the_resistance_inside_the_source_brings_low_is_told_too",
        ),
    ),
    Fault(
        "no gap between the drill and the lock's case",
        "fitting/ways.py",
        'off = size.diameter_mm / 2 + distance_mm("hollow-gap")',
        "off = size.diameter_mm / 2",
        ("tests/fitting/test_ways.py::test_a_hole_into_a_hollow_leaf_keeps_off_the_lock_s_case",),
    ),
    Fault(
        "the plate in a narrow stile counted from the new hole",
        "fitting/ways.py",
        'above_edge = top + template_mm(unit, "plate-above-hole") - low',
        'above_edge = template_mm(unit, "plate-above-hole")',
        ("tests/fitting/test_forms.py::test_narrow_aluminium_stile",),
    ),
    Fault(
        "a tilted bit cuts its slot toward the lock",
        "fitting/ways.py",
        "slot_mm=round(reach if down else -reach, 3)",
        "slot_mm=round(-reach if down else reach, 3)",
        ("tests/fitting/test_forms.py::test_the_channel_of_the_published_practice",),
    ),
    Fault(
        "the lead goes through the lock's case",
        "fitting/ways.py",
        "beside = min(at.box.high[2] + off, leaf.thickness_mm or at.box.high[2])",
        "beside = at.lead_z",
        ("tests/fitting/test_ways.py::test_in_a_hollow_leaf_the_lead_goes_round_the_case_and_over_its_end",),
    ),
    Fault(
        "a screw may end in the lock's case",
        "rules/solid/clashes.py",
        'Pair("screw-clear", ("screw",), ("case", "bore",',
        'Pair("screw-clear", ("screw",), ("bore",',
        ("tests/fitting/test_fastening.py::test_a_screw_that_would_end_in_the_case_gives_way_to_a_shorter_one",),
    ),
    Fault(
        "the shortest screw taken though a longer one would do",
        "fitting/fastening.py",
        "key=lambda part: (-(part.number_of(LENGTH_MM) or 0.0),",
        "key=lambda part: ((part.number_of(LENGTH_MM) or 0.0),",
        ("tests/fitting/test_fastening.py::test_beside_the_case_a_long_screw_holds",),
    ),
    Fault(
        "a bit held by a drill that stands in the leaf",
        "rules/holes/drill_stands.py",
        "room = free * sin(radians(angle)) - radius * cos(radians(angle))",
        "room = free * sin(radians(angle))",
        ("tests/rules/test_cable_and_holes.py::test_rule",),
    ),
    Fault(
        "a leaf of a pair may have any width",
        "exchange/survey/columns.py",
        "return found.leaf_mm if within_limits(_WIDTH, found.leaf_mm) else None",
        "return found.leaf_mm",
        ("tests/exchange/survey/test_columns.py::test_a_leaf_of_a_pair_is_as_wide_as_a_leaf_can_be",),
    ),
    Fault(
        "a changed kit forgotten",
        "model/catalogue_memory.py",
        "read_catalogue, PART, KIT_CONTENT)",
        "read_catalogue, PART)",
        ("tests/model/test_queries.py::test_the_catalogue_in_memory_knows_a_kit_that_changed_alone[sqlite]",),
    ),
    Fault(
        "packets of a stopped print written down as out",
        "stopping.py",
        "    if stop is not None and stop():\n",
        "    if stop is None and stop is not None:\n",
        ("tests/desktop/test_packets_out.py::test_packets_of_a_print_that_was_stopped_are_not",),
    ),
    Fault(
        "what x counts from in the lock edge not said",
        "documents/release/packet_holes.py",
        '"lock-edge": phrase(" from the inside face"),\n',
        "\n",
        (HOLES,),
    ),
    Fault(
        "a pocket shown as a hole of no size",
        "documents/release/packet_holes.py",
        "if hole.width_mm is not None and hole.height_mm is not None:",
        "if False:",
        (HOLES,),
    ),
    Fault(
        "a bore does not say what it enlarges",
        "documents/release/packet_holes.py",
        "return drill_words(hole.diameter_mm, style) + enlarged",
        "return drill_words(hole.diameter_mm, style)",
        (HOLES,),
    ),
    Fault(
        "a box in a box counted once",
        "documents/stock/box_contents.py",
        "yield from _inside(catalogue, held, each * quantity, (*around, held))",
        "yield from _inside(catalogue, held, each, (*around, held))",
        (NESTED, PICKED),
    ),
    Fault(
        "a hole in the key side has no template",
        "documents/release/template_names.py",
        'return ("inside", "key") if on_key_side else ("inside",)',
        'return ("inside",)',
        ("tests/documents/test_templates.py::test_a_hole_is_marked_where_it_is_drilled",),
    ),
    Fault(
        "a packet that lists another box counts as current",
        "operations/release/packet_key.py",
        "{' '.join(map(_shown, fits))}{inside}",
        "{' '.join(map(_shown, fits))}",
        ("tests/operations/release/test_issued_packets.py::test_a_packet_that_lists_another_box_is_old",),
    ),
    Fault(
        "people leave from the side towards which they go",
        "rules/ways_out.py",
        '"key": ("inside",), "inside": ("key",),',
        '"key": ("key",), "inside": ("inside",),',
        (WAYS_OUT,),
    ),
    Fault(
        "a building's word goes before its level's",
        "model/queries.py",
        "func.coalesce(own, LEVEL.c[name], BUILDING.c[name])",
        "func.coalesce(own, BUILDING.c[name], LEVEL.c[name])",
        (f"{PLACES}::test_a_level_s_word_goes_before_its_building_s_and_an_opening_s_before_both",),
    ),
    Fault(
        "a revision forgets whose room has lost its way out",
        "operations/release/frozen_state.py",
        "frozenset(found | in_rooms_touched_since(connection, number))",
        "frozenset(found)",
        (f"{PLACES}::test_openings_are_looked_at_again_when_a_neighbour_decides_on_their_room",),
    ),
)

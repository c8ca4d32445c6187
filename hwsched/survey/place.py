"""Facts of a building or a level that decide egress, asked once and inherited by the openings that stand there.

A level's own word goes before its building's, an opening's own before both.
"""

from typing import Final

from hwsched.attributes import Attribute, Choice
from hwsched.survey.entity import Entity

CODES = (
    Choice("ibc", "IBC", ("international building code", "ifc", "ibc/ifc")),
    Choice("nfpa-101", "NFPA 101", ("life safety code", "nfpa101", "lsc")),
    Choice("both", "IBC and NFPA 101", ("ibc and lsc", "ibc + nfpa 101", "ibc/nfpa 101")),
    Choice("other", "Another code", ("local code", "en", "european")),
)
GROUPS = (
    Choice("A", "A, assembly", ("assembly", "a-1", "a-2", "a-3", "a-4", "a-5", "group a")),
    Choice("B", "B, business", ("business", "office", "offices", "group b")),
    Choice("E", "E, education", ("education", "educational", "school", "group e")),
    Choice("F", "F, factory", ("factory", "factory industrial", "industrial", "f-1", "f-2", "group f")),
    Choice("H", "H, high hazard", ("high hazard", "hazard", "h-1", "h-2", "h-3", "h-4", "h-5", "group h")),
    Choice("I-1", "I-1, custodial care", ("custodial care", "group i-1")),
    Choice("I-2", "I-2, medical care", ("medical care", "hospital", "group i-2")),
    Choice("I-3", "I-3, restrained", ("restrained", "detention", "group i-3")),
    Choice("I-4", "I-4, day care", ("day care", "group i-4")),
    Choice("M", "M, mercantile", ("mercantile", "shop", "group m")),
    Choice("R", "R, residential", ("residential", "dwelling", "r-1", "r-2", "r-3", "r-4", "group r")),
    Choice("S", "S, storage", ("storage", "s-1", "s-2", "group s")),
    Choice("U", "U, utility", ("utility", "group u")),
)
"""Occupancy groups of the IBC, chapter 3; subgroups that no rule tells apart are read as their group."""

PLACE_FACTS: Final[tuple[Attribute, ...]] = (
    Attribute(
        "code",
        "Code in force",
        "choice",
        choices=CODES,
        synonyms=("adopted code", "building code", "code"),
        note="Which code the authority at the place has adopted for egress.",
    ),
    Attribute(
        "code_edition",
        "Edition of the code",
        "integer",
        synonyms=("code edition", "edition", "code year"),
        low=1990,
        high=2100,
        note="The year that the code in force bears.",
    ),
    Attribute(
        "occupancy_group",
        "Occupancy group",
        "choice",
        choices=GROUPS,
        synonyms=("occupancy", "use group", "group"),
        note="Of the rooms that people leave through the opening; as on the certificate of occupancy.",
    ),
    Attribute(
        "occupant_load",
        "Occupant load",
        "integer",
        synonyms=("occupants", "persons", "people served"),
        low=0,
        high=100000,
        note="How many people leave through the opening, as the drawings or the notice in the room say.",
    ),
    Attribute(
        "storeys_served",
        "Storeys served by the stair",
        "integer",
        synonyms=("storeys served", "stories served", "storeys", "stories", "floors served"),
        low=1,
        high=200,
    ),
    Attribute(
        "sprinkler",
        "Sprinklered throughout",
        "flag",
        synonyms=("sprinkler", "sprinklers", "sprinklered"),
    ),
    Attribute(
        "fire_alarm",
        "Smoke or heat detection throughout",
        "flag",
        synonyms=("fire alarm", "fire detection", "detection", "smoke detection"),
        note="An approved automatic detection system, tied to the fire alarm.",
    ),
    Attribute(
        "access_policy",
        "Credentials and audit",
        synonyms=("credential policy", "audit policy", "access policy"),
        note="Who may open, with what, who takes a lost credential out, and whether events are kept.",
    ),
)
INHERITED: Final[tuple[str, ...]] = tuple(attribute.name for attribute in PLACE_FACTS)
"""Names of the facts that an opening takes from its level, or else from its building, where it has none of its own."""

BUILDING_PLACE = Entity("building", "Building", PLACE_FACTS)
LEVEL_PLACE = Entity("level", "Level", PLACE_FACTS)

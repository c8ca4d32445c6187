"""Pure calculations: plain values in, plain values out; no database, no file, no screen.

The lines below are the table of contents of the calculators that people and machines can call by name; `calculators`
has them loaded. A table of names, since the help of a verb shows it, and one calculation must not load all.
"""

from hwsched.family import Line

# Their order is the order in which people see them.
LINES = (
    Line("length", "survey.length:LENGTH"),
    Line("cylinder-stack", "opening.stack:CYLINDER_STACK"),
    Line("euro-halves", "opening.euro:EURO_HALVES"),
    Line("tailpiece", "opening.tailpiece:TAILPIECE"),
    Line("bored-prep", "opening.bored_prep:BORED_PREP"),
    Line("placement", "opening.placement:PLACEMENT"),
    Line("cable", "opening.cable:CABLE"),
    Line("bore", "opening.bore:BORE"),
    Line("channel", "opening.channel:CHANNEL"),
    Line("pocket", "opening.pocket:POCKET"),
    Line("conductor", "power.conductor:CONDUCTOR"),
    Line("circuit", "power.circuit:CIRCUIT"),
    Line("battery-life", "power.battery:BATTERY_LIFE"),
    Line("standby", "power.standby:STANDBY"),
    Line("siting", "power.siting:SITING"),
)

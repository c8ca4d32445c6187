"""`hwsched power import`: takes in a power workbook, or another file of this room."""

from hwsched.cli.importing import import_verb

VERB = import_verb("power")

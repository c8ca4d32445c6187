"""`hwsched parts import`: takes in a catalogue, or another file of this room."""

from hwsched.cli.importing import import_verb

VERB = import_verb("parts")

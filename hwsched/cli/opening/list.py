"""`hwsched opening list`: the lists of this room, for machines and the terminal."""

from hwsched.cli.listing import list_verb

VERB = list_verb("opening")

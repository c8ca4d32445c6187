"""A process beside the program that works out fits: `python -m hwsched.operations.opening.fit_worker`.

It is started, fed and ended by `several_cores`; it reads from its standard input and writes to its standard output, and
ends when the one who started it does.
"""

from collections.abc import Sequence
from dataclasses import replace
from typing import cast

from hwsched.operations.beside import Receiver, Sender, answer_streams
from hwsched.operations.opening.fits_within import FitMemory
from hwsched.operations.opening.lock_points import point_results
from hwsched.values import Catalogue, Fit, OpeningInput
from hwsched.values.facts_read import FactsRead

Made = tuple[str, tuple[str, Fit, FactsRead] | None]
"""The `input_key` of a lock point, and what was made for it: key of the facts that were read, fit, names of the facts;
None where it was sent before."""


def fits_of(openings: Sequence[Sequence[OpeningInput]], memory: FitMemory, sent: set[str]) -> list[list[Made]]:
    """Work out openings, given by their lock points; what is in `sent` is named only."""
    found = []
    for inputs in openings:
        made: list[Made] = []
        for each in point_results(inputs, {}, memory.of, memory.standings):
            stored = memory.made(each.at.given, each.key)
            known = each.key in sent or stored.read is None
            made.append((each.key, None if known else (stored.input_key, stored.fit, cast(FactsRead, stored.read))))
            sent.add(each.key)
        found.append(made)
    return found


def main() -> None:
    """Answer until there is nothing more to read."""
    read, write = answer_streams()
    source, target = Receiver(read), Sender(write)
    memory, sent = FitMemory(), set[str]()
    try:
        # One that was put in place while the other ran would work out by other rules.
        target.send(memory.standings.engine.key)
        catalogue: Catalogue = source.receive()
        while True:
            openings = [[replace(each, catalogue=catalogue) for each in inputs] for inputs in source.receive()]
            target.send(fits_of(openings, memory, sent))
    except (EOFError, BrokenPipeError):
        return


if __name__ == "__main__":
    main()

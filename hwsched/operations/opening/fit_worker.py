"""A process beside the program that works out fits: `python -m hwsched.operations.opening.fit_worker`.

It is started, fed and ended by `several_cores`; it reads from its standard input and writes to its standard output, and
ends when the one who started it does. Here belong what it does and how messages are framed.
"""

import pickle
import signal
import sys
from collections.abc import Sequence
from dataclasses import replace
from typing import IO, Any, Final, cast

from hwsched.operations.opening.fits_within import FitMemory
from hwsched.operations.opening.lock_points import point_results
from hwsched.values import Catalogue, Fit, OpeningInput
from hwsched.values.facts_read import FactsRead

Made = tuple[str, tuple[str, Fit, FactsRead] | None]
"""The `input_key` of a lock point, and what was made for it: key of the facts that were read, fit, names of the facts;
None where it was sent before."""

_LENGTH: Final = 8


def send(stream: IO[bytes], message: object) -> None:
    """Write one message."""
    content = pickle.dumps(message, protocol=pickle.HIGHEST_PROTOCOL)
    stream.write(len(content).to_bytes(_LENGTH, "big") + content)
    stream.flush()


def receive(stream: IO[bytes]) -> Any:
    """Read one message; raises EOFError where the other side has ended."""
    head = stream.read(_LENGTH)
    if len(head) < _LENGTH:
        raise EOFError
    # Only what our own process wrote into a pipe that nobody else has comes this way.
    return pickle.loads(stream.read(int.from_bytes(head, "big")))


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
    # An interrupt at the terminal reaches this process too; it ends with the one who started it.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    source, target = sys.stdin.buffer, sys.stdout.buffer
    # What anybody prints must not come between the messages.
    sys.stdout = sys.stderr
    memory, sent = FitMemory(), set[str]()
    try:
        # One that was put in place while the other ran would work out by other rules.
        send(target, memory.standings.engine.key)
        catalogue: Catalogue = receive(source)
        while True:
            openings = [[replace(each, catalogue=catalogue) for each in inputs] for inputs in receive(source)]
            send(target, fits_of(openings, memory, sent))
    except (EOFError, BrokenPipeError):
        return


if __name__ == "__main__":
    main()

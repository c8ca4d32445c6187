"""A process beside the program that works out fits: `python -m hwsched.operations.opening.fit_worker`.

It is started, fed and ended by `several_cores`; it reads from its standard input and writes to its standard output, and
ends when the one who started it does. Here belong what it does and how messages are framed.
"""

import io
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


class Sender:
    """Writes messages into a stream; what was in an earlier one is named only, as what fits share is most of them."""

    def __init__(self, stream: IO[bytes]) -> None:
        self._stream = stream
        self._buffer = io.BytesIO()
        self._pickler = pickle.Pickler(self._buffer, protocol=pickle.HIGHEST_PROTOCOL)

    def send(self, message: object) -> None:
        """Write one message; nothing of it may be changed from then on."""
        self._buffer.seek(0)
        self._buffer.truncate()
        self._pickler.dump(message)
        content = self._buffer.getvalue()
        self._stream.write(len(content).to_bytes(_LENGTH, "big") + content)
        self._stream.flush()


class Receiver:
    """Reads what a `Sender` has written, one message after the other from the first on."""

    def __init__(self, stream: IO[bytes]) -> None:
        self._stream = stream
        self._buffer = io.BytesIO()
        # Only what our own process wrote into a pipe that nobody else has comes this way.
        self._unpickler = pickle.Unpickler(self._buffer)

    def receive(self) -> Any:
        """Read one message; raises EOFError where the other side has ended."""
        head = self._stream.read(_LENGTH)
        if len(head) < _LENGTH:
            raise EOFError
        self._buffer.seek(0)
        self._buffer.truncate()
        self._buffer.write(self._stream.read(int.from_bytes(head, "big")))
        self._buffer.seek(0)
        return self._unpickler.load()


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
    source, target = Receiver(sys.stdin.buffer), Sender(sys.stdout.buffer)
    # What anybody prints must not come between the messages.
    sys.stdout = sys.stderr
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

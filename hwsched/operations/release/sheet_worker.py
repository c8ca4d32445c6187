"""A process beside the program that writes sheets of openings: `python -m hwsched.operations.release.sheet_worker`.

It is started, fed and ended by `sheets_beside`; it ends when the one who started it does.
"""

import logging
from collections.abc import Sequence
from typing import Final

from hwsched.fingerprint import engine
from hwsched.language import in_language, speak
from hwsched.operations.beside import Receiver, Sender, answer_streams
from hwsched.operations.release.opening_sheets import Files, OpeningSheet, Printing, write_sheet

_LOG: Final = logging.getLogger(__name__)


def written_of(printing: Printing, sheets: Sequence[OpeningSheet]) -> list[Files | None]:
    """Write sheets; None for one that could not be written: why is found where it is tried again."""
    found: list[Files | None] = []
    for sheet in sheets:
        try:
            found.append(write_sheet(printing, sheet))
        except Exception as error:
            _LOG.warning("%s was not written: %r", sheet.stem, error)
            found.append(None)
    return found


def main() -> None:
    """Answer until there is nothing more to read."""
    source, target = answer_streams()
    try:
        # One that was put in place while the other ran would print otherwise.
        Sender(target).send(engine().key)
        language, printing = Receiver(source).receive()
        speak(language)
        with in_language(printing.view.office.language):
            while True:
                # Each message by itself: what was printed need not be remembered.
                Sender(target).send(written_of(printing, Receiver(source).receive()))
    except (EOFError, BrokenPipeError):
        return


if __name__ == "__main__":
    main()

"""What of a document is otherwise than in an earlier one of the same kind: marked row by row, line by line."""

from dataclasses import replace

from hwsched.render.blocks import Block, Bullets, Document, Drawings, Facts, Marked, Paragraph, StepLine, Steps, Table


def marked_since(now: Document, then: Document | None, letter: str) -> Document:
    """Return a document in which what an earlier one does not have is marked with the letter of the change.

    Parameters
    ----------
    now : Document
        To be printed.
    then : Document or None
        The same document of an earlier state; None where there was none: all of it is new.
    letter : str
        What stands beside the bar.
    """
    earlier = _Said(then)
    return replace(
        now,
        sections=tuple(
            replace(section, blocks=tuple(_marked(block, earlier, letter) for block in section.blocks))
            for section in now.sections
        ),
    )


class _Said:
    """All that an earlier document says, to be asked whether it says a thing too."""

    def __init__(self, document: Document | None) -> None:
        self.rows: dict[str, set[tuple[object, ...]]] = {}
        self.lines: set[object] = set()
        for section in document.sections if document is not None else ():
            for block in section.blocks:
                if isinstance(block, Table):
                    self.rows.setdefault(block.title, set()).update(block.rows)
                else:
                    self.lines.update(_lines(block))


def _lines(block: Block) -> tuple[object, ...]:
    if isinstance(block, Steps):
        return tuple(_done(line) for line in block.lines)
    if isinstance(block, Facts):
        return block.pairs
    if isinstance(block, Bullets):
        return block.items
    if isinstance(block, Paragraph):
        return (block.text,)
    if isinstance(block, Drawings):
        return block.drawings
    return ()


def _done(line: StepLine) -> tuple[object, ...]:
    """Return a step without its number: one that comes before it changes nothing of it."""
    return line.where, line.text, line.cautions, line.readings


def _marked(block: Block, earlier: _Said, letter: str) -> Block:
    if isinstance(block, Table):
        known: set[tuple[object, ...]] = earlier.rows.get(block.title, set())
        rows = frozenset(number for number, row in enumerate(block.rows) if row not in known)
    else:
        rows = frozenset(number for number, line in enumerate(_lines(block)) if line not in earlier.lines)
    return Marked(block, rows, letter) if rows else block

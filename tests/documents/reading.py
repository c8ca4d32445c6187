"""Reads documents as a person does: a table by its title, a cell by its column's heading, a fact by its label."""

from hwsched.render.blocks import TICK, Bullets, Drawings, Facts, Paragraph, Steps, Table


def blocks(document):
    return [block for section in document.sections for block in section.blocks]


def table(document, title):
    (found,) = [block for block in blocks(document) if isinstance(block, Table) and block.title == title]
    return found


def lines(document, title):
    """Return the rows of a table as mappings from its headings; columns without heading are left out."""
    found = table(document, title)
    titles = [column.title for column in found.columns]
    assert all(len(row) == len(titles) for row in found.rows)
    return [{name: cell for name, cell in zip(titles, row, strict=True) if name} for row in found.rows]


def ticked(document, title):
    """Tell for each row of a table whether it is to be ticked off."""
    return [row[0] == TICK for row in table(document, title).rows]


def facts(document):
    """Return all labelled facts of a document; none stands twice with different values."""
    found = {}
    for block in blocks(document):
        if isinstance(block, Facts):
            for label, value in block.pairs:
                assert found.setdefault(label, value) == value, label
    return found


def texts(document):
    """Return everything that is said in words, a line each."""
    found = []
    for block in blocks(document):
        if isinstance(block, Paragraph):
            found.append(block.text)
        elif isinstance(block, Bullets):
            found += block.items
        elif isinstance(block, Steps):
            for line in block.lines:
                found += [*line.cautions, line.text, *line.readings]
        elif isinstance(block, Table):
            found += [str(cell) for row in block.rows for cell in row]
        elif isinstance(block, Facts):
            found += [f"{label}: {value}" for label, value in block.pairs]
        elif isinstance(block, Drawings):
            found += [note for drawing in block.drawings for note in drawing.notes]
    return found

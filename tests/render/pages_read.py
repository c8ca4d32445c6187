"""Reads PDFs back: texts of pages, and what their content streams paint."""

from pypdf import PdfReader
from pypdf.generic import ContentStream

MM = 25.4 / 72.0


def texts(path):
    return [page.extract_text() for page in PdfReader(path).pages]


def all_text(path):
    return " ".join(" ".join(texts(path)).split())


def painted(page):
    """Return painted paths in their order as lists of points [mm from the lower left]; clip paths are left out."""
    content = ContentStream(page["/Contents"].get_object(), page.pdf)
    paths, points, matrix, stack = [], [], (1.0, 0.0, 0.0, 1.0, 0.0, 0.0), []
    for operands, operator in content.operations:
        op = operator.decode()
        numbers = [float(n) for n in operands] if op in ("m", "l", "c", "re", "cm") else []
        if op == "q":
            stack.append(matrix)
        elif op == "Q":
            matrix = stack.pop()
        elif op == "cm":
            assert numbers[:4] == [1.0, 0.0, 0.0, 1.0], "only moves are expected"
            matrix = (1.0, 0.0, 0.0, 1.0, matrix[4] + numbers[4], matrix[5] + numbers[5])
        elif op in ("m", "l"):
            points.append((numbers[0], numbers[1]))
        elif op == "c":
            points.append((numbers[4], numbers[5]))
        elif op == "re":
            x, y, w, h = numbers
            points += [(x, y), (x + w, y), (x + w, y + h), (x, y + h)]
        elif op == "n":
            points = []
        elif op in ("S", "s", "f", "f*", "B", "B*", "b", "b*", "F"):
            paths.append([((x + matrix[4]) * MM, (y + matrix[5]) * MM) for x, y in points])
            points = []
    return paths


def written(path):
    """Return each piece of text with the size that it is set in [pt]."""
    found = []
    for page in PdfReader(path).pages:

        def take(text, matrix, text_matrix, _font, size):
            if text.strip():
                found.append((text.strip(), round(size * abs(text_matrix[3] or text_matrix[1]) or size, 2)))

        page.extract_text(visitor_text=take)
    return found


def sizes(path):
    """Return the sizes of all text [pt]."""
    return {size for _, size in written(path)}

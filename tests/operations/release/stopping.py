"""Reads back whether STOP stands across a page."""

from pypdf import PdfReader


def stops(path):
    """Return for each page how many times STOP is written over a third of its width and more, slanted."""
    found = []
    for page in PdfReader(path).pages:
        seen = []

        def take(text, matrix, text_matrix, _font, size, seen=seen):
            # Slanted letters have a part of their width upward in the matrix of what is drawn.
            if text.strip() == "STOP" and abs(matrix[1] or text_matrix[1]) > 0.1 and size > 100.0:
                seen.append(text)

        page.extract_text(visitor_text=take)
        found.append(len(seen))
    return found

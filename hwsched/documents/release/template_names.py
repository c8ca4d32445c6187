"""Which true-size templates a lock point has, and by which names its packet and the templates know them."""

from collections.abc import Mapping
from typing import Final

from hwsched.documents.release.short_code import short_code
from hwsched.drawings.drawing import Drawing
from hwsched.drawings.handing import Face
from hwsched.drawings.opening.template import template
from hwsched.language import phrase, to_phrase
from hwsched.quantities import LengthStyle
from hwsched.rules.reading import lock_leaf
from hwsched.values import Fit, OpeningInput

TEMPLATE_FILE: Final = "templates.pdf"
"""In which all true-size templates stand."""
_FACES: Final = {"inside": to_phrase("inside"), "key": to_phrase("key side")}


def faces_of(given: OpeningInput, fit: Fit | None) -> tuple[Face, ...]:
    """Name the faces that want a template: the unit's side, and the key side where a hole's centre is marked there."""
    if fit is None or not fit.holes or lock_leaf(given) is None:
        return ()
    on_key_side = any(hole.face == "key" and not hole.by_template for hole in fit.holes)
    return ("inside", "key") if on_key_side else ("inside",)


def template_name(drawn: Drawing) -> str:
    """Return the name of a template, drawn without the marks for which it holds: the same wherever it is the same."""
    return f"T-{short_code((drawn.title, drawn.shapes, drawn.bounds, drawn.notes))}"


def template_names(
    given: OpeningInput, fit: Fit | None, style: LengthStyle, pages: Mapping[str, int]
) -> tuple[str, ...]:  # fmt: skip
    """Return the names of a lock point's templates; of several each with its face.

    Parameters
    ----------
    given, fit : OpeningInput, Fit
        Survey and fit of the lock point.
    style : LengthStyle
        How sizes are written on the templates.
    pages : mapping of str to int
        Page on which a template begins, by its name, where they are printed along: it stands behind the name.
    """
    faces = faces_of(given, fit)
    names = [template_name(template(given, fit, face, (), style)) for face in faces if fit is not None]
    said = names
    if len(names) > 1:
        said = [
            phrase("{name} ({face})", name=name, face=phrase(_FACES[face]))
            for name, face in zip(names, faces, strict=True)
        ]
    return tuple(
        phrase("{name}, page {page} of {file}", name=each, page=pages[name], file=TEMPLATE_FILE)
        if name in pages
        else each
        for name, each in zip(names, said, strict=True)
    )

"""No document shows a person the name by which the program knows a fact, such as one with underscores."""

import re
from dataclasses import fields, is_dataclass, replace

import pytest

from hwsched.documents.documents import DOCUMENTS
from hwsched.documents.release.bound_packets import BOUND_PACKETS
from hwsched.drawings.drawing import Callout, Dimension, Drawing, Text
from hwsched.operations.release.issued_templates import templates
from tests.documents.kept import powered, quay

RAW = re.compile(r"\b[a-z]+(?:\.[a-z]+)?_[a-z][a-z_]*\b|\b(?:opening|leaf|item|found|part)\.[a-z]+\b")
COMMAND = re.compile(r"hwsched [a-z][^.]*")
HIDDEN = {"anchor", "style", "leads_to", "align", "bars", "sheet", "language", "about", "place", "content", "key"}
"""Fields of blocks that nobody reads."""


def shown(value):
    """Return all that is read of a document or a block."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, Drawing):
        yield from (value.title, *value.notes)
        yield from (shape.text for shape in value.shapes if isinstance(shape, Text | Callout | Dimension))
    elif is_dataclass(value) and not isinstance(value, type):
        for each in fields(value):
            if each.name not in HIDDEN:
                yield from shown(getattr(value, each.name))
    elif isinstance(value, tuple | list):
        for one in value:
            yield from shown(one)


def raw(texts):
    # A cure may name the command that mends it; what is typed there is typed.
    return sorted({found[0] for text in texts for found in RAW.finditer(COMMAND.sub("", text))})


@pytest.fixture(scope="module")
def views(tmp_path_factory):
    made = quay(tmp_path_factory.mktemp("named") / "quay")
    # One of which next to nothing is known: whatever is asked for is named.
    bare = next(each for each in made.openings if each.mark == "UNSEEN")
    nothing = dict.fromkeys(("hand", "rating", "egress", "exposure", "frame_material", "room_from", "room_to"))
    given = replace(bare.given, opening=replace(bare.given.opening, **nothing))
    return {
        "quay": replace(made, openings=(*made.openings, replace(bare, given=given, points=()))),
        "powered": powered(),
    }


@pytest.mark.parametrize("project", ["quay", "powered"])
@pytest.mark.parametrize("kind", [*DOCUMENTS, BOUND_PACKETS], ids=lambda kind: kind.name)
def test_facts_are_called_as_people_call_them(views, project, kind):
    view = views[project]
    built = [kind.build(view, each) for each in view.openings] if kind.per_opening else [kind.build(view, None)]
    texts = [text for document in built for text in shown(replace(document, sections=tuple(document.sections)))]
    assert len(texts) > 5
    assert raw(texts) == []


def test_so_are_they_on_templates(views):
    assert raw(shown(templates(views["quay"]))) == []


def test_a_raw_name_would_be_found():
    assert raw(["Needs found.edge_bore_mm and opening.installed_on.", "part U-1.pack_low_v"]) == [
        "found.edge_bore_mm", "opening.installed_on", "pack_low_v",
    ]  # fmt: skip
    assert raw(["Leaf. Wood, 1 3/4 in; see M_1 and A-02.", "e.g. x"]) == []

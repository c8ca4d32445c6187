"""What every document says of two invented projects, kept as text that a person reads when it changes.

``python -m tests.documents.kept`` writes it anew; what is otherwise then stands in the difference, line by line, and is
to be read before it is kept.
"""

import re
import sys
import tempfile
from collections.abc import Iterator
from dataclasses import MISSING, fields, is_dataclass, replace
from pathlib import Path

from hwsched.documents.documents import DOCUMENTS
from hwsched.documents.view import ProjectView
from hwsched.drawings.drawing import Drawing
from hwsched.render.blocks import Blank, Column, Document, StepLine
from hwsched.values import FitPart, PointFit, Settings
from hwsched.values.transmittal import SentFile, Transmittal
from tests.documents.quay import viewed
from tests.rules.scenario import fit, fp, given, opening, part
from tests.wiring.power_rows import circuit, connected, parts, run, supply, work

FOLDER = Path(__file__).parent / "kept"
PACKETS = ("TWO", "BARE", "SMALL", "LIFT", "UNSEEN", "STALE")
"""Openings of the quay of which all sheets are kept; the others stand on lists."""

LONG = ("survey-sheets", "box-sheets")
"""Documents with a page an opening: kept of two."""


def said(value: object, deep: int = 0) -> Iterator[str]:
    """Say what stands on a page, a line a row, without what is as by default; of drawings only what is said of them."""
    pad = "  " * deep
    if isinstance(value, Drawing):
        yield f"{pad}{value.title}" + (f" / {value.coarsest:g}" if value.coarsest else "")
        yield from (f"{pad}  {note}" for note in value.notes)
    elif isinstance(value, Column | Blank | StepLine):
        yield pad + short(value)
    elif is_dataclass(value) and not isinstance(value, type):
        yield f"{pad}{type(value).__name__}"
        for each in fields(value):
            held = getattr(value, each.name)
            if each.default is not MISSING and held == each.default:
                continue
            if isinstance(held, tuple) and held:
                yield f"{pad}  {each.name}:"
                for one in held:
                    yield from said(one, deep + 2)
            else:
                yield f"{pad}  {each.name}: {shown(held)}"
    elif isinstance(value, tuple):
        yield pad + " | ".join(shown(cell) for cell in value)
    else:
        yield pad + shown(value)


def short(value: object) -> str:
    """Say a column, a blank or a step on one line."""
    held = [(each, getattr(value, each.name)) for each in fields(value)]  # type: ignore[arg-type]
    told = [(each.name, one) for each, one in held if each.default is MISSING or one != each.default]
    return " · ".join(
        f"{name} {one.title if isinstance(one, Drawing) else shown(one)}" if number else shown(one)
        for number, (name, one) in enumerate(told)
    )


def shown(value: object) -> str:
    """Write a cell; numbers as far as every machine agrees on them."""
    if isinstance(value, float):
        return f"{value:.6g}"
    if isinstance(value, frozenset):
        return ", ".join(map(str, sorted(value)))
    # The day on which this runs stands where somebody accepted something.
    return re.sub(r"\bon \d{4}-\d\d-\d\d\b", "on some day", str(value)).replace("\n", "\\n")


def told(document: Document) -> Iterator[str]:
    yield f"==== {document.title} · {document.subtitle}"
    yield f"foot: {document.footer}"
    for section in document.sections:
        yield from said(section)
    for event in document.events:
        yield from said(event)


def quay(folder: Path) -> ProjectView:
    """The quay with an opening of two lock points, one whose fit is stale, own fields, and what went out."""
    view = viewed(folder)
    by_mark = {each.mark: each for each in view.openings}
    wood, low = by_mark["WOOD"], by_mark["CHANNEL"]
    second = PointFit(
        replace(low.given, opening=wood.given.opening, point=replace(low.given.point, number=2, name="deadlock")),
        low.fit,
    )
    first = PointFit(replace(wood.given, point=replace(wood.given.point, name="latch")), wood.fit)
    two = replace(
        wood, given=replace(first.given, opening=replace(wood.given.opening, mark="TWO")), points=(first, second),
        own=(("Key cabinet", "B 4"), ("Porter", "")),
    )  # fmt: skip
    stale = replace(by_mark["BORED"], fit=None, points=(), standing="facts-changed")
    stale = replace(stale, given=replace(stale.given, opening=replace(stale.given.opening, mark="STALE")))
    held = replace(by_mark["RIM"], held=("error of circuit S/C: too low.",))
    openings = [{"RIM": held}.get(each.mark, each) for each in view.openings]
    # A lock that brings its unit has no lead; a part of which the catalogue knows nothing is on the lists all the same.
    strange = FitPart("consumable", "STRANGE", "consumable", 1.0, "as written down", "thing of the owner's", "by-hand")
    bare = replace(wood.fit, cable=None, parts=(*wood.fit.parts, strange))
    unsaid = replace(wood.given, opening=replace(wood.given.opening, mark="BARE", rating=None, egress=None))
    bare_view = replace(wood, given=unsaid, fit=bare, points=(PointFit(unsaid, bare),))
    files = (SentFile("schedule.pdf", "0" * 64, 4000, "A"), SentFile("pick-list.pdf", "1" * 64, 900))
    sent = (Transmittal(1, "2031-04-02T10:00:00", "Ann", "Quay office", "for approval", "two sets", files),)
    return replace(view, date="2031-05-01", openings=(*openings, two, stale, bare_view), sent=sent)


def powered() -> ProjectView:
    """Three openings on a circuit with a raceway and standby, one on batteries, one wired and on no circuit."""
    from tests.documents.test_power_documents import view_of

    cat = parts(add=(part("RW", "surface-raceway", inside_mm=10.0, width_mm=16.0, reel_m=3.0),
                     part("BAT", "standby-battery", voltage_v=12.0, capacity_ah=7.0, end_v=10.5)))  # fmt: skip
    runs = [run("supply", "a", 95.0), run("a", "b", 20.0), run("b", "c", 8.0)]
    openings = {}
    for name in ("a", "b", "c", "d"):
        at = connected(name, cat, fp("raceway", "RW", 0.9), without=(), building="Main", level="1")
        openings[name] = type(at)(replace(at.given, settings=Settings(length_style="fraction")), at.fit)
    for name, more in (("e", {"installed_on": "2030-03-01"}), ("f", {})):
        openings[name] = type(at)(
            given(opening(id=name, mark=name.upper(), operations_per_day=30.0, **more), cat=cat), fit()
        )
    runs.append(run("supply", "g", 6.0, "near"))
    openings["g"] = connected("g", cat, without=(), building="Main", level="1")
    laid = [
        supply(building="Main", level="1", place="Closet", standby_hours=4.0, battery="BAT", batteries=2),
        supply("n", building="Main", level="1", place="Desk"),
    ]
    power = work(runs, openings, cat, supplies=laid, circuits=[circuit(limiter_a=2.0), circuit("near", "n")],
                 settings=Settings(length_style="fraction"))  # fmt: skip
    return replace(view_of(power, openings, cat), length_style="fraction", date="2031-05-01")


def all_said(view: ProjectView, packets: tuple[str, ...]) -> str:
    """Say all documents of a project, those of one opening of some."""
    lines: list[str] = []
    for kind in DOCUMENTS:
        few = replace(view, openings=tuple(each for each in view.openings if each.mark in packets[:2]))
        if kind.per_opening:
            for each in view.openings:
                lines += told(kind.build(view, each)) if each.mark in packets else []
        else:
            lines += told(kind.build(few if kind.name in LONG else view, None))
    return "\n".join(lines) + "\n"


def every() -> dict[str, str]:
    with tempfile.TemporaryDirectory() as folder:
        return {"quay": all_said(quay(Path(folder) / "quay"), PACKETS), "powered": all_said(powered(), ("A", "E", "G"))}


if __name__ == "__main__":
    FOLDER.mkdir(exist_ok=True)
    for name, text in every().items():
        (FOLDER / f"{name}.txt").write_text(text, encoding="utf-8")
        sys.stdout.write(f"{name}: {text.count(chr(10))} lines\n")

"""The release gate: what keeps an opening back, and that the others go out without it."""

from dataclasses import replace

import pytest
from pypdf import PdfReader

from hwsched.documents.release.packet import PACKET
from hwsched.documents.stock.pick_list import quantities
from hwsched.documents.view import OpeningView
from hwsched.operations.findings.checked import WILL_NOT_LAST, Checked
from hwsched.operations.findings.checking import _waiting, check_openings
from hwsched.operations.release.holding import held_back
from hwsched.operations.release.issued_packets import write_down_packets
from hwsched.operations.release.release_gate import missing, passages
from hwsched.render.pdf import render_pdf
from hwsched.rules import RULEBOOK
from hwsched.rules.rule import DEFERS
from hwsched.rules.wording import FIT, unknown
from hwsched.values import Finding, Fit
from hwsched.values.power import Circuit, CircuitResult, PowerFinding, PowerResult, Proof, Supply, SupplyResult
from tests.documents.quay import WHO, make
from tests.operations.release.stopping import stops
from tests.render.pages_read import all_text

_LASTS = Finding("battery-life", "battery", "warning", "The pack lasts 40 days.", "common practice", "More cells.")


@pytest.fixture(scope="module")
def quay(tmp_path_factory):
    from hwsched.operations.release.project_view import project_view

    with make(tmp_path_factory.mktemp("gate")) as project:
        yield project, project_view(project)


def of(view, mark):
    return next(each for each in view.openings if each.mark == mark)


def on_circuit(opening_id, *, severity="error", waived=False, circuit_id="c", concerns=(), proofs=()):
    said = Finding(
        "made-up", "power", severity, "The limiter is too small.", "common practice", "Change it.", waived=waived
    )
    supply, circuit = Supply("s", "MAIN"), Circuit("c", "s", "A")
    result = CircuitResult(circuit, supply, openings=(opening_id, "other"), proofs=proofs)
    return PowerResult(
        supplies=(SupplyResult(supply, (result,)),),
        findings=(PowerFinding(said, "s", circuit_id, concerns),),
    )


def test_an_opening_in_order_passes(quay):
    assert missing(of(quay[1], "WOOD")) == ()


def test_what_is_missing_is_said(quay):
    _, view = quay
    assert any("Leaf thickness" in line for line in missing(of(view, "UNSEEN")))
    # What the fit lacks is told by the fit, not by the rule on it once more.
    assert sum("Leaf thickness" in line for line in missing(of(view, "UNSEEN"))) == 1
    wood = of(view, "WOOD")
    error = Finding("made-up", "egress", "error", "The door would lock people in.", "common practice", "Do not.")
    assert missing(replace(wood, findings=(error,))) == ("error: The door would lock people in.",)
    assert missing(replace(wood, findings=(replace(error, waived=True),))) == ()
    assert missing(OpeningView(wood.given, None, (), standing="facts-changed"))[0].startswith("no fit counts: ")
    assert missing(replace(wood, fit=Fit("does-not-fit"))) == ("no combination of parts fits",)


def test_what_only_waits_for_a_fit_is_said_once_with_it(quay):
    """A stale fit is one thing to do, though its circuit cannot be proved either."""
    wood = of(quay[1], "WOOD")
    draws = Finding("circuit-known", "power", "warning", "Unknown: what it draws.", "", "Fit it.", needs=(FIT,))
    fuse = replace(draws, message="Unknown: needs more.", needs=(FIT, "circuit.limiter_a"))
    power = on_circuit("1", severity="note", proofs=(Proof("1", "not-proved", (FIT,)),))
    held = held_back("1", (draws, fuse), power, ())
    assert len(held) == 3
    stale = OpeningView(wood.given, None, (draws, fuse), standing="facts-changed", held=held)
    assert [line.partition(":")[0] for line in missing(stale)] == ["no fit counts", "Unknown"]
    assert missing(stale)[1].startswith(fuse.message)
    # Of a fit that counts another one's is still said, which keeps its circuit from being proved.
    assert set(held) <= set(missing(replace(wood, findings=(draws, fuse), held=held)))


@pytest.mark.parametrize(
    ("finding", "held"),
    [
        (_LASTS, True),
        (replace(_LASTS, waived=True), False),
        (replace(_LASTS, severity="note"), False),
        # Another warning asks for no decision.
        (replace(_LASTS, rule="pair-bolts"), False),
        # What is unknown does, whichever rule says it; a note of what is not asked for does not.
        (replace(_LASTS, rule="pair-bolts", needs=("opening.wall_mm",)), True),
        (replace(_LASTS, rule="pair-bolts", needs=("opening.wall_mm",), severity="note"), False),
    ],
)
def test_what_will_not_last_and_what_is_unknown_wait_for_a_person(finding, held):
    assert bool(held_back("1", [finding], PowerResult(), ())) is held


def asking(rule, *needs):
    """A warning that says nothing but that these facts are missing."""
    said = unknown(needs, cure="")
    cure = f"{said.cure} {DEFERS}"
    return Finding(rule, "egress", "warning", said.message, "common practice", cure, needs=needs)


def test_what_several_rules_ask_for_is_asked_for_once():
    findings = [
        asking("egress-direction", "opening.egress_toward"),
        asking("free-inside", "opening.egress_toward"),
        asking("panic-hardware", "opening.occupancy_group", "opening.egress_toward"),
        asking("unit-weather", "part U-1.exposure"),
    ]
    assert held_back("1", findings, PowerResult(), ()) == (
        "unknown: needs opening: Direction of egress; building or level: Occupancy group. Complete the survey.",
        "unknown: needs part U-1.exposure. Complete the catalogue.",
    )


def test_the_rules_of_what_will_not_last_are_rules():
    assert {rule.id for rule in RULEBOOK} >= WILL_NOT_LAST


@pytest.mark.parametrize(
    ("power", "held"),
    [
        (on_circuit("1"), True),
        (on_circuit("1", circuit_id=""), True),
        (on_circuit("1", waived=True), False),
        (on_circuit("1", severity="warning"), False),
        # Another circuit of the supply.
        (on_circuit("1", circuit_id="d"), False),
        # It stands among the opening's own findings.
        (on_circuit("1", concerns=("1",)), False),
        (on_circuit("1", concerns=("other",)), True),
        (on_circuit("2"), False),
        (on_circuit("1", severity="note", proofs=(Proof("1", "not-proved", ("run.length",)),)), True),
    ],
)
def test_an_error_of_the_circuit_that_feeds_an_opening_holds_it(quay, power, held):
    found = held_back("1", (), power, ())
    wood = check_openings(quay[0], [of(quay[1], "WOOD").given.opening.id])[0]
    given = replace(wood.given, opening=replace(wood.given.opening, id="1"))
    # The window's state of it follows.
    (marked,) = _waiting(quay[0], [Checked(given, wood.fit, ())], power, None)
    assert (wood.kept_back, marked.kept_back) == (False, held)
    assert bool(found) is held
    if held:
        assert "MAIN/A" in found[0] or "not proved" in found[0]


def test_an_unfinished_question_of_a_survey_holds_the_opening_that_it_is_about():
    assert held_back("1", (), PowerResult(), [(3, "gone")]) == ("unfinished question of delivery 3: not in the file",)


def test_those_that_pass_go_out_without_the_others(quay):
    """One opening is held: its parts are not picked, its packet does not go out; all others do."""
    project, view = quay
    held = tuple(replace(each, held=("a decision",)) if each.mark == "WOOD" else each for each in view.openings)
    gated = replace(view, openings=held)
    free = {each.mark for each in passages(gated) if each.free}
    assert "WOOD" not in free
    assert free == {each.mark for each in view.openings if each.ready} - {"WOOD"}
    picked = {mark for lines in quantities(gated).values() for line in lines.values() for mark in line.marks}
    assert picked == free
    write_down_packets(project, gated, who=WHO)
    from sqlalchemy import select

    from hwsched.model.tables import ISSUED_PACKET

    with project.reading() as connection:
        out = {row.opening_id for row in connection.execute(select(ISSUED_PACKET))}
    assert out == {each.given.opening.id for each in view.openings if each.mark in free}


def test_stop_stands_across_every_sheet_of_what_is_held_and_on_no_other(quay, tmp_path):
    _, view = quay
    wood = of(view, "WOOD")
    render_pdf(PACKET.build(view, wood), tmp_path / "free.pdf")
    assert stops(tmp_path / "free.pdf") == [0] * len(PdfReader(tmp_path / "free.pdf").pages)
    for n, stopped in enumerate((replace(wood, held=("a decision",)), of(view, "UNSEEN"))):
        path = tmp_path / f"held{n}.pdf"
        render_pdf(PACKET.build(view, stopped), path)
        assert stops(path) == [1] * len(PdfReader(path).pages)
    assert "A decision." in all_text(tmp_path / "held0.pdf")

"""Missing facts, ranked by hand."""

from hwsched.rules.missing import missing_facts, needs_of
from hwsched.values import Finding, Fit, Need


def said(*needs, severity="warning", waived=False):
    return Finding("r", "survey", severity, "m", "b", "c", needs=needs, waived=waived)


def unknown(*facts):
    return Fit("to-measure", needs=tuple(Need(fact, fact, "it") for fact in facts))


FITTED = Fit("fits")
RATING, THICK, CELL = "opening.rating", "leaf.thickness_mm", "part U.cell"


def test_what_blocks_an_opening():
    assert needs_of(FITTED, [said(RATING), said(THICK, RATING, severity="error")]) == (RATING, THICK)
    assert needs_of(FITTED, [said(RATING, severity="note"), said(THICK, waived=True), said()]) == ()
    assert needs_of(unknown(THICK), [said(RATING)]) == (THICK, RATING)
    # Of a fit that is there, or of one that nothing serves, the needs of the search do not count.
    assert needs_of(Fit("does-not-fit", needs=(Need(THICK, "", ""),)), []) == ()
    assert needs_of(None, [said(RATING)]) == (RATING,)


def test_ranked_by_what_each_alone_unblocks_then_by_how_many_need_it():
    found = missing_facts(
        [
            ("a", FITTED, [said(RATING)]),
            ("b", unknown(THICK), [said(RATING, THICK)]),
            ("c", unknown(THICK), []),
            ("d", None, [said(THICK)]),
            ("e", FITTED, [said(CELL), said(RATING)]),
            ("f", FITTED, []),
        ]
    )
    assert [(each.fact, each.alone, each.needed, each.of_catalogue) for each in found] == [
        (THICK, ("c", "d"), ("b", "c", "d"), False),
        (RATING, ("a",), ("a", "b", "e"), False),
        (CELL, (), ("e",), True),
    ]
    assert found[0].label == "leaf: Leaf thickness"
    assert missing_facts([]) == ()


def test_equals_stand_by_their_labels():
    found = missing_facts([("a", FITTED, [said(RATING)]), ("b", FITTED, [said(THICK)])])
    assert [each.fact for each in found] == [THICK, RATING]


def test_nobody_is_sent_out_for_what_is_worked_out():
    """A circuit waits for the fit of an opening: it is no fact of a door, and no visit finds it."""
    assert missing_facts([("a", FITTED, [said("opening.fit")])]) == ()
    found = missing_facts([("a", FITTED, [said("opening.fit"), said(THICK)])])
    assert [(each.fact, each.alone) for each in found] == [(THICK, ("a",))]

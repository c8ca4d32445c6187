"""Measures that can hardly be so are asked about, once a kind; ordinary doors never are."""

import pytest

from hwsched.exchange.survey.plausibility import BY_ID, ODDITIES, OF_LEAF, OF_LOCK
from tests.exchange.surveys import one, read, said

HEADER = [
    "Mark",
    "Form",
    "Width",
    "Height",
    "Thickness",
    "Material",
    "Stile",
    "Lock type",
    "Backset",
    "Cross bore",
    "Cyl aff",
]
PLAIN = ["1", "single", "36", "84", "1.75", "HM", "", "bored", "2.75", "2.125", "40"]


def oddities(folder, *rows, **options):
    found = read(folder, HEADER, *rows, **options)
    assert said(found) == ""
    return {oddity.id: oddity.marks for oddity in found.oddities}


def with_cells(mark, **cells):
    named = dict(zip(HEADER, PLAIN, strict=True)) | {"Mark": mark} | {k.replace("_", " "): v for k, v in cells.items()}
    return list(named.values())


# Bounds: common practice, as in the module.
RAISING = {
    "run-together": {"Width": "30", "Height": "68"},
    "wider-than-high": {"Width": "84", "Height": "36"},
    "thin-leaf": {"Thickness": "0.75"},
    "thick-leaf": {"Thickness": "3 1/4"},
    "wide-leaf": {"Width": "96", "Height": "108"},
    "tall-leaf": {"Height": "130"},
    "low-leaf": {"Height": "50"},
    "bore-over-stile": {"Stile": "1.75", "Backset": "1"},
    "backset-over-stile": {"Stile": "2.5"},
    "lock-above-leaf": {"Cyl_aff": "90"},
}


@pytest.mark.parametrize("name", RAISING)
def test_each_is_asked_about(tmp_path, name):
    assert name in oddities(tmp_path, with_cells("1", **RAISING[name]))


def test_every_oddity_has_a_case_here_or_below():
    assert set(BY_ID) == {*RAISING, "deep-undercut"}
    assert len(BY_ID) == len(ODDITIES)


@pytest.mark.parametrize(
    "cells",
    [
        {}, {"Thickness": "1 3/8"}, {"Width": "48", "Height": "120"}, {"Height": "60", "Width": "24"},
        {"Form": "gate", "Width": "72", "Height": "40", "Material": "steel gate"},
        {"Form": "cabinet", "Width": "30", "Height": "20", "Thickness": "0.75", "Material": "WD"},
        {"Form": "pair"}, {"Stile": "5"}, {"Width": "", "Height": ""},
    ],
)  # fmt: skip
def test_ordinary_doors_gates_and_cabinets_are_not(tmp_path, cells):
    assert oddities(tmp_path, with_cells("1", **cells)) == {}


def test_an_undercut_of_a_hand(tmp_path):
    found = read(tmp_path, ["Mark", "Width", "Height", "Undercut"], ["1", 36, 84, 3], ["2", 36, 84, 0.75])
    assert [(oddity.id, oddity.marks) for oddity in found.oddities] == [("deep-undercut", ("1",))]


def test_one_question_for_all_rows_and_a_cure_for_all(tmp_path):
    rows = [with_cells(f"{n}", Width="84", Height="36") for n in range(12)] + [with_cells("20")]
    found = read(tmp_path, HEADER, *rows)
    (oddity,) = found.oddities
    assert oddity.describe().startswith(
        "wider-than-high: are width and height swapped in 12 openings? The leaf is wider"
    )
    cured = read(tmp_path, HEADER, *rows, cures=frozenset({"wider-than-high"}))
    assert cured.oddities == ()
    widths = {round(opening.leaves[0].facts["width_mm"], 1) for opening in cured.openings}
    assert widths == {914.4}


def test_what_nothing_cures_is_refused_by_name(tmp_path):
    found = read(tmp_path, HEADER, PLAIN, cures=frozenset({"thin-leaf"}))
    assert "has nothing that thin-leaf would cure; accepted: run-together, wider-than-high" in said(found)


def test_a_pair_is_looked_at_leaf_by_leaf(tmp_path):
    rows = (
        ["Mark", "Leaf", "Form", "Width", "Height"],
        ["1", "active", "pair", 36, 84],
        ["1", "inactive", "pair", 84, 36],
    )
    found = read(tmp_path, *rows)
    assert [(oddity.id, oddity.marks) for oddity in found.oddities] == [("wider-than-high", ("1",))]
    cured = one(read(tmp_path, *rows, cures=frozenset({"wider-than-high"})))
    assert [round(leaf.facts["width_mm"]) for leaf in cured.leaves] == [914, 914]


class Watched(dict):
    """Facts that write down which of them were looked at."""

    def __init__(self, facts, seen):
        super().__init__(facts)
        self.seen = seen

    def get(self, name, default=None):
        self.seen.add(name)
        return super().get(name, default)


def test_leaves_alike_in_what_is_looked_at_raise_the_same():
    seen = set(), set()
    for material in ("hollow-metal", "wood", "steel-gate"):
        leaf = {"width_mm": 900.0, "height_mm": 2100.0, "thickness_mm": 44.0, "stile_mm": 100.0, "material": material}
        lock = {"cross_bore_mm": 54.0, "backset_mm": 70.0, "cylinder_height_mm": 1000.0}
        for kind in ODDITIES:
            kind.raised(Watched(leaf, seen[0]), Watched(lock, seen[1]))
    # What decides is part of what leaves are known again by.
    assert (seen[0], seen[1]) == (set(OF_LEAF), set(OF_LOCK))

"""Pieces of a fit: single goods one by one, counted lots as one, under identifiers that stay."""

from hwsched.values import Fit, FitPart, LockPoint
from hwsched.values.piece import piece_id, pieces_of

POINT = LockPoint("p1", "k", 1, "lock", ("d",))


def part(role, number, quantity=1.0, source="worked-out"):
    return FitPart(role, number, role, quantity, "test", f"a {role}", source)


FIT = Fit(
    "fits",
    (
        part("cylinder", "CYL", source="by-hand"),
        part("unit", "UNIT"),
        part("battery", "CELL", 6.0),
        part("fastener", "SCREW", 4.0),
        part("consumable", "GLUE", 0.05),
        part("credential", "KEY", 2.0),
        part("wire", "WIRE", 20.9),
        part("tool", "JIG"),
    ),
)


def test_single_goods_are_pieces_of_their_own_and_counted_ones_a_lot():
    found = pieces_of(POINT, FIT)
    assert [(p.role, p.number, p.quantity) for p in found] == [
        ("cylinder", 1, 1.0),
        ("unit", 1, 1.0),
        ("battery", 1, 6.0),
        ("fastener", 1, 4.0),
        ("consumable", 1, 0.05),
        ("credential", 1, 1.0),
        ("credential", 2, 1.0),
        ("wire", 1, 20.9),
    ]
    assert {(p.source, p.state, p.in_fit, p.point_name) for p in found[1:]} == {("worked-out", "planned", True, "lock")}
    assert found[0].source == "by-hand"


def test_a_piece_keeps_its_identifier_whatever_else_changes():
    first = pieces_of(POINT, FIT)
    again = pieces_of(POINT, Fit("fits", tuple(reversed(FIT.parts))))
    assert {p.id for p in first} == {p.id for p in again}
    assert len({p.id for p in first}) == len(first)
    other = pieces_of(LockPoint("p2"), FIT)
    assert {p.id for p in first}.isdisjoint({p.id for p in other})
    assert first[0].id == piece_id("p1", "cylinder", "CYL", 1)


def test_the_same_part_twice_in_a_role_goes_on_counting():
    found = pieces_of(POINT, Fit("fits", (part("strike", "S"), part("strike", "S"))))
    assert [p.number for p in found] == [1, 2]

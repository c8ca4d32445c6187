from hwsched.drawings.dimensions import stack_horizontal, stack_vertical


def test_the_shortest_stands_nearest_and_none_twice():
    spans = [(0.0, 1000.0, "long"), (0.0, 100.0, "short"), (0.0, 1000.0, "long"), (5.0, 5.0, "none")]
    found = stack_vertical(0.0, -1.0, spans)
    assert [d.text for d in found] == ["short", "long"]
    assert [d.offset for d in found] == [8.0, 14.5]


def test_both_sides_lie_outside():
    # Upward the left hand is -x; to the right it is +y.
    assert stack_vertical(0.0, 1.0, [(0.0, 10.0, "a")])[0].offset < 0
    assert stack_horizontal(0.0, -1.0, [(0.0, 10.0, "a")])[0].offset < 0
    assert stack_horizontal(0.0, -1.0, [(10.0, 0.0, "a")])[0].offset > 0

"""What is said of a piece of work that did not come to its end: every step that stands, by number and words."""

from hwsched.model.journal.written import Written
from hwsched.operations.changes import Changes
from hwsched.operations.outcome import changes_of, said_of


def steps(*numbers):
    return [
        Written(
            each, "edit", f"Edit {each}", frozenset({f"o{each}", "o"}), frozenset({f"p{each}"}), frozenset({"opening"}),
            (f"a{each}", f"b{each}"),
        )
        for each in numbers
    ]  # fmt: skip


def test_steps_together_touch_what_each_has_touched():
    assert changes_of([]) == Changes()
    assert changes_of(steps(7)).number == 7
    assert changes_of(steps(7, 8, 9)) == Changes(
        frozenset({"o7", "o8", "o9", "o"}),
        frozenset({"p7", "p8", "p9"}),
        frozenset({"opening"}),
        9,
        ("a7", "b7", "a8", "b8", "a9", "b9"),
    )


def test_every_step_that_stands_is_named_up_to_five():
    assert said_of([]) == "Nothing was changed in the project."
    assert said_of(steps(7)) == "Written before that, and it stands: change set 7 (Edit 7). Undo takes it back."
    five = "7 (Edit 7); 8 (Edit 8); 9 (Edit 9); 10 (Edit 10); 11 (Edit 11)"
    back = "Undo takes them back, the last one first."
    begin = "Written before that, and they stand: change sets"
    assert said_of(steps(7, 8)) == f"{begin} 7 (Edit 7); 8 (Edit 8). {back}"
    assert said_of(steps(*range(7, 12))) == f"{begin} {five}. {back}"
    assert said_of(steps(*range(7, 13))) == f"{begin} {five} and 1 more. {back}"
    assert said_of(steps(*range(7, 16))) == f"{begin} {five} and 4 more. {back}"

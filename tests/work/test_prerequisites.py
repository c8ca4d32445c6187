"""What a step waits for is declared once: nothing is said that follows from the rest."""

from hwsched.work.plan import before
from hwsched.work.steps import STEPS


def earlier(after):
    """Return for every step all that must be done before it, from what each names itself."""
    states = {}
    for kind in STEPS:
        states.setdefault(kind.name, set()).add(kind.name)
        if kind.brings:
            states.setdefault(kind.brings, set()).add(kind.name)
    found = {kind.name: {e for name in after[kind.name] for e in states[name]} - {kind.name} for kind in STEPS}
    grown = True
    while grown:
        grown = False
        for name, those in found.items():
            more = set().union(*(found[each] for each in those)) - those
            if more:
                found[name] = those | more
                grown = True
    return found


def test_what_is_worked_out_from_the_declarations_is_what_the_plan_goes_by():
    assert earlier({kind.name: kind.after for kind in STEPS}) == before()


def test_every_prerequisite_changes_something():
    after = {kind.name: kind.after for kind in STEPS}
    whole = earlier(after)
    idle = [
        (kind.name, name)
        for kind in STEPS
        for name in kind.after
        if earlier({**after, kind.name: tuple(each for each in kind.after if each != name)}) == whole
    ]
    assert idle == []

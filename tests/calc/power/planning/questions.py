"""Random questions of a plan, in plain numbers and as the program takes them."""

from hwsched.calc.power.planning.question import Drawn, PlanOpening, PlanPlace, Question, Size, Wire


def random_numbers(rng, openings, places=2, wires=2, span_m=60.0, amps=(0.8, 3.0), sizes=2):
    """Return places, openings, wires and ways as numbers; points on plan with a rise to the cable way."""

    def point():
        return rng.uniform(0, span_m), rng.uniform(0, span_m / 2), rng.choice((0.0, rng.uniform(0, 2)))

    def way(a, b):
        return max(round(a[2] + abs(a[0] - b[0]) + abs(a[1] - b[1]) + b[2], 2), 0.1)

    at, stands = [point() for _ in range(openings)], [point() for _ in range(places)]
    drawn = []
    for _ in range(openings):
        held = rng.uniform(0.1, 0.5)
        drawn.append((held, held * rng.uniform(0.2, 1.0), held * rng.uniform(0.5, 2.0), rng.uniform(9.6, 10.4)))
    supplies = [
        (rng.randint(0, 2), [(a, 11.4 + 0.2 * k, round(40 + 40 * a, 2)) for k, a in
                             enumerate(sorted(rng.uniform(*amps) for _ in range(sizes)))])
        for _ in range(places)
    ]  # fmt: skip
    kinds = [(0.09 / 1.6**k, round(3.3 + rng.uniform(0.2, 0.6) * k, 2)) for k in range(wires)]
    to_m = [[way(a, b) for b in stands] for a in at]
    between_m = [[None if a is b else way(a, b) for b in at] for a in at]
    for row in to_m:
        if rng.random() < 0.1:
            row[rng.randrange(places)] = None
    return supplies, drawn, kinds, to_m, between_m


def question_of(numbers, **more):
    """Return numbers as a question."""
    supplies, drawn, kinds, to_m, between_m = numbers
    return Question(
        tuple(
            PlanPlace(f"p{p}", tuple(Size(f"s{k}", "12 V", *size) for k, size in enumerate(sizes)), at_once)
            for p, (at_once, sizes) in enumerate(supplies)
        ),
        tuple(PlanOpening(f"o{i}", {"12 V": Drawn(*each)}) for i, each in enumerate(drawn)),
        tuple(Wire(f"w{k}", *each) for k, each in enumerate(kinds)),
        to_m,
        between_m,
        **more,
    )

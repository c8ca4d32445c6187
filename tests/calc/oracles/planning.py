"""The best plan of few openings by trying everything: supplies, divisions, orders, ways with branches, wires.

Takes plain numbers. Every leg is a list of runs, and its voltages come from currents summed run by run.
"""

from itertools import combinations, pairwise, permutations, product


def leg_volts(runs, draws, volts, ohm, at_once):
    """Least voltage of every point of a tree under the worst operations for it.

    ``runs``: (from, to, metres), "" the supply; ``draws``: point to (rest, work).
    """
    begin_of = {to: (begin, metres) for begin, to, metres in runs}

    def way(point):
        found = {}
        while point:
            begin, metres = begin_of[point]
            found[point] = metres
            point = begin
        return found

    ways = {point: way(point) for point in draws}
    lowest = {}
    for point in draws:
        shared = {o: sum(m for run, m in ways[o].items() if run in ways[point]) for o in draws}
        lowest[point] = min(
            volts - ohm * sum(shared[o] * (max(draws[o]) if o in working else draws[o][0]) for o in draws)
            for count in range(min(at_once, len(draws)) + 1)
            for working in combinations(draws, count)
        )
    return lowest


def trees(openings, to_m, between_m):
    """Every leg of a set of openings: (runs, metres); openings by number, junctions by name."""
    for order in permutations(openings):
        steps = [to_m[order[0]], *(between_m[a][b] for a, b in pairwise(order))]
        if None in steps:
            continue
        runs = [(f"o{a}" if a is not None else "", f"o{b}", m)
                for a, b, m in zip((None, *order), order, steps, strict=False)]  # fmt: skip
        yield runs, sum(steps)
    if len(openings) > 1:
        for end in openings:
            runs = branching([o for o in openings if o != end], end, to_m, between_m)
            if runs is not None:
                yield runs, sum(m for *_, m in runs)


def branching(others, end, to_m, between_m):
    """Runs of a way to one opening from which the others branch off where their ways part from it."""
    if to_m[end] is None:
        return None
    stops = {}
    for o in others:
        if to_m[o] is None or between_m[end][o] is None:
            return None
        tap = (to_m[end] + to_m[o] - between_m[end][o]) / 2
        if not (-1e-6 <= tap <= to_m[end] + 1e-6 and to_m[o] - tap >= -1e-6):
            return None
        stops[o] = min(max(tap, 0.0), to_m[end])
    runs, at, metres = [], "", 0.0
    for o in sorted(others, key=stops.get):
        if stops[o] > metres:
            runs.append((at, f"j{o}", stops[o] - metres))
            at, metres = f"j{o}", stops[o]
        runs.append((at, f"o{o}", max(to_m[o] - stops[o], 0.0)))
    runs.append((at, f"o{end}", to_m[end] - metres))
    return runs


def best_plan(places, openings, wires, to_m, between_m, weigh, margin_v=0.0):
    """Least of what ``weigh(cost, metres, supplies)`` says over everything; None where nothing does.

    ``places``: (at_once, [(amps, volts, cost)]); ``openings``: (held, rest, work, needed); ``wires``: (ohm, cost).
    """
    best = None
    numbers = range(len(openings))
    legs, carried = {}, {}

    def carries(place, volts, ohm, runs):
        some = sorted({to for _, to, _ in runs if to[0] == "o"})
        lowest = leg_volts(runs, {o: openings[int(o[1:])][1:3] for o in some}, volts, ohm, places[place][0])
        return all(lowest[o] >= openings[int(o[1:])][3] + margin_v - 1e-9 for o in some)

    def carries_chain(place, volts, ohm, runs):
        """One opening more on the end of a chain leaves none before it with more volts: what was low stays low."""
        key = place, volts, ohm, tuple(to for _, to, _ in runs)
        if key not in carried:
            carried[key] = (len(runs) < 2 or carries_chain(place, volts, ohm, runs[:-1])) and carries(
                place, volts, ohm, runs)  # fmt: skip
        return carried[key]

    def leg_of(place, volts, some):
        key = place, volts, some
        if key not in legs:
            found = None
            for runs, metres in trees(some, [row[place] for row in to_m], between_m):
                chain = len(runs) == len(some) and all(a[1] == b[0] for a, b in pairwise(runs))
                for ohm, cost in wires:
                    weight = weigh(metres * cost, metres, 0)
                    if found is not None and weight >= found:
                        continue
                    if (carries_chain if chain else carries)(place, volts, ohm, runs):
                        found = weight
            legs[key] = found
        return legs[key]

    divided = {}

    def legs_for(place, volts, some):
        if not some:
            return 0.0
        key = place, volts, some
        if key not in divided:
            found = None
            for size in range(len(some)):
                for others in combinations(some[1:], size):
                    own = leg_of(place, volts, (some[0], *others))
                    rest = None if own is None else legs_for(
                        place, volts, tuple(i for i in some[1:] if i not in others))  # fmt: skip
                    if rest is not None and (found is None or own + rest < found):
                        found = own + rest
            divided[key] = found
        return divided[key]

    for where in product(range(len(places)), repeat=len(openings)):
        total = 0.0
        for place in set(where):
            some = tuple(i for i in numbers if where[i] == place)
            held = sum(openings[i][0] for i in some)
            options = []
            for amps, volts, cost in places[place][1]:
                wired = legs_for(place, volts, some) if held <= amps + 1e-9 else None
                if wired is not None:
                    options.append(wired + weigh(cost, 0.0, 1))
            if not options:
                break
            total += min(options)
        else:
            if best is None or total < best:
                best = total
    return best
